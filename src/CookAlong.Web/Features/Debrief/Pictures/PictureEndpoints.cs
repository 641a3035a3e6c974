using CookAlong.Domain.Runs;
using CookAlong.Intake.Photos;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live;

namespace CookAlong.Web.Features.Debrief.Pictures;

/// <summary>Pictures in and out. Whoever may see the debrief sees them, hosts add and delete.</summary>
static class PictureEndpoints
{
    public static void MapPictures(this RouteGroupBuilder run)
    {
        run.MapGet("/debrief/photos/{photo:guid}", ShowAsync);
        run.MapPost("/debrief/photos", AddAsync).WithMetadata(new Heavy()).RequireAuthorization(HouseholdFeature.HostPolicy);
        run.MapPost("/debrief/photos/{photo:guid}/delete", DeleteAsync).RequireAuthorization(HouseholdFeature.HostPolicy);
    }

    static async Task<IResult> ShowAsync(HttpContext http, Guid run, Guid photo, LiveViews views, DebriefPhotos photos)
    {
        if (await views.OfAsync(new RunId(run), http.User) is null || await photos.OpenAsync(run, photo, http.RequestAborted) is not { } shown)
        {
            return Results.NotFound();
        }

        // A shared tablet's cache keeps no pictures of the household.
        http.Response.Headers.CacheControl = "no-store";
        http.Response.Headers.ContentDisposition = "inline";
        return Results.Bytes(shown.Image, shown.Kind);
    }

    /// <summary>Fields "dish" and "photo", a file.</summary>
    static async Task<IResult> AddAsync(HttpContext http, Guid run, IFormCollection form, LiveViews views, Debriefs debriefs, DebriefPhotos photos)
    {
        if (await views.OfAsync(new RunId(run), http.User) is not { Board.IsOver: true, Rate: null } live
            || await debriefs.OfAsync(live, http.RequestAborted) is not { } view
            || view.Debrief.Meal.Dishes.FirstOrDefault(dish => dish.Id.Value == form["dish"]) is not { } dish)
        {
            return Results.NotFound();
        }

        if (form.Files["photo"] is not { Length: > 0 and <= Photo.LargestFile } file || await ReadAsync(file, http.RequestAborted) is not { } photo)
        {
            return DebriefFeature.Page(view, DebriefWords.NoPicture, StatusCodes.Status400BadRequest);
        }

        return await photos.AddAsync(run, dish.Id.Value, photo, http.RequestAborted)
            ? Results.Redirect($"/cook/{run}/debrief#verdicts")
            : DebriefFeature.Page(view, DebriefWords.EnoughPictures, StatusCodes.Status400BadRequest);
    }

    static async Task<IResult> DeleteAsync(Guid run, Guid photo, IFormCollection form, DebriefPhotos photos, CancellationToken stop)
    {
        await photos.DeleteAsync(photo, stop);
        return Results.Redirect($"/cook/{run}/debrief#verdicts");
    }

    static async Task<Photo?> ReadAsync(IFormFile file, CancellationToken stop)
    {
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, stop);
        return Photo.Of(bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }
}
