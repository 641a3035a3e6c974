using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Planning;

/// <summary>Where a plan leaves a grown-up's hands free to wash up as the cooking goes on.</summary>
public static class WashingUp
{
    /// <summary>Below this the water is not worth running. Minutes.</summary>
    const int Least = 5;

    const int Most = 10;

    const int HalfHour = 30;

    /// <summary>Three hours before the last table.</summary>
    const int HalfHours = 6;

    /// <summary>For each half hour before the last table, once work has begun, the longest free stretch of anybody's; none where there is none.</summary>
    public static ImmutableArray<(HelperId Helper, Minute From, int Minutes)> Of(Meal meal, Plan plan)
    {
        var jobs = plan.Steps.SelectMany(step => step.Helpers.Select(helper => (helper, step.Start, step.End)))
            .Concat(plan.Tends.Select(tend => (helper: tend.Helper, Start: tend.At, tend.End)))
            .ToLookup(job => job.helper, job => (job.Start, job.End));
        var table = plan.Courses.Max(course => course.TableTime);
        var dirty = jobs.SelectMany(job => job).Select(job => job.End).DefaultIfEmpty(table).Min();
        return
        [
            .. Enumerable.Range(1, HalfHours).Reverse().SelectMany(back => meal.Helpers.Where(helper => !helper.IsChild)
                .SelectMany(helper => Free(helper, jobs[helper.Id], Minute.Later(dirty, table - (back * HalfHour)), table - ((back - 1) * HalfHour)))
                .OrderByDescending(one => one.Minutes).Take(1)),
        ];
    }

    static IEnumerable<(HelperId Helper, Minute From, int Minutes)> Free(Helper helper, IEnumerable<(Minute Start, Minute End)> jobs, Minute from, Minute to)
    {
        // A stretch that begins with the half hour or with the end of a job; nobody can begin better in between.
        var own = jobs.ToList();
        foreach (var at in own.Select(job => job.End).Append(from).Where(at => from <= at && at < to && own.All(job => at < job.Start || job.End <= at)).Distinct())
        {
            var end = own.Select(job => job.Start).Where(start => start >= at).Append(to).Min();
            var minutes = Math.Min(Most, end - at);
            if (minutes >= Least && helper.IsHere(at, at + minutes))
            {
                yield return (helper.Id, at, minutes);
            }
        }
    }
}
