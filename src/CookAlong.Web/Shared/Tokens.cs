using System.Collections.Frozen;
using System.Text.RegularExpressions;

namespace CookAlong.Web.Shared;

/// <summary>The token files as the pages have it, for what cannot read CSS: names without their dashes ("ink"), values as written ("#241f1a").</summary>
public sealed partial class Tokens
{
    Tokens(FrozenDictionary<string, string> values) => Values = values;

    public static Tokens Light { get; } = Read("tokens.css");

    public static Tokens Dark { get; } = Read("night.css");

    public FrozenDictionary<string, string> Values { get; }

    /// <exception cref="KeyNotFoundException">The file has no such token.</exception>
    public string this[string name] => Values[name];

    static Tokens Read(string file)
    {
        using var stream = typeof(Tokens).Assembly.GetManifestResourceStream(file)!;
        var css = new StreamReader(stream).ReadToEnd();
        var from = css.IndexOf("\n:root {", StringComparison.Ordinal);
        var block = css[from..css.IndexOf('}', from)];
        return new Tokens(Declaration().Matches(block).ToFrozenDictionary(one => one.Groups["name"].Value, one => one.Groups["value"].Value));
    }

    [GeneratedRegex(@"^\s*--(?<name>[a-z0-9-]+):\s*(?<value>[^;]+);", RegexOptions.Multiline)]
    private static partial Regex Declaration();
}
