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

        Assert.Equal((LabelPlace.Inside, "Roast the goose"), (placed.Place, Words(placed)));
    }

    [Fact]
    public void Words_too_long_for_a_short_bar_stand_beside_it()
    {
        var placed = Assert.Single(Labels.InPlace([Job(0, 10, "Whisk the gravy")], Scale, 14));

        Assert.Equal((LabelPlace.After, "Whisk the gravy"), (placed.Place, Words(placed)));
    }

    [Fact]
    public void Between_close_neighbours_the_brief_words_are_taken_or_none()
    {
        var placed = Labels.InPlace([Job(0, 10, "Whisk the gravy", "Gravy"), Job(30, 40, "Warm the plates", "Plates"), Job(42, 52, "Boil")], Scale, 14);

        Assert.Equal([("Gravy", LabelPlace.After), ("", LabelPlace.None), ("Boil", LabelPlace.After)], placed.Select(one => (Words(one), one.Place)));
    }

    [Fact]
    public void A_person_s_short_jobs_say_below_their_strip_what_they_are()
    {
        var placed = Labels.Below([Job(0, 10, "Whisk the gravy"), Job(12, 20, "Drain the sprouts")], Scale, 14, rows: 3);

        Assert.Equal(["Whisk the gravy", "Drain the sprouts"], placed.Select(Words));
        Assert.Equal([0, 1], placed.Select(one => one.WordsRow));
    }

    [Fact]
    public void Where_there_is_no_room_the_longer_job_keeps_its_words()
    {
        var placed = Labels.Below([Job(50, 51, "Stir", "Stir"), Job(51, 70, "Peel all the potatoes", "Peel all the potatoes"), Job(70, 71, "Stir again", "Stir again")], Scale, 14, rows: 1);

        Assert.Equal("Peel all the potatoes", Words(placed[1]));
        Assert.Equal(LabelPlace.None, placed[2].Place);
    }

    [Fact]
    public void At_the_end_of_the_picture_words_run_backward_from_their_bar()
    {
        var placed = Assert.Single(Labels.Below([Job(290, 300, "Carry it in")], Scale, 14, rows: 3));

        Assert.Equal((LabelPlace.BelowBackward, "Carry it in"), (placed.Place, Words(placed)));
    }

    [Fact]
    public void Words_do_not_run_into_a_folded_night()
    {
        var scale = TimeScale.Of([(new Minute(0), new Minute(60)), (new Minute(1200), new Minute(1260))], width: 400, margin: 0);

        var placed = Labels.InPlace([Job(40, 60, "Braise the cabbage", "Cabbage")], scale, 14);

        Assert.Equal(("Cabbage", LabelPlace.Before), (Words(placed[0]), placed[0].Place));
    }

    [Fact]
    public void A_tray_may_say_it_on_two_lines()
    {
        var placed = Assert.Single(Labels.InPlace([Job(0, 30, "Roast potatoes")], Scale, 14, lines: 2));

        Assert.Equal(["Roast", "potatoes"], placed.Lines);
    }

    static string Words(PlacedBar placed) => string.Join(' ', placed.Lines);
}
