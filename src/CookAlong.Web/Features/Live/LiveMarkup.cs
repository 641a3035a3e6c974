namespace CookAlong.Web.Features.Live;

/// <summary>Which component shows what.</summary>
static class LiveMarkup
{
    public static IResult Board(LiveView view) => Results.Text($"board {view.Board.Sequence}");

    public static IResult BoardPart(LiveView view) => Results.Text($"board {view.Board.Sequence}");

    public static IResult Me(LiveView view) => Results.Text($"me {view.Board.Sequence}");

    public static IResult MePart(LiveView view) => Results.Text($"me {view.Board.Sequence}");

    public static IResult Invite(LiveView view, Invitation invitation, string joinAddress) => Results.Text($"{joinAddress}#{invitation.Secret} {invitation.Typed}");
}
