using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Guests;

/// <summary>Where two dishes meet in a plan.</summary>
public enum MeetingPlace
{
    /// <summary>In one oven at a time: fat spits, trays stand above each other.</summary>
    Oven,

    /// <summary>Under one grill, one after the other.</summary>
    Grill,

    /// <summary>In one appliance, one after the other: a fryer's fat, a mixer's bowl.</summary>
    Appliance,

    /// <summary>In one pan or tray, or its fat, by the words of a step.</summary>
    Vessel,
}

/// <summary>A dish that somebody could eat meets one that holds what they avoid, or may hold it.</summary>
/// <param name="Holds">The dish with it.</param>
/// <param name="Clean">The dish without it.</param>
/// <param name="Why">The guests' own words for what they avoid.</param>
/// <param name="IsCertain">False: only a label says whether it holds it.</param>
public sealed record CrossContact(MeetingPlace Place, Dish Holds, Dish Clean, ImmutableArray<Guest> Guests, ImmutableArray<string> Why, bool IsCertain)
{
    /// <summary>Every pair of dishes once, in the order of the plan.</summary>
    public static ImmutableArray<CrossContact> In(Meal meal, Plan plan)
    {
        var stays = Stays(meal, plan).OrderBy(stay => stay.From).ToList();
        var meetings = (from first in stays
                        from second in stays
                        where first.Dish.Id != second.Dish.Id && first.Meets(second)
                        select (first.Place, First: first.Dish, Second: second.Dish)).Concat(Vessels.Shared(meal)).ToList();
        var judged = (from guest in meal.Guests
                      where !Needs.Of(guest).IsNone
                      from dish in meal.Dishes
                      select WhoCanEat.Judge(guest, dish)).ToDictionary(one => (one.Guest, one.Dish.Id));
        var guests = judged.Keys.Select(key => key.Guest).Distinct().ToList();
        return
        [
            .. from meeting in meetings
               let at = guests.Where(guest => judged[(guest, meeting.First.Id)].Answer > judged[(guest, meeting.Second.Id)].Answer && Known(judged[(guest, meeting.First.Id)]).Any()).ToImmutableArray()
               where !at.IsEmpty
               let why = at.SelectMany(guest => Known(judged[(guest, meeting.First.Id)])).Distinct()
               group (at, why) by (meeting.Place, Holds: meeting.First, Clean: meeting.Second) into pair
               select new CrossContact(
                   pair.Key.Place, pair.Key.Holds, pair.Key.Clean,
                   [.. pair.SelectMany(one => one.at).Distinct()], [.. pair.SelectMany(one => one.why).Distinct()],
                   pair.Any(one => one.at.Any(guest => judged[(guest, pair.Key.Holds.Id)].Answer == CanEat.No))),
        ];
    }

    /// <summary>Why not, or why ask; that nothing is known of a thing is no reason to fear for its neighbours.</summary>
    static IEnumerable<string> Known(DishForGuest judged) =>
        judged.Reasons.Where(reason => judged.Answer == CanEat.No ? reason.IsCertain : !reason.IsUnknown).Select(reason => reason.Why);

    static IEnumerable<Stay> Stays(Meal meal, Plan plan)
    {
        foreach (var step in plan.Steps)
        {
            var dish = meal.DishOf(step.Step);
            if (step.Oven is { } oven)
            {
                yield return new(dish, MeetingPlace.Oven, oven.Value, step.Start, step.End);
            }

            if (step.Grill is { } grill)
            {
                yield return new(dish, MeetingPlace.Grill, grill.Value, step.Start, step.End);
            }

            foreach (var appliance in step.Appliances)
            {
                yield return new(dish, MeetingPlace.Appliance, appliance.Value, step.Start, step.End);
            }
        }

        foreach (var hold in plan.Holds)
        {
            if (hold.Oven is { } oven)
            {
                yield return new(meal.Dishes.Single(dish => dish.Id == hold.Dish), MeetingPlace.Oven, oven.Value, hold.From, hold.To);
            }
        }
    }

    sealed record Stay(Dish Dish, MeetingPlace Place, string Id, Minute From, Minute To)
    {
        /// <summary>In an oven at the same time; what drips or sticks elsewhere meets only what comes after it.</summary>
        public bool Meets(Stay other) => Place == other.Place && Id == other.Id
            && (Place == MeetingPlace.Oven ? From < other.To && other.From < To : From <= other.From);
    }
}
