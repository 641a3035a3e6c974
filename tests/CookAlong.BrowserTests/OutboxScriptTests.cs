using System.Text.Json;
using CsCheck;

namespace CookAlong.BrowserTests;

/// <summary>The outbox alone, in a real browser, under any order of taps, losses and reloads, held against a list of what was meant.</summary>
[Collection(Browsers.Name)]
public sealed class OutboxScriptTests(Household house) : IClassFixture<Household>
{
    /// <summary>
    /// A server that keeps a command's id and takes it once, behind a network that loses questions and answers. After the last thing
    /// that happens the network is whole again.
    /// </summary>
    const string Play =
        """
        async (stories) => {
          const { outbox } = await import("/js/outbox.js");
          const play = async (story) => {
            const store = new Map();
            const took = [];
            const known = new Set();
            let network = "whole";
            let told = 0;
            const open = () => outbox({
              run: "r",
              store: { getItem: (key) => store.get(key) ?? null, setItem: (key, value) => store.set(key, value) },
              async send(tap) {
                if (network === "loses questions") throw new Error("lost");
                if (!known.has(tap.commandId)) took.push(`${tap.command.kind} ${tap.command.step ?? ""}`.trim());
                known.add(tap.commandId);
                if (network === "loses answers") throw new Error("lost");
                return { accepted: true };
              },
              answered: () => told++,
              changed: () => {},
            });
            let box = open();
            for (const happens of story) {
              if (happens === "reload") box = open();
              else if (happens === "send") await box.flush();
              else if (["whole", "loses questions", "loses answers"].includes(happens)) network = happens;
              else {
                const [kind, step] = happens.split(" ");
                box.add(step ? { kind, step } : { kind }, 0, "");
              }
            }
            network = "whole";
            await box.flush();
            return { took, told, known: known.size, left: box.waiting().length };
          };
          const outcomes = [];
          for (const story of stories) outcomes.push(await play(story));
          return outcomes;
        }
        """;

    static readonly string[] Meant = ["startStep a", "takeBack a", "startStep b", "takeBack b", "holdEverything", "goOn"];

    static readonly Gen<string[]> Story = Gen.Frequency(
        (4, Gen.OneOf(Meant)), (3, Gen.Const("send")), (1, Gen.Const("reload")), (2, Gen.OneOf("whole", "loses questions", "loses answers"))).Array[0, 40];

    [Fact]
    public async Task Every_tap_that_was_meant_is_taken_once_and_in_order()
    {
        await using var screen = await house.OpenAsync("script", ScreenSize.Phone);
        await screen.GoToAsync("/sign-in");
        await Story.Array[20].SampleAsync(async stories =>
        {
            var outcomes = await screen.Page.EvaluateAsync<JsonElement>(Play, stories);
            foreach (var (story, outcome) in stories.Zip(outcomes.EnumerateArray()))
            {
                var what = string.Join(", ", story);
                string[] took = [.. outcome.GetProperty("took").EnumerateArray().Select(one => one.GetString()!)];
                Assert.True(Naive(story).SequenceEqual(took), $"{what}: took {string.Join(", ", took)}");
                Assert.Equal((took.Length, took.Length, 0), (outcome.GetProperty("told").GetInt32(), outcome.GetProperty("known").GetInt32(), outcome.GetProperty("left").GetInt32()));
            }
        }, iter: 50, threads: 1);
    }

    [Fact]
    public async Task A_tap_that_was_too_much_at_once_stays_and_is_sent_again()
    {
        await using var screen = await house.OpenAsync("too-fast", ScreenSize.Phone);
        await screen.GoToAsync("/sign-in");

        var left = await screen.Page.EvaluateAsync<int[]>(
            """
            async () => {
              const { outbox, post } = await import("/js/outbox.js");
              const answers = [new Response("", { status: 429 }), Response.json({ accepted: true })];
              globalThis.fetch = async () => answers.shift();
              const store = new Map();
              const box = outbox({
                run: "r",
                store: { getItem: (key) => store.get(key) ?? null, setItem: (key, value) => store.set(key, value) },
                send: (tap) => post("/", tap, ""),
                answered: () => {},
                changed: () => {},
              });
              box.add({ kind: "startStep", step: "a" }, 0, "");
              const left = [];
              for (let tries = 0; tries < 2; tries++) {
                await box.flush();
                left.push(box.waiting().length);
              }
              return left;
            }
            """);

        Assert.Equal([1, 0], left);
    }

    [Fact]
    public void The_naive_list_takes_a_double_tap_for_one_and_a_change_of_mind_for_three() =>
        Assert.Equal(["startStep a", "takeBack a", "startStep a"], Naive(["startStep a", "startStep a", "takeBack a", "startStep a"]));

    /// <summary>What reaches the server: all that was tapped, but a tap that only repeats the one before it about the same thing, while that waits.</summary>
    static List<string> Naive(string[] story)
    {
        var meant = new List<string>();
        var waiting = new List<string>();
        var network = "whole";
        foreach (var happens in story)
        {
            if (happens == "send")
            {
                if (network == "whole")
                {
                    waiting.Clear();
                }
            }
            else if (happens is "whole" or "loses questions" or "loses answers")
            {
                network = happens;
            }
            else if (happens != "reload" && waiting.LastOrDefault(one => Thing(one) == Thing(happens)) != happens)
            {
                meant.Add(happens);
                waiting.Add(happens);
            }
        }

        return meant;
    }

    static string Thing(string tap) => tap.Contains(' ', StringComparison.Ordinal) ? tap.Split(' ')[1] : "the kitchen";
}
