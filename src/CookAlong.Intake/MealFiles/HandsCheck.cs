using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>Work that nobody in this household may ever be given.</summary>
internal static class HandsCheck
{
    public static void Check(Place root, Meal meal, MealIds ids)
    {
        foreach (var step in meal.Steps)
        {
            var place = root with { Pointer = ids.PlaceOf(step) };
            if (step.Ways.All(one => Lack(step, one.Way, meal) is not null))
            {
                var (member, problem, remedy) = Lack(step, step.Ways.First().Way, meal)!.Value;
                place.Note(member, problem, remedy);
            }

            foreach (var (index, tend) in step.Tends.Index().Where(one => !meal.Helpers.Any(helper => helper.MayDo(step, one.Item))))
            {
                (place with { Pointer = $"{place.Pointer}/tend/{index}" }).Note(
                    "No helper may do this tend.",
                    "Let an adult have the step's skills, or mark the tend childSafe where it is.");
            }

            foreach (var helper in meal.Helpers.Where(one => step.By.Contains(one.Id) && !one.MayDo(step)))
            {
                place.Note(
                    "by",
                    helper.IsChild && !step.ChildSafe
                        ? $"The step is given to {Place.Short(helper.Name)}, a child, but is not childSafe."
                        : $"The step is given to {Place.Short(helper.Name)}, who lacks a skill it needs ({string.Join(", ", step.Needs)}).",
                    "Give it to somebody else.");
            }
        }
    }

    private static (string Member, string Problem, string Remedy)? Lack(Step step, Way way, Meal meal)
    {
        if (way.Attention == Attention.Nearby && meal.Helpers.All(helper => helper.IsChild))
        {
            return ("attention", "Somebody adult must be nearby, but all helpers are children.", "Add an adult to the helpers.");
        }

        if (way.Attention != Attention.HandsOn)
        {
            return null;
        }

        var skilled = meal.Helpers.Where(helper => helper.HasSkills(step.Needs)).ToList();
        var allowed = skilled.Where(helper => helper.MayDo(step)).ToList();
        var hereLongEnough = allowed.Where(helper => IsHereFor(helper, way.Minutes.Likely)).ToList();
        if (skilled.Count == 0)
        {
            return ("needs", $"No helper can do this: it needs {string.Join(" and ", step.Needs)}.", "Add the skill to a helper's \"can\", or take it out of \"needs\".");
        }

        if (allowed.Count == 0)
        {
            return ("childSafe", "No helper may do this: those who can are children, and it is not childSafe.", "Let an adult have its skills, or mark it childSafe where it is.");
        }

        if (allowed.Count < way.People)
        {
            return ("people", $"The step takes {way.People} people, but only {allowed.Count} may do it.", "Let it take fewer people, or add helpers.");
        }

        return hereLongEnough.Count < way.People
            ? ("minutes", $"Nobody who may do this is here for {way.Minutes.Likely} min in one go.", "Make the step shorter, or somebody's time longer.")
            : null;
    }

    private static bool IsHereFor(Helper helper, int minutes) =>
        helper.Available.IsEmpty || helper.Available.Any(window => window.To - window.From >= minutes);
}
