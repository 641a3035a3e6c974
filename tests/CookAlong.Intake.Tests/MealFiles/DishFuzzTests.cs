using CookAlong.Intake.MealFiles;
using CsCheck;

namespace CookAlong.Intake.Tests.MealFiles;

public sealed class DishFuzzTests
{
    const string Dish = """
        {"id":"d","name":"D","serves":4,"ingredients":[{"name":"x","quantity":1}],"holds":[{"place":"covered","limit":9}],
        "steps":[{"id":"a","text":"A","minutes":{"least":5,"likely":6,"most":9},"uses":[{"rings":1},{"appliance":"m"}],"tend":[{"text":"t","every":2}],"options":[{"minutes":3,"uses":[]}]},
        {"id":"b","text":"B","minutes":2,"after":[{"step":"a","gap":{"most":3}}]}]}
        """;

    static readonly string[] pieces = ["null", "\"a\"", "-1", "{}", "[]", "[[]]", "1e99", ",", "}", "\"id\":1,", "\"uses\":{},", "\"uses\":3", "true"];

    [Fact]
    public void A_dish_with_something_else_in_any_place_is_read_or_refused_and_never_throws() =>
        Gen.Select(Gen.Int[0, Dish.Length - 1], Gen.Int[0, 12], Gen.OneOf(pieces.Select(one => Gen.Const(one)).ToArray()))
            .Sample((at, length, piece) =>
            {
                var read = DishFile.Read(string.Concat(Dish.AsSpan(0, at), piece, Dish.AsSpan(Math.Min(Dish.Length, at + length))));
                return read.IsGood != (read.Errors.Length > 0);
            });

    [Theory]
    [InlineData("""{ "name": "twice", "name": "twice", "steps": [] }""")]
    [InlineData("""{ "name": "D", "steps": [{ "id": "a", "id": "b", "text": "A", "minutes": 1 }] }""")]
    public void A_member_that_stands_there_twice_is_told(string json) => Assert.NotEmpty(DishFile.Read(json).Errors);

    [Fact]
    public void A_dish_that_is_read_can_be_edited_in_every_way_without_a_throw() =>
        Gen.Select(Gen.Int[0, 1], Gen.Int[0, 1], Gen.Int[1, 600]).Sample((from, to, minutes) =>
        {
            var document = DishDocument.Of(Dish);
            document.MoveStep(from, to);
            document.Change(from, step => step with { Way = step.Way with { Minutes = new(minutes, minutes, minutes) } });
            document.AddStep("C", minutes);
            document.RemoveStep(0);
            return document.Text.Length > 0;
        });
}
