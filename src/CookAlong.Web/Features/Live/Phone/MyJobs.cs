using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live.Phone;

/// <summary>The board as one person needs it: own jobs first, then what is free.</summary>
public sealed class MyJobs(LiveView view)
{
    const int Shown = 4;

    const int MostFree = 6;

    public bool IsChild => view.MyPerson?.IsChild == true;

    /// <summary>The one job the screen is about: running before due, a call before everything.</summary>
    public BoardCard? Current => Now.FirstOrDefault();

    public IEnumerable<BoardCard> AlsoNow => Now.Skip(1);

    public IEnumerable<BoardCard> Coming => view.Board.Next.Where(IsMine).Take(IsChild ? 2 : Shown);

    /// <summary>What somebody must start, tend or take off the heat though nobody need stand by it: seen shortly before its time.</summary>
    public IEnumerable<BoardCard> Near => !view.MayTap ? [] : Others
        .Where(card => IsForWhoeverIsNear(card) && card.Call is null && card.Starts <= Soon && card.State != CardState.Running)
        .Take(Shown);

    /// <summary>What cooks by a thermometer; no child's job.</summary>
    public IEnumerable<BoardCard> Cores => IsChild ? [] : view.Board.Now
        .Where(card => card is { Core: not null, Tend: null, State: CardState.Running or CardState.Over } && card.Step.Id != Current?.Step.Id);

    /// <summary>Work for hands that nobody here has: the few that come soon, or two for somebody who wants something to do.</summary>
    public IEnumerable<BoardCard> FreeSoon => Free.Where((card, place) => place < 2 || (place < MostFree && card.Starts <= Soon));

    public IEnumerable<BoardCard> FreeLater => Free.Skip(FreeSoon.Count());

    public IEnumerable<BoardCard> Done => view.Board.Done.Where(IsMine).Take(10);

    public int Finished => view.Board.Done.Count(IsMine);

    /// <summary>Steps that are somebody else's, whose calls do not ring here unless they are urgent; for a child every step that is not its own.</summary>
    public IEnumerable<Domain.StepId> OfOthers => view.Board.Now.Concat(view.Board.Next)
        .Where(card => !IsMine(card) && (IsChild || card.Helpers.Length > 0))
        .Select(card => card.Step.Id)
        .Distinct();

    /// <summary>Calls for whoever is near, which a child is not asked to answer.</summary>
    public IEnumerable<Call> Calls => IsChild ? [] : view.LooseCalls
        .Concat(view.Jobs.Where(card => IsForWhoeverIsNear(card) && !IsMine(card) && card.Call is not null).Select(card => card.Call!))
        .OrderByDescending(call => call.Priority == CallPriority.High);

    IEnumerable<BoardCard> Now => view.Jobs
        .Where(IsMine)
        .OrderByDescending(card => card.Call?.Priority == CallPriority.High)
        .ThenByDescending(card => card.State is CardState.Over or CardState.Running);

    IEnumerable<BoardCard> Free => !view.MayTap ? [] : Others
        .Where(card => card.IsFree && card.Attention == Attention.HandsOn && card.Tend is null && !IsGoingOn(card));

    /// <summary>Somebody without a screen is at it already.</summary>
    static bool IsGoingOn(BoardCard card) => card.State is CardState.Running or CardState.Over && card.Helpers.Length > 0;

    /// <summary>Not one's own, and allowed; in order of time.</summary>
    IEnumerable<BoardCard> Others => view.Board.Now.Concat(view.Board.Next)
        .Where(card => !IsMine(card) && MayTake(card))
        .OrderBy(card => card.Starts);

    DateTimeOffset Soon => view.Board.At.AddMinutes(20);

    /// <summary>A tend, or a step that no pair of hands is tied to, which nobody here has taken.</summary>
    bool IsForWhoeverIsNear(BoardCard card) =>
        (card.Attention != Attention.HandsOn || card.Tend is not null) && card.Helpers.All(helper => view.PersonOf(helper).Person is null);

    bool IsMine(BoardCard card) => view.Me is { } me && card.Helpers.Contains(me);

    /// <summary>A host the plan does not know lends a hand by taking something.</summary>
    bool MayTake(BoardCard card)
    {
        if (view.Me is not { } me)
        {
            return view.IsHost;
        }

        var helper = view.Meal.Helpers.FirstOrDefault(one => one.Id == me);
        return helper is null ? !card.Step.Needs.Any()
            : card.Tend is { } tend ? helper.MayDo(card.Step, card.Step.Tends[tend.Tend])
            : helper.MayDo(card.Step);
    }
}
