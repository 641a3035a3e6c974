using System.Text.Json.Nodes;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;
using CsCheck;

namespace CookAlong.Intake.Tests.MealFiles;

/// <summary>Whatever the text, reading gives a meal or reasons; it never throws.</summary>
public sealed class FuzzTests
{
    static readonly string Lunch = SeedData.Text("midwinter-lunch.json");

    static void Survives(string text)
    {
        var read = MealFile.Read(text);
        Assert.Equal(read.IsGood, read.Errors.IsEmpty);
        Assert.All(read.Errors, error => Assert.True(error.Problem.Length > 0 && error.Remedy.Length > 0));
        if (read.IsGood)
        {
            Assert.Empty(MealFile.Read(MealFile.Write(read.Meal)).Errors);
        }
    }

    [Fact]
    public void Spoilt_characters() =>
        (from places in Gen.Int[0, Lunch.Length - 1].Array[1, 4]
         from characters in Gen.Char.Array[4]
         select (places, characters)).Sample(
            spoil =>
            {
                var text = Lunch.ToCharArray();
                foreach (var (index, place) in spoil.places.Index())
                {
                    text[place] = spoil.characters[index];
                }

                Survives(new string(text));
            },
            iter: 100);

    [Fact]
    public void Text_cut_short() => Gen.Int[0, Lunch.Length - 1].Sample(length => Survives(Lunch[..length]), iter: 60);

    [Fact]
    public void Anything_at_all() => Gen.String.Sample(Survives, iter: 1_000);

    /// <summary>One or two values of the tree replaced by something of another kind or size.</summary>
    [Fact]
    public void Values_of_the_wrong_kind() =>
        (from places in Gen.Int[0, 100_000].Array[1, 2]
         from kind in Gen.Int[0, Odd.Length - 1]
         select (places, kind)).Sample(
            spoil =>
            {
                var root = JsonNode.Parse(Lunch)!;
                foreach (var place in spoil.places)
                {
                    var nodes = Inside(root).Where(node => node.Parent is not null).ToList();
                    nodes[place % nodes.Count].ReplaceWith(JsonNode.Parse(Odd[spoil.kind]));
                }

                Survives(root.ToJsonString());
            },
            iter: 150);

    [Fact]
    public void Plans_of_the_wrong_kind()
    {
        var meal = SmallMeal.Meal;
        var plan = PlanFile.Write(PlanSamples.Full(meal), meal);
        (from place in Gen.Int[0, 100_000]
         from kind in Gen.Int[0, Odd.Length - 1]
         select (place, kind)).Sample(
            spoil =>
            {
                var root = JsonNode.Parse(plan)!;
                var nodes = Inside(root).Where(node => node.Parent is not null).ToList();
                nodes[spoil.place % nodes.Count].ReplaceWith(JsonNode.Parse(Odd[spoil.kind]));
                var read = PlanFile.Read(root.ToJsonString(), meal);
                Assert.Equal(read.IsGood, read.Errors.IsEmpty);
            },
            iter: 150);
        Gen.Int[0, plan.Length - 1].Sample(length => Assert.False(PlanFile.Read(plan[..length], meal).IsGood), iter: 60);
    }

    static readonly string[] Odd =
    [
        "null", "true", "-1", "0", "1e400", "1.5", "99999999999999999999", "2147483648", "\"\"", "\"x\"", "\"goose-roast\"", "\"2027-12-19T02:00\"",
        "\"9999-12-31T23:59\"", "[]", "{}", "[[]]", "[null]", "[{}]", "{\"min\":600,\"max\":0}", "{\"from\":\"2027-12-19T02:00\",\"to\":\"2027-12-19T02:00\"}",
    ];

    static IEnumerable<JsonNode> Inside(JsonNode node) => node switch
    {
        JsonObject members => members.Select(member => member.Value).OfType<JsonNode>().SelectMany(Inside).Append(node),
        JsonArray items => items.OfType<JsonNode>().SelectMany(Inside).Append(node),
        _ => [node],
    };
}
