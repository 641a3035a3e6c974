using CookAlong.Domain.Doneness;
using CookAlong.Domain.Doneness.Rules;
using static CookAlong.Domain.Tests.Doneness.Roasts;

namespace CookAlong.Domain.Tests.Doneness;

/// <summary>Each against a row as it is printed; the source stands with the rule.</summary>
public sealed class RoastingRulesTests
{
    const double Pound = .45359237;

    static readonly (string Id, double Kilograms, double Least, double Most)[] Printed =
    [
        ("usda-turkey-8", 10 * Pound, 165, 180),
        ("usda-turkey-12", 13 * Pound, 180, 225),
        ("usda-turkey-14", 16 * Pound, 225, 255),
        ("usda-turkey-stuffed-8", 10 * Pound, 180, 210),
        ("usda-turkey-stuffed-18", 19 * Pound, 255, 285),
        ("usda-turkey-stuffed-20", 22 * Pound, 285, 315),
        ("usda-turkey-breast-4", 5 * Pound, 90, 135),
        ("usda-turkey-breast-6", 7 * Pound, 135, 195),
        ("usda-chicken-3", 3.5 * Pound, 75, 90),
        ("usda-chicken-5", 6 * Pound, 120, 135),
        ("usda-goose-8", 10 * Pound, 150, 180),
        ("usda-duck-4", 5 * Pound, 150, 175),
        ("usda-beef-rib", 5 * Pound, 140, 165),
        ("usda-beef-round", 3 * Pound, 90, 105),
        ("usda-beef-fillet", 5 * Pound, 45, 60),
        ("usda-lamb-leg-5", 6 * Pound, 120, 150),
        ("usda-lamb-leg-7", 8 * Pound, 80, 120),
        ("usda-lamb-rolled", 5 * Pound, 125, 150),
        ("usda-pork-loin", 4 * Pound, 80, 80),
        ("usda-pork-shoulder", 4 * Pound, 180, 180),
        ("usda-pork-fillet", 1 * Pound, 20, 27),
        ("usda-veal-rib", 4 * Pound, 100, 108),
        ("usda-veal-loin", 3 * Pound, 102, 108),
        ("usda-ham-raw", 6 * Pound, 132, 150),
        ("usda-ham-cooked-half", 6 * Pound, 108, 144),
        ("usda-ham-cooked-whole", 12 * Pound, 180, 216),
        // British Turkey Information Service, the rows of 4 to 11 kg; over 4 kg 20 minutes a kilogram and 90.
        ("uk-turkey", 4, 170, 170),
        ("uk-turkey", 5, 190, 190),
        ("uk-turkey", 8, 250, 250),
        ("uk-turkey", 11, 310, 310),
        ("uk-turkey-small", 3, 130, 130),
        ("uk-turkey-breast", 2, 100, 100),
        // From memory: older UK advice, 40 minutes a kilogram.
        ("uk-turkey-older", 5, 200, 200),
        ("ukma-turkey", 6.7, 268, 268),
        ("chang-turkey", 6, 221, 221),
        ("chang-turkey", 10, 265, 265),
        ("chang-turkey-stuffed", 8, 270.4, 270.4),
        ("uk-beef-rare-to-well", .9, 60, 90),
        ("uk-beef-rib-rare-to-well", .9 + .9, 100, 150),
        ("uk-lamb-leg", 1.8, 125, 150),
        ("uk-lamb-rolled", 1.8, 125, 150),
        ("uk-pork-loin", 1.8, 150, 175),
        ("uk-pork-shoulder", 1.8, 150, 175),
    ];

    [Fact]
    public void Each_rule_gives_the_time_it_prints() => Assert.All(Printed, row =>
    {
        var (least, most) = Rule(row.Id).For(row.Kilograms);
        Assert.Equal(row.Least, least.TotalMinutes, 0.5);
        Assert.Equal(row.Most, most.TotalMinutes, 0.5);
    });

    [Fact]
    public void Each_rule_has_a_source_and_a_printed_row() => Assert.All(RoastingRules.All, rule =>
    {
        Assert.Contains(Printed, row => row.Id == rule.Id);
        Assert.All(new[] { rule.Source.Publisher, rule.Source.Title, rule.Source.Place }, text => Assert.NotEmpty(text));
        Assert.Single(RoastingRules.All, other => other.Id == rule.Id);
    });

    [Fact]
    public void Five_published_rules_for_one_bird_stand_side_by_side_unaveraged()
    {
        var bird = SideBySide.Of(At(165, new Joint(Cut.WholeTurkey, 5)), 74);
        Assert.Equal(["uk-turkey", "uk-turkey-older", "ukma-turkey", "usda-turkey-8"], bird.Published.Select(time => time.Rule.Id).Order(StringComparer.Ordinal));
        Assert.Equal(TimeSpan.FromMinutes(165), bird.Published.Min(time => time.Least));
        Assert.Equal(TimeSpan.FromMinutes(200), bird.Published.Max(time => time.Most));
        Assert.IsType<CoreForecast.RangeOnly>(bird.Model);
    }

    [Fact]
    public void No_rule_is_shown_as_a_point()
    {
        Assert.All(
            from rule in RoastingRules.All from time in RuleTime.Of(new Joint(rule.Cut, (rule.LeastKilograms + rule.MostKilograms) / 2, rule.Stuffed ?? false)) select time,
            time => Assert.True(time.Least < time.Most && (time.Printed is not { } printed || (time.Least <= printed && printed <= time.Most)), time.Rule.Id));
        // Alone it has a tenth either side.
        var breast = Assert.Single(RuleTime.Of(new Joint(Cut.TurkeyBreast, 1.5)));
        Assert.Equal((72, 80, 88), (breast.Least.TotalMinutes, breast.Printed!.Value.TotalMinutes, breast.Most.TotalMinutes), (one, other) => Math.Abs(one.Item1 - other.Item1) + Math.Abs(one.Item2 - other.Item2) + Math.Abs(one.Item3 - other.Item3) < .01);
    }

    [Fact]
    public void A_regression_says_nothing_outside_the_weights_it_was_measured_on() =>
        Assert.DoesNotContain(RoastingRules.Covering(new Joint(Cut.WholeTurkey, 5.8)), rule => rule.Id == "chang-turkey");

    [Fact]
    public void A_stuffed_bird_is_not_timed_as_an_empty_one() =>
        Assert.DoesNotContain(RoastingRules.Covering(new Joint(Cut.WholeTurkey, 5, Stuffed: true)), rule => rule.Stuffed == false);

    [Theory]
    [InlineData("usda-turkey-12")]
    [InlineData("usda-chicken-5")]
    [InlineData("usda-beef-rib")]
    [InlineData("usda-pork-shoulder")]
    [InlineData("usda-ham-raw")]
    [InlineData("chang-turkey")]
    public void The_models_own_range_holds_what_is_printed(string id)
    {
        var rule = Rule(id);
        var joint = new Joint(rule.Cut, Math.Sqrt(rule.LeastKilograms * rule.MostKilograms));
        var (least, most) = rule.For(joint.Kilograms);
        var range = Assert.IsType<CoreForecast.RangeOnly>(SideBySide.Of(At(rule.OvenCelsius, joint), rule.CoreCelsius!.Value).Model);
        Assert.InRange(In + ((least + most) / 2), range.Earliest, range.Latest!.Value);
    }

    static RoastingRule Rule(string id) => Assert.Single(RoastingRules.All, rule => rule.Id == id);
}
