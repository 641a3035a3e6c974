using CookAlong.Intake.MealFiles;
using CsCheck;

namespace CookAlong.Intake.Tests.MealFiles;

public sealed class RoundTripTests
{
    [Fact]
    public void Any_meal_written_and_read_again_is_the_same() => MealGen.Any.Sample(
        meal =>
        {
            var read = MealFile.Read(MealFile.Write(meal));
            Assert.Empty(read.Errors);
            Same.As(meal, read.Meal);
        },
        iter: 500);
}
