namespace CookAlong.Planner;

/// <summary>
/// Shares out jobs whose times are settled, one after another: each goes to whoever was told, or else has the least to do so far
/// for as long as they are here. Quick, and fair enough to begin from.
/// </summary>
internal static class Turns
{
    /// <summary>Whoever did a dish's last job knows where it stands: worth so many minutes of unevenness.</summary>
    private const int Continuing = 10;

    /// <summary>The helpers of each job, in the jobs' order; null where one would be left without hands.</summary>
    /// <param name="fair">What a minute weighs for each helper (<see cref="FairShares"/>).</param>
    public static int[][]? Of(IReadOnlyList<Turn> jobs, long[] fair)
    {
        var turns = new int[jobs.Count][];
        var (freeAt, minutes, lastOf) = (new int[fair.Length], new long[fair.Length], new Dictionary<int, int[]>());
        Array.Fill(freeAt, int.MinValue);
        foreach (var (index, job) in jobs.Index().OrderBy(job => job.Item.Start))
        {
            var before = lastOf.GetValueOrDefault(job.Dish, []);
            turns[index] =
            [
                .. job.Able.Where(helper => freeAt[helper] <= job.Start)
                    .OrderBy(helper => job.Told.Contains(helper) ? 0 : 1)
                    .ThenBy(helper => ((minutes[helper] + job.Minutes) * fair[helper]) - (before.Contains(helper) ? Continuing * FairShares.Usual : 0))
                    .Take(job.Count),
            ];
            if (turns[index].Length < job.Count)
            {
                return null;
            }

            lastOf[job.Dish] = turns[index];
            foreach (var helper in turns[index])
            {
                (freeAt[helper], minutes[helper]) = (job.Start + job.Minutes, minutes[helper] + job.Minutes);
            }
        }

        return turns;
    }
}

/// <param name="Able">Those who may do it and are here for all of it; helpers are positions in the meal's list.</param>
/// <param name="Told">Whom people were told.</param>
internal readonly record struct Turn(int Dish, int Start, int Minutes, int Count, IEnumerable<int> Able, IReadOnlyCollection<int> Told);
