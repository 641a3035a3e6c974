namespace CookAlong.Web.Features.Household.Account;

/// <summary>Sentences of the account's page.</summary>
static class AccountWords
{
    /// <summary>What was done, as the address of the page says it.</summary>
    public const string PasswordChanged = "password", PasskeyRemoved = "passkey", SessionEnded = "device", OthersEnded = "devices", HostRemoved = "host", TokenRevoked = "token";

    public const string LastHost = "The last host cannot be removed: nobody could open this kitchen any more. Invite another first.";

    /// <summary>Null for a word that no page of ours says.</summary>
    public static string? Done(string? word) => word switch
    {
        PasswordChanged => "The password is changed. Every other device of yours is signed out.",
        PasskeyRemoved => "The passkey is removed here. Remove it from the device too: there it is only of no use.",
        SessionEnded => "That device is signed out.",
        OthersEnded => "Every other device of yours is signed out.",
        HostRemoved => "They are no host here any more, and signed out everywhere.",
        TokenRevoked => "That token is revoked. Whatever used it is refused from now on.",
        _ => null,
    };

    /// <summary>"2 other devices".</summary>
    public static string Others(int count) => count == 1 ? "1 other device" : $"{count} other devices";

    /// <summary>The way to sign in and come back.</summary>
    public const string SignInAgain = $"/sign-in?{SignInEndpoints.ReturnParameter}=%2Faccount";
}
