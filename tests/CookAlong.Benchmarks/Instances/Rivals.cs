using System.Globalization;
using Google.OrTools.Sat;

namespace CookAlong.Benchmarks.Instances;

/// <summary>What a scheduler without a kitchen in it makes of an instance.</summary>
static class Rivals
{
    /// <summary>The solver on the bare problem: intervals, precedences, resources, the shortest makespan.</summary>
    public static Outcome PlainModel(Instance instance, TimeSpan time)
    {
        var cp = new CpModel();
        var horizon = instance.Minutes.Sum();
        var starts = instance.Minutes.Select((minutes, task) => cp.NewIntVar(0, horizon - minutes, $"t{task}")).ToArray();
        var intervals = starts.Select((start, task) => cp.NewFixedSizeIntervalVar(start, instance.Minutes[task], $"i{task}")).ToArray();
        var makespan = cp.NewIntVar(instance.Bound, horizon, "makespan");
        for (var task = 0; task < starts.Length; task++)
        {
            cp.Add(makespan >= starts[task] + instance.Minutes[task]);
            foreach (var before in instance.Before[task])
            {
                cp.Add(starts[task] >= starts[before] + instance.Minutes[before]);
            }
        }

        foreach (var (resource, capacity) in instance.Capacity.Index())
        {
            var users = Enumerable.Range(0, starts.Length).Where(task => instance.Needs[task][resource] > 0).ToList();
            if (users.All(task => 2 * instance.Needs[task][resource] > capacity))
            {
                cp.AddNoOverlap(users.Select(task => intervals[task]));
            }
            else
            {
                cp.AddCumulative(capacity).AddDemands(users.Select(task => intervals[task]), users.Select(task => instance.Needs[task][resource]));
            }
        }

        cp.Minimize(makespan);
        using var solver = new CpSolver { StringParameters = $"num_workers:2 max_time_in_seconds:{time.TotalSeconds.ToString(CultureInfo.InvariantCulture)}" };
        var status = solver.Solve(cp);
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? new((int)solver.Value(makespan), status == CpSolverStatus.Optimal) : Outcome.None;
    }

    /// <summary>Serial schedule generation, the task that must finish soonest first.</summary>
    public static Outcome LatestFinishFirst(Instance instance)
    {
        var tails = instance.Tails();
        var taken = new int[instance.Minutes.Sum()][];
        foreach (var at in Enumerable.Range(0, taken.Length))
        {
            taken[at] = new int[instance.Capacity.Length];
        }

        var ends = Enumerable.Repeat(-1, tails.Length).ToArray();
        for (var placed = 0; placed < ends.Length; placed++)
        {
            var next = Enumerable.Range(0, ends.Length).Where(task => ends[task] < 0 && instance.Before[task].All(before => ends[before] >= 0)).MaxBy(task => tails[task]);
            var start = instance.Before[next].Select(before => ends[before]).Append(0).Max();
            while (!Fits(instance, taken, next, start))
            {
                start++;
            }

            ends[next] = start + instance.Minutes[next];
            foreach (var minute in taken.AsSpan(start, instance.Minutes[next]))
            {
                foreach (var (resource, need) in instance.Needs[next].Index())
                {
                    minute[resource] += need;
                }
            }
        }

        return new Outcome(ends.Max(), ends.Max() == instance.Bound);
    }

    static bool Fits(Instance instance, int[][] taken, int task, int start) =>
        taken.Skip(start).Take(instance.Minutes[task]).All(minute => minute.Index().All(one => one.Item + instance.Needs[task][one.Index] <= instance.Capacity[one.Index]));
}

/// <param name="Makespan">From the first start to the last end; <see cref="int.MaxValue"/> where nothing was found.</param>
/// <param name="Proved">No schedule is shorter, and this one's finder knows.</param>
readonly record struct Outcome(int Makespan, bool Proved)
{
    public static Outcome None => new(int.MaxValue, false);
}
