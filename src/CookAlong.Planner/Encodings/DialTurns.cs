using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>
/// The price of changing an oven's temperature (<see cref="DialChanges"/>): minutes of change, in order, one of them in the gap
/// between any two stays that cannot share a temperature. That such stays lie far enough apart is <see cref="OvenTemperature"/>'s.
/// </summary>
internal sealed class DialTurns
{
    private readonly MealModel model;
    private readonly List<OvenStay> stays;
    private readonly IntVar[] at;
    private readonly BoolVar[] happens;

    /// <summary>Per stay and change: it starts after it; it ends before it.</summary>
    private readonly Dictionary<OvenStay, (ILiteral[] After, ILiteral[] Before)> sides = new(ReferenceEqualityComparer.Instance);

    /// <summary>More changes than are counted; null where there cannot be.</summary>
    private readonly ILiteral? isMany;

    private DialTurns(MealModel model, Oven oven, List<OvenStay> stays)
    {
        (this.model, this.stays) = (model, stays);
        var most = Math.Min(Prices.MostDialChanges, stays.Count - 1);
        isMany = stays.Count - 1 > most ? model.Cp.NewBoolVar("many dial changes") : null;
        at = [.. Enumerable.Range(0, most).Select(index => model.Cp.NewIntVar(0, model.End, $"dial change {index}"))];
        happens = [.. Enumerable.Range(0, most).Select(index => model.Cp.NewBoolVar($"dial changes {index}"))];
        for (var index = 0; index < most; index++)
        {
            if (index > 0)
            {
                model.Cp.Add(at[index - 1] <= at[index]);
                model.Cp.AddImplication(happens[index], happens[index - 1]);
            }

            if (isMany is not null)
            {
                model.Cp.AddImplication(isMany, happens[index]);
            }

            if (index < LeastOf(stays) - 1)
            {
                model.Cp.AddBoolOr([happens[index]]);
            }

            model.Charge(happens[index], model.Prices.DialChange, oven.Id);
        }
    }

    /// <summary>Null where the turns of this oven's dial have no price.</summary>
    public static DialTurns? Of(MealModel model, Oven oven, List<OvenStay> stays)
    {
        var apart = stays.Where(stay => stays.Any(other => !other.Celsius.Meets(stay.Celsius))).ToList();
        return model.So is null && !model.IsLatenessOnly && Prices.CountsDialChanges(model.Meal) && apart.Count > 0 ? new DialTurns(model, oven, apart) : null;
    }

    /// <summary>When <paramref name="when"/> is so, the one is over before the other begins, and they cannot share a temperature.</summary>
    public void Between(OvenStay first, OvenStay then, ILiteral when)
    {
        List<ILiteral> unless = [when.Not(), first.Here.Not(), then.Here.Not(), .. isMany is null ? (ILiteral[])[] : [isMany]];
        for (var index = 0; index <= at.Length; index++)
        {
            var clause = new List<ILiteral>(unless);
            if (index > 0)
            {
                clause.Add(Sides(first).Before[index - 1]);
            }

            if (index < at.Length)
            {
                clause.Add(Sides(then).After[index]);
            }

            model.Cp.AddBoolOr(clause);
        }
    }

    /// <summary>Where the changes lay in an earlier answer.</summary>
    public void Hint(Func<OvenStay, (int Start, int End)?> earlier)
    {
        var there = stays.Select(stay => (Stay: stay, Span: earlier(stay))).ToList();
        var changes = DialChanges.Of(there.Where(one => one.Span is not null).Select(one => (one.Span!.Value.Start, one.Span.Value.End, one.Stay.Celsius)));
        int At(int index) => index < changes.Count ? Math.Clamp(changes[index], 0, model.End) : model.End;
        for (var index = 0; index < at.Length; index++)
        {
            model.Cp.AddHint(at[index], At(index));
            model.Cp.AddHint(happens[index], index < changes.Count);
            foreach (var (stay, span) in there.Where(one => one.Span is not null && sides.ContainsKey(one.Stay)))
            {
                model.Cp.AddHint(sides[stay].After[index], index < changes.Count && span!.Value.Start >= At(index));
                model.Cp.AddHint(sides[stay].Before[index], span!.Value.End <= At(index));
            }
        }
    }

    private (ILiteral[] After, ILiteral[] Before) Sides(OvenStay stay)
    {
        if (sides.TryGetValue(stay, out var known))
        {
            return known;
        }

        ILiteral[] Literals(string name) => [.. at.Select((_, index) => (ILiteral)model.Cp.NewBoolVar($"{name} {index}"))];
        var (after, before) = (Literals("after dial change"), Literals("before dial change"));
        for (var index = 0; index < at.Length; index++)
        {
            model.Cp.Add(stay.Start >= at[index]).OnlyEnforceIf([after[index], stay.Here]);
            model.Cp.Add(stay.End <= at[index]).OnlyEnforceIf([before[index], stay.Here]);
            model.Cp.AddImplication(after[index], happens[index]);
            model.Cp.AddBoolOr([after[index].Not(), before[index].Not()]);
            if (index > 0)
            {
                model.Cp.AddImplication(after[index], after[index - 1]);
                model.Cp.AddImplication(before[index - 1], before[index]);
            }
        }

        return sides[stay] = (after, before);
    }

    /// <summary>As many temperatures as the stays that are in every plan need, in whatever order.</summary>
    private static int LeastOf(List<OvenStay> stays)
    {
        var (temperatures, last) = (0, int.MinValue);
        foreach (var range in stays.Where(stay => stay.Step is { } step && step.Ways.Count() == 1).Select(stay => stay.Celsius).OrderBy(range => range.Max))
        {
            if (range.Min > last)
            {
                (temperatures, last) = (temperatures + 1, range.Max);
            }
        }

        return temperatures;
    }
}
