namespace CookAlong.Planner.Quick;

/// <summary>Evens out who does what at times that are settled: each job goes to the one who has done least so far, for as long as they are here, and is free for it.</summary>
internal static class EvenShares
{
    /// <summary>Whoever did a dish's last job knows where it stands: worth so many minutes of unevenness.</summary>
    private const int Continuing = 10;

    /// <summary>The jobs as they were where somebody would be left without hands.</summary>
    public static IReadOnlyList<QuickJob> Of(Work work, IReadOnlyList<QuickJob> jobs)
    {
        var shared = new List<QuickJob>();
        var minutes = new long[work.Meal.Helpers.Length];
        var fair = FairShares.Of(work.Meal, work.Clock, jobs.Select(job => (job.Start, job.Start + job.Minutes)));
        foreach (var job in jobs.OrderBy(job => job.Start))
        {
            var way = work.Steps[job.Step].Ways;
            var able = job.Tend?.Able ?? way.SelectMany(one => one.Shares).First(share => share.Able.Contains(job.Helper)).Able;
            var free = able.Where(helper => IsHere(work, helper, job) && shared.All(other => other.Helper != helper || other.Start + other.Minutes <= job.Start)).ToList();
            if (free.Count == 0)
            {
                return jobs;
            }

            var least = free.MinBy(helper => ((minutes[helper] + job.Minutes) * fair[helper]) - (HasBegun(work, helper, job, shared) ? Continuing * FairShares.Usual : 0));
            minutes[least] += job.Minutes;
            shared.Add(job with { Helper = least });
        }

        return shared;
    }

    private static bool HasBegun(Work work, int helper, QuickJob job, List<QuickJob> shared) =>
        shared.FindLast(other => work.Steps[other.Step].Dish == work.Steps[job.Step].Dish) is { Minutes: > 0 } last && last.Helper == helper;

    private static bool IsHere(Work work, int helper, QuickJob job) =>
        !work.Taken.AsSpan(work.Cell(helper) + job.Start, job.Minutes).ContainsAnyExcept((ushort)0);
}
