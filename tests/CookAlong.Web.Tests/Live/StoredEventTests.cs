using System.Text.Json.Nodes;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Runs;
using CookAlong.Domain.Tests.Runs;
using CookAlong.Web.Data;

namespace CookAlong.Web.Tests.Live;

/// <summary>What was once written must be read for ever: the frozen file only ever grows.</summary>
public sealed class StoredEventTests
{
    static readonly string[] Frozen = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Live", "frozen-events.jsonl"));

    [Fact]
    public void Every_frozen_event_still_loads_and_says_the_same()
    {
        foreach (var line in Frozen)
        {
            var (kind, document) = Split(line);
            var happened = StoredEvent.Read(kind, document.ToJsonString(), SmallMeal.Meal);
            var (kindAgain, documentAgain) = StoredEvent.Write(happened, SmallMeal.Meal);
            Assert.Equal(kind, kindAgain);

            // Meal and plan files, and dishes as they have them, may gain fields; the events' own may not change.
            foreach (var (name, value) in document.Where(field => field.Key is not ("meal" or "plan" or "dish")))
            {
                Assert.Equal(value?.ToJsonString(), JsonNode.Parse(documentAgain)![name]?.ToJsonString());
            }
        }
    }

    [Fact]
    public void There_is_a_frozen_sample_of_every_event()
    {
        var all = typeof(RunEvent).GetNestedTypes().Where(type => type.IsSubclassOf(typeof(RunEvent))).Select(type => type.Name);
        var frozen = Frozen.Select(Split).Select(one => StoredEvent.Read(one.Kind, one.Document.ToJsonString(), SmallMeal.Meal).GetType().Name);
        Assert.Equal(all.Order(), frozen.Distinct().Order());
    }

    [Fact]
    public void The_frozen_run_is_the_small_lunch()
    {
        var (kind, document) = Split(Frozen[0]);
        var start = Assert.IsType<RunEvent.RunStarted>(StoredEvent.Read(kind, document.ToJsonString(), meal: null));
        Assert.Equal(SmallMeal.Meal.Steps.Select(step => step.Id), start.Meal.Steps.Select(step => step.Id));
        Assert.Equal(SmallMeal.Plan.Steps.Select(step => (step.Step, step.Start, step.End)), start.Plan.Steps.Select(step => (step.Step, step.Start, step.End)));
        Assert.Equal(SmallMeal.Plan.Tends, start.Plan.Tends);
        Assert.Equal(SmallMeal.Plan.Ovens[0].Dial, start.Plan.Ovens[0].Dial);
    }

    [Fact]
    public void An_event_of_a_newer_version_is_not_guessed_at() =>
        Assert.Throws<InvalidDataException>(() => StoredEvent.Read("stepFinished/2", "{}", SmallMeal.Meal));

    static (string Kind, JsonObject Document) Split(string line)
    {
        var json = JsonNode.Parse(line)!.AsObject();
        return (json["kind"]!.GetValue<string>(), json["document"]!.AsObject());
    }
}
