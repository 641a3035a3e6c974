using CookAlong.Domain.Kitchens;
using static CookAlong.Domain.Planning.Checks.PlanInQuestion;

namespace CookAlong.Domain.Planning.Checks;

/// <summary>Ovens, rings, grills and appliances: the right ones, and never more than there are.</summary>
static class PlaceChecks
{
    public static IEnumerable<Breach> Places(PlanInQuestion question)
    {
        foreach (var (planned, step, way) in question.Works)
        {
            var uses = way.Uses;
            var ovenFits = uses.Oven is null ? planned.Oven is null : question.Oven(planned.Oven) is { } oven && (uses.Oven.Oven ?? oven.Id) == oven.Id;
            if (!ovenFits)
            {
                yield return new(RuleId.Places, Step: step.Id, Oven: planned.Oven, Thing: "oven", At: planned.Start);
            }

            var grill = question.Meal.Kitchen.Grills.FirstOrDefault(one => one.Id == planned.Grill);
            var grillFits = uses.Grill is null ? planned.Grill is null : grill is not null && (uses.Grill.Grill ?? grill.Id) == grill.Id;
            if (!grillFits)
            {
                yield return new(RuleId.Places, Step: step.Id, Thing: "grill", At: planned.Start);
            }

            var has = Given(planned.Appliances).Select(one => one.Value).Order(StringComparer.Ordinal);
            var takes = uses.Appliances.Select(one => one.Value).Order(StringComparer.Ordinal);
            if (!has.SequenceEqual(takes))
            {
                yield return new(RuleId.Places, Step: step.Id, Thing: "appliance", At: planned.Start);
            }
        }
    }

    public static IEnumerable<Breach> Shelves(PlanInQuestion question) =>
        from oven in question.Meal.Kitchen.Ovens
        let takings = question.Insides.Where(inside => inside.Oven == oven.Id)
            .Select(inside => new Taking(inside.Start, inside.End, inside.Shelves, inside.Step, inside.Dish))
        from over in Crowd.Over(takings, oven.Shelves)
        select new Breach(RuleId.Shelves, Step: over.Last.Step, Dish: over.Last.Dish, Oven: oven.Id, At: over.At, Found: over.Found, Allowed: oven.Shelves);

    public static IEnumerable<Breach> Rings(PlanInQuestion question) =>
        from over in Crowd.Over(question.Works.Select(work => Taken(work, work.Way.Uses.Rings)), question.Meal.Kitchen.Rings)
        select new Breach(RuleId.Rings, Step: over.Last.Step, At: over.At, Found: over.Found, Allowed: question.Meal.Kitchen.Rings);

    public static IEnumerable<Breach> Appliances(PlanInQuestion question) =>
        from kind in question.Works.SelectMany(work => Given(work.Planned.Appliances)).Distinct()
        let count = question.Meal.Kitchen.Appliances.FirstOrDefault(one => one.Id == kind)?.Count ?? 0
        let takings = question.Works.Select(work => Taken(work, Given(work.Planned.Appliances).Count(one => one == kind)))
        from over in Crowd.Over(takings.Where(taking => taking.Amount > 0), count)
        select new Breach(RuleId.Appliances, Step: over.Last.Step, Thing: kind.Value, At: over.At, Found: over.Found, Allowed: count);

    public static IEnumerable<Breach> Grills(PlanInQuestion question)
    {
        foreach (var grill in question.Meal.Kitchen.Grills)
        {
            var works = question.Works.Where(work => work.Way.Uses.Grill is not null && work.Planned.Grill == grill.Id).ToArray();
            foreach (var over in Crowd.Over(works.Select(work => Taken(work, 1)), capacity: 1))
            {
                yield return new(RuleId.Grills, Step: over.Last.Step, Thing: grill.Id.Value, At: over.At, Found: over.Found, Allowed: 1);
            }

            // A dish that would go in to be kept warm just as it is served has never been in.
            var clashes =
                from inside in question.Insides
                where inside.Oven == grill.InsideOven && inside.Start < inside.End
                from work in works
                where inside.Start < work.Planned.End && work.Planned.Start < inside.End
                select new Breach(RuleId.Grills, Step: work.Step.Id, Other: inside.Step, Dish: inside.Dish, Oven: inside.Oven,
                    Thing: grill.Id.Value, At: Minute.Later(inside.Start, work.Planned.Start));
            foreach (var clash in clashes)
            {
                yield return clash;
            }
        }
    }

    static Taking Taken(Work work, int amount) => new(work.Planned.Start, work.Planned.End, amount, work.Step.Id, null);
}
