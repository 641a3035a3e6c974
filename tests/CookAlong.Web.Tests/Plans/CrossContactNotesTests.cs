using Bunit;
using CookAlong.Domain.Guests;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class CrossContactNotesTests : BunitContext
{
    [Fact]
    public void Dishes_that_meet_in_the_oven_are_told_with_their_guest_and_what_to_do()
    {
        // The dumplings and the potatoes bake while the nut roast does; nobody knows what is in them, so their guests may eat of them.
        var notes = Render<CrossContactNotes>(parameters => parameters.Add(part => part.Meal, AlderLane.Meal).Add(part => part.Plan, AlderLane.Plan));

        var told = notes.FindAll("li").Select(line => line.TextContent).ToList();
        Assert.Contains("Herb dumplings, for Ivo and Tobi, is in the oven beside Nut roast (nuts, milk).", told);
        Assert.Contains("For an allergy, medical advice decides.", notes.Markup, StringComparison.Ordinal);
        Assert.Contains("tin and a cloth of its own", notes.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_change_of_the_meal_or_of_the_plan_is_told()
    {
        var careless = AlderLane.Meal with { Guests = [new("Maren", 1, [], [])] };
        var notes = Render<CrossContactNotes>(parameters => parameters.Add(part => part.Meal, careless).Add(part => part.Plan, AlderLane.Plan));

        notes.Render(parameters => parameters.Add(part => part.Meal, AlderLane.Meal));
        Assert.NotEmpty(notes.FindAll("li"));

        notes.Render(parameters => parameters.Add(part => part.Plan, AlderLane.Plan with { Steps = [], Holds = [] }));
        Assert.DoesNotContain("in the oven beside", notes.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void What_only_a_label_knows_is_told_as_perhaps()
    {
        var (roast, mash) = (AlderLane.Meal.Dishes[0] with { Name = "Nut roast" }, AlderLane.Meal.Dishes[1] with { Name = "Mash" });
        Assert.Equal(
            "Mash, for Ivo, is in the oven beside Nut roast (perhaps almonds).",
            GuestWords.Of(new CrossContact(MeetingPlace.Oven, roast, mash, [new("Ivo", 1, [], ["almonds"])], ["almonds"], IsCertain: false)));
    }

    [Fact]
    public void Where_nobody_avoids_anything_nothing_is_said()
    {
        var meal = AlderLane.Meal with { Guests = [new("Maren", 1, [], [])] };

        Assert.Equal("", Render<CrossContactNotes>(parameters => parameters.Add(part => part.Meal, meal).Add(part => part.Plan, AlderLane.Plan)).Markup.Trim());
    }
}
