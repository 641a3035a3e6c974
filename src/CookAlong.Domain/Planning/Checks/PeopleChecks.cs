using CookAlong.Domain.Meals;
using static CookAlong.Domain.Planning.Checks.PlanInQuestion;

namespace CookAlong.Domain.Planning.Checks;

/// <summary>Who does it, and whether they can.</summary>
static class PeopleChecks
{
    public static IEnumerable<Breach> OneJobEach(PlanInQuestion question)
    {
        foreach (var jobs in question.Jobs.GroupBy(job => job.Helper))
        {
            var inOrder = jobs.OrderBy(job => job.Start).ThenBy(job => job.End).ToArray();
            for (var first = 0; first < inOrder.Length; first++)
            {
                for (var second = first + 1; second < inOrder.Length && inOrder[second].Start < inOrder[first].End; second++)
                {
                    yield return new(RuleId.OneJobEach, Step: inOrder[second].Step.Id, Other: inOrder[first].Step.Id, Helper: jobs.Key,
                        At: inOrder[second].Start, Found: 2, Allowed: 1);
                }
            }
        }
    }

    public static IEnumerable<Breach> EnoughHands(PlanInQuestion question)
    {
        foreach (var (planned, step, way) in question.Works)
        {
            var named = Given(planned.Helpers);
            foreach (var unknown in named.Where(helper => question.Helper(helper) is null))
            {
                yield return new(RuleId.EnoughHands, Step: step.Id, Helper: unknown, Thing: "helper", At: planned.Start);
            }

            var allowed = way.Attention == Attention.HandsOn ? way.People : 0;
            if (named.Distinct().Count() != allowed || named.Length != allowed)
            {
                yield return new(RuleId.EnoughHands, Step: step.Id, At: planned.Start, Found: named.Distinct().Count(), Allowed: allowed);
            }
        }
    }

    public static IEnumerable<Breach> Availability(PlanInQuestion question) =>
        from job in question.Jobs
        let here = Presence.Of(question.Helper(job.Helper)!)
        let missing = here.FirstGap(job.Start, job.End)
        where missing is not null
        select new Breach(RuleId.Availability, Step: job.Step.Id, Helper: job.Helper, Thing: job.Tend?.Text, At: missing);

    public static IEnumerable<Breach> Nights(PlanInQuestion question)
    {
        var nights = Planning.Nights.Of(question.Meal);
        var upAtNight = Presence.OfAny(question.Meal.Helpers.Where(helper => !helper.IsChild && !helper.Available.IsDefaultOrEmpty));
        var worked =
            from job in question.Jobs
            where question.Helper(job.Helper)!.Available.IsDefaultOrEmpty
            from night in nights
            where job.Start < night.To && night.From < job.End
            select new Breach(RuleId.Nights, Step: job.Step.Id, Helper: job.Helper, Thing: job.Tend?.Text, At: Minute.Later(job.Start, night.From));
        var watched =
            from work in question.Works
            where work.Way.Attention == Attention.Nearby
            from night in nights
            let alone = upAtNight.FirstGap(Minute.Later(work.Planned.Start, night.From), Minute.Earlier(work.Planned.End, night.To))
            where alone is not null
            select new Breach(RuleId.Nights, Step: work.Step.Id, At: alone);
        return worked.Concat(watched);
    }

    public static IEnumerable<Breach> Skills(PlanInQuestion question) =>
        from job in question.Jobs
        from need in job.Step.Needs
        where !question.Helper(job.Helper)!.HasSkills([need])
        select new Breach(RuleId.Skills, Step: job.Step.Id, Helper: job.Helper, Thing: need, At: job.Start);

    public static IEnumerable<Breach> Children(PlanInQuestion question) =>
        from job in question.Jobs
        where question.Helper(job.Helper)!.IsChild && !(job.Tend?.ChildSafe ?? job.Step.ChildSafe)
        select new Breach(RuleId.Children, Step: job.Step.Id, Helper: job.Helper, Thing: job.Tend?.Text, At: job.Start);

    public static IEnumerable<Breach> Nearby(PlanInQuestion question)
    {
        var adults = Presence.OfAny(question.Meal.Helpers.Where(helper => !helper.IsChild));
        return
            from work in question.Works
            where work.Way.Attention == Attention.Nearby
            let alone = adults.FirstGap(work.Planned.Start, work.Planned.End)
            where alone is not null
            select new Breach(RuleId.Nearby, Step: work.Step.Id, At: alone);
    }
}
