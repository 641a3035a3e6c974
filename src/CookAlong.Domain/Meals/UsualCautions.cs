using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Meals;

/// <summary>
/// What can hurt somebody at a step that says nothing of it, by its words and what it needs. That an oven is hot goes without saying.
/// Common practice, no source.
/// </summary>
public static class UsualCautions
{
    static readonly (string[] Words, string Caution)[] byWords =
    [
        (["fry", "frying", "deepfry", "dripping", "baste", "basting", "sear", "saute"], "Hot fat: keep water away, and never put it on burning fat."),
        (["carve", "chop", "slice", "dice", "shred", "mince", "quarter", "halve", "peel", "cut", "grate"], "Sharp blade: fingertips tucked in."),
        (["drain", "strain", "steam", "blanch"], "Steam scalds: tip the pan away from you."),
        (["foil"], "Keep foil away from gas flames."),
    ];

    static readonly string[] blades = ["knife", "carve"];

    /// <summary>The step's own, or the usual one; null where nothing is sharp or hot, and for steps that somebody has said are safe for a child.</summary>
    public static string? Of(Step step)
    {
        if (step.Caution is not null || step.ChildSafe)
        {
            return step.Caution;
        }

        var words = FoodNames.Words($"{step.Text} {step.How}");
        var cautions = byWords.Where(one => one.Words.Intersect(words).Any()).Select(one => one.Caution).ToList();
        if (step.Needs.Intersect(blades).Any())
        {
            cautions.Add(byWords[1].Caution);
        }

        return cautions.Count > 0 ? string.Join(" ", cautions.Distinct().Take(2)) : null;
    }
}
