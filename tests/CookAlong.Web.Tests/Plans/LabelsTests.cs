using CookAlong.Domain;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class LabelsTests
{
    static readonly TimeScale Scale = TimeScale.Of([(new Minute(0), new Minute(300))], width: 900, margin: 0);

    static Bar Job(int from, int to, string label, string brief = "Brief", int row = 0) =>
        new(BarKind.Step, new StepId(label), label, brief, new Minute(from), new Minute(to), row);

    [Fact]
    public void Words_that_fit_stand_inside_their_bar()
    {
        var placed = Assert.Single(Labels.InPlace([Job(0, 120, "Roast the goose")], Scale, 14));

        Assert.Equal((LabelPlace.Inside, "Roast the goose"), (placed.Place, placed.Words));
    }

    [Fact]
    public void Words_too_long_for_a_short_bar_stand_beside_it()
    {
        var placed = Assert.Single(Labels.InPlace([Job(0, 10, "Whisk the gravy")], Scale, 14));

        Assert.Equal((LabelPlace.Beside, "Whisk the gravy"), (placed.Place, placed.Words));
    }

    [Fact]
    public void Between_close_neighbours_the_brief_words_are_taken_or_none()
    {
        var placed = Labels.InPlace([Job(0, 10, "Whisk the gravy", "Gravy"), Job(30, 40, "Warm the plates", "Plates"), Job(42, 52, "Boil")], Scale, 14);

        Assert.Equal([("Gravy", LabelPlace.Beside), (null, LabelPlace.None), ("Boil", LabelPlace.Beside)], placed.Select(one => (one.Words, one.Place)));
    }

    [Fact]
    public void A_person_s_jobs_go_down_a_stair_so_that_each_can_say_what_it_is()
    {
        var placed = Labels.Stair([Job(0, 10, "Whisk the gravy"), Job(12, 20, "Warm the plates"), Job(22, 30, "Drain the sprouts")], Scale, 14, rows: 3);

        Assert.Equal([0, 1, 2], placed.Select(one => one.Row));
        Assert.All(placed, one => Assert.Equal(LabelPlace.Beside, one.Place));
    }

    [Fact]
    public void No_words_reach_past_the_end_of_the_picture()
    {
        var placed = Assert.Single(Labels.Stair([Job(290, 300, "Carry everything to the table", "Everything")], Scale, 14, rows: 3));

        Assert.Equal(LabelPlace.None, placed.Place);
    }
}
