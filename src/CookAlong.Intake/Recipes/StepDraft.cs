using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Intake.Recipes;

/// <summary>A step of a dish as it was read, before somebody has looked at it and corrected it.</summary>
public sealed class StepDraft
{
    /// <summary>Minutes of a step that names none; common practice, no source. It is marked as guessed.</summary>
    const int Guess = 5;

    /// <summary>Characters of a headline; the rest becomes how it is done.</summary>
    const int LongestHeadline = 70;

    /// <summary>The oven may stand this many °C beside what was said.</summary>
    public const int OvenEitherSide = 10;

    static readonly string[] handsAll = ["stirring", "whisk", "beat", "knead", "constantly", "frequently"];

    static readonly string[] waits = ["stand", "rest", "cool", "soak", "rise", "prove", "marinate", "overnight", "over night"];

    public required StepRead Read { get; init; }

    public required string Text { get; set; }

    public string? How { get; set; }

    public int Least { get; set; }

    public int Likely { get; set; }

    public int Most { get; set; }

    /// <summary>No time was said; the minutes are a guess.</summary>
    public bool IsGuessed { get; init; }

    /// <summary>The guess is not out of the air: it goes by what the recipe says of the whole.</summary>
    public bool IsByTheWhole { get; private set; }

    public CookedOn On { get; set; }

    /// <summary>Of the oven; null when it names none.</summary>
    public int? Celsius { get; set; }

    public Attention Attention { get; set; }

    /// <summary>An earlier step that goes on at the same time; null when it comes after all before it.</summary>
    public StepDraft? Beside { get; set; }

    /// <summary>Null when it wants none, and for a step that has somebody's hands anyway.</summary>
    public TendDraft? Tend { get; set; }

    public static StepDraft Of(StepRead read)
    {
        var takes = read.Times.Where(time => time.Role == TimeRole.Takes).ToList();
        var (least, most) = takes.Count == 0 ? (Guess, Guess) : (Whole(takes.Sum(time => time.Least)), Whole(takes.Sum(time => time.Most)));
        var oven = read.Heats.FirstOrDefault(heat => heat.Kind == HeatKind.Oven);
        var uses = takes.Count == 0 ? CookedOn.Nothing : read.On;
        var (headline, how) = Headline(read.Text);
        var attention = AttentionOf(read, uses, takes.Count > 0);
        return new StepDraft
        {
            Read = read,
            Text = headline,
            How = how,
            Least = least,
            Likely = Whole((least + most) / 2.0),
            Most = most,
            IsGuessed = takes.Count == 0,
            On = uses,
            Celsius = uses == CookedOn.Oven && oven is not null ? OvenScale.Usual.Conventional((int)(Math.Round((oven.Least + oven.Most) / 2 / 5) * 5), oven.IsFan) : null,
            Attention = attention,
            Tend = attention != Attention.HandsOn && TendDraft.Of(read) is { } tend && least > (tend.Every ?? 2) ? tend : null,
        };
    }

    /// <summary>A better guess: what the recipe says of the whole leaves so many minutes for this one.</summary>
    internal void TakesOfTheWhole(double minutes, CookedOn on)
    {
        (Least, Likely, Most) = (Whole(minutes), Whole(minutes), Whole(minutes));
        (On, Attention, IsByTheWhole) = (on, AttentionOf(Read, on, hasTime: on != CookedOn.Nothing), true);
    }

    static Attention AttentionOf(StepRead read, CookedOn uses, bool hasTime) =>
        !hasTime || handsAll.Any(word => read.Text.Contains(word, StringComparison.OrdinalIgnoreCase)) ? Attention.HandsOn
        : uses == CookedOn.Ring || uses == CookedOn.Grill ? Attention.Nearby
        : uses == CookedOn.Nothing && !Waits(read.Text) ? Attention.HandsOn
        : Attention.Unattended;

    static bool Waits(string text) =>
        waits.Any(word => text.Contains(word, StringComparison.OrdinalIgnoreCase));

    static (string Text, string? How) Headline(string text)
    {
        var end = text.IndexOfAny(['.', ';']);
        var cut = end > 0 && end <= LongestHeadline ? end : text.Length <= LongestHeadline ? text.Length : text.LastIndexOfAny([' ', ','], LongestHeadline) is > 0 and var space ? space : LongestHeadline;
        // Never between the two halves of one sign.
        cut -= cut > 1 && cut < text.Length && char.IsLowSurrogate(text[cut]) ? 1 : 0;
        var rest = text[cut..].Trim(' ', '.', ';', ',');
        return (text[..cut].Trim(), rest.Length > 0 ? rest : null);
    }

    static int Whole(double minutes) => Math.Max(1, (int)Math.Round(minutes, MidpointRounding.AwayFromZero));
}
