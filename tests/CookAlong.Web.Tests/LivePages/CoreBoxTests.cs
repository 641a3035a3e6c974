using Bunit;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Parts;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;

namespace CookAlong.Web.Tests.LivePages;

public sealed class CoreBoxTests : BunitContext
{
    static readonly RestWord rest = new(new(75, 77, 79), TimeSpan.FromMinutes(12), new(TimeSpan.FromMinutes(40), TimeSpan.FromMinutes(55), TimeSpan.FromMinutes(70)), 63, null);

    static readonly CoreWord expected = new(CoreVerdict.Expected, At(13, 40), At(13, 46), At(13, 53)) { Rest = rest };

    static CardCore Core(params (int Minute, decimal Celsius, CoreWord Word)[] readings) =>
        new(RoastGoose.Id, new CoreWanted(74, new Joint(Cut.WholeGoose, 5)), [.. readings.Select(one => new CoreReading(At(13, one.Minute), one.Celsius, one.Word))], null, 30);

    IRenderedComponent<CoreBox> Show(CardCore core) => Render<CoreBox>(parts => parts.Add(part => part.View, View(Busy)).Add(part => part.Core, core));

    [Fact]
    public void The_chart_has_what_was_read_what_is_wanted_the_range_and_the_rise_that_follows()
    {
        var box = Show(Core((0, 40, new CoreWord(CoreVerdict.NoForecast)), (15, 55, expected)));
        Assert.Equal(2, box.Find(".core-chart .read").GetAttribute("points")!.Split(' ').Length);
        Assert.NotNull(box.Find(".core-chart .wanted"));
        Assert.NotNull(box.Find(".core-chart .span"));
        Assert.NotNull(box.Find(".core-chart .likely"));
        Assert.NotNull(box.Find(".core-chart .rests"));
        Assert.Contains("Under foil, in a kitchen of 22 °C", box.Find(".core-rest").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_that_is_not_believed_is_crossed_out_and_leads_nowhere()
    {
        var box = Show(Core((0, 40, new CoreWord(CoreVerdict.NoForecast)), (15, 155, new CoreWord(CoreVerdict.Impossible, Celsius: 68))));
        Assert.Single(box.FindAll(".core-chart .no-dot"));
        Assert.Empty(box.FindAll(".core-chart .span, .core-chart .likely, .core-chart .rests"));
        Assert.Contains("were it °F", box.Find(".core-word").TextContent, StringComparison.Ordinal);
    }

    /// <summary>A card that calls leaves to the picture of its tray what does not decide; where there is no picture nothing may be left to it.</summary>
    [Fact]
    public void What_has_a_picture_on_the_tablet_says_so()
    {
        Assert.Single(Show(Core()).FindAll(".core.pictured"));
        Assert.Empty(Show(Core() with { Step = Rough.Id }).FindAll(".core.pictured"));
    }

    [Fact]
    public void The_chart_begins_a_little_below_the_coldest_that_is_believed()
    {
        double Height(decimal first) => double.Parse(
            Show(Core((0, first, new CoreWord(CoreVerdict.NoForecast)), (15, 60, expected))).Find(".core-chart .read").GetAttribute("points")!.Split(' ')[0].Split(',')[1],
            System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(Height(45), 80, 96);
        Assert.InRange(Height(5), 80, 96);
    }

    [Fact]
    public void Foil_is_said_to_lie_over_it_and_to_be_off_again()
    {
        Assert.Contains("\"isOn\":true", Show(Core()).Find(".core-foil button").GetAttribute("data-tap"), StringComparison.Ordinal);
        var under = Show(Core() with { Foil = new FoilSpan(At(13, 5), null) });
        Assert.Contains("Under foil since 13:05", under.Find(".core-foil").TextContent, StringComparison.Ordinal);
        Assert.Contains("\"isOn\":false", under.Find(".core-foil button").GetAttribute("data-tap"), StringComparison.Ordinal);
    }
}
