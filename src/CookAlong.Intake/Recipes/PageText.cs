using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using CookAlong.Domain.Quantities;

namespace CookAlong.Intake.Recipes;

/// <summary>The words of a page or a part of it, a line for each block of text, as its reader sees them.</summary>
sealed class PageText
{
    /// <summary>Words of a cell that is only an amount: "200 g", "1 1/2 cups".</summary>
    const int LongestAmount = 20;

    readonly List<string> lines = [];
    readonly StringBuilder line = new();
    readonly bool keepsBreaks;

    PageText(bool keepsBreaks) => this.keepsBreaks = keepsBreaks;

    public static INode Parse(PageTags page) => new HtmlParser().ParseDocument($"<!doctype html><body>{page.Html}").Body!;

    /// <summary>Of a text that has tags or signs by name in it ("&amp;deg;"): its words.</summary>
    public static string Plain(string text)
    {
        if (!text.Contains('<', StringComparison.Ordinal) && !text.Contains('&', StringComparison.Ordinal))
        {
            return text;
        }

        var page = PageTags.Read(text);
        return string.Join('\n', Lines(Parse(page), keepsBreaks: !page.HasBlocks));
    }

    /// <param name="keepsBreaks">The source's own lines count: it has no blocks.</param>
    public static List<string> Lines(INode node, bool keepsBreaks = false)
    {
        var text = new PageText(keepsBreaks);
        text.Children(node, keepsBreaks);
        text.End();
        return text.lines;
    }

    void Children(INode node, bool isKept)
    {
        foreach (var child in node.ChildNodes)
        {
            if (child is IText words)
            {
                Words(words.Data, isKept);
            }
            else if (child is IElement element)
            {
                Element(element, isKept);
            }
        }
    }

    void Element(IElement element, bool isKept)
    {
        switch (element.LocalName)
        {
            case "nav" or "meta": break;
            case "span": Children(element, isKept); break;
            case "x-td" when IsAmount():
                // A table of amounts and names: one line for both.
                line.Append(' ');
                Children(element, isKept);
                break;
            case "x-td":
                End();
                Children(element, isKept);
                break;
            default:
                End();
                Children(element, isKept || element.LocalName == "x-pre");
                End();
                break;
        }
    }

    void Words(string words, bool isKept)
    {
        foreach (var sign in words)
        {
            if (isKept && sign is '\n' or '\r')
            {
                End();
            }
            else if (!char.IsWhiteSpace(sign))
            {
                line.Append(sign);
            }
            else if (line.Length > 0 && line[^1] != ' ')
            {
                line.Append(' ');
            }
        }
    }

    bool IsAmount() => line.Length is > 0 and <= LongestAmount && Token.Read(line.ToString()) is var tokens && IngredientAmount.At(tokens, 0, SpoonSizes.Metric) is { Least: not null } amount && amount.Next == tokens.Count;

    void End()
    {
        var text = line.ToString().Trim();
        line.Clear();
        if (text.Length > 0)
        {
            lines.Add(text);
        }
    }
}
