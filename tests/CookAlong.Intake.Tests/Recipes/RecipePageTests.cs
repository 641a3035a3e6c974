using CookAlong.Intake.Recipes;

namespace CookAlong.Intake.Tests.Recipes;

/// <summary>Pages as people write them, and as nobody should. All of them are our own.</summary>
public sealed class RecipePageTests
{
    static IEnumerable<string> Steps(RecipeRead read) => read.Steps.Select(step => step.Text);

    // HTML's rules for tags inside tags take time by the square of the depth.
    [Theory]
    [InlineData("<div>", "</div>")]
    [InlineData("<b>", "</b>")]
    [InlineData("<table><tr><td>", "</td></tr></table>")]
    [InlineData("<div>", "")]
    public void A_page_of_tags_within_tags_is_read_flat_and_says_so(string begin, string end)
    {
        const int Deep = 50_000;
        var read = RecipeRead.Of($"<h1>Soup</h1>{string.Concat(Enumerable.Repeat(begin, Deep))}<p>Boil 20 minutes.</p>{string.Concat(Enumerable.Repeat(end, Deep))}<p>Serve at once.</p>");
        Assert.Equal("Soup", read.Name);
        Assert.Equal(["Boil 20 minutes.", "Serve at once."], Steps(read));
        Assert.Contains(read.Unread, line => line.Contains("more than 500 tags deep", StringComparison.Ordinal));
    }

    [Fact]
    public void What_a_page_s_author_left_open_is_not_deep()
    {
        var read = RecipeRead.Of($"<html><body><h1>Soup</h1><ol>{string.Concat(Enumerable.Repeat("<li><p>Boil 20 minutes.", 150))}</ol><p>Serve.<p>Eat it.");
        Assert.Equal(152, read.Steps.Length);
        Assert.Empty(read.Unread);
    }

    [Theory]
    [InlineData("<html><body><div>Leek soup</div><div>Serves 4</div><div>Ingredients</div><div>3 leeks<br>1 l stock<br/></div><div>Method</div><div>Boil for 20 minutes.<br>Serve.</div></body></html>")]
    [InlineData("<table><tr><td>Leek soup</td></tr><tr><td>Serves 4</td></tr><tr><td>Ingredients<tr><td>3 leeks<td>1 l stock</td></tr><tr><td>Method<tr><td>Boil for 20 minutes.</td><td>Serve.</table>")]
    [InlineData("<dl><dt>Leek soup<dt>Serves 4<dt>Ingredients<dd>3 leeks<dd>1 l stock<dt>Method<dd>Boil for 20 minutes.<dd>Serve.</dl>")]
    [InlineData("<body><nav><div>Home</div><div>All of our 300 soups are here for you.</div></nav><style>p { color: red }</style><h1>Leek soup</h1>Serves 4<section>Ingredients<p>3 <b>leeks</b><p>1 l stock</section><section>Method<pre>Boil for 20 minutes.\nServe.</pre></section><script>if (1 < 2) say('20 minutes.')</script><footer>Bake nothing for 5 minutes.</footer></body>")]
    [InlineData("<p>Our soups</p><h1>Leek soup</h1><p>Serves 4<h2>Ingredients</h2><table><tr><th>3</th><th>leeks</th></tr><tr><td><span>1 l</span></td><td>stock</td></tr></table><h2>Method</h2><p>Boil for 20 minutes.</p><p>Serve.</p>")]
    public void The_words_of_a_page_are_lines_wherever_it_breaks_them(string page)
    {
        var read = RecipeRead.Of(page);
        Assert.Equal(("Leek soup", 4), (read.Name, read.Serves));
        Assert.Equal(["3 leeks", "1 l stock"], read.Ingredients);
        Assert.Equal(["Boil for 20 minutes.", "Serve."], Steps(read));
    }

    [Fact]
    public void Words_with_a_tag_in_them_are_no_page()
    {
        var read = RecipeRead.Of("Leek soup\nServes 4\n3 leeks\n1. Boil <b>gently</b> for 20 minutes.\n2. See <p class=x> on page 3.\n");
        Assert.Equal(["3 leeks"], read.Ingredients);
        Assert.Equal(["Boil <b>gently</b> for 20 minutes.", "See <p class=x> on page 3."], Steps(read));
    }

    [Fact]
    public void Words_with_tags_but_no_blocks_keep_their_lines()
    {
        var read = RecipeRead.Of("<b>Leek soup</b>\nServes 4\n3 leeks, or < 400 g &frac12; clean\n1. Boil <i>gently</i> for 20 minutes.\n");
        Assert.Equal(("Leek soup", 4), (read.Name, read.Serves));
        Assert.Equal(["3 leeks, or < 400 g ½ clean"], read.Ingredients);
        Assert.Equal(["Boil gently for 20 minutes."], Steps(read));
    }

    [Theory]
    [InlineData("<p>Boil 20 minutes.</p><p title=\"it never ends>Serve it hot.</p>", "Serve it hot.")]
    [InlineData("<p>Boil 20 minutes.</p><p title=don't>Serve it hot.</p>", "Serve it hot.")]
    [InlineData("<p>Boil 20 minutes.</p><p title=\"a>b\" / lang=en>Serve it hot.</p><", "Serve it hot.")]
    [InlineData("<p>Boil 20 minutes.</p><!-- not > this --><?php no ?><p>Serve it hot.</p>", "Serve it hot.")]
    public void Broken_tags_lose_no_words(string page, string words)
    {
        var read = RecipeRead.Of(page);
        Assert.Equal("Boil 20 minutes.", Steps(read).First());
        Assert.Contains(words, string.Concat(Steps(read).Concat(read.Unread)), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_beyond_the_longest_text_is_told()
    {
        var read = RecipeRead.Of($"Soup\nBoil 20 minutes.\n{new string('x', RecipeRead.Longest)}");
        Assert.Single(Steps(read), "Boil 20 minutes.");
        Assert.Contains(read.Unread, line => line.Contains("longer than 2,000,000 characters: the last 22 were not read", StringComparison.Ordinal));
    }

    // schema.org's own example of HowToSection and HowToStep, in form; the words are ours.
    [Theory]
    [InlineData("""<div itemprop="recipeInstructions" itemscope itemtype="https://schema.org/HowToSection"><h3 itemprop="name">Broth</h3><div itemprop="itemListElement" itemscope itemtype="https://schema.org/HowToStep"><b itemprop="name">Boil</b><span itemprop="text">Boil 20 minutes.</span></div><div itemprop="itemListElement" itemscope itemtype="https://schema.org/HowToStep"><span itemprop="text">Strain it.</span></div></div><div itemprop="recipeInstructions" itemscope itemtype="https://schema.org/HowToStep"><p itemprop="text">Serve.</p></div>""")]
    [InlineData("""<div itemprop="recipeInstructions"><p>Boil 20 minutes.</p><p>Strain it.</p>Serve.</div>""")]
    [InlineData("""<p itemprop="recipeInstructions">Boil 20 minutes.</p><p itemprop="recipeInstructions">Strain it.<p itemprop="recipeInstructions">Serve.""")]
    [InlineData("""<ol itemprop="recipeInstructions"><li itemprop="itemListElement" itemscope><b itemprop="name">Boil</b> <span itemprop="text">Boil 20 minutes.</span><li itemprop="itemListElement"><p>Strain it.<li itemprop="itemListElement">Serve.</ol>""")]
    [InlineData("""<ol itemprop="recipeInstructions"><li>Boil 20 <b>minutes</b>.<li>Strain it.</li><li>Serve.</ol>""")]
    public void Microdata_is_read_step_by_step(string instructions)
    {
        var read = RecipeRead.Of($"""
            <div itemscope itemtype="https://schema.org/Recipe"><p itemprop="author" itemscope>By <b itemprop="name">Maren</b></p><h1 itemprop="name">Soup</h1>
            <meta itemprop="recipeYield" content="4 bowls"><time itemprop="cookTime" datetime="PT20M">soon</time>
            <ul><li itemprop="recipeIngredient">3 <i>leeks</i></ul>{instructions}</div><p>Adverts take 9 minutes.</p>
            """);
        Assert.Equal(("Soup", 4, 20), (read.Name, read.Serves, read.Stated.Cook?.Likely));
        Assert.Equal(["3 leeks"], read.Ingredients);
        Assert.Equal(["Boil 20 minutes.", "Strain it.", "Serve."], Steps(read));
    }

    [Theory]
    [InlineData("<h1>Soup</h1><p>Boil 20 minutes.</p>", RecipeForm.UnmarkedPage)]
    [InlineData("<script type='application/ld+json'>{\"@type\":\"Recipe\",\"recipeInstructions\":\"Boil 20 minutes.\"}</script>", RecipeForm.Marked)]
    [InlineData("<div itemscope itemtype='http://schema.org/Recipe'><p itemprop=recipeInstructions>Boil 20 minutes.</div>", RecipeForm.Marked)]
    [InlineData("{\"@type\":\"Recipe\",\"recipeInstructions\":\"Boil 20 minutes.\"}", RecipeForm.Marked)]
    [InlineData("Soup\nBoil 20 minutes.", RecipeForm.PlainText)]
    [InlineData("[For Midwinter]\nBoil 20 minutes.", RecipeForm.PlainText)]
    public void It_says_what_a_recipe_was_read_from(string text, RecipeForm form)
    {
        var read = RecipeRead.Of(text);
        Assert.Equal((form, form == RecipeForm.Marked), (read.Form, read.IsMarked));
        Assert.Equal(["Boil 20 minutes."], Steps(read));
    }

    [Theory]
    [InlineData("""{"@type":"WebPage","name":"Our kitchen"}""")]
    [InlineData("""[{"bill": 1}, {"bill": 2}]""")]
    [InlineData("""{"@type":"Recipe","name":"Cut in the mid""")]
    public void Data_without_a_recipe_is_no_dish(string json)
    {
        var read = RecipeRead.Of(json);
        Assert.Equal(("", 0, 0, RecipeForm.OtherData), (read.Name, read.Ingredients.Length, read.Steps.Length, read.Form));
        Assert.Equal(["This is data, not words, and no recipe is marked in it; or it is not whole.", json], read.Unread);
    }
}
