using System.Diagnostics;
using System.Globalization;
using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;

namespace CookAlong.Web.Features.Meals;

/// <summary>What guests can eat, in words.</summary>
public static class GuestWords
{
    public const string Caution = "These answers come from what the ingredients are called and said to contain, and that may be too little. Read the label of everything you buy, keep boards, knives and pans apart, and ask the guest. For an allergy, medical advice decides.";

    public static string Portion(Guest guest) => guest.Portion switch
    {
        1 => "an adult's portion",
        < 1 => string.Create(CultureInfo.InvariantCulture, $"{guest.Portion:0.##} of an adult's portion"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{guest.Portion:0.##} adult portions"),
    };

    /// <summary>"vegetarian, no milk"; "" = nothing.</summary>
    public static string Needs(Guest guest) => string.Join(", ", [.. guest.Diets, .. guest.Avoids.Select(what => $"no {what}")]);

    /// <summary>A shape and a word: never colour alone.</summary>
    public static (string Shape, string Word) Answer(CanEat answer) => answer switch
    {
        CanEat.NothingFound => ("●", "can"),
        CanEat.Ask => ("?", "ask"),
        CanEat.No => ("✕", "no"),
        _ => throw new UnreachableException($"An answer without a word: {answer}."),
    };

    /// <summary>"Must not eat nuts: it is in Nut roast (hazelnuts)."</summary>
    public static string Avoids(Guest guest, string what, IEnumerable<DishForGuest> judged)
    {
        var found = Found(judged, reason => reason.IsCertain && reason.Why == what);
        var verb = guest.Avoids.Contains(what) ? $"Must not eat {what}" : char.ToUpperInvariant(what[0]) + what[1..];
        return Domain.Guests.Needs.Of(guest).Unknown.Contains(what) ? $"{verb}: nothing is known here of what it is in, so ask about every dish."
            : found.Length == 0 ? $"{verb}: found in no ingredient that is named here." : guest.Avoids.Contains(what) ? $"{verb}: it is in {found}." : $"{verb}: not {found}.";
    }

    /// <summary>"Ask about Nut roast (rolled oats, gluten-free; tamari)."; null when there is nothing to ask.</summary>
    public static string? Ask(IEnumerable<DishForGuest> judged) =>
        Found(judged.Where(one => one.Answer == CanEat.Ask), reason => !reason.IsCertain) is { Length: > 0 } found ? $"Ask about {found}." : null;

    public static string NoMainDish(Guest guest, Course course, bool isCertain) => isCertain
        ? $"{guest.Name} has no main dish: every one of “{course.Name}” holds what {guest.Name} avoids."
        : $"{guest.Name} has a main dish of “{course.Name}” only if you ask and read labels first.";

    public static string Of(CrossContact contact) =>
        $"{contact.Clean.Name}, for {string.Join(" and ", contact.Guests.Select(guest => guest.Name))}, {Where(contact)} {contact.Holds.Name} ({(contact.IsCertain ? "" : "perhaps ")}{string.Join(", ", contact.Why)}).";

    public static string Remedy(MeetingPlace place) => place switch
    {
        MeetingPlace.Oven => "In the oven: give it a tin and a cloth of its own, stand it above and never below, and cover it where fat spits.",
        MeetingPlace.Grill => "Under the grill: do the dish without it first, or wash rack and tray in between.",
        MeetingPlace.Appliance => "In an appliance: do the dish without it first; fat that has fried something holds it, and a bowl is washed in between.",
        MeetingPlace.Vessel => "In one pan or tray: give the dish without it a pan, a spoon and a board of its own.",
        _ => throw new UnreachableException($"A place without words: {place}."),
    };

    static string Where(CrossContact contact) => contact.Place switch
    {
        MeetingPlace.Oven => "is in the oven beside",
        MeetingPlace.Grill => "goes under the grill after",
        MeetingPlace.Appliance => "goes into the same appliance after",
        MeetingPlace.Vessel => "shares a pan, a tray or its fat with",
        _ => throw new UnreachableException($"A place without words: {contact.Place}."),
    };

    /// <summary>What is to be asked about may be what is taken instead: "oil or butter".</summary>
    static string Named(Found reason) => string.Join(" or ", [reason.Ingredient!.Name, .. reason.IsCertain ? [] : reason.Ingredient.Alternatives]);

    static string Found(IEnumerable<DishForGuest> judged, Func<Found, bool> isIt) => string.Join("; ",
        from one in judged
        let reasons = one.Reasons.Where(isIt).ToList()
        where reasons.Count > 0
        select reasons.Any(reason => reason.Ingredient is not null)
            ? $"{one.Dish.Name} ({string.Join(", ", reasons.Where(reason => reason.Ingredient is not null).Select(reason => Named(reason)).Distinct())})"
            : one.Dish.Name);
}
