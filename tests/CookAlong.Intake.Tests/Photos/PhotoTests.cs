using System.Buffers.Binary;
using System.Text;
using CookAlong.Intake.Photos;
using CsCheck;

namespace CookAlong.Intake.Tests.Photos;

public sealed class PhotoTests
{
    const string Secret = "GPS 52.5N 13.4E";

    static byte[] Segment(byte marker, params byte[] holds) => [0xff, marker, (byte)((holds.Length + 2) >> 8), (byte)(holds.Length + 2), .. holds];

    static readonly byte[] Frame = Segment(0xc0, 8, 0, 40, 0, 60, 1, 1, 0x11, 0);

    /// <summary>Exif of little-endian writing: make, then which side is up, then a secret.</summary>
    static byte[] Exif(byte up) =>
    [
        .. "Exif\0\0"u8, .. "II"u8, 42, 0, 8, 0, 0, 0, 2, 0,
        0x0f, 0x01, 2, 0, 4, 0, 0, 0, 65, 66, 67, 0,
        0x12, 0x01, 3, 0, 1, 0, 0, 0, up, 0, 0, 0, 0, 0, 0, 0, .. Encoding.ASCII.GetBytes(Secret),
    ];

    static byte[] Jpeg(byte up = 6, params byte[] scan) =>
    [
        0xff, 0xd8, .. Segment(0xe0, [.. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0]), .. Segment(0xe1, Exif(up)), .. Segment(0xe2, [.. "ICC_PROFILE\0"u8, .. Encoding.ASCII.GetBytes(Secret)]),
        .. Segment(0xfe, Encoding.ASCII.GetBytes(Secret)), .. Segment(0xdb, [0, 1, 2]), .. Frame, .. Segment(0xc4, [0, 1]), .. Segment(0xda, 1, 1, 0, 0, 63, 0),
        .. (scan.Length > 0 ? scan : [9, 0xff, 0, 7, 0xff, 0xd0, 5]), 0xff, 0xd9, .. Encoding.ASCII.GetBytes(Secret),
    ];

    static byte[] Chunk(string type, params byte[] holds)
    {
        var chunk = new byte[12 + holds.Length];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, (uint)holds.Length);
        Encoding.ASCII.GetBytes(type, chunk.AsSpan(4));
        holds.CopyTo(chunk, 8);
        return chunk;
    }

    static byte[] Png(string more = "tEXt", int width = 60) =>
        [0x89, .. "PNG\r\n"u8, 0x1a, 10, .. Chunk("IHDR", [0, 0, (byte)(width >> 8), (byte)width, 0, 0, 0, 40, 8, 2, 0, 0, 0]), .. Chunk(more, Encoding.ASCII.GetBytes(Secret)), .. Chunk("eXIf", Encoding.ASCII.GetBytes(Secret)), .. Chunk("IDAT", 1, 2, 3), .. Chunk("IEND"), .. Encoding.ASCII.GetBytes(Secret)];

    static byte[] Riff(string type, params byte[] holds) => [.. Encoding.ASCII.GetBytes(type), (byte)holds.Length, 0, 0, 0, .. holds, .. new byte[holds.Length & 1]];

    static byte[] WebP(byte flags = 0x2c, string more = "EXIF")
    {
        byte[] chunks = [.. "WEBP"u8, .. Riff("VP8X", flags, 0, 0, 0, 59, 0, 0, 39, 0, 0), .. Riff("ICCP", Encoding.ASCII.GetBytes(Secret)), .. Riff("VP8 ", 1, 2, 3), .. Riff(more, Encoding.ASCII.GetBytes(Secret))];
        return [.. "RIFF"u8, (byte)chunks.Length, 0, 0, 0, .. chunks];
    }

    public static TheoryData<string, byte[]> Pictures => new() { { "image/jpeg", Jpeg() }, { "image/png", Png() }, { "image/webp", WebP() } };

    [Theory]
    [MemberData(nameof(Pictures))]
    public void A_picture_is_known_by_what_it_holds_and_loses_all_that_stands_beside_it(string kind, byte[] file)
    {
        var photo = Photo.Of(file);
        Assert.Equal(kind, photo?.Kind);
        Assert.DoesNotContain(Secret, Encoding.Latin1.GetString(photo!.Image), StringComparison.Ordinal);

        // What was copied is copied the same again.
        Assert.Equal(photo.Image, Photo.Of(photo.Image)!.Image);
    }

    [Fact]
    public void A_photograph_keeps_its_picture_to_the_byte_and_which_side_is_up()
    {
        var image = Photo.Of(Jpeg(up: 6))!.Image;
        Assert.True(image.AsSpan().IndexOf((byte[])[9, 0xff, 0, 7, 0xff, 0xd0, 5, 0xff, 0xd9]) > 0);
        Assert.True(image.AsSpan().IndexOf((byte[])[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6]) > 0);
        Assert.Equal(-1, Photo.Of(Jpeg(up: 1))!.Image.AsSpan().IndexOf("Exif"u8));
        Assert.Equal(-1, Photo.Of(Jpeg(up: 77))!.Image.AsSpan().IndexOf("Exif"u8));
    }

    [Fact]
    public void What_is_no_picture_is_broken_moves_or_is_too_large_is_refused()
    {
        Assert.Null(Photo.Of("<svg onload='x'/>"u8));
        Assert.Null(Photo.Of("GIF89a..............."u8));
        Assert.Null(Photo.Of([]));
        Assert.Null(Photo.Of(Jpeg().AsSpan()[..40]));
        Assert.Null(Photo.Of(Png("CgBI")));
        Assert.Null(Photo.Of(Png(width: 0)));
        Assert.Null(Photo.Of(Png().AsSpan()[..60]));
        Assert.Null(Photo.Of(WebP(flags: 0x02)));
        Assert.Null(Photo.Of(WebP(more: "ANMF")));
        Assert.Null(Photo.Of([.. Jpeg(), .. new byte[Photo.LargestFile]]));
    }

    [Fact]
    public void Bytes_of_any_kind_are_refused_or_copied_and_never_throw() =>
        Gen.Select(Gen.Int[0, 2].Select(kind => kind switch { 0 => Jpeg(), 1 => Png(), _ => WebP() }), Gen.Int[0, 200], Gen.Byte, Gen.Int[0, 200]).Sample((file, at, becomes, length) =>
        {
            var spoilt = file.ToArray();
            spoilt[at % spoilt.Length] = becomes;
            _ = Photo.Of(spoilt);
            _ = Photo.Of(spoilt.AsSpan()[..Math.Min(length, spoilt.Length)]);
        });
}
