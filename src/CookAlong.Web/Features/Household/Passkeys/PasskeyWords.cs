using System.Diagnostics;

namespace CookAlong.Web.Features.Household.Passkeys;

/// <summary>What is said of passkeys.</summary>
static class PasskeyWords
{
    public const string NoName = "Passkeys need a name in the address, not a number such as 192.168.1.20. Open the kitchen by its name.";

    public const string NotKnown = "That passkey does not open this kitchen. Sign in with your password, and add the passkey on your account's page.";

    public static string Of(PasskeyAnswer answer) => answer switch
    {
        PasskeyAnswer.NeedsName => $"Give the passkey a name of 1 to {PasskeyBook.LongestName} letters.",
        PasskeyAnswer.TooMany => $"You have {PasskeyBook.Most} passkeys. Remove one that you do not use.",
        PasskeyAnswer.TooLate => "That took too long, or was answered already. Try again.",
        PasskeyAnswer.Wrong => "The device's answer does not fit what was asked. Try again.",
        PasskeyAnswer.Good => throw new UnreachableException("nothing is said of what went well"),
        _ => throw new UnreachableException($"no words for {answer}"),
    };
}
