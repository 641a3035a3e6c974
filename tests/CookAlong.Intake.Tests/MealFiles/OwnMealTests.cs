using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;

namespace CookAlong.Intake.Tests.MealFiles;

/// <summary>A meal made and changed without a file in hand.</summary>
public sealed class OwnMealTests
{
    const string Soup = """{ "id": "soup", "name": "Leek soup", "serves": 4, "steps": [{ "id": "boil", "text": "Boil the leeks", "minutes": 30, "attention": "nearby", "uses": [{ "rings": 1 }] }, { "id": "blend", "text": "Blend it", "minutes": 5, "uses": [{ "appliance": "blender" }], "needs": ["hot"] }] }""";

    static MealDocument Fresh(Meal? like = null) =>
        MealDocument.New("Sunday", TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo"), new DateTime(2027, 2, 7, 13, 0, 0), like, DishDocument.Of(Soup), "dish-1");

    static Meal Read(MealDocument document)
    {
        var read = MealFile.Read(document.Text);
        Assert.Empty(read.Errors);
        return read.Meal!;
    }

    [Fact]
    public void A_new_meal_has_a_kitchen_a_cook_and_what_its_first_dish_needs()
    {
        var meal = Read(Fresh());
        Assert.Equal(("Sunday", "Leek soup", 4), (meal.Name, Assert.Single(meal.Dishes).Name, meal.Kitchen.Rings));
        Assert.Equal(new DateTimeOffset(2027, 2, 7, 12, 0, 0, TimeSpan.Zero), meal.FirstTableTime.Utc);
        Assert.Equal("blender", Assert.Single(meal.Kitchen.Appliances).Id.Value);
        Assert.False(Assert.Single(meal.Helpers).IsChild);
    }

    [Fact]
    public void One_like_another_has_its_kitchen_people_and_guests_but_not_its_hours()
    {
        var other = Fresh();
        other.PutRings(6);
        other.PutGuest(0, new Guest("Noor", 0.5m, ["vegetarian"], ["nuts"]));
        var day = Read(other).FirstTableTime;
        other.Put(new Helper(new("ivo"), "Ivo", [new Window(day - 120, day)], ["knife"], IsChild: true));
        var meal = Read(Fresh(Read(other)));
        Assert.Equal(6, meal.Kitchen.Rings);
        Assert.Equal(["nuts"], Assert.Single(meal.Guests).Avoids);
        var ivo = Assert.Single(meal.Helpers, helper => helper.Name == "Ivo");
        Assert.True(ivo is { IsChild: true, Available.IsEmpty: true } && ivo.Can!.SetEquals(["knife"]));
    }

    [Fact]
    public void Each_part_of_the_kitchen_is_put_changed_and_taken_away()
    {
        var document = Fresh();
        document.Change(new OvenId("oven"), oven => oven with { Name = "Old oven", Shelves = 2 });
        document.Change(new OvenId("oven"), oven => oven with { HeatUpPerMinute = 8 });
        document.Put(new Oven(new("small"), "Small oven", 1, false, 60, 230, 20, 10, 20));
        document.Put(new Grill(new("grill"), new("small")));
        document.Put(new Appliance(new("fridge"), 2));
        var kitchen = Read(document).Kitchen;
        Assert.Equal(["Old oven", "Small oven"], kitchen.Ovens.Select(oven => oven.Name));
        Assert.Equal((2, 8m, "small", 2), (kitchen.Ovens[0].Shelves, kitchen.Ovens[0].HeatUpPerMinute, kitchen.Grills[0].InsideOven!.Value.Value, kitchen.Appliances.Single(one => one.Id.Value == "fridge").Count));
        document.Remove(new OvenId("small"));
        document.Remove(new ApplianceId("fridge"));
        kitchen = Read(document).Kitchen;
        Assert.Equal((1, 0, 1), (kitchen.Ovens.Length, kitchen.Grills.Length, kitchen.Appliances.Length));
    }

    [Fact]
    public void The_waking_hours_are_the_usual_ones_until_they_are_set_and_go_with_the_kitchen()
    {
        var document = Fresh();
        Assert.Equal(new WakingHours(new(7, 0), new(22, 0)), Read(document).Kitchen.Awake);
        document.Change(hours => hours with { Bed = new(0, 30) });
        Assert.Equal(new WakingHours(new(7, 0), new(0, 30)), Read(Fresh(Read(document))).Kitchen.Awake);
    }

    [Fact]
    public void What_a_dish_cannot_do_without_is_not_taken_away_in_silence()
    {
        var document = Fresh();
        document.Remove(new ApplianceId("blender"));
        Assert.NotEmpty(MealFile.Read(document.Text).Errors);
    }

    [Fact]
    public void Who_goes_leaves_their_steps_to_the_planner()
    {
        var document = Fresh();
        document.Put(new Helper(new("ivo"), "Ivo", [], null, IsChild: false));
        document.Give(Read(document).Steps.First().Id, [new HelperId("ivo")]);
        document.Remove(new HelperId("ivo"));
        var meal = Read(document);
        Assert.Equal(["Host cook"], meal.Helpers.Select(helper => helper.Name));
        Assert.DoesNotContain("\"by\"", document.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Guests_and_courses_come_and_go_and_dishes_move()
    {
        var document = Fresh();
        document.PutGuest(0, new Guest("Noor", 1, [], []));
        document.PutGuest(1, new Guest("Per", 1.5m, [], ["celery"]));
        document.ChangeGuest(0, noor => noor with { Avoids = ["milk"] });
        document.Rename(new CourseId("main"), "Dinner");
        document.RemoveGuest(1);
        document.Add(new Course(new("late"), "Pudding", Read(document).FirstTableTime + 60));
        document.MoveDish(Read(document).Dishes[0].Id, new CourseId("late"));
        document.Remove(new CourseId("main"));
        var meal = Read(document);
        Assert.Equal(["milk"], Assert.Single(meal.Guests).Avoids);
        Assert.Equal(("Pudding", "late"), (Assert.Single(meal.Courses).Name, meal.Dishes[0].Course.Value));
    }

    [Theory]
    [InlineData("Hand mixer", "hand-mixer")]
    [InlineData("oven", "oven-3")]
    [InlineData("!", "one")]
    public void An_id_is_free(string name, string id) => Assert.Equal(id, MealDocument.FreeId(name, ["oven", "oven-2"]));
}
