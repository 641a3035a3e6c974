using System.Collections.Immutable;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Quantities;

namespace CookAlong.Domain.Runs;

// What a thermometer that stands in an oven shows while it is cooked with. It moves no plan: it is told, and learned from after the meal.
public sealed partial record Run
{
    /// <summary>°C that a thermometer in an oven may show.</summary>
    public const int ColdestOven = -10, HottestOven = 350;

    /// <summary>By oven, in the order in which they came.</summary>
    public ImmutableDictionary<OvenId, ImmutableArray<OvenShown>> OvenReadings { get; private init; } = ImmutableDictionary<OvenId, ImmutableArray<OvenShown>>.Empty;

    /// <summary>Rounded to tenths: a scale of Fahrenheit makes no more of it.</summary>
    Decision ReadOven(OvenId id, decimal celsius, DateTimeOffset? read, DateTimeOffset now)
    {
        if (Meal.Kitchen.Ovens.FirstOrDefault(one => one.Id == id) is not { } oven || Plan.Ovens.FirstOrDefault(one => one.Oven == id) is not { } programme)
        {
            return new Refusal.UnknownOven(id);
        }

        var at = read is { } before && before <= now ? before : now;
        if ((now - at).TotalMinutes > OldestReading)
        {
            return new Refusal.OutOfRange("Minutes since it was read", 0, OldestReading);
        }

        if (celsius is < ColdestOven or > HottestOven)
        {
            return new Refusal.OutOfRange("°C", ColdestOven, HottestOven);
        }

        var (dial, hotAt) = SetTo(oven, OvenDial.Of(this, new Expectation(this, now), programme), at);
        return new RunEvent.OvenRead(id, new OvenShown(at, Math.Round(celsius, 1), dial, hotAt));
    }

    Decision TakeBackOvenReading(OvenId id) => OvenReadings.ContainsKey(id) ? new RunEvent.OvenReadTakenBack(id) : new Refusal.NothingToTakeBack();

    Run WithoutLastOvenReading(OvenId id) => this with
    {
        OvenReadings = OvenReadings[id] is [_] ? OvenReadings.Remove(id) : OvenReadings.SetItem(id, OvenReadings[id][..^1]),
    };

    /// <summary>What its dial stands at, and when it is as hot as that at the latest.</summary>
    (int Dial, DateTimeOffset HotAt) SetTo(Oven oven, ImmutableArray<DialSetting> dial, DateTimeOffset at)
    {
        var turns = dial.Where(setting => setting.At.Utc <= at).ToList();
        if (turns is not [.., { Celsius: > 0 } last])
        {
            return (0, at);
        }

        var before = turns is [.., { Celsius: > 0 } one, _] ? one.Celsius : oven.StartsAt;
        var hot = last.At + oven.MinutesBetween(before, last.Celsius);
        hot = SlowOvens.TryGetValue(oven.Id, out var slow) && slow.Celsius == last.Celsius ? Minute.Later(hot, slow.HotAt) : hot;
        return ((OvenScale.Usual with { ReadsHighBy = oven.ReadsHighBy }).Dial(last.Celsius, oven.Fan), hot.Utc);
    }
}

/// <summary>What a thermometer in an oven showed.</summary>
/// <param name="Dial">What the dial itself stood at by what people had been told, in °C; 0 = off.</param>
/// <param name="HotAt">When the plan has it as hot as its dial says, at the latest.</param>
public sealed record OvenShown(DateTimeOffset At, decimal Celsius, int Dial, DateTimeOffset HotAt);
