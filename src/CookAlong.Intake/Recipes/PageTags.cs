using System.Text;

namespace CookAlong.Intake.Recipes;

/// <summary>
/// A page without what makes reading it slow or says nothing of a recipe: scripts, styles, comments, most attributes, and tags deeper
/// than <see cref="Deepest"/>. One pass over the signs. What it writes is balanced and has only names that no parser treats
/// specially, so that a parser takes time linear in it (HTML's rules for misnested tags do not).
/// </summary>
sealed class PageTags
{
    /// <summary>Tags open at the same time; what is deeper keeps its words, each block as a line.</summary>
    public const int Deepest = 500;

    /// <summary>Inline tags looked through for a paragraph or a row that its author left open.</summary>
    const int LookedThrough = 8;

    readonly string page;
    readonly StringBuilder html = new();
    readonly List<(string Kind, string Written)> open = [];
    readonly Dictionary<string, int> counts = [];
    int beyond;

    PageTags(string page) => this.page = page;

    /// <summary>Balanced: "div" is any block, "span" anything inline, "nav" what is no text, "x-li", "x-tr", "x-td", "x-pre", "h1", "br" and "meta" themselves.</summary>
    public string Html => html.ToString();

    /// <summary>Texts of its scripts of type application/ld+json.</summary>
    public List<string> Data { get; } = [];

    /// <summary>Tags that lay too deep.</summary>
    public int Flattened { get; private set; }

    public bool HasBlocks { get; private set; }

    public static PageTags Read(string page)
    {
        var tags = new PageTags(page);
        tags.Read();
        return tags;
    }

    void Read()
    {
        var at = 0;
        while (at < page.Length)
        {
            var tag = page.IndexOf('<', at);
            Text(at, tag < 0 ? page.Length : tag);
            if (tag < 0 || Next(tag) is not { } after)
            {
                // A tag that never ends: the rest is words, none of them lost.
                Text(tag < 0 ? page.Length : tag, page.Length);
                break;
            }

            at = after;
        }

        while (open.Count > 0)
        {
            Pop();
        }
    }

    /// <returns>Where it goes on; null when the page ends within the tag.</returns>
    int? Next(int at)
    {
        if (PageTag.EndOfComment(page, at) is { } comment)
        {
            return comment;
        }

        if (at + 1 >= page.Length || !(char.IsAsciiLetter(page[at + 1]) || (page[at + 1] == '/' && at + 2 < page.Length && char.IsAsciiLetter(page[at + 2]))))
        {
            // "below < 100 °C".
            html.Append("&lt;");
            return at + 1;
        }

        if (PageTag.Read(page, at) is not { } tag)
        {
            return null;
        }

        if (tag.IsEnd)
        {
            Close(tag.Name);
            return tag.End;
        }

        if (tag.Name is not ("script" or "style" or "title" or "textarea"))
        {
            Open(tag);
            return tag.End;
        }

        var end = page.IndexOf($"</{tag.Name}", tag.End, StringComparison.OrdinalIgnoreCase);
        var content = page[tag.End..(end < 0 ? page.Length : end)];
        if (tag.Name == "script" && tag.Attributes.GetValueOrDefault("type")?.Trim().StartsWith("application/ld+json", StringComparison.OrdinalIgnoreCase) == true)
        {
            Data.Add(content);
        }
        else if (tag.Name == "textarea")
        {
            html.Append(content.Replace("<", "&lt;", StringComparison.Ordinal));
        }

        return end < 0 ? page.Length : end;
    }

    void Text(int from, int to)
    {
        for (var at = from; at < to; at++)
        {
            _ = page[at] == '<' ? html.Append("&lt;") : html.Append(page[at]);
        }
    }

    void Open(PageTag tag)
    {
        var kind = PageTag.KindOf(tag.Name);
        if (kind == "br")
        {
            HasBlocks = true;
            html.Append("<br>");
            return;
        }

        if (kind == "meta")
        {
            Write(tag, kind);
            return;
        }

        if (kind is null)
        {
            return;
        }

        if (kind != "span")
        {
            HasBlocks |= kind != "nav";
            CloseLeftOpen(tag.Name);
        }

        if (open.Count >= Deepest)
        {
            (beyond, Flattened) = (beyond + 1, Flattened + 1);
            html.Append(kind == "span" ? "" : "<br>");
            return;
        }

        Write(tag, kind);
        var key = kind == "span" ? kind : tag.Name;
        open.Add((key, kind));
        counts[key] = counts.GetValueOrDefault(key) + 1;
    }

    /// <summary>A paragraph ends where a block begins, an item at the next item, a cell at the next cell.</summary>
    void CloseLeftOpen(string name)
    {
        while (open.Count > 0)
        {
            var at = open.Count - 1;
            while (at > 0 && open.Count - at <= LookedThrough && open[at].Kind == "span")
            {
                at--;
            }

            if (!PageTag.Ends(name, open[at].Kind))
            {
                return;
            }

            PopTo(at);
        }
    }

    void Close(string name)
    {
        if (PageTag.KindOf(name) is not { } kind || kind is "br" or "meta")
        {
            return;
        }

        if (beyond > 0)
        {
            beyond--;
            html.Append(kind == "span" ? "" : "<br>");
            return;
        }

        var key = kind == "span" ? kind : name;
        if (key == "span" ? open.Count > 0 && open[^1].Kind == "span" : counts.GetValueOrDefault(key) > 0)
        {
            PopTo(open.FindLastIndex(one => one.Kind == key));
        }
    }

    void PopTo(int at)
    {
        while (open.Count > at)
        {
            Pop();
        }
    }

    void Pop()
    {
        var (kind, written) = open[^1];
        html.Append("</").Append(written).Append('>');
        counts[kind]--;
        open.RemoveAt(open.Count - 1);
    }

    void Write(PageTag tag, string kind)
    {
        html.Append('<').Append(kind);
        foreach (var (name, value) in tag.Attributes)
        {
            if (name is "itemprop" or "itemscope" or "itemtype" or "content" or "datetime")
            {
                html.Append(' ').Append(name).Append("=\"").Append(value.Replace("\"", "&quot;", StringComparison.Ordinal)).Append('"');
            }
        }

        html.Append('>');
    }
}
