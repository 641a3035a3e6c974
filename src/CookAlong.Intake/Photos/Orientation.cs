using System.Buffers.Binary;

namespace CookAlong.Intake.Photos;

/// <summary>Which side of a photograph is up (Exif 2.3, tag 0x0112): the one thing beside the picture that it cannot be shown without.</summary>
static class Orientation
{
    const ushort Tag = 0x0112;

    /// <param name="exif">What an APP1 segment holds.</param>
    /// <returns>1 to 8; null where it says nothing, or something else.</returns>
    public static int? In(ReadOnlySpan<byte> exif)
    {
        if (!exif.StartsWith("Exif\0\0"u8) || exif.Length < 14)
        {
            return null;
        }

        var tiff = exif[6..];
        var isBig = tiff.StartsWith("MM"u8);
        if (!isBig && !tiff.StartsWith("II"u8))
        {
            return null;
        }

        var first = Long(tiff[4..], isBig);
        if (first > tiff.Length - 2)
        {
            return null;
        }

        var entries = Short(tiff[(int)first..], isBig);
        for (var entry = 0; entry < entries; entry++)
        {
            var at = (int)first + 2 + (entry * 12);
            if (at + 12 > tiff.Length)
            {
                return null;
            }

            if (Short(tiff[at..], isBig) == Tag)
            {
                return Short(tiff[(at + 8)..], isBig) is >= 1 and <= 8 and var up ? up : null;
            }
        }

        return null;
    }

    /// <summary>An APP1 segment that says this and nothing else.</summary>
    public static byte[] Segment(int up) =>
    [
        0xff, 0xe1, 0, 34, .. "Exif\0\0"u8, .. "MM"u8, 0, 42, 0, 0, 0, 8,
        0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)up, 0, 0, 0, 0, 0, 0,
    ];

    static ushort Short(ReadOnlySpan<byte> at, bool isBig) => isBig ? BinaryPrimitives.ReadUInt16BigEndian(at) : BinaryPrimitives.ReadUInt16LittleEndian(at);

    static uint Long(ReadOnlySpan<byte> at, bool isBig) => isBig ? BinaryPrimitives.ReadUInt32BigEndian(at) : BinaryPrimitives.ReadUInt32LittleEndian(at);
}
