using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Debrief;
using CookAlong.Domain.Debrief.Learning;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Dishes;
using CookAlong.Web.Features.Live.Wording;
using CookAlong.Web.Features.Settings;

namespace CookAlong.Web.Features.Debrief;

/// <summary>Every sentence of the debrief.</summary>
/// <param name="meal">As the run began.</param>
public sealed class DebriefWords(Meal meal)
{
    public const string Rehearsed = "This was a rehearsal: its people and its slips were made up, and nothing is learned from it.";

    public static readonly string NoPicture = $"That is no JPEG, PNG or WebP picture of {CookAlong.Intake.Photos.Photo.LargestFile >> 20} MB at the most. Nothing was kept.";

    public static readonly string EnoughPictures = $"A dish has {Pictures.DebriefPhotos.MostOfDish} pictures at the most. Delete one first.";

    public const string Invented = "Nobody cooked this: it is an invented meal that came with the demo, so that there is something to look back on.";

    public const string Fresh = "Somebody should carry less next time: the plan can share work otherwise, or another pair of hands can come.";

    public const string Fair = "Nobody carried much more than their part.";

    public const string WhatIsTimed = "Only work of hands is timed, from “Start” to “Done”. What the oven takes, what was only ticked off at the end, and times in which everything was held, are left out.";

    public const string NotThatDay = "It cannot be on that day: choose one that is still to come, on which its times exist.";

    readonly WallClock clock = new(meal.TimeZone);

    public string Step(StepId id) => meal.Step(id).Text;

    public string Dish(DishId id) => meal.Dishes.Single(dish => dish.Id == id).Name;

    public static string Headline(RunDebrief debrief)
    {
        if (debrief.Courses.Any(course => course.LateMinutes is null))
        {
            return "Not everything was finished.";
        }

        var late = debrief.Courses.Where(course => course.LateMinutes > 0).ToArray();
        return late.Length == 0 ? "Table time was kept."
            : debrief.Courses is [_] ? $"The table was {Minutes(late[0].LateMinutes!.Value)} late."
            : $"{And([.. late.Select(course => $"{course.Name} was {Minutes(course.LateMinutes!.Value)} late")])}.";
    }

    public string Course(CourseLine course) => (course.Ready, course.LateMinutes) switch
    {
        (null, _) => $"promised for {clock.Show(course.Promised)}, not finished",
        ({ } ready, 0) when ready < course.Promised => $"promised for {clock.Show(course.Promised)}, all ready at {clock.Show(ready)}{Moved(course)}",
        ({ } ready, 0) => $"ready at {clock.Show(ready)}, as promised{Moved(course)}",
        ({ } ready, var late) => $"promised for {clock.Show(course.Promised)}, ready at {clock.Show(ready)}: {Minutes(late!.Value)} late{Moved(course)}",
    };

    /// <summary>Of a whole dish.</summary>
    public string Ready(IEnumerable<StepLine> dish)
    {
        var lines = dish.ToArray();
        var planned = $"planned for {clock.Show(lines.Max(line => line.PlannedEnd))}";
        return lines.All(line => line.WasLeftOut) ? $"{planned}, left out"
            : lines.Any(line => line.Finished is null) ? $"{planned}, not finished"
            : $"{planned}, done at {clock.Show(lines.Max(line => line.Finished!.Value))}";
    }

    public string Planned(StepLine step) => $"{clock.Show(step.PlannedStart)} to {clock.Show(step.PlannedEnd)}";

    public string Real(StepLine step) => step switch
    {
        { WasLeftOut: true } => "left out",
        { Started: null } => "not done",
        { Finished: null } => $"from {clock.Show(step.Started.Value)}, not finished",
        { WasStartSaid: false } => $"done by {clock.Show(step.Finished.Value)}, nobody said when it began",
        _ => $"{clock.Show(step.Started.Value)} to {clock.Show(step.Finished.Value)}",
    };

    /// <summary>What happened, when it was noticed.</summary>
    public string What(Slip slip)
    {
        var what = (slip.BeganLate, slip.TookLonger) switch
        {
            ( > 0, > 0) => $"began {Minutes(slip.BeganLate)} late and took {Minutes(slip.TookLonger)} longer",
            ( > 0, < 0) => $"began {Minutes(slip.BeganLate)} late and was {Minutes(-slip.TookLonger)} quicker",
            ( > 0, _) => $"began {Minutes(slip.BeganLate)} late",
            _ => $"took {Minutes(slip.TookLonger)} longer",
        };
        return $"It {what}. {Noticed(slip)}";
    }

    /// <summary>What it cost, and what took up the rest.</summary>
    public string Cost(Slip slip)
    {
        var cost = slip.TableMinutes == 0 ? "It cost the table nothing" : $"Without it the table would have been ready {Minutes(slip.TableMinutes)} earlier";
        var rest = And([.. slip.Absorbed.Select(one => one.Before is { } step
            ? $"{Minutes(one.Minutes)} spare before “{Step(step)}”"
            : $"{Minutes(one.Minutes)} spare before {meal.Courses.Single(course => course.Id == one.Table).Name} came to the table")]);
        return rest.Length == 0 ? $"{cost}." : slip.TableMinutes == 0 ? $"{cost}: it went into {rest}." : $"{cost}; the rest went into {rest}.";
    }

    /// <summary>Null where the slips, taken away one at a time, explain how late it was.</summary>
    public static string? SideBySide(RunDebrief debrief)
    {
        var late = debrief.Courses.Max(course => course.LateMinutes ?? 0);
        return late > debrief.ByNewPlans + debrief.Slips.Sum(slip => slip.TableMinutes)
            ? "Each is told alone: where two slipped side by side, mending one would not have saved what the other cost."
            : null;
    }

    public string Wait(DishWait wait)
    {
        var how = wait.Minutes <= wait.BestWithin ? "at its best" : wait.Minutes <= wait.GoodFor ? "past its best, still good" : "longer than it is good";
        return wait.Minutes == 0 ? "straight to the table" : $"{Minutes(wait.Minutes)} ({clock.Show(wait.Since)} to {clock.Show(wait.Table)}), {how}";
    }

    /// <summary>Null where it says nothing: hardly any, or nobody knows.</summary>
    public static string? Stood(DishStanding one)
    {
        if (one.Out < worthSaying)
        {
            return null;
        }

        var stood = $"Neither hot nor cold for {DurationWords.Write((int)one.Out.TotalMinutes)}{(one.Unknown > TimeSpan.Zero ? $", and for {DurationWords.Write((int)one.Unknown.TotalMinutes)} more nobody said where it was" : "")}";
        return one.IsTooLong
            ? $"{stood}: longer than the {DurationWords.Write((int)one.Limit.Most.TotalMinutes)} it may ({RegionWords.Of(one.Limit.Source)}). What is left of it is not to be kept."
            : $"{stood}; {DurationWords.Write((int)one.Limit.Most.TotalMinutes)} at the most.";
    }

    static readonly TimeSpan worthSaying = TimeSpan.FromMinutes(30);

    public string Call(CallNote call)
    {
        var what = call.Kind switch
        {
            CallKind.In => $"“{Step(call.Step)}” to begin",
            CallKind.Begin => $"“{Step(call.Step)}” to begin",
            CallKind.Out => $"“{Step(call.Step)}” to end",
            CallKind.Tend => $"“{call.Tend}” ({Step(call.Step)})",
            CallKind.Cools => $"“{Step(call.Step)}”, that rested",
            CallKind.Dial or CallKind.Over or CallKind.Pause or CallKind.Table => throw new ArgumentException($"{call.Kind} is not looked back on", nameof(call)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return call.IsMissed ? $"{clock.Show(call.Due)}: {what}, nobody did or said so" : $"{clock.Show(call.Due)}: {what}, answered {Minutes(call.LateMinutes)} late";
    }

    public static string Share(Share share) => share.Steps == 0
        ? $"no work of hands (planned {Minutes(share.PlannedMinutes)})"
        : $"{Minutes(share.Minutes)} in {(share.Steps == 1 ? "1 job" : $"{share.Steps} jobs")} (planned {share.PlannedMinutes}; a fair part was {share.FairMinutes}){(share.IsMuch ? ": more than a fair part" : "")}";

    /// <summary>"You peel 1.3 times as long as written, from 4 meals."</summary>
    public static string Kind(Pace pace) => $"You {pace.Name} {Times(pace.Factor)}, from {Meals(pace.Meals)}.";

    public static string Person(Pace pace) => $"{pace.Name} takes {Times(pace.Factor)}, from {Meals(pace.Meals)}.";

    public static string Lesson(Lesson lesson) =>
        $"Written {Minutes(lesson.Written.Likely)}; here {Minutes(lesson.Minutes.Likely)}, 8 times in 10 from {lesson.Minutes.Least} to {lesson.Minutes.Most}. From {Meals(lesson.Learned.Meals)}.";

    public static string Used(LearnedTimeRow row) =>
        $"{Times(row.Likely)}, 8 times in 10 from {Figure(row.Least)} to {Figure(row.Most)} times. From {Meals(row.Meals)}.";

    public static string Verdict(string verdict) => verdict switch
    {
        "more" => "More",
        "less" => "Less",
        "never" => "Never again",
        "" => "Nothing to say",
        _ => throw new ArgumentException($"no verdict \"{verdict}\"", nameof(verdict)),
    };

    public static string Minutes(int minutes) => minutes == 1 ? "1 minute" : $"{minutes} minutes";

    string Noticed(Slip slip) => slip.Noticed switch
    {
        null => $"It was late from {clock.Show(slip.From)}, and nobody said so.",
        { Kind: SignKind.TimeAdded } sign when sign.At < slip.From => $"It was seen coming at {clock.Show(sign.At)}, when somebody gave it more time.",
        { Kind: SignKind.TimeAdded } sign => Noticed(slip, sign, "when somebody gave it more time"),
        { Kind: SignKind.CallAnswered } sign => Noticed(slip, sign, "when its call was answered"),
        { Kind: SignKind.Began } sign => Noticed(slip, sign, "when it began"),
        { Kind: SignKind.Finished } sign => Noticed(slip, sign, "when it was done"),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    string Noticed(Slip slip, Sign sign, string when) => $"It was late from {clock.Show(slip.From)} and noticed at {clock.Show(sign.At)}, {when}.";

    string Moved(CourseLine course) => course.MovedTo is { } to ? $" (moved to {clock.Show(to)} meanwhile)" : "";

    static string Times(double factor) => factor is > .95 and < 1.05 ? "as long as written" : $"{Figure(factor)} times as long as written";

    static string Figure(double factor) => factor.ToString("0.0", CultureInfo.InvariantCulture);

    static string Meals(int meals) => meals == 1 ? "1 meal" : $"{meals} meals";

    static string And(IReadOnlyList<string> parts) => parts.Count switch
    {
        0 => "",
        1 => parts[0],
        _ => $"{string.Join(", ", parts.Take(parts.Count - 1))} and {parts[^1]}",
    };
}
