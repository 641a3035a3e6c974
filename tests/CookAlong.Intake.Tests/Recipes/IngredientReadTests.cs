using CookAlong.Domain.Quantities;
using CookAlong.Intake.Recipes;
using CsCheck;

namespace CookAlong.Intake.Tests.Recipes;

public sealed class IngredientReadTests
{
    // Lines of our own, in the ways recipes write them.
    [Theory]
    [InlineData("3 leeks", "3", null, "leeks", null)]
    [InlineData("200 g pearl barley", "200", "g", "pearl barley", null)]
    [InlineData("200g pearl barley", "200", "g", "pearl barley", null)]
    [InlineData("1/2 lemon", "0.5", null, "lemon", null)]
    [InlineData("1 1/2 tsp. baking powder", "1.5", "tsp", "baking powder", null)]
    [InlineData("1½ cups flour, sifted", "1.5", "cup", "flour", "sifted")]
    [InlineData("2-3 tbsp olive oil", "2-3", "tbsp", "olive oil", null)]
    [InlineData("2 to 3 carrots, peeled and diced", "2-3", null, "carrots", "peeled and diced")]
    [InlineData("a knob of butter", "1", "knob", "butter", null)]
    [InlineData("a pinch of salt", "1", "pinch", "salt", null)]
    [InlineData("half a lemon", "0.5", null, "lemon", null)]
    [InlineData("an onion", "1", null, "onion", null)]
    [InlineData("two large eggs, beaten", "2", null, "large eggs", "beaten")]
    [InlineData("salt to taste", null, null, "salt", "to taste")]
    [InlineData("oil for frying", null, null, "oil", "for frying")]
    [InlineData("some parsley", null, null, "parsley", null)]
    [InlineData("2 cloves of garlic, crushed", "2", "cloves", "garlic", "crushed")]
    [InlineData("6 cloves", "6", null, "cloves", null)]
    [InlineData("2 x 400 g tins chopped tomatoes", "800", "g", "chopped tomatoes", null)]
    [InlineData("1 (400 g) tin white beans, drained", "400", "g", "white beans", "drained")]
    [InlineData("1 cup plus 2 tbsp sugar", "1.12", "cup", "sugar", null)]
    [InlineData("2 fl oz cream", "2", "fl oz", "cream", null)]
    [InlineData("3 tbsp finely chopped parsley", "3", "tbsp", "parsley", "finely chopped")]
    [InlineData("juice of 1 lemon", "1", null, "lemon", "juice")]
    [InlineData("finely grated zest of 2 oranges", "2", null, "oranges", "finely grated zest")]
    [InlineData("about 500 g kale", "500", "g", "kale", null)]
    [InlineData("1 heaped tbsp cornflour", "1", "tbsp", "cornflour", null)]
    [InlineData("1 dozen eggs", "1", "dozen", "eggs", null)]
    [InlineData("2 T sugar", "2", "tbsp", "sugar", null)]
    [InlineData("2 T. sugar", "2", "tbsp", "sugar", null)]
    [InlineData("2 T-bone steaks", "2", null, "T-bone steaks", null)]
    [InlineData("2 t sugar", "2", "tsp", "sugar", null)]
    [InlineData("2 x 8 fl oz cartons cream", "16", "fl oz", "cream", null)]
    [InlineData("- 2,5 dl milk", "2.5", "dl", "milk", null)]
    [InlineData("butter, for the tin", null, null, "butter", "for the tin")]
    public void A_line_is_read_into_its_parts(string line, string? quantity, string? unit, string name, string? preparation)
    {
        var read = IngredientRead.Of(line, SpoonSizes.Metric);
        Assert.Equal(quantity, read.Least == read.Most ? Text(read.Least) : $"{Text(read.Least)}-{Text(read.Most)}");
        Assert.Equal((unit, name, preparation), (read.Unit, read.Name, read.Preparation));

        static string? Text(decimal? value) => value is { } number ? number.ToString("0.####", System.Globalization.CultureInfo.InvariantCulture) : null;
    }

    // NIST Handbook 44, appendix C: a US cup is 16 tablespoons. Metric cup 250, Australian tablespoon 20 mL by definition.
    [Theory]
    [InlineData(SpoonSizes.UnitedStates, 1.125)]
    [InlineData(SpoonSizes.Metric, 1.12)]
    [InlineData(SpoonSizes.UnitedKingdom, 1.12)]
    [InlineData(SpoonSizes.Australia, 1.16)]
    public void Cups_and_spoons_are_added_as_the_household_s_are(SpoonSizes spoons, double cups) =>
        Assert.Equal((decimal)cups, IngredientRead.Of("1 cup plus 2 tbsp sugar", spoons).Most);

    [Fact]
    public void What_may_be_taken_instead_is_kept()
    {
        var read = IngredientRead.Of("50 g butter or margarine, soft", SpoonSizes.Metric);
        Assert.Equal(("butter", "soft"), (read.Name, read.Preparation));
        Assert.Equal(["margarine"], read.Alternatives);
        Assert.Equal(["1 tbsp fresh thyme"], IngredientRead.Of("1 tsp dried thyme or 1 tbsp fresh thyme", SpoonSizes.Metric).Alternatives);
        Assert.Equal(("red or white wine vinegar", 0), (IngredientRead.Of("2 tbsp red or white wine vinegar", SpoonSizes.Metric).Name, IngredientRead.Of("2 tbsp red or white wine vinegar", SpoonSizes.Metric).Alternatives.Length));
    }

    [Fact]
    public void What_is_not_read_is_said()
    {
        var read = IngredientRead.Of("1 onion (about 150 g), sliced", SpoonSizes.Metric);
        Assert.Equal(("onion", "sliced"), (read.Name, read.Preparation));
        Assert.Equal(["about 150 g"], read.Unread);
    }

    [Theory]
    [InlineData("2 tbsp")]
    [InlineData("(optional)")]
    [InlineData("1000000000000 eggs of")]
    [InlineData("0 g")]
    public void A_line_without_a_name_is_its_own_name_and_its_number_is_not_believed(string line)
    {
        var read = IngredientRead.Of(line, SpoonSizes.Metric);
        Assert.True(read.Name.Length > 0);
        Assert.True(read.Most is null or > 0);
    }

    static readonly Gen<string> lines = Gen.OneOf(
        Gen.String,
        Gen.OneOf("1", "2-3", "½", "1/2", "1/0", "400", "g", "tbsp", "fl", "oz", "tin", "cups", "x", "(", ")", ",", "or", "of", "a", "an", "half", "about", "heaped", "plus", "butter", "finely", "chopped", "to", "taste", "-", ".", "juice", "1.5.2", "٣", "é", "\u0301", "'")
            .List[0, 14].Select(words => string.Join(' ', words)));

    [Fact]
    public void No_word_is_lost_whatever_the_line() => lines.Sample(
        line =>
        {
            var read = IngredientRead.Of(line, SpoonSizes.Metric);
            Assert.Equal(line, read.Text);
            Assert.True(read.Most is null ? read.Least is null : read.Least > 0 && read.Least <= read.Most);
            var kept = new bool[line.Length];
            foreach (var piece in read.Pieces)
            {
                Array.Fill(kept, true, piece.At, piece.Length);
            }

            Assert.All(line.Select((sign, at) => (sign, at)), one => Assert.True(kept[one.at] || char.IsWhiteSpace(one.sign)));
        },
        iter: 3_000);

    [Fact]
    public void A_very_long_line_is_kept_as_it_is()
    {
        var line = string.Concat(Enumerable.Repeat("1 tin or (", 200_000));
        Assert.Equal((line, null), (IngredientRead.Of(line, SpoonSizes.Metric).Name, IngredientRead.Of(line, SpoonSizes.Metric).Most));
    }
}
