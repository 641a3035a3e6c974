using System.Buffers.Binary;

namespace CookAlong.Intake.Photos;

/// <summary>WebP (RFC 9649): RIFF chunks. Copied are the picture and its transparency; one that moves is refused.</summary>
static class WebP
{
    /// <summary>Bits of the extended header: profile, Exif, XMP.</summary>
    const byte Beside = 0x20 | 0x08 | 0x04;

    const byte Moves = 0x02;

    public static byte[]? Copy(ReadOnlySpan<byte> file)
    {
        if (file.Length < 20 || !file.StartsWith("RIFF"u8) || !file[8..].StartsWith("WEBP"u8))
        {
            return null;
        }

        using var copy = new MemoryStream();
        copy.Write(file[..12]);
        var (at, hasPicture) = (12, false);
        while (at + 8 <= file.Length)
        {
            var length = BinaryPrimitives.ReadUInt32LittleEndian(file[(at + 4)..]);
            var padded = length + (length & 1);
            if (length > int.MaxValue - 16 || padded > file.Length - at - 8)
            {
                return null;
            }

            var chunk = file.Slice(at, 8 + (int)padded);
            if (chunk.StartsWith("VP8X"u8))
            {
                if (length != 10 || (chunk[8] & Moves) != 0 || !Photo.IsSize(Three(chunk[12..]) + 1, Three(chunk[15..]) + 1))
                {
                    return null;
                }

                var header = chunk.ToArray();
                header[8] &= unchecked((byte)~Beside);
                copy.Write(header);
            }
            else if (chunk.StartsWith("VP8 "u8) || chunk.StartsWith("VP8L"u8))
            {
                if (hasPicture)
                {
                    return null;
                }

                hasPicture = true;
                copy.Write(chunk);
            }
            else if (chunk.StartsWith("ALPH"u8))
            {
                copy.Write(chunk);
            }
            else if (chunk.StartsWith("ANMF"u8))
            {
                return null;
            }

            at += chunk.Length;
        }

        if (!hasPicture)
        {
            return null;
        }

        var whole = copy.ToArray();
        BinaryPrimitives.WriteUInt32LittleEndian(whole.AsSpan(4), (uint)whole.Length - 8);
        return whole;
    }

    static long Three(ReadOnlySpan<byte> at) => at[0] | (at[1] << 8) | (at[2] << 16);
}
