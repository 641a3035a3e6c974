using CookAlong.Web.Features.Dishes;

namespace CookAlong.Web.Tests.Dishes;

public sealed class EditHistoryTests
{
    [Fact]
    public void What_is_undone_can_be_done_again_until_something_new_is_done()
    {
        var history = new EditHistory();
        history.Restart("as it came");
        history.Note("salted");
        history.Note("salted, peppered");

        Assert.Equal("salted", history.Undo());
        Assert.Equal("as it came", history.Undo());
        Assert.False(history.CanUndo);
        Assert.Equal("salted", history.Redo());
        history.Note("salted, sugared");

        Assert.False(history.CanRedo);
        Assert.Equal("salted", history.Undo());
    }

    [Fact]
    public void Where_nothing_is_left_to_undo_or_to_do_again_nothing_is_done()
    {
        var history = new EditHistory();
        history.Restart("as it came");

        Assert.Null(history.Undo());
        Assert.Null(history.Redo());
    }
}
