namespace CookAlong.Planner.Quick;

/// <summary>What a running meal has fixed. What it takes is marked in <see cref="Work.Taken"/> already.</summary>
/// <param name="Steps">Those that have begun.</param>
/// <param name="Stays">What stands in an oven, or stood.</param>
/// <param name="Tends">Tends still to come of steps that run, settled as near their time as hands are free.</param>
/// <param name="PastTends">Those that are done, or will be missed.</param>
/// <param name="Made">Dishes of which every step has begun.</param>
/// <param name="Sunk">What late and missed tends cost.</param>
internal sealed record Begun(QuickStep[] Steps, QuickStay[] Stays, QuickJob[] Tends, DraftTend[] PastTends, QuickMade[] Made, long Sunk);

/// <summary>
/// The plan that people were told: one that runs, moved right as far as its order of hands and places makes it, or that of a meal
/// that does not run yet. Positions of ways and holds, minutes of the clock.
/// </summary>
/// <param name="Late">Per course, how late that makes it.</param>
/// <param name="LateAtLeast">Per course, how late what has begun makes it even if nothing else were in the way.</param>
internal sealed record QuickMoved(int[] Ends, int[] Ways, int[] Holds, int[] Late, int[] LateAtLeast);

internal readonly record struct QuickStay(int Oven, int Start, int End, int Range);

/// <param name="In">The warm oven it is in already.</param>
internal readonly record struct QuickMade(int Dish, (int From, QuickSpot Spot)? In);
