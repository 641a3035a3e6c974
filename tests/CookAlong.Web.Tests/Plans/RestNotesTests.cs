using Bunit;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Tests.Runs;
using CookAlong.Web.Features.Plans;
using CookAlong.Web.Features.Settings;
using CookAlong.Web.Tests.Meals;
using Microsoft.Extensions.DependencyInjection;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Web.Tests.Plans;

/// <summary>A chicken of 1.6 kg that is planned to be out at 14:10.</summary>
public sealed class RestNotesTests : BunitContext
{
    readonly HouseholdFile household = new();

    public RestNotesTests() => Services.AddSingleton(new HouseholdRegion(household));

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        household.Dispose();
    }

    [Theory]
    [InlineData(14, 40, "rests 30 min by this plan; under foil its middle stays above 63 °C for", false)]
    [InlineData(18, 0, "rests 3 h 50 min by this plan, but under foil its middle stays above 63 °C for", true)]
    public async Task The_plans_rest_is_held_against_how_long_the_joint_stays_hot(int hour, int minute, string words, bool isTooLong)
    {
        await Services.GetRequiredService<HouseholdRegion>().ChooseAsync(Region.UnitedKingdom, Xunit.TestContext.Current.CancellationToken);
        var meal = WithCore(new CoreWanted(74, new Joint(Cut.WholeChicken, 1.6)));
        var plan = SmallMeal.Plan with { Steps = [.. SmallMeal.Plan.Steps.Select(step => step.Step == Carve ? step with { Start = At(hour, minute), End = At(hour, minute) + 15 } : step)] };
        var notes = Render<RestNotes>(parts => parts.Add(part => part.Meal, meal).Add(part => part.Plan, plan));
        await notes.WaitForElementAsync(".joint-rest", TimeSpan.FromSeconds(30));
        Assert.Contains(words, notes.Find(".joint-rest").TextContent, StringComparison.Ordinal);
        Assert.Equal(isTooLong, notes.FindAll(".joint-rest.caution").Count == 1);
    }
}
