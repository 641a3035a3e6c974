using CookAlong.Domain.Guests;
using CookAlong.Domain.Meals;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Live;
using CookAlong.Web.Features.Live.Device;
using CookAlong.Web.Features.Live.Dining;
using CookAlong.Web.Features.Live.Door;
using CookAlong.Web.Features.Live.Log;
using CookAlong.Web.Features.Live.More;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Features.Live.Phone;
using CookAlong.Web.Features.Live.Tablet;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using static CookAlong.Web.Tests.LivePages.SampleKitchen;
using Role = CookAlong.Domain.Runs.Role;

namespace CookAlong.Web.Tests.LivePages;

/// <summary>Every state of every page without a circuit, as the server would send it.</summary>
static class Pages
{
    public static IReadOnlyDictionary<string, Func<Task<string>>> All { get; } = new Dictionary<string, Func<Task<string>>>
    {
        ["board-busy"] = () => Page<BoardPage>(View(Busy)),
        ["board-unheard"] = () => Page<BoardPage>(View(Busy, screens: Unheard)),
        ["board-calm"] = () => Page<BoardPage>(View(Calm)),
        ["board-paused"] = () => Page<BoardPage>(View(Paused)),
        ["board-crowded"] = () => Page<BoardPage>(View(Crowded, offer: Offer)),
        ["board-taken"] = () => Page<BoardPage>(View(Taken)),
        ["board-done"] = () => Page<BoardPage>(View(AllDone)),
        ["board-over"] = () => Page<BoardPage>(View(Over)),
        ["me-busy"] = () => Page<MePage>(View(Busy, Maren, Role.Helper)),
        ["me-crowded"] = () => Page<MePage>(View(Crowded, Maren, Role.Helper, Offer)),
        ["me-calm"] = () => Page<MePage>(View(Calm, Maren, Role.Helper)),
        ["me-late"] = () => Page<MePage>(View(Calm, Ivo, Role.Helper)),
        ["me-child"] = () => Page<MePage>(View(Busy, Tobi, Role.Helper)),
        ["me-taken"] = () => Page<MePage>(View(Taken, Maren, Role.Helper)),
        ["board-held"] = () => Page<BoardPage>(View(Held)),
        ["board-probed"] = () => Page<BoardPage>(View(Probed)),
        ["me-probed"] = () => Page<MePage>(View(Probed, Maren, Role.Helper)),
        ["board-untended"] = () => Page<BoardPage>(View(Untended)),
        ["me-held"] = () => Page<MePage>(View(Held, Maren, Role.Helper)),
        ["me-child-due"] = () => Page<MePage>(View(ChildDue, Tobi, Role.Helper)),
        ["watch"] = () => Page<WatchPage>(View(Busy, role: Role.Watcher)),
        ["watch-late"] = () => Page<WatchPage>(View(Crowded, role: Role.Watcher)),
        ["watch-over"] = () => Page<WatchPage>(View(Over, role: Role.Watcher)),
        ["log"] = () => Html<LogPage>(new() { ["View"] = View(Busy), ["Lines"] = Happened }),
        ["me-done"] = () => Page<MePage>(View(AllDone, Maren)),
        ["me-over"] = () => Page<MePage>(View(Over, Maren, Role.Helper)),
        ["invite"] = () => Html<InvitePage>(new() { ["View"] = View(Busy), ["Link"] = "http://192.168.1.20:5000/join#k3J9xQ2mZr8vT1bN5cW7yA", ["Code"] = "K7PMRW4X", ["ExpiresAt"] = At(13, 34), ["Guests"] = Guests, ["Message"] = "Ivo is out. The screen is signed out, and the jobs are free to take." }),
        ["more"] = () => Html<MorePage>(new() { ["View"] = View(Busy, offer: Offer), ["Dishes"] = MoreDishes }),
        ["wall-busy"] = () => Page<WallPage>(View(Busy)),
        ["wall-unheard"] = () => Page<WallPage>(View(Busy, screens: Unheard)),
        ["wall-late-unheard"] = () => Page<WallPage>(View(Crowded, screens: Unheard)),
        ["wall-calm"] = () => Page<WallPage>(View(Calm)),
        ["wall-crowded"] = () => Page<WallPage>(View(Crowded)),
        ["wall-paused"] = () => Page<WallPage>(View(Paused)),
        ["wall-done"] = () => Page<WallPage>(View(AllDone)),
        ["wall-over"] = () => Page<WallPage>(View(Over)),
        ["device"] = () => Page<DevicePage>(View(Busy)),
        ["join"] = () => Html<JoinPage>([]),
        ["join-again"] = () => Html<JoinPage>(new() { ["Message"] = "That code is not right, or its ten minutes are over. Ask the host for a new one.", ["Name"] = "Ivo" }),
        ["sign-in"] = () => Html<SignInPage>([]),
        ["first-start"] = () => Html<FirstStartPage>([]),
    };

    static HouseSettings Settings { get; } = new("data", HouseSettings.DefaultUrls, [], []) { Broker = new Uri("mqtt://hall.home.arpa/kitchen") };

    static Task<string> Page<T>(LiveView view) where T : IComponent => Html<T>(new() { ["View"] = view });

    public static async Task<string> Html<T>(Dictionary<string, object?> parameters) where T : IComponent
    {
        await using var services = new ServiceCollection()
            .AddSingleton<AntiforgeryStateProvider, NoAntiforgery>()
            .AddSingleton(new WaysOut(Settings, null!, null!, null!, TimeProvider.System))
            .BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        return await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<T>(ParameterView.FromDictionary(parameters))).ToHtmlString());
    }

    /// <summary>In time for one course and late for another, with who cannot eat it; late for all; with no place; on the menu.</summary>
    static System.Collections.Immutable.ImmutableArray<MoreDish> MoreDishes =>
    [
        More("Baked pears with ground almonds", Min(15, 10), CanEat.No, CanEat.Ask),
        More("A braise that takes the whole afternoon", Min(18, 40)),
        More("Bread from a stone oven", null),
        More("Goose", Min(14, 0)) with { IsHere = true },
    ];

    static MoreDish More(string name, Domain.Minute? ready, params CanEat[] answers) => new(
        Guid.CreateVersion7(At(13, 24)), name, IsHere: false,
        [.. SampleKitchen.Meal.Courses.Select(course => (course, ready))],
        [.. answers.Select(answer => new DishForGuest(new Guest(answer == CanEat.No ? "Ada" : "Gran from next door", 1, [], []), SampleKitchen.Meal.Dishes[0], answer, []))]);

    internal sealed class NoAntiforgery : AntiforgeryStateProvider
    {
        public override AntiforgeryRequestToken? GetAntiforgeryToken() => new("token", "__RequestVerificationToken");
    }
}
