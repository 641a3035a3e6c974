using System.Collections.Frozen;

namespace CookAlong.Intake.Recipes;

/// <summary>A tag of a page.</summary>
/// <param name="Name">In lower case.</param>
/// <param name="Attributes">As written, by name in lower case; the first of each.</param>
/// <param name="End">The sign after it.</param>
sealed record PageTag(string Name, bool IsEnd, Dictionary<string, string> Attributes, int End)
{
    const string Spaces = " \t\r\n\f";

    static readonly FrozenDictionary<string, string> kinds = Kinds();

    static readonly FrozenDictionary<string, string[]> ends = new Dictionary<string, string[]>
    {
        ["li"] = ["p", "li"],
        ["dt"] = ["p", "dt", "dd"],
        ["dd"] = ["p", "dt", "dd"],
        ["td"] = ["p", "td", "th"],
        ["th"] = ["p", "td", "th"],
        ["tr"] = ["p", "td", "th", "tr"],
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Written as what; null for a tag that says nothing and whose words count.</summary>
    public static string? KindOf(string name) => kinds.GetValueOrDefault(name);

    /// <summary>Whether a block of this name ends one of the other that nobody closed.</summary>
    public static bool Ends(string name, string open) => ends.TryGetValue(name, out var all) ? all.Contains(open) : open == "p";

    /// <summary>Null where the page ends before the tag does (WHATWG HTML, "tokenization", attributes).</summary>
    public static PageTag? Read(string page, int at)
    {
        var isEnd = page[at + 1] == '/';
        var next = at + (isEnd ? 2 : 1);
        var name = page[next..(next = Until(page, next, "/>"))].ToLowerInvariant();
        var attributes = new Dictionary<string, string>(StringComparer.Ordinal);
        while (true)
        {
            next = Skip(page, next, "/");
            if (next >= page.Length)
            {
                return null;
            }

            if (page[next] == '>')
            {
                return new PageTag(name, isEnd, attributes, next + 1);
            }

            var attribute = page[next..(next = Until(page, next + 1, "/>="))].ToLowerInvariant();
            var equals = Skip(page, next, "");
            if (equals >= page.Length || page[equals] != '=')
            {
                attributes.TryAdd(attribute, "");
                continue;
            }

            next = Skip(page, equals + 1, "");
            if (next >= page.Length)
            {
                return null;
            }

            var isQuoted = page[next] is '"' or '\'';
            var end = isQuoted ? page.IndexOf(page[next], next + 1) : Until(page, next, ">");
            if (end < 0)
            {
                return null;
            }

            attributes.TryAdd(attribute, page[(isQuoted ? next + 1 : next)..end]);
            next = isQuoted ? end + 1 : end;
        }
    }

    /// <summary>The end of a comment, a declaration or an instruction; null where there is none. One that never ends takes the rest.</summary>
    public static int? EndOfComment(string page, int at)
    {
        if (at + 1 >= page.Length || page[at + 1] is not ('!' or '?'))
        {
            return null;
        }

        var isComment = string.CompareOrdinal(page, at, "<!--", 0, 4) == 0;
        var end = isComment ? page.IndexOf("-->", at + 2, StringComparison.Ordinal) : page.IndexOf('>', at);
        return end < 0 ? page.Length : end + (isComment ? 3 : 1);
    }

    static int Until(string page, int at, string signs)
    {
        while (at < page.Length && !signs.Contains(page[at], StringComparison.Ordinal) && !Spaces.Contains(page[at], StringComparison.Ordinal))
        {
            at++;
        }

        return at;
    }

    static int Skip(string page, int at, string signs)
    {
        while (at < page.Length && (Spaces.Contains(page[at], StringComparison.Ordinal) || signs.Contains(page[at], StringComparison.Ordinal)))
        {
            at++;
        }

        return at;
    }

    static FrozenDictionary<string, string> Kinds()
    {
        var all = new Dictionary<string, string>(StringComparer.Ordinal);
        Add("div", "address article aside blockquote caption center details dialog dd div dl dt fieldset figcaption figure header h2 h3 h4 h5 h6 legend main menu ol p section summary table tbody tfoot thead ul");
        Add("span", "a abbr b bdi bdo big cite code data del dfn em font i ins kbd label mark q s samp small span strike strong sub sup time tt u var");
        // What a page has beside its words, and what only a program would show.
        Add("nav", "nav footer button select datalist svg math object video audio canvas iframe noscript noframes noembed template");
        Add("br", "br hr");
        (all["h1"], all["li"], all["tr"], all["td"], all["th"], all["pre"], all["meta"]) = ("h1", "x-li", "x-tr", "x-td", "x-td", "x-pre", "meta");
        return all.ToFrozenDictionary(StringComparer.Ordinal);

        void Add(string kind, string names)
        {
            foreach (var name in names.Split(' '))
            {
                all[name] = kind;
            }
        }
    }
}
