using Bunit;
using CookAlong.Web.Features.Live.Door;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;

namespace CookAlong.Web.Tests.LivePages;

public sealed class InvitePageTests : BunitContext
{
    public InvitePageTests() => Services.AddSingleton<AntiforgeryStateProvider, Pages.NoAntiforgery>();

    [Fact]
    public void Everybody_who_joined_can_be_put_out()
    {
        var forms = Show().FindAll("form");

        Assert.Equal(["Put out Tobi", "Put out Gran, who watches"], forms.Select(form => form.QuerySelector("button")!.TextContent));
        Assert.All(forms, form => Assert.Equal($"/cook/{Run}/put-out", form.GetAttribute("action")));
        Assert.Equal(Guests[0].Person.ToString(), forms[0].QuerySelector("input[name=person]")!.GetAttribute("value"));
    }

    [Fact]
    public void With_nobody_there_nobody_can_be_put_out() => Assert.Empty(Show(guests: []).FindAll("form"));

    [Fact]
    public void What_came_of_it_is_said() =>
        Assert.Equal("Tobi is out. The screen is signed out, and the jobs are free to take.", Show(message: JoinWords.IsOut("Tobi")).Find("[role=status]").TextContent);

    IRenderedComponent<InvitePage> Show(Domain.Runs.RunPerson[]? guests = null, string? message = null) => Render<InvitePage>(page => page
        .Add(one => one.View, View(Busy))
        .Add(one => one.Link, "http://192.168.1.20:5000/join#k3J9xQ2mZr8vT1bN5cW7yA")
        .Add(one => one.Code, "K7PMRW4X")
        .Add(one => one.ExpiresAt, At(13, 34))
        .Add(one => one.Guests, guests ?? Guests)
        .Add(one => one.Message, message));
}
