using CookAlong.Domain;
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
    sealed class FixedPlanner(Minute table) : IMealPlanner
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

    /// <summary>Nobody has stuffed the goose by 12:50.</summary>
    static async Task<OfferedPlan?> OfferAsync(LiveKitchen kitchen)
    {
        var run = (await kitchen.House.Get<LiveRuns>().FindAsync(new RunId(kitchen.Run)))!.Current;
        await kitchen.House.Get<ReplanOffers>().Look(run, Board.Of(run, Clock(12, 50)));
        return kitchen.House.Get<ReplanOffers>().Of(run);
    }
}
