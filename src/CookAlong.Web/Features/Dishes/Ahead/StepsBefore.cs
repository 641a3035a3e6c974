using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Features.Settings;

namespace CookAlong.Web.Features.Dishes.Ahead;

/// <param name="Wait">False = somebody's hands; else it goes on by itself.</param>
/// <param name="TakesFridge">It stands in the fridge all that time.</param>
public sealed record StepBefore(string Text, string How, string? Caution, Durations Minutes, bool Wait, bool TakesFridge, Tend? Tend = null);

/// <summary>Steps that come before others, each after the one before it.</summary>
/// <param name="KeepsFor">Minutes that the food may wait for what follows.</param>
/// <param name="BeginsTheDish">They wait for nothing; else for what the step behind them waited for.</param>
public sealed record StepsBefore(ImmutableArray<StepBefore> Steps, int KeepsFor, bool BeginsTheDish)
{
    /// <summary>What counts places in a fridge calls it so: {"id": "fridge", "count": 3} among a kitchen's appliances.</summary>
    public static readonly ApplianceId Fridge = new("fridge");

    const string Raw = "Raw meat and its juices: below all other food, in a dish that holds what drips; wash hands, board and sink.";

    const int EveryHalfHour = 30;

    const int Day = 24 * 60;

    /// <param name="time">As the household's authority prints it; the longest is planned.</param>
    public static StepsBefore Thaw(ThawingPlace place, TimeLimit time)
    {
        var (least, most) = (Minutes(time.Least), Minutes(time.Most));
        var wait = new Durations(least, most, most);
        var source = $"Printed by {RegionWords.Of(time.Source)}.";
        return place switch
        {
            // A thawed bird keeps a day or two in the fridge (USDA, from memory); the shorter counts.
            ThawingPlace.Fridge => new(
            [
                new("Move it from the freezer to the fridge", "In its wrapping, in a dish, on the lowest shelf.", Raw, Durations.Exactly(5), Wait: false, TakesFridge: false),
                new("Thaw it in the fridge", source, Raw, wait, Wait: true, TakesFridge: true),
            ], Day, BeginsTheDish: true),
            // Cooked at once, as the same tables say of cold water.
            ThawingPlace.ColdWater => new(
            [
                new("Put it into cold water", "In a bag that does not leak, all under water.", Raw, Durations.Exactly(5), Wait: false, TakesFridge: false),
                new("Thaw it in cold water", $"{source} Cook it at once.", Raw, wait, Wait: true, TakesFridge: false, most > EveryHalfHour ? new Tend("Change the water", 3, EveryHalfHour, null, 5, ChildSafe: false) : null),
            ], 30, BeginsTheDish: true),
            ThawingPlace.CoolRoom => new(
            [
                new("Take it out of the freezer", "Into a dish, covered, in a room below 17.5 °C.", Raw, Durations.Exactly(5), Wait: false, TakesFridge: false),
                new("Thaw it in a cool room", $"{source} Into the fridge as soon as no ice is left.", Raw, wait, Wait: true, TakesFridge: false),
            ], 30, BeginsTheDish: true),
            _ => throw new System.Diagnostics.UnreachableException(place.ToString()),
        };
    }

    public static StepsBefore Brine() => new(
    [
        new("Make the brine and lay it in", $"About {Brining.GramsALitre:0} g of table salt a litre of cold water, enough to cover it. Not for what was salted before.", Raw, Durations.Exactly(15), Wait: false, TakesFridge: false),
        new("Brine it in the fridge", $"{RegionWords.Of(Brining.InTheFridge.Source)}.", Raw, Durations.Exactly(Minutes(Brining.InTheFridge.Least)), Wait: true, TakesFridge: true),
    ], Minutes(Brining.InTheFridge.Most - Brining.InTheFridge.Least), BeginsTheDish: false);

    /// <summary>Times are common practice, no source: the dough decides.</summary>
    public static StepsBefore Prove(bool overnight) => overnight
        ? new([new("Let it prove in the fridge overnight", "Covered. It is ready when it has doubled.", null, new Durations(480, 600, 720), Wait: true, TakesFridge: true)], 360, BeginsTheDish: false)
        : new([new("Let it prove in a warm place", "Covered. It is ready when it has doubled.", null, new Durations(60, 75, 90), Wait: true, TakesFridge: false)], 15, BeginsTheDish: false);

    /// <param name="at">The step that they come before, and that waits for them.</param>
    /// <param name="countsFridge">Fridge places are counted in the kitchen this is for.</param>
    public void PutInto(DishDocument document, int at, bool countsFridge)
    {
        var (followsOrder, waitedFor) = (document.FollowsOrder(at), DishFile.Read(document.Text).Dish!.Steps[at].After);
        for (var index = 0; index < Steps.Length; index++)
        {
            var (one, place) = (Steps[index], at + index);
            document.InsertStep(place, one.Text, one.Minutes.Likely);
            document.Change(place, step => step with
            {
                How = one.How,
                Caution = one.Caution,
                Way = step.Way with
                {
                    Minutes = one.Minutes,
                    Attention = one.Wait ? Attention.Unattended : Attention.HandsOn,
                    Uses = step.Way.Uses with { Appliances = one.TakesFridge && countsFridge ? [Fridge] : [] },
                },
                Tends = one.Tend is { } tend ? [tend] : [],
            });
        }

        if (at > 0 && (BeginsTheDish || !followsOrder))
        {
            document.WaitFor(at, BeginsTheDish ? [] : waitedFor);
        }

        var next = at + Steps.Length;
        var last = new After(DishFile.Read(document.Text).Dish!.Steps[next - 1].Id, 0, KeepsFor);
        document.WaitFor(next, BeginsTheDish ? [last, .. waitedFor] : [last]);
    }

    /// <summary>Up to five minutes: nothing here is better known.</summary>
    static int Minutes(TimeSpan span) => (int)Math.Ceiling(span.TotalMinutes / 5) * 5;
}
