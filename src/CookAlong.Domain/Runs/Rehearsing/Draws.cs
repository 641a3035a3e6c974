using System.Buffers.Binary;
using System.Numerics;
using System.Security.Cryptography;
using System.Text;
using CookAlong.Domain.Confidence;
using CookAlong.Domain.Meals;

namespace CookAlong.Domain.Runs.Rehearsing;

/// <summary>The luck of one rehearsal: each thing that can happen has its number, the same whenever it is asked.</summary>
sealed class Draws(RunId run)
{
    /// <summary>In every so many minutes a phone may drop out once.</summary>
    const int DropsWithin = 40;

    const double Drops = 0.3;

    /// <summary>From 0 up to, not including, 1.</summary>
    public double Fraction(string what) => BinaryPrimitives.ReadUInt32BigEndian(Hash(what)) / (1.0 + uint.MaxValue);

    public CommandId Command(string what) => new(new Guid(Hash(what)[..16]));

    /// <summary>Until somebody has seen it and dried their hands.</summary>
    public TimeSpan Delay(string what) => TimeSpan.FromMinutes(0.3 + (1.2 * Fraction($"delay {what}")));

    public TimeSpan Minutes(StepId step, Durations minutes) =>
        TimeSpan.FromMinutes(new Triangular(minutes).At(new Vector<double>(Fraction($"minutes {step}")))[0]);

    /// <summary>A phone that drops out does so for three to eight minutes.</summary>
    public DateTimeOffset? DroppedSince(PersonId person, DateTimeOffset now)
    {
        var span = now.ToUnixTimeSeconds() / 60 / DropsWithin;
        var what = $"phone {person} {span}";
        if (Fraction(what) >= Drops)
        {
            return null;
        }

        var from = DateTimeOffset.FromUnixTimeSeconds(span * DropsWithin * 60).AddMinutes((DropsWithin - 8) * Fraction($"from {what}"));
        return now >= from && now < from.AddMinutes(3 + (5 * Fraction($"for {what}"))) ? from : null;
    }

    ReadOnlySpan<byte> Hash(string what) => SHA256.HashData(Encoding.UTF8.GetBytes($"{run} {what}"));
}
