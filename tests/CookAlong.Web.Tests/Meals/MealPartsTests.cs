using Bunit;
using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Features.Meals.Own;
using CookAlong.Web.Features.Plans;
using CookAlong.Web.Tests.Household;
using CookAlong.Web.Tests.Plans;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Meals;

public sealed class MealPartsTests : BunitContext
{
    readonly HouseholdFile household = new();

    public MealPartsTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        var clock = new FakeTimeProvider();
        this.AddPace(clock);
        Services.AddSingleton(new MealBook(household, clock));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        household.Dispose();
    }

    [Fact]
    public void A_guest_s_allergen_is_shown_with_its_dish_and_the_caution_to_read_labels()
    {
        var guests = Render<GuestList>(parameters => parameters.Add(list => list.Meal, AlderLane.Meal));

        Assert.Contains("Check the label.", guests.Find(".caution").TextContent, StringComparison.Ordinal);
        Assert.Contains("Must not eat nuts: it is in Nut roast (hazelnuts).", Words(guests.Markup), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_can_eat_what_is_a_table_of_shapes_and_words_that_rather_asks()
    {
        var guests = Render<GuestList>(parameters => parameters.Add(list => list.Meal, AlderLane.Meal));

        Assert.Equal(["Dish", "Ivo", "Tobi"], guests.FindAll("thead th").Select(head => head.TextContent));
        var nut = guests.FindAll("tbody tr").Single(row => row.TextContent.Contains("Nut roast", StringComparison.Ordinal));
        Assert.Equal(["✕ no", "✕ no"], nut.QuerySelectorAll("td").Select(cell => cell.TextContent));
        var goose = guests.FindAll("tbody tr").Single(row => row.TextContent.Contains("Roast goose", StringComparison.Ordinal));
        Assert.Equal(["? ask", "? ask"], goose.QuerySelectorAll("td").Select(cell => cell.TextContent));
    }

    [Fact]
    public void What_may_be_taken_instead_is_read_and_asked_about_by_name()
    {
        var oil = new Ingredient("oil", 2, "tbsp", "warm", []) { Alternatives = ["butter"] };
        var meal = AlderLane.Meal with { Guests = [new("Ivo", 1, [], ["milk"])], Dishes = [AlderLane.Meal.Dishes[0] with { Name = "Mash", Ingredients = [oil] }] };
        Assert.Equal("2 tbsp oil, warm, or butter", MealWords.Of(oil));
        Assert.Contains("Ask about Mash (oil or butter).", Words(Render<GuestList>(parameters => parameters.Add(list => list.Meal, meal)).Markup), StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_that_nothing_is_known_of_is_said_to_be_so()
    {
        var meal = AlderLane.Meal with { Guests = [new("Ivo", 1, ["moon diet"], ["whatsit"])] };
        var guests = Render<GuestList>(parameters => parameters.Add(list => list.Meal, meal));
        Assert.Contains("Must not eat whatsit: nothing is known here of what it is in, so ask about every dish.", Words(guests.Markup), StringComparison.Ordinal);
        Assert.Contains("Moon diet: nothing is known here of what it is in, so ask about every dish.", Words(guests.Markup), StringComparison.Ordinal);
        Assert.All(guests.FindAll("tbody td"), cell => Assert.Equal("? ask", cell.TextContent));
    }

    static Task<bool> Kept(Action<MealDocument> edit) => Task.FromResult(true);

    static Task<bool> KeptIn(MealDocument document, Action<MealDocument> edit)
    {
        edit(document);
        return Task.FromResult(true);
    }

    // The page still shows the meal of before when the second is typed.
    [Fact]
    public void When_somebody_comes_and_goes_typed_one_after_the_other_are_both_kept()
    {
        var document = MealDocument.Of(MealFile.Write(AlderLane.Meal));
        var fields = Render<HelperFields>(parameters => parameters.Add(part => part.Meal, AlderLane.Meal).Add(part => part.Change, edit => KeptIn(document, edit)));

        fields.FindAll("input[type=time]")[0].Change("11:15");
        fields.FindAll("input[type=time]")[1].Change("16:45");

        var here = Assert.Single(MealFile.Read(document.Text).Meal!.Helpers[0].Available);
        Assert.Equal(["11:15", "16:45"], new[] { here.From, here.To }.Select(at => PlaceNames.Clock(at, AlderLane.Zone)));
    }

    [Fact]
    public void Waking_hours_are_changed_beside_the_kitchen_s_other_things()
    {
        var document = MealDocument.Of(MealFile.Write(AlderLane.Meal));
        var fields = Render<KitchenFields>(parameters => parameters.Add(part => part.Meal, AlderLane.Meal).Add(part => part.Change, edit => KeptIn(document, edit)));
        Assert.Equal(["07:00", "22:00"], fields.FindAll("input[type=time]").Select(input => input.GetAttribute("value")));

        fields.FindAll("input[type=time]")[1].Change("23:30");

        var awake = MealFile.Read(document.Text).Meal!.Kitchen.Awake;
        Assert.Equal((new TimeOnly(7, 0), new TimeOnly(23, 30)), (awake.Up, awake.Bed));
        Assert.Equal("Up from 07:00 to 23:30; nobody works ahead at night", MealWords.Of(awake));
    }

    [Fact]
    public void A_table_time_that_the_clocks_skip_is_refused_with_the_one_meant()
    {
        var said = "";
        var night = LocalMeal(new DateTime(2027, 3, 28, 1, 30, 0));
        var times = Render<TableTimes>(parameters => parameters.Add(part => part.Meal, night).Add(part => part.Change, Kept).Add(part => part.Say, words => said = words));

        times.Find("input[type=time]").Change("02:30");

        Assert.Equal("The clocks go forward that night and skip 02:30; 03:30 may be meant. Nothing was changed.", said);
    }

    [Fact]
    public void Work_may_begin_days_earlier_and_by_itself_again()
    {
        Action<MealDocument>? edit = null;
        var meal = AlderLane.Meal;
        var times = Render<TableTimes>(parameters => parameters.Add(part => part.Meal, meal).Add(part => part.Change, change => Kept(edit = change)));

        times.Find("input[type=datetime-local]").Change("2026-12-14T18:00");
        var document = MealDocument.Of(MealFile.Write(meal));
        edit!(document);
        Assert.Equal(new DateTime(2026, 12, 14, 18, 0, 0), Domain.LocalTime.Show(MealFile.Read(document.Text).Meal!.NotBefore!.Value, meal.TimeZone).DateTime);

        times.Find("input[type=datetime-local]").Change("");
        edit!(document);
        Assert.Null(MealFile.Read(document.Text).Meal!.NotBefore);
    }

    [Fact]
    public async Task A_file_with_errors_shows_where_what_and_what_to_do()
    {
        var upload = Render<MealUpload>();

        upload.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText("""{ "format": "cookalong-meal/1", "name": "Empty", "timeZone": "Nowhere/Else" }""", "empty.json"));

        await upload.WaitForStateAsync(() => upload.FindAll(".errors li").Count > 0);
        Assert.Contains("/timeZone", upload.FindAll("code").Select(place => place.TextContent));
        Assert.Contains("“empty.json” was not taken in", upload.Find("h2").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_good_file_is_kept()
    {
        KeptMeal? taken = null;
        var upload = Render<MealUpload>(parameters => parameters.Add(part => part.Taken, meal => taken = meal));

        upload.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText(MealFile.Write(AlderLane.Meal), "lunch.json"));

        await upload.WaitForStateAsync(() => taken is not null);
        Assert.Equal("Midwinter lunch", taken!.Meal.Name);
    }

    static Domain.Meals.Meal LocalMeal(DateTime table) =>
        AlderLane.Meal with { Courses = [AlderLane.Meal.Courses[0] with { TableTime = Domain.LocalTime.Resolve(table, AlderLane.Zone)!.Value }] };

    static string Words(string markup) =>
        string.Join(' ', System.Text.RegularExpressions.Regex.Replace(markup, "<[^>]+>", "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
