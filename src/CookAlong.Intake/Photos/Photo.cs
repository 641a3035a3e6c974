namespace CookAlong.Intake.Photos;

/// <summary>A picture told by what it holds, whatever its name says, and copied without what a camera or a program wrote beside it: place, time, device, thumbnails, comments.</summary>
/// <param name="Kind">"image/jpeg", "image/png" or "image/webp".</param>
/// <param name="Image">The file, of the parts that make the picture alone.</param>
public sealed record Photo(string Kind, byte[] Image)
{
    /// <summary>Bytes of a file that is taken in.</summary>
    public const int LargestFile = 5 * 1024 * 1024;

    /// <summary>Pixels along one side; more would only fill a browser's memory.</summary>
    internal const int LongestSide = 16_384;

    /// <summary>Null when it is none of the three, broken, moving, or too large.</summary>
    public static Photo? Of(ReadOnlySpan<byte> file)
    {
        if (file.Length > LargestFile)
        {
            return null;
        }

        return Jpeg.Copy(file) is { } jpeg ? new("image/jpeg", jpeg)
            : Png.Copy(file) is { } png ? new("image/png", png)
            : WebP.Copy(file) is { } webp ? new("image/webp", webp)
            : null;
    }

    internal static bool IsSize(long width, long height) => width is > 0 and <= LongestSide && height is > 0 and <= LongestSide;
}
