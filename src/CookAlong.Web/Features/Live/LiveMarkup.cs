using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Device;
using CookAlong.Web.Features.Live.Door;
using CookAlong.Web.Features.Live.Phone;
using CookAlong.Web.Features.Live.Tablet;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Live;

/// <summary>Which component shows what.</summary>
static class LiveMarkup
{
    public static IResult Board(LiveView view) => new RazorComponentResult<BoardPage>(new { View = view });

    public static IResult BoardPart(LiveView view) => new RazorComponentResult<BoardPart>(new { View = view });

    public static IResult Me(LiveView view) => new RazorComponentResult<MePage>(new { View = view });

    public static IResult MePart(LiveView view) => new RazorComponentResult<MePart>(new { View = view });

    public static IResult Wall(LiveView view) => new RazorComponentResult<WallPage>(new { View = view });

    public static IResult WallPart(LiveView view) => new RazorComponentResult<WallPart>(new { View = view });

    public static IResult Device(LiveView view) => new RazorComponentResult<DevicePage>(new { View = view });

    public static IResult Invite(LiveView view, Invitation invitation, string joinAddress, IReadOnlyList<RunPerson> guests, string? message) =>
        new RazorComponentResult<InvitePage>(new
        {
            View = view,
            Link = $"{joinAddress}#{invitation.Secret}",
            Code = invitation.Typed,
            ExpiresAt = invitation.Expires,
            Guests = guests,
            Message = message,
        });
}
