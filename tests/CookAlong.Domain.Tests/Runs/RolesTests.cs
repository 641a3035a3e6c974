using System.Collections.Immutable;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using static CookAlong.Domain.Tests.Runs.SmallMeal;

namespace CookAlong.Domain.Tests.Runs;

/// <summary>Every command there is, asked for by everybody who may not.</summary>
public sealed class RolesTests
{
    static readonly RunCommand[] ofHelpers =
    [
        new RunCommand.StartStep(Trim), new RunCommand.FinishStep(Trim), new RunCommand.TakeBack(Trim), new RunCommand.ClaimStep(Trim),
        new RunCommand.LetGoStep(Trim), new RunCommand.GiveStep(Trim, Maren), new RunCommand.TakeBackGiving(Trim), new RunCommand.KeepStep(Trim), new RunCommand.AddTime(Trim, 5),
        new RunCommand.TakeBackTime(Trim, 5), new RunCommand.FinishTend(Roast, 0, 0), new RunCommand.TakeBackTend(Roast, 0, 0),
        new RunCommand.ReadCore(Roast, 50), new RunCommand.TakeBackReading(Roast), new RunCommand.CoverRest(Roast, RestUnder.Foil, 20), new RunCommand.TakeBackCover(Roast),
        new RunCommand.SetFoil(Roast, true), new RunCommand.ReadOven(Oven, 170), new RunCommand.TakeBackOvenReading(Oven), new RunCommand.TakeBackFoil(Roast), new RunCommand.Acknowledge(new CallId("in:roast")), new RunCommand.TakeBackAnswer(new CallId("in:roast")),
    ];

    static readonly RunCommand[] ofHosts =
    [
        new RunCommand.PutOut(TobiPhone), new RunCommand.TakeOver(Trim), new RunCommand.FreeStep(Trim, Ivo, true), new RunCommand.HoldEverything(),
        new RunCommand.GoOn(), new RunCommand.AcceptPlan(SmallMeal.Plan, 0), new RunCommand.TakeBackPlan(), new RunCommand.SetPlanRule(5),
        new RunCommand.HelperLeaves(Ivo, 0), new RunCommand.HelperStays(Ivo), new RunCommand.AddDish(SmallMeal.Meal.Dishes[0]),
        new RunCommand.DropDish(SmallMeal.Meal.Dishes[0].Id), new RunCommand.BringBackDish(SmallMeal.Meal.Dishes[0].Id), new RunCommand.MoveTable(Main, 5),
        new RunCommand.TakeBackTable(Main), new RunCommand.OvenStillHeats(Oven, 5), new RunCommand.OvenOnTime(Oven),
        new RunCommand.VouchFor(Roast, "juices"), new RunCommand.TakeBackWord(Roast), new RunCommand.EndRun(),
    ];

    /// <summary>By name, for the runner.</summary>
    public static TheoryData<string> OfHelpers => [.. ofHelpers.Select(Name)];

    public static TheoryData<string> OfHosts => [.. ofHosts.Select(Name)];

    [Fact]
    public void Every_command_is_somebody_s() => Assert.Equal(
        typeof(RunCommand).GetNestedTypes().Select(type => type.Name).Order(),
        ofHelpers.Concat(ofHosts).Select(Name).Append(nameof(RunCommand.Join)).Order());

    [Theory]
    [MemberData(nameof(OfHelpers))]
    public void Whoever_only_looks_does_no_helper_s_work(string command) =>
        KitchenStory.Begun().When(Watcher, Named(command)).Refused(new Refusal.NotYourRole(Role.Helper));

    [Theory]
    [MemberData(nameof(OfHosts))]
    public void Nobody_but_the_host_does_the_host_s(string command)
    {
        foreach (var other in new[] { Watcher, TobiPhone, IvoPhone })
        {
            KitchenStory.Begun().When(other, Named(command)).Refused(new Refusal.NotYourRole(Role.Host));
        }
    }

    [Theory]
    [MemberData(nameof(OfHelpers))]
    [MemberData(nameof(OfHosts))]
    public void A_stranger_does_nothing(string command) =>
        KitchenStory.Begun().When(Stranger, Named(command)).Refused(new Refusal.NotInThisRun());

    static string Name(RunCommand command) => command.GetType().Name;

    static RunCommand Named(string name) => ofHelpers.Concat(ofHosts).Single(command => Name(command) == name);
}
