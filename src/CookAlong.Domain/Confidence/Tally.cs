namespace CookAlong.Domain.Confidence;

/// <summary>What some days added up to.</summary>
sealed class Tally(int entries, int waits)
{
    /// <summary>Per entry, the days too late on which it took longer than likely and the table waited for it.</summary>
    public int[] HeldUpDays { get; } = new int[entries];

    /// <summary>Per entry, the minutes over its likely ones on those days.</summary>
    public double[] HeldUpMinutes { get; } = new double[entries];

    /// <summary>Per wait, the days on which it was too long.</summary>
    public int[] TooLong { get; } = new int[waits];

    /// <summary>Days on which any was.</summary>
    public int TooLongDays { get; set; }

    public void HeldUp(int entry, double minutes)
    {
        HeldUpDays[entry]++;
        HeldUpMinutes[entry] += minutes;
    }

    public void Add(Tally other)
    {
        TooLongDays += other.TooLongDays;
        for (var at = 0; at < HeldUpDays.Length; at++)
        {
            HeldUpDays[at] += other.HeldUpDays[at];
            HeldUpMinutes[at] += other.HeldUpMinutes[at];
        }

        for (var at = 0; at < TooLong.Length; at++)
        {
            TooLong[at] += other.TooLong[at];
        }
    }
}
