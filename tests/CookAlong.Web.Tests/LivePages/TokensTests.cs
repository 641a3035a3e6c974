using CookAlong.Web.Shared;

namespace CookAlong.Web.Tests.LivePages;

public sealed class TokensTests
{
    static readonly string[] Grounds = ["ground", "ground-2", "surface"];

    static IEnumerable<(string Theme, Tokens Tokens)> Themes => [("light", Tokens.Light), ("dark", Tokens.Dark)];

    // WCAG 2.2, success criterion 1.4.3: 4.5:1 for text.
    [Fact]
    public void Every_text_can_be_read_on_every_ground_it_stands_on()
    {
        (string Text, string Ground)[] pairs =
        [
            .. from ground in Grounds
               from text in People.Concat(["ink", "ink-2", "action", "pause"])
               select (text, ground),
            ("on-bar", "bar"), ("on-bar-2", "bar"), ("on-iron", "iron"), ("on-iron-2", "iron"), ("glow", "iron"),
            ("on-heat", "heat-2"), ("on-heat", "heat-left"), ("on-call", "call"), ("on-medium", "medium"), ("on-low", "low"),
            ("on-done", "done"), ("on-calm", "calm"), ("on-tight", "tight"), ("on-caution", "caution"), ("on-pause", "pause"), ("on-action", "action"),
            ("medium-edge", "surface"),
            .. People.Select(person => ("on-person", person)),
        ];
        Assert.Empty(Failing(pairs, least: 4.5));
    }

    // WCAG 2.2, 1.4.3 for large text (24 px, or 18.66 px bold) and 1.4.11 for what is not text: 3:1.
    [Fact]
    public void Every_outline_and_large_text_stands_out()
    {
        (string Mark, string Ground)[] pairs =
        [
            .. from ground in Grounds
               from mark in new[] { "edge", "focus", "call-edge", "medium-edge", "low-edge", "done" }
               select (mark, ground),
            ("on-heat", "heat"), ("heat", "iron"), ("shelf", "iron"), ("focus", "surface"),
        ];
        Assert.Empty(Failing(pairs, least: 3));
    }

    // No standard gives a least distance; these are ours, and a person's shape and name always stand beside the colour.
    [Fact]
    public void People_are_told_apart_by_colour_under_three_kinds_of_colour_vision()
    {
        var close =
            from theme in Themes
            from eye in Colour.Eyes
            from one in Enumerable.Range(0, 8)
            from other in Enumerable.Range(one + 1, 7 - one)
            let distance = Colour.Distance(theme.Tokens[$"person-{one}"], theme.Tokens[$"person-{other}"], eye.Value)
            where distance < (other < 4 ? 8 : 3.5)
            select $"{theme.Theme}, {eye.Key}: person {one} and {other} are {distance:0.0} apart";
        Assert.Empty(close);
    }

    [Fact]
    public void Every_dark_token_has_a_light_one() =>
        Assert.Empty(Tokens.Dark.Values.Keys.Except(Tokens.Light.Values.Keys));

    static IEnumerable<string> People => Enumerable.Range(0, 8).Select(mark => $"person-{mark}");

    static IEnumerable<string> Failing((string Text, string Ground)[] pairs, double least) =>
        from theme in Themes
        from pair in pairs
        let contrast = Colour.Contrast(theme.Tokens[pair.Text], theme.Tokens[pair.Ground])
        where contrast < least
        select $"{theme.Theme}: {pair.Text} on {pair.Ground} is {contrast:0.00}:1";
}
