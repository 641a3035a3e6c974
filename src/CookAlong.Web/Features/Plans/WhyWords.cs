using System.Collections.Immutable;
using System.Diagnostics;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>Why a step may be no later, in sentences that follow from each other.</summary>
public static class WhyWords
{
    /// <summary>"Must be out of the oven by 13:20".</summary>
    public static string Deadline(WhyHere why, PlannedStep planned, Meal meal) =>
        $"Must be {(planned.Oven is null ? "done" : "out of the oven")} by {PlanWords.Clock(why.End, meal)}";

    /// <summary>Each holds the one before it.</summary>
    public static ImmutableArray<string> Reasons(WhyHere why, Meal meal) => [.. why.Chain.Select(because => Of(because, meal))];

    static string Of(Because because, Meal meal)
    {
        var at = PlanWords.Clock(because.At, meal);
        var next = because.Next is { } step ? $"“{meal.Step(step).Text}”" : null;
        return because switch
        {
            Because.Served served => $"{Course(served.Course, meal)} is on the table at {at}{(served.Rest > 0 ? $", after {Minutes(served.Rest)} of rest" : "")}",
            Because.Fixed => $"you keep it at {at}",
            Because.WindowCloses => $"it may be done until {at} and no later",
            Because.Leaves { Helper: { } helper } => $"{Name(helper, meal)} is here until {at}",
            Because.Leaves => $"no grown-up is there to stay nearby after {at}",
            Because.Awaited { Gap: > 0 } awaited => $"{next} begins by {at}, {Minutes(awaited.Gap)} after it at the least",
            Because.Awaited => $"{next} waits for it and begins by {at}",
            Because.SoonAfter soon => $"it begins within {Minutes(soon.Most)} of {next}, which ends by {at}",
            Because.OvenTurns turns => $"{PlaceNames.The(meal.Kitchen.Ovens.Single(oven => oven.Id == turns.Oven))} takes {Minutes(turns.Minutes)} to reach {turns.Celsius.Min}–{turns.Celsius.Max} °C, by {at}, for {next ?? "what is kept warm"}",
            Because.PlaceNeeded place => $"{next ?? "what is kept warm"} needs its {Of(place.Place)} by {at}",
            Because.HandsNeeded hands => $"{Name(hands.Helper, meal)} is needed for {next} by {at}",
            Because.Tended => $"{next} has to be seen to by {at}",
            Because.KeptWarm kept => $"{meal.Dishes.Single(dish => dish.Id == kept.Dish).Name} goes in to keep warm by {at}",
            _ => throw new UnreachableException($"no words for {because}"),
        };
    }

    static string Of(PlaceKind place) => place switch
    {
        PlaceKind.Shelf => "place in the oven",
        PlaceKind.Ring => "ring",
        PlaceKind.Grill => "grill",
        PlaceKind.Appliance => "appliance",
        _ => throw new UnreachableException($"no words for {place}"),
    };

    static string Course(CourseId id, Meal meal) => meal.Courses.Single(course => course.Id == id).Name;

    static string Name(HelperId id, Meal meal) => meal.Helpers.Single(helper => helper.Id == id).Name;

    static string Minutes(int minutes) => PlanHeadline.Minutes(minutes);
}
