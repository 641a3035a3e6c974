using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Device;
using CookAlong.Web.Features.Live.Dining;
using CookAlong.Web.Features.Live.Door;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Features.Live.Phone;
using CookAlong.Web.Features.Live.Tablet;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Live;

/// <summary>Which component shows what.</summary>
static class LiveMarkup
{
    public static IResult Board(LiveView view) => IsChild(view) ? Me(view) : OrWatch(view, new RazorComponentResult<BoardPage>(new { View = view }));

    public static IResult BoardPart(LiveView view) => IsChild(view) ? MePart(view) : OrWatchPart(view, new RazorComponentResult<BoardPart>(new { View = view }));

    public static IResult Me(LiveView view) => OrWatch(view, new RazorComponentResult<MePage>(new { View = view }));

    public static IResult MePart(LiveView view) => OrWatchPart(view, new RazorComponentResult<MePart>(new { View = view }));

    /// <summary>Whoever only looks sits at the table, and is spared the kitchen.</summary>
    static IResult OrWatch(LiveView view, IResult other) => view.Role == Role.Watcher ? new RazorComponentResult<WatchPage>(new { View = view }) : other;

    static IResult OrWatchPart(LiveView view, IResult other) => view.Role == Role.Watcher ? new RazorComponentResult<WatchPart>(new { View = view }) : other;

    public static IResult Wall(LiveView view) => IsChild(view) ? Me(view) : new RazorComponentResult<WallPage>(new { View = view });

    public static IResult WallPart(LiveView view) => IsChild(view) ? MePart(view) : new RazorComponentResult<WallPart>(new { View = view });

    /// <summary>A child sees its own jobs, whichever address is typed in.</summary>
    static bool IsChild(LiveView view) => view.MyPerson?.IsChild == true;

    public static IResult Device(LiveView view, IReadOnlyList<IWayOut> browsers) => new RazorComponentResult<DevicePage>(new { View = view, Browsers = browsers });

    public static IResult Invite(LiveView view, Invitation invitation, bool isToWatch, string joinAddress, IReadOnlyList<RunPerson> guests, string? message) =>
        new RazorComponentResult<InvitePage>(new
        {
            View = view,
            Link = $"{joinAddress}#{invitation.Secret}",
            Code = invitation.Typed,
            IsToWatch = isToWatch,
            ExpiresAt = invitation.Expires,
            Guests = guests,
            Message = message,
        });
}
