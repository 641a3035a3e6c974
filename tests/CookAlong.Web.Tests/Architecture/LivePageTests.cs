using System.Text.RegularExpressions;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Shared;
using Microsoft.AspNetCore.Components;

namespace CookAlong.Web.Tests.Architecture;

/// <summary>Nobody depends on a circuit to cook, to join or to sign in: phones lock, roam and sleep.</summary>
public sealed partial class LivePageTests
{
    static readonly string[] Folders = ["Features/Live", "Features/Household", "Features/Problems", "Features/Plans/Paper", "Features/Shopping", "Features/Debrief", "Features/Secure", "Features/Licences"];

    static IEnumerable<Type> LivePages => typeof(LiveDocument).Assembly.GetTypes()
        .Where(type => typeof(IComponent).IsAssignableFrom(type) && !type.IsAbstract)
        .Where(type => Folders.Any(folder => $"{type.Namespace}.".StartsWith($"CookAlong.Web.{folder.Replace('/', '.')}.", StringComparison.Ordinal)));

    [Fact]
    public void Live_pages_have_no_render_mode_and_no_route_of_their_own()
    {
        Assert.Contains(typeof(SignInPage), LivePages);

        Assert.All(LivePages, page =>
        {
            Assert.Empty(page.GetCustomAttributes(typeof(RenderModeAttribute), inherit: true));
            Assert.Empty(page.GetCustomAttributes(typeof(RouteAttribute), inherit: true));
        });
    }

    [Fact]
    public void Live_pages_use_neither_a_circuit_nor_the_component_library()
    {
        var files = Folders.SelectMany(folder => Sources.Files("src/CookAlong.Web/" + folder, "*.razor"))
            .Concat(Sources.Files("src/CookAlong.Web/Shared", "LiveDocument.razor"))
            .ToArray();
        Assert.True(files.Length >= 4);

        Assert.All(files, file => Assert.DoesNotMatch(NotOnLivePages(), File.ReadAllText(file)));
    }

    [Fact]
    public void Live_pages_carry_nothing_inline_that_their_content_policy_refuses()
    {
        var files = Folders.SelectMany(folder => Sources.Files("src/CookAlong.Web/" + folder, "*.razor")).ToArray();
        Assert.NotEmpty(files);

        Assert.All(files, file => Assert.DoesNotMatch(Inline(), File.ReadAllText(file)));
    }

    [GeneratedRegex(@"@rendermode|blazor\.web\.js|@on[a-z]+=|@bind|<Mud|@inject IJSRuntime")]
    private static partial Regex NotOnLivePages();

    // Also presentation attributes by way of style=, and handlers such as onclick=.
    [GeneratedRegex(@"\sstyle=""|<style|\son[a-z]+=""|<script(?![^>]*\ssrc=)|javascript:")]
    private static partial Regex Inline();
}
