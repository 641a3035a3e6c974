namespace CookAlong.Web.Features.Live.Door;

/// <summary>What the door says.</summary>
static class JoinWords
{
    public const string NameNeeded = "Say who you are: a name of 1 to 40 letters.";
    public const string TooManyTries = "Too many wrong codes from here. Wait a minute, then type the code that is on the host's screen now.";
    public const string OutAlready = "That screen was out already.";
    public const string WrongCode = "That code is not good. Each is for one person and ten minutes; ask the host for a new one.";

    public static string IsOut(string name) => $"{name} is out. The screen is signed out, and the jobs are free to take.";
}
