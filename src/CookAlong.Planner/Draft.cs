using System.Collections.Immutable;
using CookAlong.Domain;
using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <summary>What one solve found, in minutes of the clock, before anybody's name is on it.</summary>
internal sealed record Draft(
    ImmutableDictionary<StepId, DraftStep> Steps,
    ImmutableArray<DraftTend> Tends,
    ImmutableArray<DraftHold> Holds,
    ImmutableDictionary<CourseId, int> Tables,
    ImmutableArray<DraftJob> Jobs)
{
    /// <summary>Of every unknown of the model it was found in; empty where it was found in none.</summary>
    public ImmutableArray<long> Values { get; init; } = [];

    public static Draft Read(MealModel model, CpSolver solver) =>
        Read(model, solver.Value, solver.BooleanValue, [.. solver.Response!.Solution]);

    /// <summary>What a search has found that goes on.</summary>
    public static Draft Read(MealModel model, CpSolverSolutionCallback found) =>
        Read(model, found.Value, found.BooleanValue, [.. Enumerable.Range(0, model.Cp.Model.Variables.Count).Select(found.SolutionIntegerValue)]);

    private static Draft Read(MealModel model, Func<LinearExpr, long> value, Func<ILiteral?, bool> isSo, ImmutableArray<long> values)
    {
        int At(LinearExpr time) => (int)value(time);
        var steps = model.Steps.ToImmutableDictionary(one => one.Key, one =>
        {
            var way = one.Value.Ways.First(way => isSo(way.Taken));
            var stay = model.OvenStays.FirstOrDefault(stay => stay.Step?.Id == one.Key && stay.Which == way.Option && isSo(stay.Here));
            var grill = model.GrillStays.FirstOrDefault(stay => stay.Step.Id == one.Key && stay.Option == way.Option && isSo(stay.Here));
            var start = At(one.Value.Start);
            return new DraftStep(start, start + way.Minutes, way.Option, stay?.Oven.Id, grill?.Grill.Id);
        });
        var holds = model.HoldsOf.Select(hold =>
        {
            var chosen = Enumerable.Range(0, hold.Chosen.Length).First(index => isSo(hold.Chosen[index]));
            var stay = model.OvenStays.FirstOrDefault(stay =>
                stay.Step is null && stay.Dish.Id == hold.Dish.Id && stay.Which == chosen && isSo(stay.Here));
            return new DraftHold(hold.Dish.Id, chosen, At(hold.GoesIn[chosen] ?? hold.LastEnd), stay?.Oven.Id);
        });
        return new Draft(
            steps,
            [.. model.Tends.Where(tend => isSo(tend.Taken) || model.Steps[tend.Step.Id].HasBegun)
                .Select(tend => new DraftTend(
                    tend.Step.Id, tend.Tend, tend.Turn, At(tend.Start), tend.Minutes, tend.Done || !isSo(tend.Taken)))],
            [.. holds],
            model.Tables.ToImmutableDictionary(one => one.Key, one => At(one.Value)),
            [.. model.Jobs.Where(job => isSo(job.Taken)).Select(job => new DraftJob(job, At(job.Start)))])
        {
            Values = values,
        };
    }
}

internal readonly record struct DraftStep(int Start, int End, int Option, OvenId? Oven, GrillId? Grill);

/// <param name="Done">It is past, or missed because all hands were busy; it stays with whom it was.</param>
internal readonly record struct DraftTend(StepId Step, int Tend, int Turn, int Start, int Minutes, bool Done);

internal readonly record struct DraftHold(DishId Dish, int Hold, int From, OvenId? Oven);

internal readonly record struct DraftJob(Job Job, int Start)
{
    public int End => Start + Job.Minutes;
}
