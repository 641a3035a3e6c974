namespace CookAlong.Web.Features.Api.Tokens;

/// <summary>What a token may be good for. The names stand in households' tokens and scripts: they never change.</summary>
/// <param name="Name">As the token and the documentation have it.</param>
/// <param name="Words">What it lets a program do, for whoever ticks it.</param>
public sealed record ApiScope(string Name, string Words)
{
    public const string MealsRead = "meals:read", MealsWrite = "meals:write", Plans = "plans", RunsRead = "runs:read", RunsWrite = "runs:write", Readings = "readings", Shopping = "shopping";

    public static IReadOnlyList<ApiScope> All { get; } =
    [
        new(MealsRead, "Read the meals"),
        new(MealsWrite, "Add, change and delete meals"),
        new(Plans, "Make plans and read them"),
        new(RunsRead, "See what is cooked now, and its calls"),
        new(RunsWrite, "Start cooking, and tap in your name"),
        new(Readings, "Note readings of a thermometer"),
        new(Shopping, "Read the shopping lists and tick them off"),
    ];
}
