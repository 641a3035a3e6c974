using System.Text.Json;
using CookAlong.Domain.Quantities;
using CookAlong.Intake.Recipes;
using CsCheck;

namespace CookAlong.Intake.Tests.Recipes;

/// <summary>Whatever somebody pastes is read and becomes a dish; nothing throws.</summary>
public sealed class RecipeFuzzTests
{
    // Parts of pages, of their data and of plain recipes, whole and broken, and signs that are no characters.
    static readonly string[] fragments =
    [
        "<html><head>", "<body>", "</body>", "<div>", "</div>", "<p>", "</p>", "<br>", "<td>20 g<td>barley", "<tr>", "</table>", "<li itemprop='recipeIngredient'>2 kg beef", "<b><i>", "</b>", "<a href='", "<!--", "-->", "<![CDATA[", "<svg><title>",
        "<script type=\"application/ld+json\">", "</script>", "<style>", "</style>", "<textarea>", "<select><option>", "<plaintext>", "<template>", "<frameset>", "&#xD800;", "&#0;", "&frac12;", "&#x110000;", "<\0>", "</",
        "<div itemscope itemtype='https://schema.org/Recipe'>", "<div itemprop='recipeInstructions' itemscope>", "<span itemprop='itemListElement'>", "<meta itemprop='cookTime' content='PT1٣H'>", "<time itemprop=prepTime datetime='P1D'>",
        "{\"@type\":\"Recipe\",", "\"name\":\"So\\ud800up\",", "\"na\\udc00me\":1,", "\"recipeYield\":[4,\"1٣\"],", "\"recipeIngredient\":[\"2 kg beef\",\"\\ud83d\",{}],", "\"recipeInstructions\":[{\"text\":\"Boil \\ud800 20 min\"},", "\"<p>Boil<br>5 min\"", "]", "}", "[", "{", "\"@graph\":[", "\\", "\"", "null", "1e999", ",", ":",
        "Serves 1٣", "Serves 4\n", "Ingredients\n", "Method\n", "- 3 leeks\n", "finely \ud83c\udf72\ud83c\udf72 soup\n", "1. Roast at 180 °C, 20 minutes to the pound and 20 minutes over.\n", "Prep: ٣ min | Cook: 1 h\n", "Cook: 1" + "\u0665" + " min\n", "40 minutes per kg\n", "Meanwhile, stir.\n", "While the beef rests, beat 3 eggs for 5 min.\n", "Chill overnight.\n",
        "\ud800", "\udc00", "\ud83d\ude00", "\0", "\u0001\u001b", "\u202e", "\ufeff", "\ufffe", "\u2028", "\r", "\n\n", "\t", " ", "½", "999999999999", "1/0", "350 F. ", "gas mark ",
        string.Concat(Enumerable.Repeat("<div>", 700)), string.Concat(Enumerable.Repeat("[", 100)), string.Concat(Enumerable.Repeat("{\"@graph\":", 70)), new string('a', 69) + "\ud83d\ude00\ud83d\ude00", new string('(', 90),
    ];

    static readonly string[] escapes = ["\\ud800", "\\udfff", "\\ud83d\\ude00", "\\\\ud800"];

    [Fact]
    public void Whatever_is_pasted_becomes_a_dish_that_can_be_written() =>
        Gen.OneOf(Gen.Int[0, fragments.Length - 1].Select(i => fragments[i]), Gen.Int[0, fragments.Length - 1].Select(i => fragments[i]), Gen.String[0, 8])
            .Array[0, 24]
            .Sample(parts => { Written(string.Concat(parts)); }, iter: 20_000);

    // What stands inside a page's own data meets the whole way to a dish more often than by chance.
    [Fact]
    public void Whatever_stands_in_a_page_s_data_becomes_a_dish() =>
        Gen.OneOf(Gen.Int[0, fragments.Length - 1].Select(i => fragments[i]), Gen.String[0, 8], Gen.Int[0, 3].Select(i => escapes[i]))
            .Array[0, 6].Array[4]
            .Sample(all =>
            {
                var texts = all.Select(parts => Quoted(string.Concat(parts))).ToArray();
                Written($$"""{"@type":"Recipe","name":{{texts[0]}},"cookTime":{{texts[1]}},"recipeYield":{{texts[1]}},"recipeIngredient":[{{texts[2]}}],"recipeInstructions":[{"text":{{texts[3]}}}]}""");
            }, iter: 20_000);

    static string Quoted(string text) => $"\"{text.Replace("\"", "'", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal)}\"";

    // In code, since an attribute's text is written as UTF-8, which has no halves.
    [Fact]
    public void Half_a_character_is_shown_as_one_that_could_not_be_read() =>
        Assert.All(
            [
                "<p>Boil \ud800 20 minutes.</p>",
                "Soup \udc00\nBoil 20 minutes.",
                "{\"@type\":\"Recipe\",\"name\":\"Soup \ud83d\",\"recipeInstructions\":\"Boil 20 minutes.\"}",
                "{\"@type\":\"Recipe\",\"name\":\"Soup \\ud800\",\"recipeInstructions\":\"Boil \\udc00\\ud83d 20 minutes.\"}",
                "<script type='application/ld+json'>{\"@type\":\"Recipe\",\"na\\ud800me\":\"x\",\"recipeInstructions\":\"Boil 20 minutes.\"}</script>",
            ],
            text =>
            {
                Assert.Equal(20, RecipeRead.Of(text).Steps[^1].Times[0].Most);
                Written(text);
            });

    [Fact]
    public void A_backslash_and_a_whole_character_by_its_numbers_stay()
    {
        var read = RecipeRead.Of("{\"@type\":\"Recipe\",\"name\":\"A\\\\ud800 \\ud83c\\udf72\",\"recipeInstructions\":\"Boil \\ud800.\"}");
        Assert.Equal(("A\\ud800 \ud83c\udf72", "Boil \ufffd."), (read.Name, read.Steps[0].Text));
    }

    // Eastern Arabic digits are digits to a pattern, and not to a parser.
    [Theory]
    [InlineData("Soup\nServes 1٣\nBoil 20 minutes.")]
    [InlineData("{\"@type\":\"Recipe\",\"recipeYield\":\"1٣\",\"totalTime\":\"PT1٣M\",\"recipeInstructions\":\"Boil 20 minutes.\"}")]
    public void Digits_of_other_scripts_are_no_trap(string text) => Assert.Single(RecipeRead.Of(text).Steps);

    [Fact]
    public void A_headline_is_not_cut_in_the_middle_of_a_character()
    {
        var step = StepDraft.Of(StepRead.Of(new string('a', 69) + "\ud83d\ude00 soup"));
        Assert.Equal((new string('a', 69), "\ud83d\ude00 soup"), (step.Text, step.How));
    }

    static void Written(string text)
    {
        var json = DishDraft.Of(RecipeRead.Of(text), 4, SpoonSizes.Metric).ToJson("dish", "main", fridge: null).ToJsonString();
        using var again = JsonDocument.Parse(json);
        Assert.Equal("dish", again.RootElement.GetProperty("id").GetString());
    }
}
