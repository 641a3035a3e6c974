using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Planner.Quick;

/// <summary>Settles the tends of steps that run before anything else is laid out: what is on the heat does not wait.</summary>
internal sealed class BegunTends(Clock clock, Told told, Retimed moved, Rows rows, int margin, int width)
{
    public List<QuickJob> Jobs { get; } = [];

    public List<DraftTend> Past { get; } = [];

    /// <summary>What late and missed ones cost.</summary>
    public long Sunk { get; private set; }

    public void Add(Step step, int index, StepFact fact, (int Start, int End) span)
    {
        for (var tend = 0; tend < step.Tends.Length; tend++)
        {
            var turn = 0;
            foreach (var nominal in step.Tends[tend].Times(span.End - span.Start))
            {
                Add(step, index, fact, span, (tend, turn++), nominal);
            }
        }
    }

    private void Add(Step step, int index, StepFact fact, (int Start, int End) span, (int Tend, int Turn) of, int nominal)
    {
        var tend = step.Tends[of.Tend];
        var was = told.Plan.Tends.FirstOrDefault(one => one.Step == step.Id && (one.Tend, one.Turn) == of);
        var at = was is null ? span.Start + nominal : clock.Of(was.At);
        var earliest = Math.Max(clock.Earliest, span.Start + (int)Math.Max(0, (long)nominal - tend.Give));
        var latest = span.End - tend.Minutes;
        if (fact.IsFinished || fact.TendsDone.Contains(of) || earliest > latest)
        {
            Past.Add(new DraftTend(step.Id, of.Tend, of.Turn, at, tend.Minutes, Done: true));
            return;
        }

        var soonest = (int)Math.Min(latest, Math.Max(earliest, span.Start + nominal + (long)tend.Give));
        var able = rows.Helpers(helper => helper.MayDo(step, tend));
        var toldTo = rows.Helpers(helper => helper.Id == was?.Helper);
        var wanted = Math.Clamp(moved.Tends.TryGetValue((step.Id, of.Tend, of.Turn), out var then) ? clock.Of(then) : at, earliest, soonest);
        foreach (var start in Enumerable.Range(earliest, latest - earliest + 1).OrderBy(start => Math.Max(0, start - soonest)).ThenBy(start => Math.Abs(start - wanted)))
        {
            foreach (var helper in able.OrderBy(helper => toldTo.Contains(helper) ? 0 : 1))
            {
                var cells = rows.Taken.AsSpan((helper * width) + margin + start, tend.Minutes);
                if (cells.ContainsAnyExcept((ushort)0))
                {
                    continue;
                }

                cells.Fill(1);
                var quick = new QuickTend(of.Tend, of.Turn, start - span.Start, start - span.Start, start - span.Start, tend.Minutes, able) { ToldTo = toldTo };
                Jobs.Add(new QuickJob(index, quick, start, tend.Minutes, helper));
                Sunk += (long)Math.Max(0, start - soonest) * Prices.BeyondLimitMinute;
                return;
            }
        }

        Past.Add(new DraftTend(step.Id, of.Tend, of.Turn, earliest, tend.Minutes, Done: true));
        Sunk += (long)Prices.BeyondLimitMinute * (1 + latest - earliest);
    }
}
