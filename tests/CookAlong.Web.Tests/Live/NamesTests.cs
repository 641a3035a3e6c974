using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Web.Features.Live.Runs;

namespace CookAlong.Web.Tests.Live;

public sealed class NamesTests
{
    static readonly Helper Maren = Of("Maren"), Ivo = Of("Ivo"), Tobi = Of("Tobi") with { IsChild = true };

    [Fact]
    public void A_host_is_the_grown_up_of_their_name() => Assert.Equal(Ivo, new[] { Maren, Ivo, Tobi }.OfHost("ivo"));

    [Fact]
    public void Under_another_name_they_are_nobody_the_plan_knows() => Assert.Null(new[] { Maren, Ivo, Tobi }.OfHost("Rowan"));

    [Fact]
    public void But_the_only_grown_up_is_the_host_under_any_name() => Assert.Equal(Maren, new[] { Tobi, Maren }.OfHost("Rowan"));

    [Fact]
    public void A_host_is_never_a_child() => Assert.Null(new[] { Maren, Ivo, Tobi }.OfHost("Tobi"));

    static Helper Of(string name) => new(new HelperId(name), name, [], Can: null, IsChild: false);
}
