namespace CookAlong.Web.Features.Api.Tokens;

/// <summary>Sentences about tokens on the account's page.</summary>
static class TokenWords
{
    public const string NoName = "Give the token a name by which you will know it, of at most 60 letters.";

    public const string NoScope = "Tick at least one thing that the token is to be good for.";

    public static string TooMany(int most) => $"You have {most} tokens. Revoke one that nothing uses any more.";
}
