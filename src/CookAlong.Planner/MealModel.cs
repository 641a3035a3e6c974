using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Planner.Encodings;
using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <summary>How the people's rules are put to the solver.</summary>
internal enum PeopleBy
{
    /// <summary>Only how many of each kind are busy: quick, and a bound for the other.</summary>
    Counts,

    /// <summary>Who does what.</summary>
    Names,
}

/// <summary>One attempt at a meal as a constraint model: the unknowns every rule's encoding shares, and the rules put in.</summary>
internal sealed class MealModel
{
    private readonly List<(LinearExpr Cost, object? Of)> costs = [];

    private readonly LinearExpr objective;

    /// <param name="isLatenessOnly">The least late plan is wanted, whatever else it costs: nothing else has a price but a limit that is broken already.</param>
    public MealModel(Meal meal, Clock clock, SoFar? so, Told? told, PeopleBy people, Prices prices, Near? near = null, bool isLatenessOnly = false)
    {
        IsLatenessOnly = isLatenessOnly;
        Meal = meal;
        Clock = clock;
        So = so;
        Prices = prices;
        Told = told;
        End = clock.End(meal);
        foreach (var course in meal.Courses)
        {
            Tables[course.Id] = Encodings.TableTimes.Of(this, course);
        }

        foreach (var dish in meal.Dishes)
        {
            foreach (var step in dish.Steps)
            {
                Steps[step.Id] = Encodings.Steps.Of(this, dish, step, near);
            }
        }

        Gaps.Add(this);
        FixedTimes.Add(this);
        Places.Add(this);
        Holds.Add(this);
        OvenTemperature.Add(this);
        Shelves.Add(this);
        Rings.Add(this);
        Grills.Add(this);
        Appliances.Add(this);
        Nearby.Add(this);
        Encodings.Tends.Add(this);
        Encodings.Jobs.Add(this);
        People.Add(this, people);
        if (isLatenessOnly)
        {
            SideBySide.Add(this);
        }
        else
        {
            Objective.Add(this);
        }

        objective = LinearExpr.Sum(costs.Select(one => one.Cost));
        Cp.Minimize(objective);
    }

    public CpModel Cp { get; } = new();

    public Meal Meal { get; }

    public Clock Clock { get; }

    public SoFar? So { get; }

    public Prices Prices { get; }

    public Told? Told { get; }

    /// <summary>The last minute of the clock.</summary>
    public int End { get; }

    public Dictionary<CourseId, LinearExpr> Tables { get; } = [];

    /// <summary>Table times that may move, with the promised minute of the clock.</summary>
    public List<(IntVar Table, int Promised)> OpenTables { get; } = [];

    public Dictionary<StepId, StepVariables> Steps { get; } = [];

    public List<OvenStay> OvenStays { get; } = [];

    /// <summary>Null where no turn of a dial has a price.</summary>
    public DialTurns? DialTurns { get; set; }

    public List<GrillStay> GrillStays { get; } = [];

    public List<TendVariables> Tends { get; } = [];

    public List<HoldVariables> HoldsOf { get; } = [];

    public List<Job> Jobs { get; } = [];

    /// <summary>The minutes all courses are late are all that counts.</summary>
    public bool IsLatenessOnly { get; }

    private LinearExpr Lateness => LinearExpr.Sum(OpenTables.Select(open => open.Table - open.Promised));

    /// <summary>Of all courses that are still to come together, in minutes.</summary>
    public int LateOf(Draft draft) => Tables.Sum(table => OpenTables.Where(open => ReferenceEquals(open.Table, table.Value)).Sum(open => draft.Tables[table.Key] - open.Promised));

    /// <summary>Only a plan less late than one in hand is worth having.</summary>
    /// <param name="cost">How late that one is, all courses together, in the price of it.</param>
    public void LessLateThan(long cost) => Cp.Add(Lateness * Prices.LateMinute <= cost - 1);

    /// <summary>It has been proved that all courses together are so late at the least, in the price of it.</summary>
    public void LateAtLeast(long cost)
    {
        if (cost > 0)
        {
            Cp.Add(Lateness * Prices.LateMinute >= cost);
        }
    }

    /// <param name="of">The dish, step or oven that it is the price of, where it is that of one alone.</param>
    public void Charge(LinearExpr amount, long price, object? of = null) => costs.Add((amount * price, of));

    /// <summary>It has been proved that no plan costs less.</summary>
    public void AtLeast(long cost)
    {
        if (cost > 0)
        {
            Cp.Add(objective >= cost);
        }
    }

    /// <summary>Another aim, among plans of no more than this price.</summary>
    public void Aim(LinearExpr aim, long most)
    {
        Cp.Add(objective <= most);
        Cp.Minimize(aim);
    }

    /// <summary>It has been proved of a part of the meal that what it is charged for costs so much at the least.</summary>
    public void AtLeast(long cost, MealModel part)
    {
        var charged = part.costs.Select(one => one.Of).OfType<object>().ToHashSet();
        Cp.Add(LinearExpr.Sum(costs.Where(one => one.Of is not null && charged.Contains(one.Of)).Select(one => one.Cost)) >= cost);
    }

    /// <summary>Never so: this way, place or hold cannot be chosen.</summary>
    public void Forbid(ILiteral choice) => Cp.AddBoolOr([choice.Not()]);

    /// <summary>An unknown minute of the clock between the two; where there is none the model has no plan.</summary>
    public IntVar Time(int from, int to, string name)
    {
        if (from > to)
        {
            Forbid(Cp.TrueLiteral());
        }

        return Cp.NewIntVar(from, Math.Max(from, to), name);
    }

    /// <summary>One of <paramref name="spans"/> (both ends included) holds <paramref name="time"/> when <paramref name="when"/> is so.</summary>
    public void Within(LinearExpr time, IReadOnlyList<(int From, int To)> spans, ILiteral when)
    {
        if (spans.Count == 0)
        {
            Forbid(when);
            return;
        }

        var domain = Google.OrTools.Util.Domain.FromIntervals([.. spans.Select(span => new long[] { span.From, span.To })]);
        Cp.AddLinearExpressionInDomain(time, domain).OnlyEnforceIf(when);
    }

    /// <summary>A literal for each of <paramref name="count"/> choices, exactly one of them true when <paramref name="when"/> is, else none.</summary>
    public IReadOnlyList<ILiteral> OneOf(int count, ILiteral when, string name)
    {
        if (count == 0)
        {
            Forbid(when);
            return [];
        }

        if (count == 1)
        {
            return [when];
        }

        var choices = Enumerable.Range(0, count).Select(index => (ILiteral)Cp.NewBoolVar($"{name}#{index}")).ToList();
        Cp.AddExactlyOne(choices.Append(when.Not()));
        return choices;
    }
}
