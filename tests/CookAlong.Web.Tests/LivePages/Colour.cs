using System.Globalization;

namespace CookAlong.Web.Tests.LivePages;

/// <summary>Just enough colour science to judge a token.</summary>
static class Colour
{
    /// <summary>WCAG 2.2, definition of contrast ratio: (L1 + 0.05) / (L2 + 0.05), 1 to 21.</summary>
    public static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>Distance in OKLab (Ottosson 2020) times 100, as an eye of that kind sees the two.</summary>
    public static double Distance(string one, string other, double[,] eye)
    {
        var (a, b) = (Lab(Seen(one, eye)), Lab(Seen(other, eye)));
        return 100 * Math.Sqrt(Enumerable.Range(0, 3).Sum(i => Math.Pow(a[i] - b[i], 2)));
    }

    /// <summary>Machado, Oliveira, Fernandes: A Physiologically-based Model for Simulation of Color Vision Deficiency (2009), severity 1.0, on linear RGB.</summary>
    public static IReadOnlyDictionary<string, double[,]> Eyes { get; } = new Dictionary<string, double[,]>
    {
        ["full colour vision"] = new[,] { { 1.0, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } },
        ["protanopia"] = new[,] { { 0.152286, 1.052583, -0.204868 }, { 0.114503, 0.786281, 0.099216 }, { -0.003882, -0.048116, 1.051998 } },
        ["deuteranopia"] = new[,] { { 0.367322, 0.860646, -0.227968 }, { 0.280085, 0.672501, 0.047413 }, { -0.011820, 0.042940, 0.968881 } },
        ["tritanopia"] = new[,] { { 1.255528, -0.076749, -0.178779 }, { -0.078411, 0.930809, 0.147602 }, { 0.004733, 0.691367, 0.303900 } },
    };

    // WCAG 2.2, relative luminance.
    static double Luminance(string hex)
    {
        var rgb = Linear(hex);
        return (0.2126 * rgb[0]) + (0.7152 * rgb[1]) + (0.0722 * rgb[2]);
    }

    static double[] Linear(string hex) =>
        [.. new[] { 1, 3, 5 }.Select(at => int.Parse(hex.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0)
            .Select(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4))];

    static double[] Seen(string hex, double[,] eye)
    {
        var rgb = Linear(hex);
        return [.. Enumerable.Range(0, 3).Select(row => Math.Max(0, (eye[row, 0] * rgb[0]) + (eye[row, 1] * rgb[1]) + (eye[row, 2] * rgb[2])))];
    }

    static double[] Lab(double[] v)
    {
        var l = Math.Cbrt((0.4122214708 * v[0]) + (0.5363325363 * v[1]) + (0.0514459929 * v[2]));
        var m = Math.Cbrt((0.2119034982 * v[0]) + (0.6806995451 * v[1]) + (0.1073969566 * v[2]));
        var s = Math.Cbrt((0.0883024619 * v[0]) + (0.2817188376 * v[1]) + (0.6299787005 * v[2]));
        return
        [
            (0.2104542553 * l) + (0.7936177850 * m) - (0.0040720468 * s),
            (1.9779984951 * l) - (2.4285922050 * m) + (0.4505937099 * s),
            (0.0259040371 * l) + (0.7827717662 * m) - (0.8086757660 * s),
        ];
    }
}
