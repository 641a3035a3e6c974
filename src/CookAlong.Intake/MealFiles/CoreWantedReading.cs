using CookAlong.Domain.Doneness;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>What the thermometer must say: {"celsius": 70, "minutes": 2, "cut": "wholeGoose", "kilograms": 4.8, "stuffed": true}.</summary>
internal static class CoreWantedReading
{
    /// <summary>°C no core is cooked to beyond these.</summary>
    private const int Least = 30, Most = 99;

    /// <summary>Longer no authority asks a kitchen to keep a core temperature.</summary>
    private const int MostMinutes = 60;

    public static readonly IReadOnlyDictionary<string, Cut> Cuts = Enum.GetValues<Cut>().ToDictionary(cut => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(cut.ToString()));

    public static CoreWanted Core(Place core)
    {
        var celsius = core.Whole("celsius", Least, Most);
        if (core.Has("cut") != core.Has("kilograms"))
        {
            core.Note("\"cut\" and \"kilograms\" belong together.", "Give both, so that it can be said when it is done, or neither.");
        }

        return new CoreWanted(
            celsius,
            core.Has("cut") && core.OneOf("cut", Cuts) is { } cut
                ? new Joint(cut, core.Real("kilograms", Joint.LeastKilograms, Joint.MostKilograms), core.Flag("stuffed"))
                : null,
            core.Whole("minutes", 0, MostMinutes, fallback: 0));
    }
}
