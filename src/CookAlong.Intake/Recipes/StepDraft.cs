using CookAlong.Domain.Meals;
using CookAlong.Domain.Quantities;

namespace CookAlong.Intake.Recipes;

/// <summary>A step of a dish as it was read, before somebody has looked at it and corrected it.</summary>
public sealed class StepDraft
{
    /// <summary>Minutes of a step that names none; common practice, no source. It is marked as guessed.</summary>
    const int Guess = 5;

    /// <summary>Minutes; thirty days, as of a single time that is read.</summary>
    const int Longest = 30 * 24 * 60;

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

    /// <summary>Null when the time does not go by weight.</summary>
    public TimeByWeight? ByWeight { get; private init; }

    /// <summary>As it was read, to tell what a person corrected.</summary>
    (int Least, int Likely, int Most, CookedOn On, int? Celsius) first;

    public Sureness TimeFrom =>
        (Least, Likely, Most) != (first.Least, first.Likely, first.Most) ? Sureness.Corrected
        : IsGuessed ? Sureness.Guessed
        : Read.Times.Where(time => time.Role == TimeRole.Takes).Any(time => Read.Text.AsSpan(time.At, time.Length).StartsWith("over", StringComparison.OrdinalIgnoreCase)) ? Sureness.Usual
        : Sureness.Read;

    /// <summary>Of the oven's temperature.</summary>
    public Sureness HeatFrom =>
        Celsius != first.Celsius ? Sureness.Corrected
        : Celsius is null ? Sureness.Guessed
        : Read.Heats.First(heat => heat.Kind == HeatKind.Oven).Unit == HeatUnit.Words ? Sureness.Usual
        : Sureness.Read;

    public Sureness PlaceFrom => On != first.On ? Sureness.Corrected : On != Read.On ? Sureness.Guessed : CookedOnWords.Says(Read.Text, On);

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

    public static StepDraft Of(StepRead read) => Of(read, []);

    internal static StepDraft Of(StepRead read, IReadOnlyList<MainFood> foods)
    {
        var takes = read.Times.Where(time => time.Role == TimeRole.Takes).ToList();
        var byWeight = TimeByWeight.Of(read, foods);
        var hasTime = takes.Count > 0 || byWeight is not null;
        var (least, most) = hasTime ? (Whole(takes.Sum(time => time.Least) + (byWeight?.LeastMinutes ?? 0)), Whole(takes.Sum(time => time.Most) + (byWeight?.MostMinutes ?? 0))) : (Guess, Guess);
        var oven = read.Heats.FirstOrDefault(heat => heat.Kind == HeatKind.Oven);
        var uses = hasTime ? read.On : CookedOn.Nothing;
        var (headline, how) = Headline(read.Text);
        var attention = AttentionOf(read, uses, hasTime);
        var draft = new StepDraft
        {
            Read = read,
            Text = headline,
            How = how,
            Least = least,
            Likely = Whole((least + most) / 2.0),
            Most = most,
            IsGuessed = !hasTime || byWeight is { Food: null },
            ByWeight = byWeight,
            On = uses,
            Celsius = uses == CookedOn.Oven && oven is not null ? OvenScale.Usual.Conventional((int)(Math.Round((oven.Least + oven.Most) / 2 / 5) * 5), oven.IsFan) : null,
            Attention = attention,
            Tend = attention != Attention.HandsOn && TendDraft.Of(read) is { } tend && least > (tend.Every ?? 2) ? tend : null,
        };
        draft.Remember();
        return draft;
    }

    void Remember() => first = (Least, Likely, Most, On, Celsius);

    /// <summary>A better guess: what the recipe says of the whole leaves so many minutes for this one.</summary>
    internal void TakesOfTheWhole(double minutes, CookedOn on)
    {
        (Least, Likely, Most) = (Whole(minutes), Whole(minutes), Whole(minutes));
        (On, Attention, IsByTheWhole) = (on, AttentionOf(Read, on, hasTime: on != CookedOn.Nothing), true);
        Remember();
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

    static int Whole(double minutes) => Math.Clamp((int)Math.Round(minutes, MidpointRounding.AwayFromZero), 1, Longest);
}
