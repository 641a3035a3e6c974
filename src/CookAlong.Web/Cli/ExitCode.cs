namespace CookAlong.Web.Cli;

/// <summary>What a verb of the house returns. The planning verbs have codes of their own, told in their help.</summary>
static class ExitCode
{
    public const int Done = 0;
    public const int Failed = 1;
    public const int BadInput = 2;
}
