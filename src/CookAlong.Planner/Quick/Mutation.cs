namespace CookAlong.Planner.Quick;

/// <summary>One small change to the genes.</summary>
internal static class Mutation
{
    public static void Change(Genes genes, Work work, Layout last, Random random)
    {
        if (last.Troubles.Count > 0 && random.Next(2) == 0)
        {
            // What could not be kept is placed sooner next time, before others take its minutes.
            Raise(genes, work.Dishes[last.Troubles[random.Next(last.Troubles.Count)]], random.Next(1, 30));
            return;
        }

        var step = work.ToCome[random.Next(work.ToCome.Length)];
        switch (random.Next(10))
        {
            case 0 or 1 or 2 or 3:
                genes.Rank[step] += random.Next(-30, 31);
                break;
            case 4:
                var other = work.ToCome[random.Next(work.ToCome.Length)];
                (genes.Rank[step], genes.Rank[other]) = (genes.Rank[other], genes.Rank[step]);
                break;
            case 5 or 6:
                genes.Lead[step] = Lead(work, last, step, random);
                break;
            case 9:
                Raise(genes, work.Dishes[work.Steps[step].Dish], random.Next(-20, 21));
                break;
            case 7:
                genes.Person[step] = random.Next(Math.Max(1, work.Meal.Helpers.Length));
                break;
            case 8 when work.Steps[step].Ways.Length > 1:
                genes.Way[step] = random.Next(work.Steps[step].Ways.Length);
                break;
            default:
                var dish = work.Steps[step].Dish;
                if (work.Dishes[dish].Holds.Length > 1)
                {
                    genes.Hold[dish] = random.Next(work.Dishes[dish].Holds.Length);
                }
                else
                {
                    genes.Rank[step] += random.Next(-200, 201);
                }

                break;
        }
    }

    private static void Raise(Genes genes, QuickDish dish, int by)
    {
        foreach (var step in dish.Steps)
        {
            genes.Rank[step] += by;
        }
    }

    private static int Lead(Work work, Layout last, int step, Random random)
    {
        if (last.TooEarly > 0)
        {
            return 0;
        }

        var lead = last.Tables[work.Steps[step].Course] - last.Ends[step];
        return random.Next(work.Steps[step].Told is null ? 5 : 8) switch
        {
            > 4 => last.Tables[work.Steps[step].Course] - work.Steps[step].Told!.Value - last.Ways[step].Minutes,
            0 => 0,
            1 => Prices.RushMinutes,
            2 => Math.Max(0, lead - random.Next(1, 16)),
            3 => lead + random.Next(1, 16),
            _ => lead + random.Next(1, 61),
        };
    }
}
