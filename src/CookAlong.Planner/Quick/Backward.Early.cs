namespace CookAlong.Planner.Quick;

// By how much each course begins before it may.
internal sealed partial class Backward
{
    /// <summary>Dishes that are in a warm oven already, however early that was.</summary>
    private readonly HashSet<int> isIn = [.. work.Begun?.Made.Where(made => made.In is not null).Select(made => made.Dish) ?? []];

    private void MeasureEarly(Layout layout)
    {
        Array.Clear(layout.Early);
        foreach (var step in work.Steps)
        {
            if (step.Begun is null)
            {
                Early(layout, step.Course, Math.Max(step.Floor, layout.Spots[step.Index].Earliest) - layout.Starts[step.Index]);
            }
        }

        foreach (var (dish, _) in work.Begun?.Made ?? [])
        {
            var course = work.Dishes[dish].Course;
            Early(layout, course, work.Served[course] is null ? layout.Ready[dish] + layout.Holds[dish].Hold.Least - layout.Tables[course] : 0);
        }

        for (var dish = 0; dish < work.Dishes.Length; dish++)
        {
            if (layout.WarmSpots[dish] is { } warm && !isIn.Contains(dish))
            {
                Early(layout, work.Dishes[dish].Course, warm.Earliest - layout.GoesIn[dish]);
            }
        }
    }

    private static void Early(Layout layout, int course, int minutes) => layout.Early[course] = Math.Max(layout.Early[course], minutes);
}
