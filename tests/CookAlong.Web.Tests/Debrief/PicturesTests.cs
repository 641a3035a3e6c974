using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using CookAlong.Intake.Photos;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Debrief.Pictures;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Debrief;

public sealed partial class PicturesTests
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    static async Task<HttpResponseMessage> UploadAsync(CookedLunch lunch, byte[] file, string dish = "goose", string name = "holiday.png", Browser? by = null)
    {
        var browser = by ?? lunch.Kitchen.Host;
        var token = Token().Match(await lunch.Kitchen.Host.ReadAsync(lunch.Address)).Groups[1].Value;
        var picture = new ByteArrayContent(file);
        picture.Headers.ContentType = new MediaTypeHeaderValue("image/png");
        using var form = new MultipartFormDataContent { { new StringContent(token), "__RequestVerificationToken" }, { new StringContent(dish), "dish" }, { picture, "photo", name } };
        return await browser.Client.PostAsync($"{lunch.Address}/photos", form, Stop);
    }

    [Fact]
    public async Task A_picture_is_kept_shown_to_the_kitchen_alone_with_safe_headers_and_deleted()
    {
        await using var lunch = await CookedLunch.CookAsync();
        using var kept = await UploadAsync(lunch, Pixel.Png);
        Assert.Equal(HttpStatusCode.Redirect, kept.StatusCode);
        var photo = Assert.Single(await lunch.Kitchen.House.Get<DebriefPhotos>().AllAsync(Stop));
        Assert.Contains(photo.Address, await lunch.ReadAsync(lunch.Ivo), StringComparison.Ordinal);

        using var shown = await lunch.Ivo.GetAsync(photo.Address);
        Assert.Equal(("image/png", "nosniff", "no-store"), (shown.Content.Headers.ContentType!.ToString(), shown.Headers.GetValues("X-Content-Type-Options").Single(), shown.Headers.CacheControl!.ToString()));
        Assert.StartsWith("default-src 'none'", shown.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        Assert.Equal(Photo.Of(Pixel.Png)!.Image, await shown.Content.ReadAsByteArrayAsync(Stop));

        using var outside = await lunch.Kitchen.House.NewBrowser().GetAsync(photo.Address);
        Assert.NotEqual(HttpStatusCode.OK, outside.StatusCode);
        using var other = await lunch.Kitchen.Host.GetAsync($"/cook/{Guid.Empty}/debrief/photos/{photo.Id}");
        Assert.Equal(HttpStatusCode.NotFound, other.StatusCode);
        using var refused = await UploadAsync(lunch, Pixel.Png, by: lunch.Ivo);
        Assert.NotEqual(HttpStatusCode.Redirect, refused.StatusCode);

        Assert.Contains(photo.Address, await lunch.Kitchen.Host.ReadAsync("/learned"), StringComparison.Ordinal);
        Assert.Contains(photo.Address, await lunch.Kitchen.Host.ReadAsync("/learned/file"), StringComparison.Ordinal);
        using var gone = await lunch.Kitchen.Host.PostFormAsync("/learned/delete", new() { ["photo"] = photo.Id.ToString() }, page: "/learned");
        Assert.Empty(await lunch.Kitchen.House.Get<DebriefPhotos>().AllAsync(Stop));
    }

    [Fact]
    public async Task What_is_no_picture_too_large_or_one_too_many_is_refused_in_words()
    {
        await using var lunch = await CookedLunch.CookAsync();
        using var page = await UploadAsync(lunch, "<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>"u8.ToArray());
        Assert.Equal(HttpStatusCode.BadRequest, page.StatusCode);
        Assert.Contains("Nothing was kept", await page.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        using var large = await UploadAsync(lunch, [.. Pixel.Png, .. new byte[Photo.LargestFile]]);
        Assert.Equal(HttpStatusCode.BadRequest, large.StatusCode);
        using var huge = await UploadAsync(lunch, new byte[Photo.LargestFile + (100 * 1024)]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, huge.StatusCode);
        using var unknown = await UploadAsync(lunch, Pixel.Png, dish: "nobody's");
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
        for (var number = 0; number < DebriefPhotos.MostOfDish; number++)
        {
            using var kept = await UploadAsync(lunch, Pixel.Png);
            Assert.Equal(HttpStatusCode.Redirect, kept.StatusCode);
        }

        using var many = await UploadAsync(lunch, Pixel.Png);
        Assert.Equal(HttpStatusCode.BadRequest, many.StatusCode);
        await using var db = lunch.Kitchen.House.NewDb();
        Assert.Equal(DebriefPhotos.MostOfDish, await db.Set<DebriefPhotoRow>().CountAsync(Stop));
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
