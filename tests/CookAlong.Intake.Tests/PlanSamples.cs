using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Intake.Tests;

internal static class PlanSamples
{
    /// <summary>A plan with something of everything in it; not a good one.</summary>
    public static Plan Full(Meal meal)
    {
        var table = meal.FirstTableTime;
        return new Plan(
            PlanStatus.Feasible,
            Gap: 0.0625,
            SolveMilliseconds: 1234,
            NotBefore: table - 180,
            [new(new("main"), table + 12, table)],
            [
                new(new("chop"), table - 70, table - 60, -1, [new("ada")], null, null, [], 25),
                new(new("simmer"), table - 60, table - 30, 1, [], null, new("grill"), [new("mixer"), new("kettle")], 0),
                new(new("bake"), table - 45, table - 15, 0, [], new("oven"), null, [new("mixer")], -3),
            ],
            [new(new("simmer"), 0, 1, table - 40, 1, new("ada"))],
            [new(new("soup"), 0, HoldPlace.Table, table - 30, table + 12, null), new(new("bread"), 1, HoldPlace.WarmOven, table - 5, table + 12, new("oven"))],
            [new(new("oven"), [new(table - 180, 20), new(table - 60, 200)], [new(table - 80, 200), new(table, 0)])],
            new PlanCost(12, 34, 82, 1, 12_345_678_901) { Cushion = 15, Leans = Leans.CalmEnd | Leans.WashUp },
            new Confidence(0.83, 4.25, [new("simmer"), new("chop")])
            {
                Decisive = [new(new("simmer"), 0.6, 0.04), new(new("chop"), 0.25, 0.015)],
                TooLong = 0.12,
                Standing = [new(new("simmer"), 0.11)],
                Tables = [new(new("main"), [.. Enumerable.Range(0, TableSpread.DayCount).Select(day => Math.Max(0.0, day - 8))])],
            },
            [
                new(new PlanChange.ServeLater(new("main"), 12), 12),
                new(new PlanChange.StartEarlier(45), null),
                new(new PlanChange.AddOven(), 5),
                new(new PlanChange.AddRings(2), 5),
                new(new PlanChange.AddHelper(table - 60, table), 1),
                new(new PlanChange.WaitLonger(new("soup"), 10), 7),
                new(new PlanChange.LeaveOut(new("bread")), 0),
                new(new PlanChange.AddOven(new Window(table - 90, table - 30)), 6),
                new(new PlanChange.MakeAhead(new("soup"), table - 1200, table - 960), 9),
            ]);
    }
}
