using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner;

/// <summary>
/// What the planner minimises, in one place; DEVELOPERS.md has it as a table. All prices are in minutes of waiting. A plan on time
/// is always preferred to a late one; these prices choose among plans on time, and among late ones where there is none on time.
/// </summary>
internal sealed record Prices
{
    /// <summary>For each minute each course is late.</summary>
    public const int LateMinute = 1000;

    /// <summary>How long before the last table a kitchen day may begin. Work before it is done ahead, and not pressed towards its day's end: who overruns there loses the whole night.</summary>
    public const int KitchenMost = PlanMeasures.LongestDay;

    public const int RushMinutes = 30;

    /// <summary>For each step done ahead of the kitchen day: fresh rather than early, but a day before is fine where it helps.</summary>
    public const int Ahead = 30;

    /// <summary>
    /// For each minute that a dish is ready later than <see cref="Cushion"/> before the table, as far as its hold leaves room
    /// for it: a plan pushed hard against the table is late with the first thing that takes longer.
    /// </summary>
    public const int CushionMinute = 2;

    /// <summary>For each minute that what has already begun forces a hold or a gap beyond its limit (only while a meal runs).</summary>
    public const int BeyondLimitMinute = 200;

    /// <summary>A step is moved from what people were told, while a meal runs.</summary>
    public static MovePrice Moved { get; } = new(2, int.MaxValue);

    /// <summary>
    /// A step is moved where a meal that does not run yet is planned again after a change. Nobody acts on it yet: enough that a small
    /// wish moves a few steps, little enough that a clearly better plan wins. Beyond a quarter of an hour it is another time of
    /// day, however far: else a meal that has lost a pair of hands keeps its hours as it can, and is twice as dear.
    /// </summary>
    public static MovePrice MovedAgain { get; } = new(1, 15);

    /// <summary>For each person newly given a step that was told before; decides names, not times.</summary>
    public const int ChangedPerson = 5;

    /// <summary>Spans before the table in which hands stay free to wash up, each part of the next.</summary>
    private static readonly int[] WashUpMinutes = [60, 90, 120, 180];

    /// <summary>Of an oven's changes of temperature no more than these are charged: who cannot keep to seven set points counts them no more.</summary>
    public const int MostDialChanges = 6;

    public const long UsualDialTurn = 600;

    /// <summary>More degree-minutes than a programme is worth; less than a temperature between the marks of a dial.</summary>
    private const long FewestTurns = 100_000;

    private Prices(int cushion, Leans leans)
    {
        bool Is(Leans lean) => leans.HasFlag(lean);
        (Cushion, Leans) = (cushion, leans);
        KitchenMinute = Is(Leans.StartLater) ? 4 : 1;
        RushMinute = Is(Leans.CalmEnd) ? 4 : 1;
        Crowds =
        [
            new(RushMinutes, Percent: 60, RushMinute), new(20, Percent: 60, RushMinute), new(10, Percent: 60, RushMinute),
            .. Is(Leans.WashUp) ? WashUpMinutes.Select(minutes => new Crowd(minutes, Percent: 50, Price: 2)) : [],
        ];
        DialChange = Is(Leans.FewerDialTurns) ? 40 : 10;
    }

    public static Prices Usual { get; } = new(PlanRequest.UsualCushion, Leans.None);

    /// <summary>The minutes asked for in the request.</summary>
    public int Cushion { get; }

    public Leans Leans { get; }

    /// <summary>For each minute from the first hands-on start of the day, no earlier than <see cref="KitchenMost"/>, to the last table time.</summary>
    public int KitchenMinute { get; }

    /// <summary>For each hands-on minute of each helper within <see cref="RushMinutes"/> of its course's table time.</summary>
    public int RushMinute { get; }

    /// <summary>Where too much work stands side by side.</summary>
    public ImmutableArray<Crowd> Crowds { get; }

    /// <summary>
    /// How many degree-minutes away from what the food likes best, within its range, one turn of a dial is worth. Not part of
    /// the sum: an oven's programme is settled after the times are. Where its changes have a price of their own it has as few
    /// as the times allow.
    /// </summary>
    public long DialTurnOf(Meal meal) => CountsDialChanges(meal) ? FewestTurns : Leans.HasFlag(Leans.FewerDialTurns) ? 10 * UsualDialTurn : UsualDialTurn;

    /// <summary>For each change of the oven's temperature between what cannot share one, up to <see cref="MostDialChanges"/>; in kitchens with one oven.</summary>
    public int DialChange { get; }

    /// <summary>Whether turns are priced: with several ovens, a change is mostly one oven's last use and another's first.</summary>
    public static bool CountsDialChanges(Meal meal) => meal.Kitchen.Ovens.Length == 1;

    public static Prices Of(PlanRequest request) => new(request.Cushion, request.Leans);

    public static Prices Of(int cushion, Leans leans) => new(cushion, leans);

    /// <summary>
    /// The part of the cushion that a hold has room for, in minutes: half of what the food waits for nothing, so that not all must be
    /// ready at one minute; for who asks for more, as long as it is good.
    /// </summary>
    public int CushionOf(Hold hold) => Math.Min(Cushion, Cushion > PlanRequest.UsualCushion ? hold.GoodFor : hold.BestWithin / 2);

    /// <summary>The objective of a finished plan, from the plan alone: what moving from an earlier one cost is not in it.</summary>
    public long Sum(Meal meal, Plan plan)
    {
        var measures = new PlanMeasures(meal, plan);
        long sum = plan.Courses.Sum(course => (long)course.LateMinutes) * LateMinute;
        sum += (long)measures.KitchenDay * KitchenMinute;
        sum += measures.Waiting;
        sum += (long)meal.Courses.Sum(course => measures.HandsOn(course.Id, RushMinutes)) * RushMinute;
        sum += meal.Courses.Sum(course => Crowds.Sum(crowd =>
            Math.Max(0, measures.HandsOn(course.Id, crowd.Minutes) - crowd.Hands(meal, course)) * (long)crowd.Price));
        sum += CountsDialChanges(meal) ? (long)Math.Min(measures.DialChanges, MostDialChanges) * DialChange : 0;
        sum += meal.Dishes.Sum(dish => (long)MissingCushion(dish, plan)) * CushionMinute;
        return sum + ((long)measures.DoneAhead * Ahead);
    }

    private int MissingCushion(Dish dish, Plan plan)
    {
        if (dish.Steps.IsEmpty)
        {
            return 0;
        }

        var (hold, minutes) = PlanMeasures.Wait(dish, plan);
        return Math.Max(0, CushionOf(hold) - minutes);
    }
}

/// <summary>What moving a step costs a minute, for so many minutes at the most.</summary>
internal readonly record struct MovePrice(int Minute, int Most)
{
    public long Of(int minutes) => (long)Math.Min(Math.Abs(minutes), Most) * Minute;
}

/// <summary>Of the hands there in the last <paramref name="Minutes"/> before a course, work beyond <paramref name="Percent"/> costs <paramref name="Price"/> a minute.</summary>
internal readonly record struct Crowd(int Minutes, int Percent, int Price)
{
    /// <summary>
    /// How many minutes of work stand there for nothing. Counted before the promised time; a child's hands as half, and those
    /// who may do none of the meal's work with hands not at all.
    /// </summary>
    public int Hands(Meal meal, Course course)
    {
        var (from, to) = (course.TableTime - Minutes, course.TableTime);
        var work = meal.Steps.Where(step => !step.Tends.IsEmpty || step.Ways.Any(one => one.Way.Attention == Attention.HandsOn)).ToList();
        var halves = meal.Helpers.Where(helper => work.Any(helper.MayDo)).Sum(helper => helper.MinutesHere(from, to) * (helper.IsChild ? 1 : 2));
        return halves * Percent / 200;
    }
}
