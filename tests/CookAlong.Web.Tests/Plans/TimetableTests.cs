using Bunit;
using CookAlong.Domain;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class TimetableTests : BunitContext
{
    IRenderedComponent<Timetable> Timetable(Action<StepId?>? touched = null) => Render<Timetable>(parameters => parameters
        .Add(page => page.Meal, AlderLane.Meal)
        .Add(page => page.Plan, AlderLane.Plan)
        .Add(page => page.ChosenChanged, step => touched?.Invoke(step)));

    [Fact]
    public void A_line_says_when_what_how_long_and_whose_job_it_is()
    {
        var line = Button(Timetable(), "Peel the potatoes");

        Assert.Equal("11:05 Peel the potatoes 28 min, Maren", Words(line));
    }

    [Fact]
    public void A_job_for_two_names_both()
    {
        var two = AlderLane.Plan.Step(new StepId("goose-carve")) with { Helpers = [new HelperId("maren"), new HelperId("ivo")] };
        var page = Render<Timetable>(parameters => parameters
            .Add(one => one.Meal, AlderLane.Meal)
            .Add(one => one.Plan, AlderLane.Plan with { Steps = [.. AlderLane.Plan.Steps.Select(step => step.Step == two.Step ? two : step)] }));

        Assert.EndsWith("Maren and Ivo", Words(Button(page, "Carve the goose")), StringComparison.Ordinal);
    }

    [Fact]
    public void Everything_is_there_in_order_of_time()
    {
        var lines = TimetableLines.Of(AlderLane.Meal, AlderLane.Plan);

        Assert.Equal(lines.Select(line => line.At).Order(), lines.Select(line => line.At));
        Assert.All(AlderLane.Plan.Steps, step => Assert.Single(lines, line => line.Kind == TimetableKind.Step && line.Step == step.Step));
        Assert.Equal(AlderLane.Plan.Tends.Length, lines.Count(line => line.Kind == TimetableKind.Tend));
    }

    [Fact]
    public void The_dial_the_pause_and_the_table_have_their_lines()
    {
        var words = TimetableLines.Of(AlderLane.Meal, AlderLane.Plan).Select(line => line.Words).ToList();

        Assert.Contains("Set the oven to 180 °C, fan 160", words);
        Assert.Contains("Turn the oven up to 200 °C, fan 180", words);
        Assert.Contains("Turn the oven down to 90 °C, fan 70", words);
        Assert.Contains("Turn the oven off", words);
        Assert.Contains("Pause here until everyone is ready", words);
        Assert.Contains("Pudding on the table", words);
    }

    [Theory]
    [InlineData("Oven")]
    [InlineData("The oven")]
    public void An_oven_s_name_reads_well_in_a_sentence(string name)
    {
        var kitchen = AlderLane.Meal.Kitchen with { Ovens = [AlderLane.Meal.Kitchen.Ovens[0] with { Name = name }] };

        Assert.Contains(TimetableLines.Of(AlderLane.Meal with { Kitchen = kitchen }, AlderLane.Plan), line => line.Words == "Turn the oven off");
    }

    [Fact]
    public void One_person_s_list_leaves_the_others_work_out_and_the_table_in()
    {
        var page = Timetable();

        page.Find("select").Change("tobi");

        var words = page.FindAll(".words").Select(line => line.TextContent).ToList();
        Assert.Contains("Roll the herb dumplings", words);
        Assert.Contains("Main course on the table", words);
        Assert.DoesNotContain("Peel the potatoes", words);
    }

    [Fact]
    public void Days_are_named_when_there_is_more_than_one()
    {
        Assert.Equal(["Friday 18 December", "Saturday 19 December"], Timetable().FindAll("h3").Select(day => day.TextContent));
    }

    [Fact]
    public void Touching_a_line_chooses_its_step()
    {
        StepId? touched = null;

        Button(Timetable(step => touched = step), "Carve the goose").Click();

        Assert.Equal(new StepId("goose-carve"), touched);
    }

    static AngleSharp.Dom.IElement Button(IRenderedComponent<Timetable> page, string words) =>
        page.FindAll("button").Single(button => button.TextContent.Contains(words, StringComparison.Ordinal));

    static string Words(AngleSharp.Dom.IElement element) =>
        string.Join(' ', element.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace(" ,", ",", StringComparison.Ordinal);
}
