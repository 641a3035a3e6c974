using System.Diagnostics;
using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

public sealed partial class MealDocument
{
    /// <summary>Makes a change that helps the meal, the same that <see cref="ChangedMeal"/> makes; all else in the file stays as it is.</summary>
    public void Apply(PlanChange change)
    {
        var meal = MealFile.Read(Text).Meal!;
        var changed = ChangedMeal.Of(meal, change);
        switch (change)
        {
            case PlanChange.ServeLater later:
                Serve(later.Course, changed.Courses.Single(course => course.Id == later.Course).TableTime);
                break;
            case PlanChange.StartEarlier:
                BeginFrom(changed.NotBefore);
                break;
            case PlanChange.AddOven:
                var second = Entries(Kitchen, "ovens").First().DeepClone().AsObject();
                (second["id"], second["name"]) = (changed.Kitchen.Ovens[^1].Id.Value, changed.Kitchen.Ovens[^1].Name);
                Kitchen["ovens"]!.AsArray().Add(second);
                break;
            case PlanChange.AddRings:
                Kitchen["rings"] = changed.Kitchen.Rings;
                break;
            case PlanChange.AddHelper:
                AddHelper(changed);
                break;
            case PlanChange.WaitLonger wait:
                WaitLonger(changed.Dishes.Single(dish => dish.Id == wait.Dish));
                break;
            case PlanChange.MakeAhead:
                BeginFrom(changed.NotBefore);
                foreach (var step in changed.Steps.Where(step => step.Window is not null))
                {
                    Step(step.Id)["window"] = new MealWriting(zone).Span(step.Window!.Value);
                }

                break;
            case PlanChange.LeaveOut dish:
                root["dishes"]!.AsArray().Remove(Entry("dishes", dish.Dish.Value));
                break;
            default:
                throw new UnreachableException($"no edit for {change}");
        }
    }

    private JsonObject Kitchen => root["kitchen"]!.AsObject();

    /// <param name="first">Nothing is done before; null = as late as a plan allows, and three days before the first table time at the earliest.</param>
    public void BeginFrom(Minute? first) => Set(root, "notBefore", first is { } at ? WallClock.Write(at, zone) : null);

    /// <summary>A file that names nobody has its host cook, who must not go when another comes.</summary>
    private void AddHelper(Meal changed)
    {
        if (Entries("helpers").Any())
        {
            root["helpers"]!.AsArray().Add(new MealWriting(zone).Helper(changed.Helpers[^1]));
        }
        else
        {
            root["helpers"] = JsonWords.List(changed.Helpers.Select(new MealWriting(zone).Helper));
        }
    }

    /// <summary>What a file leaves to its limit (good for, best within) stays what it was.</summary>
    private void WaitLonger(Dish changed)
    {
        var dish = Entry("dishes", changed.Id.Value);
        if (!Entries(dish, "holds").Any())
        {
            dish["holds"] = JsonWords.List(changed.Holds.Select(MealWriting.Hold));
            return;
        }

        foreach (var (written, hold) in Entries(dish, "holds").Zip(changed.Holds))
        {
            (written["bestWithin"], written["goodFor"], written["limit"]) = (hold.BestWithin, hold.GoodFor, hold.Limit);
        }
    }
}
