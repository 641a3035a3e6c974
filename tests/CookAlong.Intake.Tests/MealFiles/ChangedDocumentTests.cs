using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Planning;
using CookAlong.Intake.MealFiles;

namespace CookAlong.Intake.Tests.MealFiles;

/// <summary>A change made to the file makes the same meal as the change made to the meal, which is what the planner tried.</summary>
public sealed class ChangedDocumentTests
{
    static readonly string Lunch = SeedData.Text("midwinter-lunch.json");

    static readonly string Begun = SmallMeal.With(meal => meal["notBefore"] = "2027-12-19T18:00");

    static readonly Minute Table = SmallMeal.Meal.FirstTableTime;

    public static TheoryData<PlanChange> Changes =>
    [
        new PlanChange.ServeLater(new("main"), 20),
        new PlanChange.StartEarlier(45),
        new PlanChange.AddOven(),
        new PlanChange.AddRings(1),
        new PlanChange.AddHelper(Table - 30, Table),
        new PlanChange.WaitLonger(new("soup"), 10),
        new PlanChange.MakeAhead(new("soup"), Table - 1560, Table - 1320),
        new PlanChange.LeaveOut(new("bread")),
    ];

    [Theory]
    [MemberData(nameof(Changes))]
    public void The_file_and_the_meal_are_changed_alike(PlanChange change)
    {
        var document = MealDocument.Of(Begun);

        document.Apply(change);

        var read = MealFile.Read(document.Text);
        Assert.Empty(read.Errors);
        Same.As(ChangedMeal.Of(MealFile.Read(Begun).Meal!, change), read.Meal);
    }

    [Theory]
    [MemberData(nameof(Changes))]
    public void Everything_else_in_the_file_stays(PlanChange change)
    {
        var document = MealDocument.Of(SmallMeal.With(meal => (meal["notBefore"], meal["mood"], meal["dishes"]![0]!["picture"]) = ("2027-12-19T18:00", "slow music", "leeks.jpg")));

        document.Apply(change);

        var after = JsonNode.Parse(document.Text)!;
        Assert.Equal(("slow music", "leeks.jpg"), (after["mood"]!.GetValue<string>(), after["dishes"]![0]!["picture"]!.GetValue<string>()));
    }

    [Fact]
    public void Holds_that_the_file_writes_wait_longer_and_keep_what_they_cost()
    {
        var meal = MealFile.Read(Lunch).Meal!;
        var dish = meal.Dishes.First(dish => dish.Holds.Length > 1);
        var document = MealDocument.Of(Lunch);

        document.Apply(new PlanChange.WaitLonger(dish.Id, 15));

        Same.As(ChangedMeal.Of(meal, new PlanChange.WaitLonger(dish.Id, 15)), MealFile.Read(document.Text).Meal);
    }

    [Fact]
    public void The_host_cook_of_a_file_that_names_nobody_stays_when_another_comes()
    {
        var document = MealDocument.Of(SmallMeal.With(meal => meal.AsObject().Remove("helpers")));

        document.Apply(new PlanChange.AddHelper(Table - 30, Table));

        Assert.Equal(["Host cook", "One more"], MealFile.Read(document.Text).Meal!.Helpers.Select(helper => helper.Name));
    }
}
