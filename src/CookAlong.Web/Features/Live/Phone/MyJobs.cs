using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live.Phone;

/// <summary>The board as one person needs it: own jobs first, then what is free.</summary>
public sealed class MyJobs(LiveView view)
{
    const int Shown = 4;

    public bool IsChild => view.MyPerson?.IsChild == true;

    /// <summary>The one job the screen is about: running before due, a call before everything.</summary>
    public BoardCard? Current => Now.FirstOrDefault();

    public IEnumerable<BoardCard> AlsoNow => Now.Skip(1);

    public IEnumerable<BoardCard> Coming => view.Board.Next.Where(IsMine).Take(IsChild ? 2 : Shown);

    public IEnumerable<BoardCard> Free => !view.MayTap ? [] : view.Board.Now.Concat(view.Board.Next)
        .Where(card => card.IsFree && !IsMine(card) && MayTake(card)).Take(Shown);

    public IEnumerable<BoardCard> Done => view.Board.Done.Where(IsMine).Take(10);

    /// <summary>Steps that are somebody else's, whose calls do not ring here unless they are urgent; for a child every step that is not its own.</summary>
    public IEnumerable<Domain.StepId> OfOthers => view.Board.Now.Concat(view.Board.Next)
        .Where(card => !IsMine(card) && (IsChild || card.Helpers.Length > 0))
        .Select(card => card.Step.Id)
        .Distinct();

    /// <summary>Calls for whoever is near, which a child is not asked to answer.</summary>
    public IEnumerable<Call> Calls => IsChild ? [] : view.LooseCalls
        .Concat(view.Jobs.Where(card => card.Helpers.IsEmpty && !card.IsFree && card.Call is not null).Select(card => card.Call!))
        .OrderByDescending(call => call.Priority == CallPriority.High);

    IEnumerable<BoardCard> Now => view.Jobs
        .Where(IsMine)
        .OrderByDescending(card => card.Call?.Priority == CallPriority.High)
        .ThenByDescending(card => card.State is CardState.Over or CardState.Running);

    bool IsMine(BoardCard card) => view.Me is { } me && card.Helpers.Contains(me);

    /// <summary>A host the plan does not know lends a hand by taking something.</summary>
    bool MayTake(BoardCard card) => view.Me is not { } me ? view.IsHost :
        (view.Meal.Helpers.FirstOrDefault(helper => helper.Id == me)?.MayDo(card.Step) ?? !card.Step.Needs.Any());
}
