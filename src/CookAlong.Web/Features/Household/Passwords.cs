namespace CookAlong.Web.Features.Household;

/// <summary>
/// What a password must be. After OWASP ASVS 5.0.0, 6.2.1 to 6.2.9: at least 8 characters (15 suggested), at least 64 allowed,
/// no rules of composition, well-known ones refused. NIST SP 800-63B-4, 3.1.1.2, asks for 15 where a password is all there is.
/// </summary>
public static class Passwords
{
    public const int Least = 8;
    public const int Suggested = 15;

    /// <summary>A bound on work, not on taste: hashing megabytes is a way to stop a server.</summary>
    public const int Most = 200;

    // What people try first here; what they try everywhere is in KnownPasswords, and repeats and runs ("11111111", "abcdefgh") are found by rule.
    static readonly HashSet<string> WellKnown = new(StringComparer.OrdinalIgnoreCase)
    {
        "password", "password1", "password12", "password123", "passw0rd", "p@ssw0rd", "p@ssword", "mypassword", "newpassword",
        "qwertyui", "qwertyuiop", "qwerty12", "qwerty123", "qwerty1234", "1q2w3e4r", "1q2w3e4r5t", "1qaz2wsx", "zaq12wsx", "asdfghjk", "asdfghjkl", "zxcvbnm1",
        "iloveyou", "iloveyou1", "letmein1", "letmein123", "welcome1", "welcome123", "trustno1", "sunshine", "princess", "football", "baseball", "superman",
        "changeme", "changeme1", "admin123", "admin1234", "administrator", "default1", "secret123", "whatever", "computer", "internet", "starwars",
        "dinnertime", "kitchen1", "kitchen123", "cooking1", "cookalong", "cookalong1", "cook-along", "household", "rosemary",
    };

    /// <summary>Null when it will do.</summary>
    public static PasswordFault? FaultOf(string password, string name)
    {
        var length = password.EnumerateRunes().Count();
        return length < Least ? PasswordFault.TooShort
            : length > Most ? PasswordFault.TooLong
            : WellKnown.Contains(password) || KnownPasswords.Holds(password) || IsRepeat(password) || IsRun(password) ? PasswordFault.TooWellKnown
            : HoldsName(password, name) ? PasswordFault.IsTheName
            : null;
    }

    // "aaaaaaaa", "abababab", "12341234": one short piece over and over.
    static bool IsRepeat(string text) =>
        Enumerable.Range(1, 4).Any(piece => text.Length > piece && Enumerable.Range(piece, text.Length - piece).All(at => text[at] == text[at - piece]));

    // "12345678", "hgfedcba"; "90" counts as going on, as it does on a keyboard.
    static bool IsRun(string text)
    {
        static int Step(char from, char to) => from == '9' && to == '0' ? 1 : to - from;
        var first = Step(text[0], text[1]);
        return Math.Abs(first) == 1 && Enumerable.Range(1, text.Length - 1).All(at => Step(text[at - 1], text[at]) == first);
    }

    static bool HoldsName(string password, string name) =>
        name.Length >= 3 && password.Contains(name, StringComparison.OrdinalIgnoreCase) && password.Length - name.Length < Least / 2;
}

public enum PasswordFault { TooShort, TooLong, TooWellKnown, IsTheName }
