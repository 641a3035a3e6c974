using CookAlong.Domain.Kitchens;
using static CookAlong.Domain.Planning.Checks.PlanInQuestion;

namespace CookAlong.Domain.Planning.Checks;

/// <summary>What is inside an oven, against the temperature read off its programme.</summary>
static class OvenChecks
{
    public static IEnumerable<Breach> OvenTemperature(PlanInQuestion question) =>
        from oven in question.Meal.Kitchen.Ovens
        let curve = new OvenCurve(oven, question.Plan)
        from inside in question.Insides
        where inside.Oven == oven.Id
        from breach in Outside(RuleId.OvenTemperature, curve, inside, inside.Celsius.Min, inside.Celsius.Max)
        select breach;

    public static IEnumerable<Breach> OvenLimits(PlanInQuestion question) =>
        from oven in question.Meal.Kitchen.Ovens
        let curve = new OvenCurve(oven, question.Plan)
        from inside in question.Insides
        where inside.Oven == oven.Id
        from breach in Outside(RuleId.OvenLimits, curve, inside, oven.Min, oven.Max)
        select breach;

    /// <summary>The first minute, both ends included, at which the oven is too cold or too hot for what is inside; none when it never is.</summary>
    static IEnumerable<Breach> Outside(RuleId rule, OvenCurve curve, Inside inside, int min, int max)
    {
        for (var minute = inside.Start; minute <= inside.End; minute += 1)
        {
            var celsius = curve.At(minute);
            if (celsius < min || celsius > max)
            {
                // Rounded away from the range, so that the words never say that 180 is below 180.
                var found = (int)(celsius < min ? Math.Floor(celsius) : Math.Ceiling(celsius));
                yield return new(rule, Step: inside.Step, Dish: inside.Dish, Oven: inside.Oven, At: minute, Found: found, Allowed: celsius < min ? min : max);
                yield break;
            }
        }
    }

    public static IEnumerable<Breach> OvenRates(PlanInQuestion question)
    {
        var programmes = Given(question.Plan.Ovens).CountBy(programme => programme.Oven);
        foreach (var (id, found) in programmes.Where(one => one.Value > 1 || question.Oven(one.Key) is null))
        {
            yield return new(RuleId.OvenRates, Oven: id, Thing: "programme", Found: found, Allowed: question.Oven(id) is null ? 0 : 1);
        }

        foreach (var oven in question.Meal.Kitchen.Ovens)
        {
            foreach (var (from, to) in new OvenCurve(oven, question.Plan).Stretches)
            {
                var minutes = to.At - from.At;
                var most = (to.Celsius > from.Celsius ? oven.HeatUpPerMinute : oven.CoolDownPerMinute) * Math.Max(0, minutes);
                var change = to.Celsius - from.Celsius;
                if (minutes < 0 || Math.Abs(change) > most)
                {
                    yield return new(RuleId.OvenRates, Oven: oven.Id, Thing: $"{minutes}", At: from.At, Found: change, Allowed: (int)Math.Floor(most) * Math.Sign(change));
                }
            }
        }
    }
}
