using CookAlong.Domain.Meals;
using static CookAlong.Domain.Planning.Checks.PlanInQuestion;

namespace CookAlong.Domain.Planning.Checks;

/// <summary>The short jobs done while a step runs.</summary>
static class TendChecks
{
    public static IEnumerable<Breach> Tends(PlanInQuestion question)
    {
        var planned = Given(question.Plan.Tends).ToLookup(tend => (tend.Step, tend.Tend, tend.Turn));
        var asked = new HashSet<(StepId, int, int)>();
        foreach (var work in question.Works)
        {
            foreach (var (index, tend) in work.Step.Tends.Index())
            {
                foreach (var (turn, nominal) in tend.Times(work.Way.Minutes.Likely).Index())
                {
                    asked.Add((work.Step.Id, index, turn));
                    var found = planned[(work.Step.Id, index, turn)].ToArray();
                    if (found.Length != 1)
                    {
                        yield return new(RuleId.Tends, Step: work.Step.Id, Thing: tend.Text, At: work.Planned.Start + nominal, Found: found.Length, Allowed: 1);
                    }

                    foreach (var breach in found.SelectMany(one => Misplaced(question, work, tend, nominal, one)))
                    {
                        yield return breach;
                    }
                }
            }
        }

        foreach (var unasked in planned.Where(one => !asked.Contains(one.Key)))
        {
            // A tend of a step that could not be paired says nothing; its step breaks a rule of its own.
            var first = unasked.First();
            if (question.Step(first.Step) is null || question.Works.Any(work => work.Step.Id == first.Step))
            {
                yield return new(RuleId.Tends, Step: first.Step, At: first.At, Found: unasked.Count(), Allowed: 0);
            }
        }
    }

    static IEnumerable<Breach> Misplaced(PlanInQuestion question, Work work, Tend tend, int nominal, PlannedTend planned)
    {
        var step = work.Step.Id;
        if (question.Helper(planned.Helper) is null)
        {
            yield return new(RuleId.Tends, Step: step, Helper: planned.Helper, Thing: tend.Text, At: planned.At);
        }

        if (planned.Minutes != tend.Minutes)
        {
            yield return new(RuleId.Tends, Step: step, Thing: tend.Text, At: planned.At, Found: planned.Minutes, Allowed: tend.Minutes);
        }

        var off = planned.At - (work.Planned.Start + nominal);
        if (Math.Abs(off) > tend.Give || planned.At < work.Planned.Start || planned.End > work.Planned.End)
        {
            yield return new(RuleId.Tends, Step: step, Thing: tend.Text, At: planned.At, Found: off, Allowed: tend.Give);
        }
    }
}
