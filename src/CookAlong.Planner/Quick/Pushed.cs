namespace CookAlong.Planner.Quick;

/// <summary>
/// The plan that people were told, pushed by what is late: one step after the other goes to the first minute from the one that
/// was told where it has its place and hands. Others than in a plan moved right, who waits lets those pass who need not.
/// </summary>
internal static class Pushed
{
    /// <summary>By who was told to begin first, and by who begins first when all is moved right.</summary>
    public static IEnumerable<Genes> All(Work work, QuickMoved moved)
    {
        var (backward, layout, end) = (new Backward(Mirror.Of(work, asTold: true)), new Layout(work), work.Width - work.Margin - 1);
        foreach (var byTold in new[] { true, false })
        {
            var genes = Genes.FromMoved(work, moved, moved.Ends, moved.Late);
            genes.IsOrder = true;
            foreach (var step in work.Steps)
            {
                genes.Rank[step.Index] = byTold && step.Told is { } told ? -told : step.Ways[genes.Way[step.Index]].Minutes - moved.Ends[step.Index];
            }

            backward.Lay(genes, layout);
            int[] ends = [.. layout.Starts.Select(start => end - start)];
            var late = new int[work.Promised.Length];
            foreach (var (index, dish) in work.Dishes.Index().Where(dish => work.Served[dish.Item.Course] is null))
            {
                var ready = dish.Steps.Select(step => ends[step] + dish.Holds[genes.Hold[index]].Hold.Least - work.Promised[dish.Course]).Append(0).Max();
                late[dish.Course] = Math.Max(late[dish.Course], ready);
            }

            yield return Genes.FromMoved(work, moved, ends, late);
        }
    }
}
