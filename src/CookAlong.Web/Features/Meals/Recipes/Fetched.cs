namespace CookAlong.Web.Features.Meals.Recipes;

/// <summary>What came of fetching a page.</summary>
public abstract record Fetched
{
    Fetched()
    {
    }

    /// <param name="At">Where it was in the end.</param>
    public sealed record Page(Uri At, string Text) : Fetched;

    /// <param name="About">The host, the kind of file or what was typed.</param>
    public sealed record Not(WhyNotFetched Why, string About) : Fetched;
}

public enum WhyNotFetched
{
    NoAddress,
    NotPublic,
    NotAllowed,
    NoAnswer,
    Refused,
    TooManyRedirects,
    TooSlow,
    TooLarge,
    NoText,
}

/// <summary>Why there is no page, and what to do instead.</summary>
static class FetchedWords
{
    const string Instead = "Open the page in a browser and paste it here, or bring it in as a file.";

    public static string Of(Fetched.Not not) => not.Why switch
    {
        WhyNotFetched.NoAddress => $"“{not.About}” is not the address of a web page. It begins with https:// and has no name or password in it.",
        WhyNotFetched.NotPublic => $"“{not.About}” is not on the public internet. Pages of the home network are not fetched from here. {Instead}",
        WhyNotFetched.NotAllowed => $"“{not.About}” is none of the sites that this server is set to fetch from (--recipe-sites). {Instead}",
        WhyNotFetched.NoAnswer => $"“{not.About}” does not answer. Look whether the address is right and this machine has internet. {Instead}",
        WhyNotFetched.Refused => $"The page was not given to us ({not.About}). {Instead}",
        WhyNotFetched.TooManyRedirects => $"“{not.About}” leads on and on. {Instead}",
        WhyNotFetched.TooSlow => $"“{not.About}” took longer than 5 seconds. Try again, or: {Instead}",
        WhyNotFetched.TooLarge => $"The page at “{not.About}” is larger than 2 MB. {Instead}",
        WhyNotFetched.NoText => $"That is no page of text but “{not.About}”. Name the page that has the recipe's words on it.",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
