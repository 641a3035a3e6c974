using System.Collections.Concurrent;
using CookAlong.Domain.Runs;

namespace CookAlong.Web.Features.Live.Runs;

/// <summary>Boards as they are made, so that twenty screens that ask after the same tap cost one.</summary>
public sealed class Boards(RunClocks clocks)
{
    static readonly TimeSpan GoodFor = TimeSpan.FromSeconds(1);

    readonly ConcurrentDictionary<RunId, (Run Run, Board Board)> made = new();

    /// <summary>At most a second old.</summary>
    public Board Of(Run run) =>
        made.TryGetValue(run.Id, out var last) && ReferenceEquals(last.Run, run) && clocks.Now(run.Id) - last.Board.At < GoodFor
            ? last.Board
            : NewOf(run);

    public void Forget(RunId run) => made.TryRemove(run, out _);

    /// <summary>Of this very moment.</summary>
    public Board NewOf(Run run)
    {
        var board = Board.Of(run, clocks.Now(run.Id));
        if (made.TryGetValue(run.Id, out var last))
        {
            board = board with { Calls = board.Calls.Since(last.Board.Calls, board.At) };
        }

        made[run.Id] = (run, board);
        return board;
    }
}
