using System.Diagnostics;
using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web.Features.Plans;
using Spectre.Console;

namespace CookAlong.Web.Cli;

/// <summary>A plan as a timetable on the terminal: one table a day, what, how long, who and where.</summary>
static class Timetable
{
    const int Width = 120;

    sealed record Row(Minute At, int Order, string What, int? Minutes, string Who, string Where);

    public static void Print(TextWriter output, Plan plan, Meal meal)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(output) });
        if (Console.IsOutputRedirected || output != Console.Out)
        {
            console.Profile.Width = Width;
        }

        foreach (var day in Rows(plan, meal).GroupBy(row => LocalTime.Show(row.At, meal.TimeZone).Date).OrderBy(day => day.Key))
        {
            var table = new Table { Title = new TableTitle(day.Key.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture)), Border = TableBorder.Simple };
            table.AddColumn(new TableColumn("from").NoWrap()).AddColumn(new TableColumn("min").RightAligned().NoWrap()).AddColumn("what").AddColumn("who").AddColumn("where");
            foreach (var row in day.OrderBy(row => row.At).ThenBy(row => row.Order))
            {
                table.AddRow(
                    LocalTime.Show(row.At, meal.TimeZone).ToString(LocalTime.IsSecondPass(row.At, meal.TimeZone) ? "HH:mm zzz" : "HH:mm", CultureInfo.InvariantCulture),
                    row.Minutes?.ToString(CultureInfo.InvariantCulture) ?? "",
                    Markup.Escape(row.What),
                    Markup.Escape(row.Who),
                    Markup.Escape(row.Where));
            }

            console.Write(table);
        }

        output.WriteLine(PlanWords.Status(plan));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Searched {plan.SolveMilliseconds / 1000.0:0.0} s."));
        if (plan.Confidence is { } confidence)
        {
            output.WriteLine($"Served within 10 minutes of every promise on {SureWords.Of100(confidence.OnTimeWithin10)} simulated days.");
            foreach (var line in confidence.Tables.Select(spread => SureWords.Spread(spread, meal)).Append(SureWords.Stands(confidence, meal)).Append(SureWords.BestSpare(confidence, meal)).OfType<string>())
            {
                output.WriteLine($"  {line}");
            }
        }

        foreach (var conflict in plan.Conflicts)
        {
            output.WriteLine($"What would help: {ConflictWords.Sentence(conflict, meal)}");
        }
    }

    static IEnumerable<Row> Rows(Plan plan, Meal meal)
    {
        foreach (var planned in plan.Steps)
        {
            var step = meal.Step(planned.Step);
            var way = step.WayOf(planned.Option);
            yield return new(planned.Start, 2, step.Text, planned.Minutes, Who(planned, way, meal), Where(planned, way, meal));
        }

        foreach (var tend in plan.Tends)
        {
            var text = meal.Step(tend.Step).Tends[tend.Tend].Text;
            yield return new(tend.At, 3, $"  {text}", tend.Minutes, NameOf(tend.Helper, meal), "");
        }

        foreach (var oven in plan.Ovens)
        {
            foreach (var dial in oven.Dial)
            {
                yield return new(dial.At, 1, dial.Celsius == 0 ? "Turn it off" : $"Set it to {dial.Celsius} °C", null, "", OvenName(oven.Oven, meal));
            }
        }

        foreach (var hold in plan.Holds.Where(hold => hold.To > hold.From))
        {
            yield return new(hold.From, 4, $"{meal.Dishes.Single(dish => dish.Id == hold.Dish).Name} waits", hold.To - hold.From, "", PlanWords.Place(hold.Place));
        }

        if (plan.Cost.Leans.HasFlag(Leans.WashUp))
        {
            foreach (var (helper, from, minutes) in WashingUp.Of(meal, plan))
            {
                yield return new(from, 4, "Wash up", minutes, NameOf(helper, meal), "");
            }
        }

        foreach (var course in plan.Courses)
        {
            var late = course.LateMinutes > 0 ? $", {course.LateMinutes} min late" : "";
            yield return new(course.TableTime, 5, $"To the table: {meal.Courses.Single(one => one.Id == course.Course).Name}{late}", null, "", "");
        }
    }

    static string Who(PlannedStep planned, Way way, Meal meal) => way.Attention switch
    {
        Attention.HandsOn => string.Join(", ", planned.Helpers.Select(helper => NameOf(helper, meal))),
        Attention.Nearby => "(somebody nearby)",
        Attention.Unattended => "",
        _ => throw new UnreachableException($"no words for {way.Attention}"),
    };

    static string Where(PlannedStep planned, Way way, Meal meal)
    {
        var places = new List<string>();
        if (planned.Oven is { } oven && way.Uses.Oven is { } use)
        {
            places.Add($"{OvenName(oven, meal)}, {(use.Shelves == 1 ? "1 shelf" : $"{use.Shelves} shelves")}, {use.Celsius.Ideal} °C");
        }

        if (way.Uses.Rings > 0)
        {
            places.Add(way.Uses.Rings == 1 ? "1 ring" : $"{way.Uses.Rings} rings");
        }

        if (planned.Grill is { } grill)
        {
            places.Add(grill.Value);
        }

        places.AddRange(planned.Appliances.Select(appliance => appliance.Value));
        return string.Join("; ", places);
    }

    static string NameOf(HelperId id, Meal meal) => meal.Helpers.Single(helper => helper.Id == id).Name;

    static string OvenName(OvenId id, Meal meal) => meal.Kitchen.Ovens.Single(oven => oven.Id == id).Name;
}
