using System.Buffers.Binary;

namespace CookAlong.Intake.Photos;

/// <summary>PNG (W3C, third edition): a signature and chunks. Copied are those that make the picture and its colours.</summary>
static class Png
{
    static readonly string[] Kept = ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB"];

    public static byte[]? Copy(ReadOnlySpan<byte> file)
    {
        ReadOnlySpan<byte> signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
        if (!file.StartsWith(signature))
        {
            return null;
        }

        using var copy = new MemoryStream();
        copy.Write(signature);
        var (at, hasData) = (signature.Length, false);
        while (at + 12 <= file.Length)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(file[at..]);
            if (length > file.Length - at - 12)
            {
                return null;
            }

            var chunk = file.Slice(at, (int)length + 12);
            var type = System.Text.Encoding.ASCII.GetString(chunk.Slice(4, 4));
            var isFirst = at == signature.Length;
            if (isFirst != (type == "IHDR")
                || (isFirst && (length != 13 || !Photo.IsSize(BinaryPrimitives.ReadUInt32BigEndian(chunk[8..]), BinaryPrimitives.ReadUInt32BigEndian(chunk[12..])))))
            {
                return null;
            }

            if (Kept.Contains(type))
            {
                copy.Write(chunk);
            }
            else if (char.IsAsciiLetterUpper(type[0]))
            {
                return null; // Needed for the picture, and unknown.
            }

            hasData |= type == "IDAT";
            if (type == "IEND")
            {
                return hasData ? copy.ToArray() : null;
            }

            at += chunk.Length;
        }

        return null;
    }
}
