using System.Diagnostics;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

public static partial class PlanWords
{
    /// <summary>A breach said with the names of its meal; ids the meal does not know are said as they are.</summary>
    sealed class BreachSentence(Breach breach, Meal meal)
    {
        string Step => NameOf(breach.Step);

        string Other => breach.Other is null ? Dish : NameOf(breach.Other);

        /// <summary>What is in an oven: a step's tray, or a whole dish kept warm.</summary>
        string Tray => breach.Step is null ? Dish : Step;

        string Dish => meal.Dishes.FirstOrDefault(dish => dish.Id == breach.Dish)?.Name ?? breach.Dish?.Value ?? "a dish";

        string Course => meal.Courses.FirstOrDefault(course => course.Id == breach.Course)?.Name ?? breach.Course?.Value ?? "a course";

        string Helper => meal.Helpers.FirstOrDefault(helper => helper.Id == breach.Helper)?.Name ?? breach.Helper?.Value ?? "nobody";

        string Oven => meal.Kitchen.Ovens.FirstOrDefault(oven => oven.Id == breach.Oven)?.Name ?? breach.Oven?.Value ?? "no oven";

        string At => breach.At is { } at ? Clock(at, meal) : "an unknown time";

        int Found => breach.Found ?? 0;

        int Allowed => breach.Allowed ?? 0;

        public string Sentence() => breach.Rule switch
        {
            RuleId.EveryStepOnce => Allowed == 0 ? $"{Step} is planned, but the meal has no such step." : $"{Step} is planned {Times(Found)}.",
            RuleId.StepLength => breach.Thing == "option"
                ? $"{Step} is done by its option {Found}, but its options go up to {Allowed}."
                : $"{Step} takes {Allowed} min, but is planned for {Found} min from {At}.",
            RuleId.NotBefore => $"{Early()} starts at {At}, {Found} min too early.",
            RuleId.Gaps => breach.Thing == "least"
                ? $"{Step} starts at {At}, {Found} min after {Other}; at least {Allowed} min must lie between."
                : $"{Step} starts at {At}, {Found} min after {Other}; at most {Allowed} min may lie between.",
            RuleId.FixedTimes => breach.Thing == "at"
                ? $"{Step} starts at {At}, {Off(Found)} its fixed start."
                : $"{Step}, starting at {At}, lies {Math.Abs(Found)} min outside its window.",
            RuleId.HostsChoice => breach.Thing == "option"
                ? $"{Step} is done by its option {Found}, but the host chose {Allowed}."
                : $"{Step} at {At} is not given to {Helper}, as the host asked.",
            RuleId.TableTime => Table(),
            RuleId.HoldLimits => Hold(),
            RuleId.WarmHold => Warm(),
            RuleId.OvenTemperature => $"{Oven} stands at {Found} °C at {At}, but {Tray} needs {Bound()} {Allowed} °C.",
            RuleId.OvenLimits => $"{Oven} stands at {Found} °C at {At} with {Tray} inside; it keeps {Bound()} {Allowed} °C.",
            RuleId.OvenRates => breach.Thing == "programme"
                ? Allowed == 0 ? $"There is a programme for {Oven}, which the kitchen does not have." : $"{Oven} has {Found} programmes."
                : $"{Oven} goes {Found} °C within {breach.Thing} min from {At}; it can do {Allowed} °C.",
            RuleId.Places => $"{Step} at {At} has the wrong {breach.Thing}, or one too many, or none.",
            RuleId.Shelves => $"{Oven} holds {Found} shelves' worth at {At}, with {Tray}; it has {Allowed}.",
            RuleId.Rings => $"{Found} rings are in use at {At}, with {Step}; there are {Allowed}.",
            RuleId.Grills => breach.Other is null && breach.Dish is null
                ? $"The grill {breach.Thing} does {Found} things at {At}, {Step} among them."
                : $"The grill {breach.Thing} is on for {Step} at {At} while {Other} is in the same oven.",
            RuleId.Appliances => $"{Found} of {breach.Thing} are in use at {At}, with {Step}; there are {Allowed}.",
            RuleId.OneJobEach => $"{Helper} is still at {Other} when {Step} begins at {At}.",
            RuleId.EnoughHands => breach.Thing == "helper"
                ? $"{Step} at {At} is given to {Helper}, whom the meal does not know."
                : $"{Step} at {At} has {Found} different helpers; it takes {Allowed}.",
            RuleId.Availability => $"{Helper} is not in the kitchen at {At}, in the middle of {Job()}.",
            RuleId.Nights => breach.Helper is null
                ? $"Nobody is up at {At}, in the night before the meal, but {Step} needs somebody nearby."
                : $"{Helper} is asleep at {At}, in the night before the meal, and should be at {Job()}.",
            RuleId.Skills => $"{Helper} cannot do {Step} at {At}: it needs {breach.Thing}.",
            RuleId.Children => $"{Helper} is a child, and {Job()} at {At} is not for children.",
            RuleId.Nearby => $"Nobody adult is in the kitchen at {At}, but {Step} needs somebody nearby.",
            RuleId.Tends => Tend(),
            _ => throw new UnreachableException($"no words for {breach.Rule}"),
        };

        string Early() => breach.Step is not null ? Step : breach.Oven is not null ? $"{Oven}'s programme" : "The plan";

        string Job() => breach.Thing is { } tend ? $"\"{tend}\" of {Step}" : Step;

        /// <summary>Which end of a range is broken.</summary>
        string Bound() => Found < Allowed ? "at least" : "at most";

        string Table() => breach.Thing switch
        {
            "course" when Allowed == 0 => $"{Course} is planned, but the meal has no such course.",
            "course" => $"{Course} is planned {Times(Found)}.",
            "early" => $"{Course} is served at {At}, {-Found} min before its promised time.",
            "promised" => $"{Course} was promised {Off(Found)} the time that the plan says.",
            "hold" => $"{Dish} waits until {At}, {Off(Found)} its course's table time.",
            _ => throw new UnreachableException($"no words for {breach}"),
        };

        string Hold() => breach.Thing switch
        {
            "hold" when breach.Allowed == 0 => $"{Dish} waits for the table, but the meal has no such dish.",
            "hold" => $"{Dish} waits in {Found} places before the table.",
            "place" => $"{Dish} waits from {At} in a way its file does not offer.",
            "least" => $"{Dish} waits {Found} min from {At}; it needs {Allowed} min of rest.",
            "limit" => $"{Dish} waits {Found} min from {At}; {Allowed} min is the most.",
            "from" => $"{Dish} waits from {At}, {Off(Found)} the end of its last step.",
            _ => throw new UnreachableException($"no words for {breach}"),
        };

        string Warm() => breach.Thing switch
        {
            "oven" => $"{Dish} is kept warm from {At} in an oven that the kitchen does not have.",
            "standFirst" when Found < 0 => $"{Dish} goes into the warm oven at {At}, {-Found} min before it is done.",
            "standFirst" => $"{Dish} stands out {Found} min before it goes into the warm oven at {At}; {Allowed} min is the most.",
            "to" => $"{Dish} leaves the warm oven at {At}, {Off(Found)} its course's table time.",
            _ => throw new UnreachableException($"no words for {breach}"),
        };

        string Tend()
        {
            if (breach.Thing is not { } text)
            {
                return $"A job at {At} is planned during {Step} that the step does not ask for.";
            }

            if (breach.Helper is not null)
            {
                return $"\"{text}\" of {Step} at {At} is given to {Helper}, whom the meal does not know.";
            }

            return (Found, Allowed) switch
            {
                (0, 1) => $"\"{text}\" of {Step}, due at {At}, is not planned.",
                _ => $"\"{text}\" of {Step} at {At} is out of place: {Found} min off or long where {Allowed} min is right, or not inside its step.",
            };
        }

        static string Times(int found) => found switch
        {
            0 => "not at all",
            _ => $"{found} times",
        };

        static string Off(int minutes) => minutes < 0 ? $"{-minutes} min before" : $"{minutes} min after";

        string NameOf(StepId? id) => id is not { } known ? "a step"
            : meal.Steps.FirstOrDefault(step => step.Id == known) is { } step ? $"\"{step.Text}\" ({known})"
            : $"\"{known}\"";
    }
}
