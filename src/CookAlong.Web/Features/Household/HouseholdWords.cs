using System.Diagnostics;

namespace CookAlong.Web.Features.Household;

/// <summary>Sentences of signing in and of accounts.</summary>
static class HouseholdWords
{
    public const string WrongNameOrPassword = "That name and password do not belong together. Try again.";

    public const string OnceMore = "Sign in once more to change what opens this kitchen.";

    public const string InvitationGone = "That invitation is not good any more: each is for one person and a day. Ask for a new one.";

    public const string NoHostYet = "This household has no host cook yet. The server's log shows the address that makes the first account.";

    public static string TooManyTries(TimeSpan wait) => wait < TimeSpan.FromMinutes(1)
        ? $"Too many wrong tries. Try again in {Math.Ceiling(wait.TotalSeconds)} s."
        : $"Too many wrong tries. Try again in {Math.Ceiling(wait.TotalMinutes)} min.";

    public static string TooFast(TimeSpan wait) => $"That was a lot at once for this machine. Nothing is lost; go on in {Math.Ceiling(wait.TotalSeconds)} s.";

    public static string Of(AccountFault fault) => fault switch
    {
        AccountFault.Name => $"Give the name you go by in the kitchen, at most {Accounts.LongestName} characters.",
        AccountFault.NameTaken => "Somebody here has that name already. Take another.",
        AccountFault.WrongSecret => "That secret is not the one in the server's log. Open the whole address that the log shows; each start of the server makes a new one.",
        AccountFault.WrongPassword => "The password you have now is another. Try again.",
        AccountFault.Password { Fault: var weak } => weak switch
        {
            PasswordFault.TooShort => $"The password needs at least {Passwords.Least} characters; {Passwords.Suggested} or more are better. Several plain words do well.",
            PasswordFault.TooLong => $"The password may have at most {Passwords.Most} characters.",
            PasswordFault.TooWellKnown => "That password is among the first that anybody would try. Take another; several plain words do well.",
            PasswordFault.IsTheName => "The password is little more than your name. Take another; several plain words do well.",
            _ => throw new UnreachableException($"no words for {weak}"),
        },
        _ => throw new UnreachableException($"no words for {fault}"),
    };
}
