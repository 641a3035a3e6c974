using CookAlong.Domain.Meals;
using CookAlong.Domain.Tests.Runs;

namespace CookAlong.Domain.Tests.Meals;

/// <summary>Common practice, no source.</summary>
public sealed class UsualCautionsTests
{
    static string? Of(Func<Step, Step> change) => UsualCautions.Of(change(SmallMeal.Meal.Step(SmallMeal.Carve) with { Text = "Taste it", Needs = [] }));

    [Theory]
    [InlineData("Fry the onions", "Hot fat")]
    [InlineData("Chop the onions", "Sharp blade")]
    [InlineData("Drain the potatoes", "Steam scalds")]
    [InlineData("Cover it with foil", "gas flames")]
    public void A_step_of_somebodys_own_is_not_without_the_usual_caution(string text, string caution) =>
        Assert.Contains(caution, Of(step => step with { Text = text }), StringComparison.Ordinal);

    [Fact]
    public void What_a_step_says_itself_goes_before_it_and_what_is_safe_has_none()
    {
        Assert.Equal("Mind the cat.", Of(step => step with { Text = "Fry it", Caution = "Mind the cat." }));
        Assert.Null(Of(step => step));
        Assert.Null(Of(step => step with { Text = "Cut out the biscuits", ChildSafe = true }));
        Assert.Contains("Sharp blade", Of(step => step with { Needs = ["knife"] }), StringComparison.Ordinal);
    }
}
