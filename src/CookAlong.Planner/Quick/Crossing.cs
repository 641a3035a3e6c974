namespace CookAlong.Planner.Quick;

/// <summary>Two orders made one.</summary>
internal static class Crossing
{
    /// <summary>Of the time a meal takes, the least and most that comes from the father.</summary>
    private const double Least = 0.1;

    private const double Most = 0.5;

    /// <summary>More minutes than any meal has.</summary>
    private const int Apart = 1_000_000;

    /// <summary>What the father has within a span of his time comes as he has it, what he has before and after in the mother's order.</summary>
    /// <param name="mother">Becomes the child.</param>
    public static void Cross(Genes mother, Genes father, Random random)
    {
        var (first, last) = (father.Rank.Min(), father.Rank.Max());
        var minutes = last - first;
        var width = random.Next((int)(minutes * Least), (int)(minutes * Most) + 1);
        var from = first + random.Next(minutes - width + 1);
        for (var step = 0; step < mother.Rank.Length; step++)
        {
            var rank = father.Rank[step];
            if (rank < from || rank > from + width)
            {
                mother.Rank[step] += rank < from ? -Apart : Apart;
                continue;
            }

            mother.Rank[step] = rank;
            (mother.Way[step], mother.Person[step], mother.Lead[step]) = (father.Way[step], father.Person[step], father.Lead[step]);
        }

        for (var dish = 0; dish < mother.Hold.Length; dish++)
        {
            mother.Hold[dish] = random.Next(2) == 0 ? father.Hold[dish] : mother.Hold[dish];
        }
    }
}
