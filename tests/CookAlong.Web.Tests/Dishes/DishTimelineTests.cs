using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Dishes;

namespace CookAlong.Web.Tests.Dishes;

public sealed class DishTimelineTests
{
    static DishTimeline Of(string json) => DishTimeline.Of(DishFile.Read(json).Dish!);

    static string Only(string steps, string holds = "[]") => $$"""{ "id": "d", "name": "D", "holds": {{holds}}, "steps": {{steps}} }""";

    [Fact]
    public void Every_step_stands_as_late_as_what_waits_for_it_allows()
    {
        var line = Of(LeekTart.Json);

        Assert.Equal([(-55, -47), (-47, -35), (-41, -35), (-35, 0)], line.Steps.Select(one => (one.Start, one.End)));
        Assert.Equal(1, line.MostHands);
    }

    [Fact]
    public void A_rest_and_a_least_gap_are_kept_before_the_table()
    {
        var line = Of(Only("""[{ "id": "a", "text": "A", "minutes": 10 }, { "id": "b", "text": "B", "minutes": 5, "after": [{ "step": "a", "gap": { "least": 20 } }] }]""", """[{ "place": "covered", "least": 15, "limit": 30 }]"""));

        Assert.Equal([(-50, -40), (-20, -15)], line.Steps.Select(one => (one.Start, one.End)));
    }

    [Fact]
    public void A_night_in_the_fridge_leaves_room_for_the_minutes_that_count()
    {
        var line = Of(Only("""[{ "id": "a", "text": "A", "minutes": 10 }, { "id": "b", "text": "B", "minutes": 600, "attention": "unattended" }, { "id": "c", "text": "C", "minutes": 20 }]"""));

        Assert.Equal(0, line.Place(-630));
        Assert.Equal(1, line.Place(0));
        Assert.InRange(line.Place(-20), 0.5, 0.85);
    }
}
