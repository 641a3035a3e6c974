namespace CookAlong.Web.Features.Live.Wording;

// What a rehearsal says of itself, on every screen.
public sealed partial class Words
{
    public const string Rehearsal = "Rehearsal";

    public const string EndRehearsal = "End the rehearsal";

    public const string RehearsalCallsNobody = "A rehearsal calls no locked phone and no speakers of the household: its calls stay on the page.";

    public const string Rehearsing = "Simulated hands do the jobs; nothing is being cooked.";

    /// <param name="rate">1 to 120.</param>
    public static string Speed(int rate) => $"{rate}× speed";
}
