namespace CookAlong.Web.Features.Meals;

/// <summary>What a file to take away is called.</summary>
public static class FileNames
{
    /// <summary>Letters, digits and hyphens: good for every system, and nothing that a header or a shell would mind. Without an ending.</summary>
    public static string Of(string name)
    {
        var words = string.Concat(name.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-'));
        return string.Join('-', words.Split('-', StringSplitOptions.RemoveEmptyEntries)) is { Length: > 0 } good ? good : "meal";
    }
}
