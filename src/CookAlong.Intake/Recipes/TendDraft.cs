namespace CookAlong.Intake.Recipes;

/// <summary>A short job inside a step: "basting every 15 minutes", "turning once".</summary>
/// <param name="Text">What to do.</param>
/// <param name="Every">Minutes between two of them; null = once, at half time.</param>
public sealed record TendDraft(string Text, int? Every)
{
    static readonly (string Begins, string Text)[] jobs =
        [("bast", "Baste"), ("stir", "Stir"), ("turn", "Turn it"), ("skim", "Skim"), ("shak", "Shake the pan"), ("brush", "Brush with the glaze"), ("top", "Top up the water")];

    /// <summary>Null when the step wants none.</summary>
    public static TendDraft? Of(StepRead read)
    {
        var tokens = Token.Read(read.Text);
        var job = jobs.FirstOrDefault(one => tokens.Any(token => token.Text.StartsWith(one.Begins, StringComparison.Ordinal)));
        if (read.Times.FirstOrDefault(time => time.Role == TimeRole.Every) is { Least: >= 1 } every)
        {
            return new TendDraft(job.Text ?? "See to it", (int)every.Least);
        }

        var turns = tokens.FindIndex(token => token.Text.StartsWith("turn", StringComparison.Ordinal));
        return turns >= 0 && tokens.Skip(turns).Take(4).Any(token => token.Is("once", "halfway", "over")) ? new TendDraft("Turn it", Every: null) : null;
    }
}
