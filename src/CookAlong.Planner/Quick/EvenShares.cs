namespace CookAlong.Planner.Quick;

/// <summary>Evens out who does what at times that are settled.</summary>
internal static class EvenShares
{
    /// <summary>The jobs as they were where somebody would be left without hands.</summary>
    public static IReadOnlyList<QuickJob> Of(Work work, Layout layout)
    {
        var jobs = layout.Jobs;
        var fair = FairShares.Of(work.Meal, work.Clock, jobs.Select(job => (job.Start, job.Start + job.Minutes)));

        // One turn for each pair of hands: whoever has the first of two is busy for the second.
        var turns = Turns.Of(
            [.. jobs.Select(job => new Turn(work.Steps[job.Step].Dish, job.Start, job.Minutes, Count: 1, Able(layout, job).Where(helper => IsHere(work, helper, job)), ToldTo(work, job)))], fair);
        return turns is null ? jobs : [.. jobs.Zip(turns, (job, helpers) => job with { Helper = helpers[0] })];
    }

    private static int[] ToldTo(Work work, QuickJob job) => job.Tend?.ToldTo ?? work.Steps[job.Step].ToldTo;

    private static int[] Able(Layout layout, QuickJob job) =>
        job.Tend?.Able ?? layout.Ways[job.Step].Shares.First(share => share.Able.Contains(job.Helper)).Able;

    private static bool IsHere(Work work, int helper, QuickJob job) =>
        !work.Taken.AsSpan(work.Cell(helper) + job.Start, job.Minutes).ContainsAnyExcept((ushort)0);
}
