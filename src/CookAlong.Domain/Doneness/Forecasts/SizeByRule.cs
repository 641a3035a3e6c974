using CookAlong.Domain.Doneness.Rules;

namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>
/// How large a joint is to heat, before a thermometer says: as large as makes the model's likely joint take the middle of the time
/// printed for its cut, at the middle of the rule's weights; and from there by the cube root of the weight.
/// </summary>
static class SizeByRule
{
    /// <summary>Of the logarithm of the size inside a rule's weights; time goes by its square, nearly. Own estimate.</summary>
    const double Spread = .11;

    public static SizePrior Of(Joint joint)
    {
        var rule = RoastingRules.Nearest(joint);
        var middle = Math.Sqrt(rule.LeastKilograms * rule.MostKilograms);
        var (least, most) = rule.For(middle);
        var reach = ReachTaking((least + most).TotalMinutes / 2, rule, joint with { Kilograms = middle, StartCelsius = null });
        // The farther from what was printed, the less it says: a joint of twice the weight is wider by a third again.
        var spread = Spread * (1 + (.5 * Math.Log2(RoastingRules.Outside(rule, joint.Kilograms))));
        return new SizePrior(reach * Math.Cbrt(joint.Kilograms / middle), spread);
    }

    static double ReachTaking(double minutes, RoastingRule rule, Joint joint)
    {
        var (least, most) = (.005, .4);
        var air = new OvenAir(Roasting.At(joint, default, rule.OvenCelsius), TimeSpan.FromMinutes(minutes / 60));
        var usual = new double[Unknowns.Count];
        for (var halving = 0; halving < 12; halving++)
        {
            var reach = Math.Sqrt(least * most);
            var cooking = new Cooking(Unknowns.Of(usual, joint, new SizePrior(reach, 0)), air);
            (least, most) = cooking.Reaches(rule.CoreCelsius!.Value, minutes) is null ? (least, reach) : (reach, most);
        }

        return Math.Sqrt(least * most);
    }
}
