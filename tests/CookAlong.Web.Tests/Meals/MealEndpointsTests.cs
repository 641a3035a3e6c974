using System.Net;
using CookAlong.Domain;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Meals;
using CookAlong.Web.Tests.Plans;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CookAlong.Web.Tests.Meals;

public sealed class MealEndpointsTests : IDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    readonly AppFactory app = new();

    public void Dispose() => app.Dispose();

    [Fact]
    public async Task An_export_gives_back_the_file_unknown_fields_and_all()
    {
        var host = await app.HostAsync();
        var file = "{ \"ourNote\": \"aunt Sigrun sits by the door\"," + MealFile.Write(AlderLane.Meal).TrimStart()[1..];
        var meal = await AddedAsync(file);

        using var answer = await host.GetAsync($"/meals/{meal.Row.Id}/file");

        Assert.Equal(file, await answer.Content.ReadAsStringAsync(Stop));
        Assert.Equal("midwinter-lunch.json", answer.Content.Headers.ContentDisposition!.FileName);
    }

    [Fact]
    public async Task The_latest_plan_is_exported_as_a_plan_file()
    {
        var host = await app.HostAsync();
        var meal = await AddedAsync(MealFile.Write(AlderLane.Meal));
        await using (var db = await app.Services.GetRequiredService<IDbContextFactory<CookAlongDb>>().CreateDbContextAsync(Stop))
        {
            db.Plans.Add(new PlanRow { Id = Guid.CreateVersion7(app.Clock.GetUtcNow()), Meal = meal.Row.Id, MealVersion = 1, Document = PlanFile.Write(AlderLane.Plan, AlderLane.Meal), MadeAt = 1 });
            await db.SaveChangesAsync(Stop);
        }

        var plan = PlanFile.Read(await host.ReadAsync($"/meals/{meal.Row.Id}/plan/file"), meal.Meal);

        Assert.Equal(AlderLane.At("11:05"), plan.Plan!.Step(new StepId("potatoes-peel")).Start);
    }

    [Fact]
    public async Task A_meal_that_is_not_there_is_not_found()
    {
        var host = await app.HostAsync();

        using var answer = await host.GetAsync($"/meals/{Guid.Empty}/file");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Nobody_but_a_host_takes_a_meal_out()
    {
        var meal = await AddedAsync(MealFile.Write(AlderLane.Meal));

        using var answer = await app.NewBrowser().GetAsync($"/meals/{meal.Row.Id}/file");

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.StartsWith("/sign-in", answer.Headers.Location!.OriginalString.Replace("http://localhost", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    async Task<KeptMeal> AddedAsync(string file)
    {
        _ = app.FirstStartSecret;
        return Assert.IsType<MealEdit.Kept>(await app.Services.GetRequiredService<MealBook>().AddAsync(file, fromNow: false, Stop)).Meal;
    }
}
