using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using Google.OrTools.Sat;

namespace CookAlong.Planner.Encodings;

/// <summary>Tends: every one is done once, inside its step, close enough to its time, for its minutes.</summary>
internal static class Tends
{
    public static void Add(MealModel model)
    {
        foreach (var step in model.Steps.Values)
        {
            foreach (var way in step.Ways)
            {
                for (var tend = 0; tend < step.Step.Tends.Length; tend++)
                {
                    var turn = 0;
                    foreach (var nominal in step.Step.Tends[tend].Times(way.Minutes))
                    {
                        var turnOf = (step.Step.Tends[tend], tend, turn++);
                        if (step.HasBegun)
                        {
                            AddBegun(model, step, way, turnOf, nominal);
                        }
                        else
                        {
                            AddNew(model, step, way, turnOf, nominal);
                        }
                    }
                }
            }
        }
    }

    private static void AddNew(MealModel model, StepVariables step, WayVariables way, (Tend Tend, int Index, int Turn) of, int nominal)
    {
        var earliest = (int)Math.Max(0, (long)nominal - of.Tend.Give);
        var latest = (int)Math.Min(way.Minutes - of.Tend.Minutes, (long)nominal + of.Tend.Give);
        if (earliest > latest)
        {
            model.Forbid(way.Taken);
            return;
        }

        LinearExpr at = step.Start + earliest;
        if (earliest < latest)
        {
            var start = model.Time(model.Clock.Earliest, model.End, $"{step.Step.Id} tend {of.Index}.{of.Turn}");
            model.Cp.Add(start >= step.Start + earliest).OnlyEnforceIf(way.Taken);
            model.Cp.Add(start <= step.Start + latest).OnlyEnforceIf(way.Taken);
            at = start;
        }

        var interval = model.Cp.NewOptionalFixedSizeIntervalVar(at, of.Tend.Minutes, way.Taken, $"{step.Step.Id} tend {of.Index}.{of.Turn}");
        model.Tends.Add(new TendVariables(step.Step, of.Index, of.Turn, of.Tend.Minutes, at, way.Taken, interval, Done: false));
    }

    /// <summary>Of a step that has begun: what is done stays where it was planned, what is due goes as near its time as now allows.</summary>
    private static void AddBegun(MealModel model, StepVariables step, WayVariables way, (Tend Tend, int Index, int Turn) of, int nominal)
    {
        var (start, end) = Places.Begun(model, step);
        var now = model.Clock.Earliest;
        var earliest = Math.Max(now, start + (int)Math.Max(0, (long)nominal - of.Tend.Give));
        var latest = end - of.Tend.Minutes;
        if (step.Fact!.IsFinished || step.Fact.TendsDone.Contains((of.Index, of.Turn)) || earliest > latest)
        {
            var told = model.So!.Current.Tends.FirstOrDefault(tend => tend.Step == step.Step.Id && tend.Tend == of.Index && tend.Turn == of.Turn);
            var at = told is null ? start + nominal : model.Clock.Of(told.At);
            model.Tends.Add(new TendVariables(step.Step, of.Index, of.Turn, of.Tend.Minutes, LinearExpr.Constant(at), way.Taken, null, Done: true));
            return;
        }

        var soonest = (int)Math.Min(latest, Math.Max(earliest, start + nominal + (long)of.Tend.Give));
        var due = model.Cp.NewIntVar(earliest, latest, $"{step.Step.Id} tend {of.Index}.{of.Turn}");
        var over = model.Cp.NewIntVar(0, latest, "tend beyond its give");
        model.Cp.Add(due <= soonest + over);
        model.Charge(over, Prices.BeyondLimitMinute);

        // Every hand may be busy until it is too late: missing it is dearer than any delay within the step.
        var isDone = model.Cp.NewBoolVar($"{step.Step.Id} tend {of.Index}.{of.Turn} done");
        model.Charge(1 - isDone, (long)Prices.BeyondLimitMinute * (1 + latest - earliest));
        var interval = model.Cp.NewOptionalFixedSizeIntervalVar(due, of.Tend.Minutes, isDone, $"{step.Step.Id} tend {of.Index}.{of.Turn}");
        model.Tends.Add(new TendVariables(step.Step, of.Index, of.Turn, of.Tend.Minutes, due, isDone, interval, Done: false));
    }
}
