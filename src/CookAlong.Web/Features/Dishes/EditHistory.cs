namespace CookAlong.Web.Features.Dishes;

/// <summary>The states a document went through on one page, to go back and forth in.</summary>
public sealed class EditHistory
{
    readonly List<string> states = [];
    int at = -1;

    public bool CanUndo => at > 0;

    public bool CanRedo => at < states.Count - 1;

    /// <summary>A new state; what had been undone is gone with it.</summary>
    public void Note(string state)
    {
        states.RemoveRange(at + 1, states.Count - at - 1);
        states.Add(state);
        at = states.Count - 1;
    }

    /// <summary>Null when nothing is left to undo: a second tap is faster than the page.</summary>
    public string? Undo() => CanUndo ? states[--at] : null;

    public string? Redo() => CanRedo ? states[++at] : null;

    /// <summary>Somebody else's state is the beginning now.</summary>
    public void Restart(string state)
    {
        states.Clear();
        at = -1;
        Note(state);
    }
}
