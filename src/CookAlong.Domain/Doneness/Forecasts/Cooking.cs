using CookAlong.Domain.Doneness.Heat;

namespace CookAlong.Domain.Doneness.Forecasts;

/// <summary>One simulated joint, cooked step by step for as long as somebody asks.</summary>
sealed class Cooking
{
    const int Layers = 10;

    static readonly Substance Meat = Substance.Of(Composition.LeanMeat);

    readonly Unknowns.Meaning meaning;
    readonly OvenAir air;
    int done;
    double coreBefore;
    double probeBefore;

    public Cooking(Unknowns.Meaning meaning, OvenAir air)
    {
        (this.meaning, this.air) = (meaning, air);
        Joint = new Conduction(meaning.Body, Meat, meaning.Start, Layers);
        (coreBefore, probeBefore) = (meaning.Start, meaning.Start);
    }

    public Conduction Joint { get; }

    /// <summary>Minutes since it went in.</summary>
    public double Minutes => done * air.Step.TotalMinutes;

    /// <summary>What the probe shows at a moment no earlier than the one asked for before.</summary>
    public double ProbeAt(double minutes)
    {
        CookUntil(minutes);
        return Between(probeBefore, Joint.At(meaning.Probe), minutes);
    }

    /// <summary>The same for the very middle.</summary>
    public double CoreAt(double minutes)
    {
        CookUntil(minutes);
        return Between(coreBefore, Joint.Core, minutes);
    }

    /// <returns>Minutes since it went in; null when it is not reached within <paramref name="most"/> minutes.</returns>
    public double? Reaches(double celsius, double most)
    {
        while (Joint.Core < celsius)
        {
            if (Minutes >= most)
            {
                return null;
            }

            Cook();
        }

        var step = air.Step.TotalMinutes;
        return done == 0 ? 0 : Minutes - (step * Math.Clamp((Joint.Core - celsius) / Math.Max(1e-9, Joint.Core - coreBefore), 0, 1));
    }

    void CookUntil(double minutes)
    {
        while (Minutes < minutes)
        {
            Cook();
        }
    }

    void Cook()
    {
        (coreBefore, probeBefore) = (Joint.Core, Joint.At(meaning.Probe));
        var (now, wet) = (air[done], meaning.Wetness * Math.Exp(-Minutes / meaning.Crust));
        done++;
        Joint.Step(new Surface(now.Celsius + meaning.OvenOff, meaning.Coefficient * now.Reaches, wet), air.Step.TotalSeconds);
    }

    double Between(double before, double after, double minutes)
    {
        var left = (Minutes - minutes) / air.Step.TotalMinutes;
        return after - ((after - before) * Math.Clamp(left, 0, 1));
    }
}
