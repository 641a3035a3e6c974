using Bunit;
using CookAlong.Domain;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class StepPanelTests : BunitContext
{
    IRenderedComponent<StepPanel> Panel(string step, Action<Action<MealDocument>>? wish = null, Action<StepId?>? go = null) => Render<StepPanel>(parameters => parameters
        .Add(panel => panel.Meal, AlderLane.Meal)
        .Add(panel => panel.Plan, AlderLane.Plan)
        .Add(panel => panel.Step, new StepId(step))
        .Add(panel => panel.Wish, change => wish?.Invoke(change))
        .Add(panel => panel.ChosenChanged, step => go?.Invoke(step)));

    [Fact]
    public void It_says_what_where_who_and_how_much_slack()
    {
        var panel = Panel("potatoes-roast");

        Assert.Equal("Roast the potatoes", panel.Find("h2").TextContent);
        Assert.Equal("Oven, 1 shelf, 190–210 °C", Answer(panel, "Where"));
        Assert.Equal("nobody's hands; a grown-up stays nearby", Answer(panel, "Who"));
        Assert.Equal("may slip 4 min before a table time does", Answer(panel, "Slack"));
        Assert.Equal("Baste and turn, after 20 min", Answer(panel, "Meanwhile"));
    }

    [Fact]
    public void It_says_what_holds_it_as_far_as_the_table()
    {
        // From 190 °C at the least to 100 at the most, 5 a minute: 18 minutes. A warm oven is of no use after the table.
        Assert.Equal(
            "Must be out of the oven by 14:42, because the oven takes 18 min to reach 80–100 °C, by 15:00, for what is kept warm because Main course is on the table at 15:00",
            Answer(Panel("nut-bake"), "Why then"));
    }

    [Fact]
    public void It_says_what_can_hurt()
    {
        Assert.Contains("Raw poultry", Panel("goose-ready").Find(".caution").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void It_leads_to_what_it_waits_for_and_to_what_waits_for_it()
    {
        StepId? went = null;
        var panel = Panel("potatoes-boil", go: step => went = step);

        Assert.Equal("11:05 Peel the potatoes", Answer(panel, "Waits for"));
        panel.FindAll("dd button").Single(button => button.TextContent.Contains("Rough up", StringComparison.Ordinal)).Click();

        Assert.Equal(new StepId("potatoes-rough"), went);
    }

    [Fact]
    public void The_last_step_of_a_dish_keeps_the_table_waiting()
    {
        Assert.Equal("the table, as part of roast goose", Answer(Panel("goose-carve"), "Waiting for it"));
    }

    [Fact]
    public void Only_those_who_may_do_it_can_be_given_it()
    {
        var names = Panel("goose-carve").FindAll(".person").Select(button => button.TextContent.Trim());

        Assert.Equal(["Maren", "Ivo"], names);
    }

    [Fact]
    public void Every_other_way_is_offered_in_words()
    {
        var ways = Panel("potatoes-peel").FindAll("option").Select(option => option.TextContent);

        Assert.Equal(["the plan picks", "as written: 28 min, one person", "12 min, 2 people"], ways);
    }

    [Fact]
    public void A_wish_is_handed_on_to_be_kept()
    {
        var wishes = 0;
        var panel = Panel("potatoes-peel", wish: _ => wishes++);

        panel.FindAll("button").Single(button => button.TextContent == "Keep it at 11:05").Click();
        panel.FindAll(".person")[1].Click();
        panel.Find("select").Change("0");

        Assert.Equal(3, wishes);
    }

    [Fact]
    public void A_step_is_fixed_to_any_time_of_the_kitchens_clock()
    {
        var document = MealDocument.Of(MealFile.Write(AlderLane.Meal));
        var panel = Panel("potatoes-peel", wish: wish => wish(document));
        var day = LocalTime.Show(AlderLane.Meal.FirstTableTime, AlderLane.Meal.TimeZone).Date.AddDays(-1);

        panel.Find("input").Change($"{day:yyyy-MM-dd}T23:40");

        Assert.Equal(LocalTime.Resolve(day.AddHours(23).AddMinutes(40), AlderLane.Meal.TimeZone), MealFile.Read(document.Text).Meal!.Step(new("potatoes-peel")).At);
    }

    [Fact]
    public void What_is_no_time_is_told_and_changes_nothing()
    {
        var wishes = 0;
        var panel = Panel("potatoes-peel", wish: _ => wishes++);

        panel.Find("input").Change("");

        Assert.StartsWith("That is not a day and a time", panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal(0, wishes);
    }

    [Fact]
    public void While_a_plan_is_made_nothing_can_be_wished_for()
    {
        var panel = Render<StepPanel>(parameters => parameters
            .Add(one => one.Meal, AlderLane.Meal).Add(one => one.Plan, AlderLane.Plan).Add(one => one.Step, new StepId("potatoes-peel")).Add(one => one.CanChange, false));

        Assert.True(panel.Find("fieldset").HasAttribute("disabled"));
    }

    static string Answer(IRenderedComponent<StepPanel> panel, string question)
    {
        var answer = panel.FindAll("dt").Single(term => term.TextContent == question).NextElementSibling!;
        return string.Join(' ', answer.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
