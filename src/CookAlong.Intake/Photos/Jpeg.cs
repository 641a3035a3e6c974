using System.Buffers.Binary;

namespace CookAlong.Intake.Photos;

/// <summary>JPEG (ITU-T T.81, annex B): a run of segments. Only tables, frames and scans are copied, how the colours are meant (Adobe's APP14), and which side is up.</summary>
static class Jpeg
{
    const byte StartOfImage = 0xd8, EndOfImage = 0xd9, StartOfScan = 0xda, Exif = 0xe1, Adobe = 0xee;

    public static byte[]? Copy(ReadOnlySpan<byte> file)
    {
        if (file.Length < 4 || file[0] != 0xff || file[1] != StartOfImage)
        {
            return null;
        }

        using var copy = new MemoryStream();
        copy.Write([0xff, StartOfImage]);
        var (at, hasFrame, hasScan, up) = (2, false, false, 1);
        while (at + 2 <= file.Length && file[at] == 0xff)
        {
            var marker = file[at + 1];
            if (marker == 0xff)
            {
                at++; // Segments may be padded.
                continue;
            }

            if (marker == EndOfImage)
            {
                copy.Write([0xff, EndOfImage]);
                return hasFrame && hasScan ? copy.ToArray() : null;
            }

            if (at + 4 > file.Length || BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]) is var length && (length < 2 || at + 2 + length > file.Length))
            {
                return null;
            }

            var segment = file.Slice(at, 2 + length);
            at += segment.Length;
            if (IsFrame(marker))
            {
                if (hasFrame || segment.Length < 9 || !Photo.IsSize(BinaryPrimitives.ReadUInt16BigEndian(segment[7..]), BinaryPrimitives.ReadUInt16BigEndian(segment[5..])))
                {
                    return null;
                }

                hasFrame = true;
            }
            else if (marker == Exif && Orientation.In(segment[4..]) is { } side)
            {
                up = side;
            }

            if (IsFrame(marker) && up != 1)
            {
                copy.Write(Orientation.Segment(up));
            }

            if (IsKept(marker, segment))
            {
                copy.Write(segment);
            }

            if (marker == StartOfScan)
            {
                if (!hasFrame)
                {
                    return null;
                }

                hasScan = true;
                var end = EndOfScan(file, at);
                copy.Write(file[at..end]);
                at = end;
            }
        }

        return null;
    }

    /// <summary>Where the picture's data ends: at a marker that is neither a stuffed byte nor a restart.</summary>
    static int EndOfScan(ReadOnlySpan<byte> file, int at)
    {
        while (at + 1 < file.Length && !(file[at] == 0xff && file[at + 1] is not (0 or (>= 0xd0 and <= 0xd7) or 0xff)))
        {
            at++;
        }

        return at;
    }

    static bool IsFrame(byte marker) => marker is >= 0xc0 and <= 0xcf and not (0xc4 or 0xc8 or 0xcc);

    static bool IsKept(byte marker, ReadOnlySpan<byte> segment) =>
        IsFrame(marker) || marker is 0xc4 or 0xcc or StartOfScan or 0xdb or 0xdc or 0xdd
        || (marker == Adobe && segment.Length == 16 && segment[4..].StartsWith("Adobe"u8));
}
