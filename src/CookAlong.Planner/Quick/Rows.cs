using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;

namespace CookAlong.Planner.Quick;

/// <summary>Gives each thing that can be used up its row: helpers first, then the hours without a grown-up, rings, ovens, grills, appliances.</summary>
internal sealed class Rows
{
    private readonly Meal meal;
    private readonly List<int> limits = [];
    private readonly List<ApplianceId> appliances;

    public Rows(Meal meal, Clock clock, int margin, int width)
    {
        this.meal = meal;
        var kitchen = meal.Kitchen;
        appliances = [.. kitchen.Appliances.Select(appliance => appliance.Id).Distinct()];
        limits.AddRange(meal.Helpers.Select(_ => 1));
        limits.Add(1);
        limits.Add(kitchen.Rings);
        limits.AddRange(kitchen.Ovens.Select(oven => oven.Shelves));
        limits.AddRange(kitchen.Grills.Select(_ => 1));
        limits.AddRange(appliances.Select(id => kitchen.Appliances.Where(appliance => appliance.Id == id).Sum(appliance => appliance.Count)));
        Taken = new ushort[limits.Count * width];

        void Away(int row, IEnumerable<Window> here, int count)
        {
            var spans = count == 0 ? [(-margin, width - margin)] : Spans.Joined(here.Select(window => (clock.Of(window.From), clock.Of(window.To))));
            foreach (var (from, to) in Spans.Without(spans, (-margin, width - margin)).Where(span => span.Item1 < span.Item2))
            {
                Taken.AsSpan((row * width) + margin + from, to - from).Fill(1);
            }
        }

        foreach (var (row, helper) in meal.Helpers.Index())
        {
            Away(row, helper.Available, helper.Available.Length);
        }

        var adults = meal.Helpers.Where(helper => !helper.IsChild).ToList();
        if (!adults.Any(adult => adult.Available.IsEmpty))
        {
            Away(Absent, adults.SelectMany(adult => adult.Available), count: -1);
        }
    }

    public ushort[] Taken { get; }

    public int Absent => meal.Helpers.Length;

    public int Rings => Absent + 1;

    public int Oven(int oven) => Rings + 1 + oven;

    public int Grill(int grill) => Rings + 1 + meal.Kitchen.Ovens.Length + grill;

    /// <summary>Null where the kitchen has none.</summary>
    public int? Appliance(ApplianceId id) => appliances.IndexOf(id) is >= 0 and var at ? Rings + 1 + meal.Kitchen.Ovens.Length + meal.Kitchen.Grills.Length + at : null;

    public int[] Helpers(Func<Helper, bool> isSo) => [.. meal.Helpers.Index().Where(one => isSo(one.Item)).Select(one => one.Index)];

    /// <summary>False when there is never so much of it.</summary>
    public bool Take(List<QuickTake> takes, int row, int amount)
    {
        if (amount > limits[row])
        {
            return false;
        }

        // More than a cell can count is more than any kitchen has in use.
        takes.Add(new QuickTake(row, (ushort)Math.Min(amount, ushort.MaxValue), (ushort)Math.Min(limits[row] - amount, ushort.MaxValue)));
        return true;
    }
}
