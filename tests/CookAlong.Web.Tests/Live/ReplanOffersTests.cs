using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Features.Live.Runs;
using Microsoft.Extensions.DependencyInjection;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Live;

public sealed class ReplanOffersTests
{
    /// <summary>Serves at a given time, with trimming given to Maren.</summary>
    internal sealed class FixedPlanner(Minute table) : IMealPlanner
    {
        public int Asked { get; private set; }

        public Plan Plan(PlanRequest request, IProgress<PlanProgress>? progress = null, CancellationToken stop = default)
        {
            Asked++;
            var current = request.So!.Current;
            return current with
            {
                Courses = [.. current.Courses.Select(course => course with { TableTime = table })],
                Steps = [.. current.Steps.Select(step => step.Step == Trim ? step with { Helpers = [Maren], Start = At(14, 25), End = At(14, 35) } : step)],
            };
        }
    }

    [Fact]
    public async Task A_slip_brings_an_offer_and_taking_it_makes_it_the_plan()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(new FixedPlanner(At(15, 10))));
        var offer = await OfferAsync(kitchen);
        Assert.Equal(10, offer!.LateMinutes);
        var change = Assert.Single(offer.Changes, one => one.Step == Trim);
        Assert.Equal((At(14, 20), At(14, 25), Ivo, Maren), (change.Was, change.Becomes, change.WasBy[0], change.BecomesBy[0]));

        var ivo = await kitchen.JoinAsync("Ivo");
        Assert.False((await kitchen.TapAsync(ivo, new { kind = "acceptPlan", plan = offer.Id })).Accepted);
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "acceptPlan", plan = offer.Id })).Accepted);
        var run = await kitchen.LoadAsync();
        Assert.Equal(At(15, 10), run.Plan.TableTime(Main));
        Assert.Equal([Maren], run.HoldersOf(Trim));
    }

    [Fact]
    public async Task An_offer_does_not_outlive_what_it_was_made_for()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(new FixedPlanner(At(15, 10))));
        var offer = await OfferAsync(kitchen);
        await kitchen.TapAsync(kitchen.Host, new { kind = "startStep", step = "stuff" });
        var stale = await kitchen.TapAsync(kitchen.Host, new { kind = "acceptPlan", plan = offer!.Id });
        Assert.False(stale.Accepted);
        Assert.Equal(At(15), (await kitchen.LoadAsync()).Plan.TableTime(Main));
    }

    [Fact]
    public async Task A_plan_that_gains_nothing_is_not_offered()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(new FixedPlanner(At(16))));
        Assert.Null(await OfferAsync(kitchen));
    }

    [Fact]
    public async Task The_same_slip_is_asked_about_once()
    {
        var planner = new FixedPlanner(At(16));
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(planner));
        await OfferAsync(kitchen);
        await OfferAsync(kitchen);
        Assert.Equal(1, planner.Asked);
    }

    [Fact]
    public async Task Hands_that_go_bring_an_offer_though_nothing_is_late()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(new FixedPlanner(At(15))));
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "helperLeaves", helper = "ivo", minutes = 0 })).Accepted);
        var run = await kitchen.LoadAsync();
        await kitchen.House.Get<ReplanOffers>().Look(run, Board.Of(run, Clock(12, 20)));
        var offer = kitchen.House.Get<ReplanOffers>().Of(run)!;
        Assert.Contains(offer.Changes, change => change.Step == Trim && change.BecomesBy.SequenceEqual([Maren]));
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "acceptPlan", plan = offer.Id })).Accepted);
        Assert.Null((await kitchen.LoadAsync()).Wish);
    }

    [Theory]
    [InlineData("""{"kind":"dropDish","dish":"beans"}""")]
    [InlineData("""{"kind":"moveTable","course":"main","minutes":15}""")]
    [InlineData("""{"kind":"ovenStillHeats","oven":"oven","minutes":10}""")]
    public async Task What_upsets_a_plan_survives_a_restart(string command)
    {
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(new FixedPlanner(At(15))));
        Assert.True((await kitchen.TapAsync(kitchen.Host, JsonDocument.Parse(command).RootElement)).Accepted);
        Assert.NotNull((await kitchen.LoadAsync()).Wish);
    }

    [Fact]
    public async Task A_plan_of_what_is_left_is_taken_and_survives_a_restart()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(new FixedPlanner(At(15, 5))));
        await kitchen.TapAsync(kitchen.Host, new { kind = "moveTable", course = "main", minutes = 5 });
        await kitchen.TapAsync(kitchen.Host, new { kind = "dropDish", dish = "beans" });
        var run = await kitchen.LoadAsync();
        var offers = kitchen.House.Get<ReplanOffers>();
        await offers.Look(run, Board.Of(run, Clock(12, 20)));

        // The first change may still have been looked at when the second came; the next look is for both.
        await offers.Look(run, Board.Of(run, Clock(12, 20)));
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "acceptPlan", plan = offers.Of(run)!.Id })).Accepted);
        var plan = (await kitchen.LoadAsync()).Plan;
        Assert.Equal((At(15, 5), At(15, 5)), (plan.Courses[0].TableTime, plan.Courses[0].Promised));
        Assert.DoesNotContain(plan.Steps, step => step.Step == Trim);
    }

    [Fact]
    public async Task A_thermometer_that_foretells_a_later_end_brings_an_offer()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(new FixedPlanner(At(15, 5))), roast: new CoreWanted(74, new Joint(Cut.WholeDuck, 2)));
        await kitchen.TapAsync(kitchen.Host, new { kind = "finishStep", step = "stuff" });
        kitchen.House.Clock.LeapTo(Clock(12, 40));
        await kitchen.TapAsync(kitchen.Host, new { kind = "startStep", step = "roast" });
        var offers = kitchen.House.Get<ReplanOffers>();
        var run = await kitchen.LoadAsync();
        Assert.Null(Board.Of(run, Clock(12, 45)).Slip);
        foreach (var (hour, minute, celsius) in new[] { (13, 0, 7), (13, 20, 13), (13, 40, 22), (14, 0, 33) })
        {
            kitchen.House.Clock.LeapTo(Clock(hour, minute));
            Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "readCore", step = "roast", celsius })).Accepted);
        }

        // Planned to be out at 14:10; by its readings it is not, and the plan that makes the best of it is offered.
        run = await kitchen.LoadAsync();
        Assert.True(run.StateOf(Roast).Word!.Likely > Clock(14, 20), run.StateOf(Roast).Word!.ToString());
        Assert.True(Board.Of(run, Clock(14)).Slip!.LateMinutes > 5);
        await offers.Look(run, Board.Of(run, Clock(14)));
        await offers.Look(run, Board.Of(run, Clock(14)));
        Assert.Equal(5, offers.Of(run)!.LateMinutes);
    }

    [Fact]
    public async Task A_plan_told_while_the_search_goes_on_is_offered_at_once_and_can_be_taken_when_a_better_one_came()
    {
        await using var kitchen = await LiveKitchen.StartedAsync(services => services.AddSingleton<IMealPlanner>(new TwoPlans()));
        var offers = new List<OfferedPlan?>();
        var run = (await kitchen.House.Get<LiveRuns>().FindAsync(new RunId(kitchen.Run)))!.Current;
        await kitchen.House.Get<ReplanOffers>().Look(run, Board.Of(run, Clock(12, 50)), () => offers.Add(kitchen.House.Get<ReplanOffers>().Of(run)));
        Assert.Equal([8, 3], offers.Select(offer => offer!.LateMinutes));
        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "acceptPlan", plan = offers[0]!.Id })).Accepted);
    }

    /// <summary>Tells of a plan that is eight minutes late, and finds one that is three.</summary>
    sealed class TwoPlans : IMealPlanner
    {
        public Plan Plan(PlanRequest request, IProgress<PlanProgress>? progress = null, CancellationToken stop = default)
        {
            Plan Late(int minutes) => request.So!.Current with
            {
                Courses = [.. request.So.Current.Courses.Select(course => course with { TableTime = At(15, minutes) })],
                Cost = request.So.Current.Cost with { Objective = minutes },
            };
            progress!.Report(new PlanProgress(TimeSpan.Zero, 8, 1, 8) { Plan = Late(8) });
            return Late(3);
        }
    }

    /// <summary>Nobody has stuffed the goose by 12:50.</summary>
    static async Task<OfferedPlan?> OfferAsync(LiveKitchen kitchen)
    {
        var run = (await kitchen.House.Get<LiveRuns>().FindAsync(new RunId(kitchen.Run)))!.Current;
        await kitchen.House.Get<ReplanOffers>().Look(run, Board.Of(run, Clock(12, 50)));
        return kitchen.House.Get<ReplanOffers>().Of(run);
    }
}
