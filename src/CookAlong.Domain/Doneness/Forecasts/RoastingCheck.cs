namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>Tells a joint and an oven that can be reckoned with from one that cannot.</summary>
static class RoastingCheck
{
    /// <summary>°C of the hottest room a joint is left to stand in.</summary>
    const double WarmestStart = 40;

    const double HottestOven = 300;

    public static CoreRefusal? Of(Roasting roasting)
    {
        var joint = roasting.Joint;
        if (!(joint.Kilograms is >= Joint.LeastKilograms and <= Joint.MostKilograms))
        {
            return new CoreRefusal.WeightOutOfRange(joint.Kilograms, Joint.LeastKilograms, Joint.MostKilograms);
        }

        if (joint.StartCelsius is { } start && !(start is >= Joint.FrozenBelow and <= WarmestStart))
        {
            return start < Joint.FrozenBelow ? new CoreRefusal.Frozen(start) : new CoreRefusal.StartOutOfRange(start);
        }

        if (roasting.Air.IsDefaultOrEmpty || roasting.Air.Zip(roasting.Air.Skip(1)).Any(pair => pair.First.At >= pair.Second.At))
        {
            return new CoreRefusal.OvenOutOfOrder();
        }

        foreach (var point in roasting.Air)
        {
            if (!(point.Celsius is >= 0 and <= HottestOven))
            {
                return new CoreRefusal.OvenOutOfRange(point.Celsius);
            }
        }

        return null;
    }
}
