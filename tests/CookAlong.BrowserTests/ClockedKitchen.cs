using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Runs;
using CookAlong.Intake.MealFiles;
using CookAlong.Intake.PlanFiles;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Live.Door;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Tests;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace CookAlong.BrowserTests;

/// <summary>
/// The mash for two with a clock in the test's hand and a planner that finds what the test wants: the real server in this
/// process, on a port that Chromium reaches. At 12:00 Ivo chops (10 min), at 12:15 he makes the mash (14), at 12:20 Maren
/// toasts the bread (12), and supper is at 12:34.
/// </summary>
sealed class ClockedKitchen : IAsyncDisposable
{
    public static readonly StepId Chop = new("chop"), Mash = new("mash"), Toast = new("knead");
    public static readonly HelperId Maren = new("maren"), Ivo = new("ivo");

    // Never before the day that the house's clock begins with, nor before this machine's: a browser lets cookies of the past go.
    static readonly DateTimeOffset Noon = Later(new(2026, 12, 21, 12, 0, 0, TimeSpan.Zero), new(TimeProvider.System.GetUtcNow().UtcDateTime.Date.AddDays(1).AddHours(12), TimeSpan.Zero));

    readonly AppFactory house;
    readonly Chromium chromium;
    readonly List<Screen> screens = [];
    RunId run;

    ClockedKitchen(Chromium chromium, Func<Plan, Plan> better)
    {
        this.chromium = chromium;
        house = new AppFactory { Replace = services => services.AddSingleton<IMealPlanner>(new Finds(better)) };
        house.Clock.SetUtcNow(Noon);
        house.UseKestrel(0);
        house.StartServer();
    }

    public Screen Tablet => screens[0];

    /// <summary>A clock time on the day of the meal.</summary>
    public static Minute At(int hour, int minute) => Minute.Of(Noon) + (60 * (hour - 12)) + minute;

    /// <summary>The host's tablet is at the board.</summary>
    /// <param name="better">The next plan that the planner finds, from the one that is cooked by.</param>
    public static Task<ClockedKitchen> StartAsync(Chromium chromium, Func<Plan, Plan>? better = null) =>
        StartAsync(chromium, MashForTwo.Json("Mash by the clock", Noon), PlanOf, better);

    /// <param name="mealJson">A meal file, told when noon is.</param>
    public static Task<ClockedKitchen> StartAsync(Chromium chromium, Func<DateTimeOffset, string> mealJson, Func<Meal, Plan> planOf) =>
        StartAsync(chromium, mealJson(Noon), planOf, better: null);

    static async Task<ClockedKitchen> StartAsync(Chromium chromium, string mealJson, Func<Meal, Plan> planOf, Func<Plan, Plan>? better)
    {
        var kitchen = new ClockedKitchen(chromium, better ?? (plan => plan));
        var read = MealFile.Read(mealJson);
        var meal = read.Meal ?? throw new InvalidOperationException(string.Join("; ", read.Errors));
        var row = Guid.CreateVersion7(Noon);
        await using (var db = kitchen.house.NewDb())
        {
            db.Add(new MealRow { Id = row, Name = meal.Name, Document = MealFile.Write(meal), ChangedAt = 0 });
            db.Add(new PlanRow { Id = row, Meal = row, MealVersion = 1, Document = PlanFile.Write(planOf(meal), meal), MadeAt = 0 });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        var tablet = await kitchen.OpenAsync("tablet", ScreenSize.Tablet);
        await tablet.GoToAsync($"/first-start#{kitchen.house.FirstStartSecret}");
        await tablet.Page.GetByLabel("Your name").FillAsync("Maren");
        await tablet.Page.GetByLabel("A password").FillAsync(AppFactory.HostPassword);
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Make my kitchen" }).ClickAsync();
        await tablet.Page.WaitForURLAsync("**/meals");
        await tablet.GoToAsync($"/meals/{row}/plan");
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Start cooking" }).ClickAsync();
        await tablet.Page.WaitForURLAsync("**/cook/*");
        kitchen.run = new RunId(Guid.Parse(new Uri(tablet.Page.Url).Segments[^1]));
        return kitchen;
    }

    /// <summary>The host's phone, signed in as the tablet is.</summary>
    public async Task<Screen> HostPhoneAsync()
    {
        var page = await Tablet.Context.NewPageAsync();
        await page.SetViewportSizeAsync(ScreenSize.Phone.Width, ScreenSize.Phone.Height);
        var phone = new Screen("phone-host", Tablet.Context, page);
        screens.Add(phone);
        await phone.GoToAsync($"/cook/{run}/me");
        return phone;
    }

    public async Task<Screen> JoinAsync(string name)
    {
        var code = await house.Get<JoinCodes>().InviteAsync(run, Role.Helper);
        var phone = await OpenAsync($"phone-{name}", ScreenSize.Phone);
        await phone.GoToAsync("/join");
        await phone.Page.GetByLabel("code").FillAsync(code.Typed);
        await phone.Page.GetByLabel("Your name").FillAsync(name);
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Join" }).ClickAsync();
        await phone.Page.WaitForURLAsync("**/cook/*/me");
        return phone;
    }

    /// <summary>The kitchen's clock goes to that time, and every screen is looked at again.</summary>
    public async Task GoToAsync(int hour, int minute, int second = 0)
    {
        house.Clock.SetUtcNow(At(hour, minute).Utc.AddSeconds(second));
        await WakeAsync();
    }

    /// <summary>A second later: what the kitchen does by itself at every second, it has done.</summary>
    public async Task BeatAsync()
    {
        house.Clock.Advance(TimeSpan.FromSeconds(1));
        var live = (await house.Get<LiveRuns>().FindAsync(run))!;
        await house.Get<ByItself>().ActAsync(live, Board.Of(live.Current, house.Clock.GetUtcNow()));
        await WakeAsync();
    }

    // A device reads the server's clock anew when it wakes; else it would trust the time of before for its last eight readings.
    // What is tapped counts from the moment that the device takes for now, so nothing is tapped before it has read it.
    async Task WakeAsync()
    {
        var now = house.Clock.GetUtcNow().ToUnixTimeMilliseconds();
        foreach (var screen in screens)
        {
            await screen.Page.EvaluateAsync("document.dispatchEvent(new Event('visibilitychange'))");
        }

        foreach (var screen in screens)
        {
            await screen.HoldAsync($"document.getElementById('live') === null || import('/js/clock.js').then(clock => Math.abs(clock.now() - {now}) < 3000)");
        }
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var screen in screens)
        {
            await screen.DisposeAsync();
        }

        await house.DisposeAsync();
    }

    async Task<Screen> OpenAsync(string name, ScreenSize size)
    {
        var screen = await chromium.OpenAsync(name, size, house.ClientOptions.BaseAddress.ToString());
        screens.Add(screen);
        return screen;
    }

    static Plan PlanOf(Meal meal)
    {
        var (course, oven) = (meal.Courses[0], meal.Kitchen.Ovens[0].Id);
        return new Plan(
            PlanStatus.Optimal, 0, 1, At(12, 0),
            [new PlannedCourse(course.Id, course.TableTime, course.TableTime)],
            [Planned(Chop, At(12, 0), 10, Ivo), Planned(Mash, At(12, 15), 14, Ivo), Planned(Toast, At(12, 20), 12, Maren)],
            [],
            [Waits("slaw", HoldPlace.Side, At(12, 10)), Waits("mash", HoldPlace.Covered, At(12, 29)), Waits("bread", HoldPlace.Side, At(12, 32))],
            [new OvenProgramme(oven, [new OvenPoint(At(12, 0), 20)], [])],
            new PlanCost(0, 0, 34, 0, 0), null, []);

        PlannedHold Waits(string dish, HoldPlace place, Minute from) => new(new DishId(dish), 0, place, from, course.TableTime, null);
    }

    static PlannedStep Planned(StepId step, Minute start, int minutes, params HelperId[] helpers) =>
        new(step, start, start + minutes, -1, [.. helpers], null, null, [], 0);

    static DateTimeOffset Later(DateTimeOffset one, DateTimeOffset other) => one > other ? one : other;

    sealed class Finds(Func<Plan, Plan> better) : IMealPlanner
    {
        public Plan Plan(PlanRequest request, IProgress<PlanProgress>? progress = null, CancellationToken stop = default) =>
            better(request.So?.Current ?? throw new InvalidOperationException("Only a running kitchen's plan is looked for here."));
    }
}
