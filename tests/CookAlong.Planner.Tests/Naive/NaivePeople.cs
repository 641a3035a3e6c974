using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Planner.Tests.Naive;

/// <summary>Whether names can be put to a plan, by trying every place of every tend and every helper for every job.</summary>
internal sealed class NaivePeople(Meal meal, Chosen[] steps, Patience patience)
{
    private readonly List<(Helper Helper, int Start, int End)> busy = [];

    public bool CanBeDone() => steps.All(AnAdultIsNear) && Give([.. Jobs()], 0);

    private IEnumerable<Job> Jobs()
    {
        foreach (var one in steps)
        {
            if (one.Way.Attention == Attention.HandsOn)
            {
                yield return new Job(one, null, 0);
            }

            foreach (var tend in one.Step.Tends)
            {
                foreach (var nominal in tend.Times(one.Way.Minutes.Likely))
                {
                    yield return new Job(one, tend, nominal);
                }
            }
        }
    }

    private bool Give(Job[] jobs, int index)
    {
        if (index == jobs.Length)
        {
            return true;
        }

        var job = jobs[index];
        if (job.Tend is not { } tend)
        {
            return Teams(job.Of).Any(team => Take(jobs, index, team, job.Of.Start, job.Of.End));
        }

        return Enumerable.Range(job.Nominal - tend.Give, (2 * tend.Give) + 1)
            .Where(at => at >= 0 && at + tend.Minutes <= job.Of.End - job.Of.Start)
            .Any(at => meal.Helpers.Where(helper => helper.MayDo(job.Of.Step, tend))
                .Any(helper => Take(jobs, index, [helper], job.Of.Start + at, job.Of.Start + at + tend.Minutes)));
    }

    private bool Take(Job[] jobs, int index, Helper[] team, int start, int end)
    {
        var first = meal.NotBefore!.Value;
        if (!patience.Looks() || !team.All(helper => helper.IsHere(first + start, first + end)
            && !busy.Any(one => one.Helper == helper && one.Start < end && start < one.End)))
        {
            return false;
        }

        busy.AddRange(team.Select(helper => (helper, start, end)));
        var rest = Give(jobs, index + 1);
        busy.RemoveRange(busy.Count - team.Length, team.Length);
        return rest;
    }

    private IEnumerable<Helper[]> Teams(Chosen one)
    {
        var able = meal.Helpers.Where(helper => helper.MayDo(one.Step)).ToList();
        for (var members = 0; members < 1 << able.Count; members++)
        {
            var team = able.Where((_, index) => (members & (1 << index)) != 0).ToArray();
            var named = one.Step.By.Count(id => team.Any(helper => helper.Id == id));
            if (team.Length == one.Way.People && named >= Math.Min(one.Step.By.Length, one.Way.People))
            {
                yield return team;
            }
        }
    }

    private bool AnAdultIsNear(Chosen one) => one.Way.Attention != Attention.Nearby
        || Enumerable.Range(one.Start, one.End - one.Start).All(minute =>
            meal.Helpers.Any(helper => !helper.IsChild && helper.IsHere(meal.NotBefore!.Value + minute, meal.NotBefore!.Value + minute + 1)));

    private sealed record Job(Chosen Of, Tend? Tend, int Nominal);
}
