using CookAlong.Domain.Doneness;

namespace CookAlong.Domain.Runs;

/// <summary>What the joint does after it has come out, as it was understood at its last reading: from coming out when the step is done.</summary>
/// <param name="Peak">°C in the middle at its hottest.</param>
/// <param name="PeakAfter">From coming out.</param>
/// <param name="Hot">How long its middle stays at <paramref name="Limit"/> or above; zero = it never is.</param>
/// <param name="Limit">°C that hot food is kept at, by the household's authority.</param>
/// <param name="SafeAt">When its middle has had the heat that the authority asks for, time and temperature together, resting counted; null = not by that alone.</param>
public sealed record RestWord(DegreeSpread Peak, TimeSpan PeakAfter, TimeSpread Hot, double Limit, DateTimeOffset? SafeAt)
{
    /// <summary>What lies over it in the end.</summary>
    public RestUnder Under { get; init; } = RestUnder.Foil;

    /// <summary>°C of the room it rests in.</summary>
    public int RoomCelsius { get; init; } = Roasting.UsualRoom;
}

/// <summary>A joint that has come out and has not been touched since.</summary>
/// <param name="Step">Of its dish, the one that the thermometer ended.</param>
/// <param name="Until">When it is wanted: the next step of its dish, or the table.</param>
public sealed record BoardResting(Meals.Dish Dish, StepId Step, DateTimeOffset Out, DateTimeOffset Until, RestWord Rest)
{
    /// <summary>Nine times in ten it is hot at least until then; null = it is not hot at all.</summary>
    public DateTimeOffset? HotUntil => Rest.Hot.Likely > TimeSpan.Zero ? Out + Rest.Hot.Low : null;

    public bool IsTooLong => HotUntil < Until;
}

/// <summary>A dish that has nearly been out of cold and heat for as long as it may.</summary>
/// <param name="Out">All together.</param>
public sealed record BoardStanding(Meals.Dish Dish, TimeSpan Out, FoodSafety.TimeLimit Limit);
