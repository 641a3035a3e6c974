using System.Collections.Immutable;
using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>How a step or an option is done; an option takes over from its step what it does not say.</summary>
internal static class WayReading
{
    public static Way Unsaid { get; } = new(Durations.Exactly(1), Attention.HandsOn, 1, Domain.Meals.Uses.Nothing);

    public static IReadOnlyDictionary<string, Attention> Attentions { get; } = new Dictionary<string, Attention>(StringComparer.Ordinal)
    {
        ["handsOn"] = Attention.HandsOn,
        ["nearby"] = Attention.Nearby,
        ["unattended"] = Attention.Unattended,
    };

    public static Way Way(Place way, MealIds ids, Way other) => new(
        Minutes(way) ?? other.Minutes,
        way.OneOf("attention", Attentions) ?? other.Attention,
        way.Whole("people", 1, 50, fallback: other.People),
        way.Has("uses") ? Uses(way, ids) : other.Uses);

    private static Durations? Minutes(Place way)
    {
        if (way.Member("minutes") is not { } minutes)
        {
            return null;
        }

        if (minutes.Value.ValueKind != JsonValueKind.Object)
        {
            return minutes.AsWhole(1, HoldReading.Longest) is { } exactly ? Durations.Exactly(exactly) : null;
        }

        var before = minutes.Findings.Count;
        var likely = minutes.Whole("likely", 1, HoldReading.Longest);
        var least = minutes.Whole("least", 1, HoldReading.Longest, fallback: likely);
        var most = minutes.Whole("most", 1, HoldReading.Longest, fallback: likely);
        if (minutes.Findings.Count > before)
        {
            return null;
        }

        if (!(least <= likely && likely <= most))
        {
            minutes.Note($"{least}, {likely} and {most} min are out of order.", "Let least <= likely <= most.");
            return null;
        }

        return new Durations(least, likely, most);
    }

    private static Uses Uses(Place way, MealIds ids)
    {
        OvenUse? oven = null;
        GrillUse? grill = null;
        var rings = 0;
        var appliances = ImmutableArray.CreateBuilder<ApplianceId>();
        foreach (var use in way.Objects("uses", 20))
        {
            if (!use.Has("oven") && !use.Has("rings") && !use.Has("grill") && !use.Has("appliance"))
            {
                use.Note("The entry names nothing that this format knows.", "Name an oven, rings, a grill or an appliance.");
            }

            if (use.Object("oven") is { } asked)
            {
                NoteSecond(asked, oven is not null, "oven");
                oven = Oven(asked, ids);
            }

            if (use.Member("grill") is { } grilled)
            {
                NoteSecond(grilled, grill is not null, "grill");
                grill = Grill(grilled, ids);
            }

            rings += use.Whole("rings", 1, 50, fallback: 0);
            if (use.Member("appliance") is { } appliance && appliance.AsText(Place.LongestId) is { } id)
            {
                appliances.Add(new(ids.Appliances.Refer(id, appliance)));
            }
        }

        return new Uses(oven, rings, grill, appliances.ToImmutable());
    }

    private static void NoteSecond(Place place, bool isSecond, string what)
    {
        if (isSecond)
        {
            place.Note($"The step already uses one {what}.", "Split it into two steps, one for each.");
        }
    }

    private static OvenUse Oven(Place oven, MealIds ids) => new(
        oven.Member("id") is { } at && at.AsText(Place.LongestId) is { } id ? new OvenId(ids.Ovens.Refer(id, at)) : null,
        oven.Whole("shelves", 1, 50, fallback: 1),
        KitchenReading.Celsius(oven));

    private static GrillUse? Grill(Place grill, MealIds ids)
    {
        if (grill.Value.ValueKind == JsonValueKind.True)
        {
            return new GrillUse(null);
        }

        if (grill.Value.ValueKind == JsonValueKind.String)
        {
            return grill.AsText(Place.LongestId) is { } id ? new GrillUse(new(ids.Grills.Refer(id, grill))) : null;
        }

        grill.Note($"\"grill\" must be a grill's id or true, not {grill.Shown}.", "Write true for any grill.");
        return null;
    }
}
