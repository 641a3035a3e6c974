using System.Globalization;
using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using CookAlong.Domain.Planning.Menu;
using CookAlong.Planner;
using Microsoft.AspNetCore.Components;

namespace CookAlong.Web.Features.Meals;

public sealed partial class MenuPanel : IDisposable
{
    readonly CancellationTokenSource left = new();
    MenuLoad load = null!;
    MenuEase? ease;
    List<MenuOffer>? offers;
    bool isAsking;
    Meal? shown;

    [Inject] TimeProvider Time { get; set; } = null!;

    [Parameter, EditorRequired] public required Meal Meal { get; set; }

    /// <summary>A change to make of the meal; the page makes it.</summary>
    [Parameter] public EventCallback<PlanChange> Make { get; set; }

    protected override void OnParametersSet()
    {
        if (ReferenceEquals(shown, Meal))
        {
            return;
        }

        (shown, load, offers, ease) = (Meal, MenuLoad.Of(Meal), null, null);
    }

    async Task AskAsync()
    {
        var (meal, now, stop) = (Meal, Minute.Of(Time.GetUtcNow()), left.Token);
        (isAsking, offers) = (true, null);
        var asItStands = await Task.Run(() => MenuHelp.Plan(meal, now, stop), CancellationToken.None);
        if (stop.IsCancellationRequested || !ReferenceEquals(shown, meal))
        {
            isAsking = false;
            return;
        }

        (offers, ease) = ([], asItStands.Status == PlanStatus.None ? null : MenuEase.Of(meal, asItStands));
        using var each = MenuHelp.Each(meal, asItStands, now, stop).GetEnumerator();
        while (await Task.Run(each.MoveNext, CancellationToken.None) && !stop.IsCancellationRequested && ReferenceEquals(shown, meal))
        {
            offers.Add(each.Current);
            StateHasChanged();
        }

        isAsking = false;
    }

    /// <summary>A column up to the limit's line is 24 high; what is beyond half as much again is cut there.</summary>
    static double Height(int wants, RoomLoad room) => wants == 0 ? 0 : Math.Min(40, 24.0 * wants * room.Quarters.Length / Math.Max(1, room.Has));

    static string Number(double figure) => figure.ToString("0.#", CultureInfo.InvariantCulture);

    public void Dispose()
    {
        left.Cancel();
        left.Dispose();
    }
}
