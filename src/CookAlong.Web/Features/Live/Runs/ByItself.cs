using CookAlong.Domain;
using CookAlong.Domain.Runs;
using CookAlong.Web.Features.Live.Line;

namespace CookAlong.Web.Features.Live.Runs;

/// <summary>What a kitchen does though nobody taps. It goes the way of every tap, so it is decided by the run and stands in its log.</summary>
public sealed class ByItself(ReplanOffers offers, OpenScreens open, TimeProvider time)
{
    public async Task ActAsync(LiveRun live, Board board)
    {
        if (live.Current.IsLongOver(board.At))
        {
            await SendAsync(live, new RunCommand.EndRun());
            return;
        }

        foreach (var (step, helper, isSilent) in Late(live.Current, board).ToList())
        {
            await SendAsync(live, new RunCommand.FreeStep(step, helper, isSilent));
        }

        if (offers.BestOf(live.Current) is { } best && live.Current.TakesByItself(best.Plan))
        {
            await SendAsync(live, best);
        }
    }

    /// <summary>Steps that somebody took or was given, or that are planned for somebody whose phone is silent, and that nobody has begun in time.</summary>
    IEnumerable<(StepId Step, HelperId Helper, bool IsSilent)> Late(Run run, Board board)
    {
        var screens = open.Of(run.Id);
        return from card in board.Now
               where card.HeldUntil is { } until && until.Utc <= board.At
               from helper in card.Helpers
               let person = run.PersonOf(helper)
               where person is not null
               let isSilent = screens.SilentSince(person.Person, time.GetUtcNow()) is not null
               where card.IsClaimed || isSilent
               select (card.Step.Id, helper, isSilent);
    }

    Task<Decision> SendAsync(LiveRun live, RunCommand command) => live.SendAsync(new Tap(new CommandId(Guid.CreateVersion7(time.GetUtcNow())), By: null, command));
}
