using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>A step that a new plan does at another time, by other people or another way.</summary>
public sealed record StepMove(PlannedStep Was, PlannedStep Becomes)
{
    public bool ChangesHands => !Was.Helpers.ToHashSet().SetEquals(Becomes.Helpers);

    /// <summary>Every step that differs, in order of its new start. Steps that only one of the plans has are left out: then the meal itself is another.</summary>
    public static ImmutableArray<StepMove> Between(Plan old, Plan made)
    {
        var before = old.Steps.ToDictionary(step => step.Step);
        return
        [
            .. from becomes in made.Steps
               where before.ContainsKey(becomes.Step)
               let was = before[becomes.Step]
               let move = new StepMove(was, becomes)
               where was.Start != becomes.Start || was.Option != becomes.Option || move.ChangesHands
               orderby becomes.Start, becomes.Step.Value
               select move,
        ];
    }

    /// <summary>"Peel the potatoes: 11:20 instead of 11:05, now Ivo instead of Maren".</summary>
    public string Words(Meal meal)
    {
        var step = meal.Step(Becomes.Step);
        List<string> parts = [];
        if (Was.Start != Becomes.Start)
        {
            parts.Add($"{Clock(Becomes.Start, meal.TimeZone)} instead of {Clock(Was.Start, meal.TimeZone)}");
        }

        if (ChangesHands)
        {
            parts.Add($"{Names(meal, Becomes.Helpers)} instead of {Names(meal, Was.Helpers)}");
        }

        if (Was.Option != Becomes.Option)
        {
            parts.Add(Becomes.Option < 0 ? "as written" : $"another way, {PlanHeadline.Minutes(Becomes.Minutes)}");
        }

        return $"{step.Text}: {string.Join(", ", parts)}";
    }

    /// <summary>With the day, where the two are on different ones.</summary>
    string Clock(Minute at, TimeZoneInfo zone)
    {
        var isSameDay = LocalTime.Show(Was.Start, zone).Date == LocalTime.Show(Becomes.Start, zone).Date;
        return LocalTime.Show(at, zone).ToString(isSameDay ? "HH:mm" : "dddd HH:mm", System.Globalization.CultureInfo.InvariantCulture);
    }

    static string Names(Meal meal, ImmutableArray<HelperId> helpers) =>
        helpers.IsEmpty ? "nobody" : string.Join(" and ", helpers.Select(id => meal.Helpers.Single(helper => helper.Id == id).Name));
}
