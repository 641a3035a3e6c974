using System.Net;
using CookAlong.Domain;
using CookAlong.Domain.Tests.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Tests.Live;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Debrief;

/// <summary>The small lunch cooked to its end: stuffing takes 12 minutes longer, and the roast and the carving come after it.</summary>
/// <param name="Kitchen">With its host, Rowan.</param>
/// <param name="Ivo">A helper's phone that was in the kitchen when it ended.</param>
sealed record CookedLunch(LiveKitchen Kitchen, Browser Ivo) : IAsyncDisposable
{
    public string Address => $"/cook/{Kitchen.Run}/debrief";

    public static async Task<CookedLunch> CookAsync()
    {
        var kitchen = await LiveKitchen.StartedAsync();
        var ivo = await kitchen.JoinAsync("Ivo");
        await CookAsync(kitchen);
        return new(kitchen, ivo);
    }

    public async Task<string> ReadAsync(Browser? screen = null) => WebUtility.HtmlDecode(await (screen ?? Kitchen.Host).ReadAsync(Address));

    /// <summary>As the host's page would send it.</summary>
    public async Task PostAsync(string part, Dictionary<string, string> fields)
    {
        using var answer = await Kitchen.Host.PostFormAsync($"{Address}/{part}", fields, page: Address);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
    }

    /// <summary>As if another meal had been cooked: other words in the log's first event.</summary>
    public async Task RewriteAsync(string was, string becomes)
    {
        await using var db = Kitchen.House.NewDb();
        var begun = db.Set<RunEventRow>().Where(row => row.Sequence == 1);
        Assert.Contains(was, (await begun.SingleAsync(TestContext.Current.CancellationToken)).Document, StringComparison.Ordinal);
        await begun.ExecuteUpdateAsync(set => set.SetProperty(row => row.Document, row => row.Document.Replace(was, becomes)), TestContext.Current.CancellationToken);
    }

    public ValueTask DisposeAsync() => Kitchen.DisposeAsync();

    /// <param name="longer">Minutes that stuffing takes beyond its 20.</param>
    public static async Task CookAsync(LiveKitchen kitchen, int longer = 12)
    {
        (StepId Step, int From, int To)[] done =
        [
            (SmallMeal.Stuff, 20, 40 + longer), (SmallMeal.Roast, 40 + longer, 130 + longer), (SmallMeal.Roll, 120, 135), (SmallMeal.Boil, 135, 155),
            (SmallMeal.Trim, 140, 150), (SmallMeal.Carve, 160 + longer, 175 + longer), (SmallMeal.Serve, 165, 175),
        ];
        foreach (var (step, at, kind) in done.SelectMany(one => new[] { (one.Step, one.From, "startStep"), (one.Step, one.To, "finishStep") }).OrderBy(one => one.Item2))
        {
            kitchen.House.Clock.LeapTo(SmallMeal.Clock(12).AddMinutes(at));
            if (step == SmallMeal.Serve && kind == "startStep")
            {
                // The dumplings' pause point.
                await kitchen.TapAsync(kitchen.Host, new { kind = "goOn" });
            }

            var answer = await kitchen.TapAsync(kitchen.Host, new { kind, step = step.Value });
            Assert.True(answer.Accepted, $"{step} {kind}: {answer.Reason}");
        }

        Assert.True((await kitchen.TapAsync(kitchen.Host, new { kind = "endRun" })).Accepted);
    }
}
