using CookAlong.Planner.Relaxed;

namespace CookAlong.Planner.Quick;

/// <summary>All that decides how a meal is laid out; the search changes these, and nothing else.</summary>
internal sealed class Genes
{
    private Genes(int steps, int dishes, int courses)
    {
        MostLate = new int[courses];
        Array.Fill(MostLate, int.MaxValue);
        (Rank, Way, Person, Lead, Hold) = (new int[steps], new int[steps], new int[steps], new int[steps], new int[dishes]);
    }

    /// <summary>Minutes by which a step is placed sooner than the time it may end says, going back from the table.</summary>
    public int[] Rank { get; }

    /// <summary>The rank alone is the minute by which steps are placed, whatever waits for them.</summary>
    public bool IsOrder { get; set; }

    /// <summary>Position in <see cref="QuickStep.Ways"/>.</summary>
    public int[] Way { get; }

    /// <summary>Whose hands are asked first: how far the list of the able is turned.</summary>
    public int[] Person { get; }

    /// <summary>Minutes before its course's table by which a step is to be over, even if it could be later.</summary>
    public int[] Lead { get; }

    /// <summary>Position in <see cref="QuickDish.Holds"/>.</summary>
    public int[] Hold { get; }

    /// <summary>What is made and not yet in a warm oven goes in where the steps leave room, not before they have theirs.</summary>
    public bool MadeLast { get; set; }

    /// <summary>
    /// What once came too soon for what follows it has its place before all others, as soon as it can: those in between are laid out
    /// anew a third as often, or less, and a plan is there sooner, though a dearer one.
    /// </summary>
    public bool MendsFirst { get; private set; }

    /// <summary>Minutes every course is put off.</summary>
    public int Late { get; set; }

    /// <summary>Per course: it is put off by no more than this.</summary>
    public int[] MostLate { get; }

    /// <summary>
    /// A first guess: what cannot wait long for the table is placed before what can, and what much must go before it sooner
    /// than what could be done at any time. Without the second, projects of 120 tasks came out a sixth above the best known
    /// instead of a tenth, and single cooks were found a plan on time half as often.
    /// </summary>
    /// <param name="longestFirst">Heed the second. The demo meal has a plan twenty times sooner without.</param>
    public static Genes FirstGuess(Work work, bool longestFirst)
    {
        var genes = new Genes(work.Steps.Length, work.Dishes.Length, work.Promised.Length);
        foreach (var (index, dish) in work.Dishes.Index())
        {
            genes.Hold[index] = dish.Holds.Index().MinBy(hold => (hold.Item.Hold.CostPerMinute, hold.Item.Spots.Length, hold.Index)).Index;
        }

        var chains = Chains(work);
        foreach (var step in work.Steps)
        {
            var hold = work.Dishes[step.Dish].Holds[genes.Hold[step.Dish]];
            genes.Rank[step.Index] = step.IsLast ? 60 - Math.Min(hold.Hold.Limit, 60) : 0;
            genes.Rank[step.Index] += longestFirst ? chains[step.Index] : 0;
        }

        return genes;
    }

    /// <summary>In the order that the relaxed meal has its steps in, done the ways it does them.</summary>
    public static Genes InOrder(Work work, IEnumerable<RelaxedStep> steps, Func<RelaxedStep, int> end)
    {
        var genes = FirstGuess(work, longestFirst: true);
        genes.IsOrder = true;
        foreach (var step in steps)
        {
            (genes.Rank[step.Step.Index], genes.Way[step.Step.Index]) = (end(step), step.Way);
            if (step.Holds.Length > 0)
            {
                genes.Hold[step.Step.Dish] = step.Holds[step.End - step.EndFrom];
            }
        }

        return genes;
    }

    /// <summary>Near the plan that people were told: what ends too late for the table, or for what follows it, ends sooner.</summary>
    /// <param name="ends">Per step, minutes of the clock.</param>
    /// <param name="late">Per course, minutes.</param>
    public static Genes FromMoved(Work work, QuickMoved moved, int[] ends, int[] late)
    {
        var genes = new Genes(work.Steps.Length, work.Dishes.Length, work.Promised.Length);
        for (var course = 0; course < late.Length; course++)
        {
            genes.MostLate[course] = Math.Min(late[course], work.Width - work.Margin - 1 - work.Promised[course]);
        }

        genes.Late = genes.MostLate.Max();
        moved.Ways.CopyTo(genes.Way, 0);
        moved.Holds.CopyTo(genes.Hold, 0);
        foreach (var step in work.Steps.Where(step => step.Begun is null))
        {
            var table = work.Served[step.Course] ?? work.Promised[step.Course] + genes.MostLate[step.Course];
            var hold = work.Dishes[step.Dish].Holds[genes.Hold[step.Dish]];
            var bound = table - hold.Hold.Least;
            foreach (var gap in step.After)
            {
                var next = work.Steps[gap.Step];
                bound = Math.Min(bound, ends[gap.Step] - next.Ways[genes.Way[gap.Step]].Minutes - gap.Least);
            }

            // Who waits too long for a table that is late is made later.
            var waits = table - work.Dishes[step.Dish].Steps.Max(one => ends[one]);
            genes.Lead[step.Index] = Math.Max(0, table - ends[step.Index] - (step.IsLast ? Math.Max(0, waits - hold.Hold.Limit) : 0));
            genes.Rank[step.Index] = ends[step.Index] - bound;
        }

        return genes;
    }

    /// <summary>In the order, the ways and the holds of what the solver found; a way or hold that the quick search has ruled out becomes its first.</summary>
    public static Genes Of(Work work, Draft draft)
    {
        var held = draft.Holds.ToDictionary(hold => hold.Dish, hold => hold.Hold);
        int[] ends = [.. work.Steps.Select(step => draft.Steps[step.Step.Id].End)];
        var found = new QuickMoved(
            ends,
            [.. work.Steps.Select(step => Math.Max(0, Array.FindIndex(step.Ways, way => way.Option == draft.Steps[step.Step.Id].Option)))],
            [.. work.Dishes.Select(dish => held.TryGetValue(dish.Dish.Id, out var which) ? Math.Max(0, Array.FindIndex(dish.Holds, hold => hold.Index == which)) : 0)],
            [.. work.Meal.Courses.Zip(work.Promised, (course, promised) => draft.Tables[course.Id] - promised)],
            LateAtLeast: []);
        var genes = FromMoved(work, found, ends, found.Late);
        genes.IsOrder = true;
        ends.CopyTo(genes.Rank, 0);
        return genes;
    }

    /// <summary>Per step: the minutes that what it waits for takes at the least.</summary>
    private static int[] Chains(Work work)
    {
        var found = new int?[work.Steps.Length];
        int Of(int step) => found[step] ??= work.Steps[step].Before
            .Select(gap => Of(gap.Step) + work.Steps[gap.Step].Ways.Min(way => way.Minutes) + gap.Least).Append(0).Max();
        return [.. work.Steps.Select(step => Of(step.Index))];
    }

    /// <summary>The same, with every course put off alike.</summary>
    public Genes ForAllCourses()
    {
        var copy = Copy();
        Array.Fill(copy.MostLate, int.MaxValue);
        return copy;
    }

    /// <summary>The same, with <see cref="MendsFirst"/>.</summary>
    public Genes MendingFirst()
    {
        var copy = Copy();
        copy.MendsFirst = true;
        return copy;
    }

    /// <summary>Each course is put off by so many minutes more.</summary>
    public void PutOff(int[] minutes)
    {
        for (var course = 0; course < minutes.Length; course++)
        {
            MostLate[course] = Math.Min(Late, MostLate[course]) + minutes[course];
        }

        Late = MostLate.Max();
    }

    public void CopyFrom(Genes other)
    {
        other.Rank.CopyTo(Rank, 0);
        other.Way.CopyTo(Way, 0);
        other.Person.CopyTo(Person, 0);
        other.Lead.CopyTo(Lead, 0);
        other.Hold.CopyTo(Hold, 0);
        other.MostLate.CopyTo(MostLate, 0);
        (Late, IsOrder, MadeLast, MendsFirst) = (other.Late, other.IsOrder, other.MadeLast, other.MendsFirst);
    }

    public Genes Copy()
    {
        var copy = new Genes(Rank.Length, Hold.Length, MostLate.Length);
        copy.CopyFrom(this);
        return copy;
    }
}
