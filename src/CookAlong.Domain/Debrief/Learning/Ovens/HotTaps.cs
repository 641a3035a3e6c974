using CookAlong.Domain.Runs;

namespace CookAlong.Domain.Debrief.Learning.Ovens;

/// <summary>What a run's log says of how fast its ovens became hot.</summary>
public static class HotTaps
{
    /// <summary>
    /// An oven's first turn of the dial that somebody answered for, and the minute for which it was last said to be hot: "it still heats,
    /// so many minutes", or "it is hot after all" sooner. Who said nothing said nothing.
    /// </summary>
    public static IEnumerable<(OvenId Oven, HotTap Tap)> Of(IReadOnlyList<Logged> events)
    {
        var begun = events.Select(one => one.Event).OfType<RunEvent.RunStarted>().Single();
        foreach (var programme in begun.Plan.Ovens)
        {
            var first = programme.Dial.FirstOrDefault(setting => setting.Celsius > 0);
            if (first.Celsius == 0 || Answered(events, CallIds.Dial(programme.Oven, first.At)) is not { } turned)
            {
                continue;
            }

            DateTimeOffset? hot = null;
            foreach (var one in events.Where(one => one.Sequence > turned.Sequence))
            {
                switch (one.Event)
                {
                    case RunEvent.OvenBehind behind when behind.Oven == programme.Oven && behind.Celsius == first.Celsius && (hot is null || one.At < hot): hot = behind.HotAt.Utc; break;
                    case RunEvent.OvenCaughtUp caught when caught.Oven == programme.Oven && one.At < hot: hot = one.At; break;
                    default: break;
                }
            }

            if (hot is { } at && at > turned.At)
            {
                yield return (programme.Oven, new HotTap((at - turned.At).TotalMinutes, begun.Meal.Kitchen.Ovens.Single(oven => oven.Id == programme.Oven).StartsAt, first.Celsius));
            }
        }
    }

    /// <summary>When it was answered for good; null = it was not, or the answer was taken back.</summary>
    static Logged? Answered(IReadOnlyList<Logged> events, CallId call)
    {
        Logged? answered = null;
        foreach (var one in events)
        {
            answered = one.Event switch
            {
                RunEvent.CallAcknowledged said when said.Call == call => answered ?? one,
                RunEvent.CallTakenBack back when back.Call == call => null,
                _ => answered,
            };
        }

        return answered;
    }
}
