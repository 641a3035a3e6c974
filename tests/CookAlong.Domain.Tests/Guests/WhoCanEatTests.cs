using System.Collections.Immutable;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CsCheck;

namespace CookAlong.Domain.Tests.Guests;

public sealed class WhoCanEatTests
{
    static readonly CourseId Main = new("main");

    static Dish DishOf(string name, params Ingredient[] ingredients) => new(new(name), name, Main, 4, [.. ingredients], [Hold.OnTheTable], []);

    static Ingredient Of(string name, decimal? quantity = null, string? unit = null, params string[] contains) => new(name, quantity, unit, null, [.. contains]);

    static Guest GuestWho(string[]? diets = null, string[]? avoids = null) => new("Noor", 1, [.. diets ?? []], [.. avoids ?? []]);

    static readonly Dish gratin = DishOf("gratin", Of("celeriac", 1.4m, "kg"), Of("cream", 600, "ml"), Of("nutmeg"));
    static readonly Dish goose = DishOf("goose", Of("goose, oven-ready", 4.8m, "kg"), Of("tart apples", 4));
    static readonly Dish cabbage = DishOf("cabbage", Of("red cabbage", 1.6m, "kg"), Of("salt"));

    [Theory]
    [InlineData("celery", CanEat.No, CanEat.NothingFound)]
    [InlineData("Celery", CanEat.No, CanEat.NothingFound)]
    [InlineData("dairy", CanEat.No, CanEat.NothingFound)]
    [InlineData("nuts", CanEat.NothingFound, CanEat.NothingFound)]
    [InlineData("apples", CanEat.NothingFound, CanEat.No)]
    public void What_a_guest_avoids_is_found(string avoided, CanEat ofGratin, CanEat ofGoose)
    {
        Assert.Equal(ofGratin, WhoCanEat.Judge(GuestWho(avoids: [avoided]), gratin).Answer);
        Assert.Equal(ofGoose, WhoCanEat.Judge(GuestWho(avoids: [avoided]), goose).Answer);
    }

    [Theory]
    [InlineData("vegetarian", "goose fat", CanEat.No)]
    [InlineData("vegetarian", "leaf gelatine", CanEat.No)]
    [InlineData("vegetarian", "cheddar", CanEat.Ask)]
    [InlineData("vegan", "honey", CanEat.No)]
    [InlineData("vegan", "cream", CanEat.No)]
    [InlineData("pescetarian", "cod", CanEat.NothingFound)]
    [InlineData("pescetarian", "bacon", CanEat.No)]
    [InlineData("no pork, no alcohol", "sherry", CanEat.No)]
    [InlineData("no pork, no alcohol", "bacon", CanEat.No)]
    [InlineData("no pork, no alcohol", "beef", CanEat.NothingFound)]
    [InlineData("no pork, no alcohol", "sausages", CanEat.Ask)]
    [InlineData("halal", "lamb", CanEat.Ask)]
    [InlineData("coeliac", "pearl barley", CanEat.No)]
    [InlineData("gluten-free", "oats", CanEat.Ask)]
    [InlineData("lactose free", "butter", CanEat.No)]
    [InlineData("nut-free", "peanuts", CanEat.No)]
    [InlineData("moon diet", "carrots", CanEat.Ask)]
    [InlineData("no shellfish", "prawns", CanEat.No)]
    [InlineData("sesame free", "tahini", CanEat.No)]
    [InlineData("nut allergy", "pesto", CanEat.No)]
    [InlineData("allergic to nuts", "peanuts", CanEat.Ask)]
    [InlineData("soya intolerance", "carrots", CanEat.NothingFound)]
    public void A_diet_forbids_its_foods(string diet, string ingredient, CanEat answer) =>
        Assert.Equal(answer, WhoCanEat.Judge(GuestWho([diet]), DishOf("dish", Of(ingredient))).Answer);

    [Fact]
    public void What_the_file_says_counts_whatever_the_name()
    {
        Assert.Equal(CanEat.No, WhoCanEat.Judge(GuestWho(avoids: ["nuts"]), DishOf("dish", Of("salt", null, null, "nuts"))).Answer);
        Assert.Equal(CanEat.No, WhoCanEat.Judge(GuestWho(avoids: ["kiwi"]), DishOf("dish", Of("salt", null, null, "KIWI"))).Answer);
    }

    // Common practice, no source: a guest names one food of a kind, and the kind hides elsewhere.
    [Theory]
    [InlineData("almonds", "marzipan", CanEat.Ask)]
    [InlineData("walnuts", "pesto", CanEat.Ask)]
    [InlineData("sesame seeds", "tahini", CanEat.Ask)]
    [InlineData("cow's milk", "butter", CanEat.No)]
    [InlineData("prawns", "shrimp paste", CanEat.Ask)]
    [InlineData("prawns", "prawns", CanEat.No)]
    [InlineData("almonds", "carrots", CanEat.NothingFound)]
    [InlineData("whatsit", "carrots", CanEat.Ask)]
    [InlineData("wheat", "gravy granules", CanEat.Ask)]
    [InlineData("wheat", "muesli", CanEat.Ask)]
    [InlineData("wheat", "stock cube", CanEat.Ask)]
    [InlineData("wheat", "rice flour", CanEat.NothingFound)]
    [InlineData("no pork", "mince", CanEat.Ask)]
    [InlineData("no pork", "beef mince", CanEat.NothingFound)]
    public void What_a_guest_names_is_more_than_its_word(string avoided, string ingredient, CanEat answer)
    {
        var guest = avoided == "no pork" ? GuestWho([avoided]) : GuestWho(avoids: [avoided]);
        Assert.Equal(answer, WhoCanEat.Judge(guest, DishOf("dish", Of(ingredient))).Answer);
    }

    [Theory]
    [InlineData("nuts", "almonds", CanEat.No)]
    [InlineData("gluten", "barley", CanEat.No)]
    [InlineData("milk", "cream", CanEat.No)]
    [InlineData("gluten", "wheat", CanEat.No)]
    [InlineData("meat", "pork", CanEat.No)]
    [InlineData("wheat", "gluten", CanEat.Ask)]
    [InlineData("pork", "meat", CanEat.Ask)]
    [InlineData("celery", "stock cube", CanEat.Ask)]
    [InlineData("celery", "whatsit", CanEat.Ask)]
    [InlineData("celery", "milk", CanEat.NothingFound)]
    public void What_the_file_says_is_read_as_names_are(string avoided, string contains, CanEat answer) =>
        Assert.Equal(answer, WhoCanEat.Judge(GuestWho(avoids: [avoided]), DishOf("dish", Of("salt", null, null, contains))).Answer);

    [Theory]
    [InlineData("nuts", "contains hazelnuts", null, CanEat.Ask)]
    [InlineData("wheat", "dusted with flour", null, CanEat.Ask)]
    [InlineData("kiwi", "with kiwi", null, CanEat.Ask)]
    [InlineData("milk", null, "butter", CanEat.Ask)]
    [InlineData("milk", null, "aunt's joy", CanEat.Ask)]
    [InlineData("kiwi", null, "kiwi", CanEat.Ask)]
    [InlineData("milk", "finely chopped", "1 tbsp sunflower oil", CanEat.NothingFound)]
    [InlineData("milk", "for the filling", null, CanEat.NothingFound)]
    public void How_it_comes_and_what_may_be_taken_instead_are_asked_about(string avoided, string? preparation, string? alternative, CanEat answer)
    {
        var ingredient = Of("salt") with { Preparation = preparation, Alternatives = alternative is null ? [] : [alternative] };
        Assert.Equal(answer, WhoCanEat.Judge(GuestWho(avoids: [avoided]), DishOf("dish", ingredient)).Answer);
    }

    [Fact]
    public void Too_little_known_is_never_fine()
    {
        Assert.Equal(CanEat.Ask, WhoCanEat.Judge(GuestWho(avoids: ["milk"]), DishOf("stew")).Answer);
        var judged = WhoCanEat.Judge(GuestWho(avoids: ["milk"]), DishOf("stew", Of("carrots"), Of("aunt's joy")));
        Assert.Equal((CanEat.Ask, true), (judged.Answer, judged.Reasons.Single().IsUnknown));
    }

    [Fact]
    public void Whoever_avoids_nothing_can_eat_everything() => Assert.Equal(CanEat.NothingFound, WhoCanEat.Judge(GuestWho(), DishOf("stew", Of("anything"))).Answer);

    [Fact]
    public void Who_has_no_main_dish_is_told()
    {
        Assert.True(WhoCanEat.IsMain(goose));
        Assert.False(WhoCanEat.IsMain(cabbage));
        Assert.False(WhoCanEat.IsMain(gratin));
        var meal = Runs.SmallMeal.Meal with { Dishes = [goose, gratin, cabbage], Guests = [GuestWho(["vegetarian"]), GuestWho() with { Name = "Wim" }] };
        Assert.Equal([("Noor", true)], WhoCanEat.WithoutMainDish(meal).Select(one => (one.Guest.Name, one.IsCertain)));
    }

    /// <summary>One more ingredient never makes a dish safer.</summary>
    [Fact]
    public void More_ingredients_never_make_the_answer_better() =>
        (from names in Gen.OneOf("goose", "cream", "oats", "tofu", "carrots", "stock cube", "secret", "eggs", "vegan butter").Array[1, 5]
         from more in Gen.OneOf("salt", "milk", "mustard", "whatever")
         from need in Gen.OneOf("milk", "gluten", "vegetarian", "vegan", "halal", "egg", "mushrooms")
         select (names, more, need)).Sample(one =>
        {
            var guest = GuestWho([one.need], [one.need]);
            var less = DishOf("dish", [.. one.names.Select(name => Of(name))]);
            return WhoCanEat.Judge(guest, less with { Ingredients = less.Ingredients.Add(Of(one.more)) }).Answer >= WhoCanEat.Judge(guest, less).Answer;
        });
}
