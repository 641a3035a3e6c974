using System.Globalization;
using System.Text.RegularExpressions;

namespace CookAlong.Web.Tests.Architecture;

/// <summary>
/// Nothing flashes more than three times a second (WCAG 2.2, success criterion 2.3.1). What a script shows and hides by
/// its own clock is watched in a browser.
/// </summary>
public sealed partial class FlashTests
{
    /// <summary>Seconds of a third flash's time: an animation that repeats is no shorter.</summary>
    const double Shortest = 1.0 / 3;

    static IEnumerable<string> Styles => Sources.Files("src/CookAlong.Web", "*.css").Where(file => !file.Contains($"{Path.DirectorySeparatorChar}lib{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    [Fact]
    public void No_animation_of_a_style_sheet_is_that_short()
    {
        Assert.NotEmpty(Styles);
        Assert.Empty(Styles.SelectMany(file => TooShort(File.ReadAllText(file)).Select(found => $"{Path.GetFileName(file)}: {found}")));
    }

    [Theory]
    [InlineData("a { animation: blink 200ms infinite; }", true)]
    [InlineData("a { animation: blink .1s steps(2) infinite; }", true)]
    [InlineData("a { animation-duration: 0.2s; }", true)]
    [InlineData("a { animation: breathe 2s infinite; }", false)]
    [InlineData("a { animation: none !important; }", false)]
    public void A_short_one_is_found(string style, bool isFound) => Assert.Equal(isFound, TooShort(style).Any());

    [Fact]
    public void No_script_animates_by_itself() =>
        Assert.Empty(Sources.Files("src/CookAlong.Web/wwwroot/js", "*.js").Where(file => Animates().IsMatch(File.ReadAllText(file))).Select(Path.GetFileName));

    static IEnumerable<string> TooShort(string style) =>
        from declared in Animation().Matches(style)
        let lengths = Length().Matches(declared.Value).Select(Seconds).ToList()
        where lengths.Count > 0 && lengths[0] < Shortest
        select declared.Value;

    /// <summary>The first length of an animation is how long it lasts; a second one is its delay.</summary>
    static double Seconds(Match length) => double.Parse(length.Groups[1].Value, CultureInfo.InvariantCulture) / (length.Groups[2].Value == "ms" ? 1000 : 1);

    [GeneratedRegex(@"\banimation(-duration)?\s*:[^;}]*")]
    private static partial Regex Animation();

    [GeneratedRegex(@"(?<![\w.])(\d*\.?\d+)(ms|s)\b")]
    private static partial Regex Length();

    [GeneratedRegex(@"\.animate\(|startViewTransition")]
    private static partial Regex Animates();
}
