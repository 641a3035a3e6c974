using System.Diagnostics;
using System.Text.Json.Nodes;
using CookAlong.Domain;
using CookAlong.Domain.Planning;
using CookAlong.Intake.Reading;
using static CookAlong.Intake.Reading.JsonWords;

namespace CookAlong.Intake.PlanFiles;

/// <summary>A change to the meal, machine-readable: its kind and its facts.</summary>
internal static class ChangeJson
{
    private static readonly string[] Kinds = ["serveLater", "startEarlier", "addOven", "addRings", "addHelper", "waitLonger", "makeAhead", "leaveOut"];

    public static JsonObject Write(PlanChange change, TimeZoneInfo zone) => change switch
    {
        PlanChange.ServeLater later => Object(("kind", "serveLater"), ("course", later.Course.Value), ("minutes", later.Minutes)),
        PlanChange.StartEarlier earlier => Object(("kind", "startEarlier"), ("minutes", earlier.Minutes)),
        PlanChange.AddOven { During: { } during } => Object(("kind", "addOven"), ("from", WallClock.Write(during.From, zone)), ("to", WallClock.Write(during.To, zone))),
        PlanChange.AddOven => Object(("kind", "addOven")),
        PlanChange.AddRings more => Object(("kind", "addRings"), ("rings", more.Rings)),
        PlanChange.AddHelper helper => Object(("kind", "addHelper"), ("from", WallClock.Write(helper.From, zone)), ("to", WallClock.Write(helper.To, zone))),
        PlanChange.WaitLonger wait => Object(("kind", "waitLonger"), ("dish", wait.Dish.Value), ("minutes", wait.Minutes)),
        PlanChange.MakeAhead ahead => Object(
            ("kind", "makeAhead"), ("dish", ahead.Dish.Value), ("from", WallClock.Write(ahead.From, zone)), ("to", WallClock.Write(ahead.To, zone))),
        PlanChange.LeaveOut dish => Object(("kind", "leaveOut"), ("dish", dish.Dish.Value)),
        _ => throw new UnreachableException($"no JSON for {change}"),
    };

    public static PlanChange Read(Place change, TimeZoneInfo zone)
    {
        var kind = change.Text("kind");
        switch (kind)
        {
            case "serveLater": return new PlanChange.ServeLater(new(change.Id("course")), Minutes(change, "minutes"));
            case "startEarlier": return new PlanChange.StartEarlier(Minutes(change, "minutes"));
            case "addOven": return new PlanChange.AddOven(change.Has("from") ? change.Window(zone) : null);
            case "addRings": return new PlanChange.AddRings(change.Whole("rings", 1, 50));
            case "addHelper": return new PlanChange.AddHelper(change.RequiredTime("from", zone), change.RequiredTime("to", zone));
            case "waitLonger": return new PlanChange.WaitLonger(new(change.Id("dish")), Minutes(change, "minutes"));
            case "makeAhead": return new PlanChange.MakeAhead(new(change.Id("dish")), change.RequiredTime("from", zone), change.RequiredTime("to", zone));
            case "leaveOut": return new PlanChange.LeaveOut(new(change.Id("dish")));
            default:
                change.Note("kind", $"There is no change \"{Place.Short(kind)}\".", $"Write one of: {string.Join(", ", Kinds)}.");
                return new PlanChange.AddOven();
        }
    }

    private static int Minutes(Place change, string name) => change.Whole(name, 0, int.MaxValue);
}
