using CookAlong.Web.Data;
using CookAlong.Web.Data.Archive;
using CookAlong.Web.Features.Live.Outward;
using CookAlong.Web.Tests.Debrief;
using CookAlong.Web.Tests.Live;
using Microsoft.EntityFrameworkCore;

namespace CookAlong.Web.Tests.Data;

/// <summary>A household with something in every table that is taken along, keys of its own, and a second run that goes on.</summary>
public sealed class LivedInHousehold : IAsyncLifetime
{
    CookedLunch lunch = null!;

    internal LiveKitchen Kitchen => lunch.Kitchen;

    public byte[] Archive { get; private set; } = [];

    public async ValueTask InitializeAsync()
    {
        lunch = await CookedLunch.CookAsync();
        await using var db = Kitchen.House.NewDb();
        var (meal, run) = (LiveKitchen.MealRow, Kitchen.Run);
        db.AddRange(
            new AgainRow { Meal = meal, Run = run },
            new AgainTickRow { Meal = meal, Item = "Begin sooner" },
            new OvenTrialRow { Id = run, Oven = "Oven", Dial = 180, Began = 1, Ended = 5, Document = "[[2,20.5],[3,40]]" },
            new OvenFigureRow { Oven = "oven", HeatUpPerMinute = 10.5, CoolDownPerMinute = null, ReadsHighBy = -5, AcceptedAt = 1 },
            new DebriefPhotoRow { Id = run, Run = run, Dish = "goose", Kind = "image/png", Image = Pixel.Png, AddedAt = 1 },
            new LeftoverRow { Meal = meal, Dish = "goose", Portions = 2 },
            new ShoppingTapRow { Meal = meal, Sequence = 1, Command = run, By = run, At = 1, Document = """{"kind":"tick"}""" },
            new DebriefNoteRow { Run = run, Dish = "", Verdict = "more", Note = "Sooner to the table — next time", ChangedAt = 1 },
            new ForgottenRunRow { Run = run },
            new WrittenTimeRow { Run = run, Step = "stuff", Option = -1, Least = 1, Likely = 2, Most = 3 },
            new LearnedTimeRow { Dish = "goose", Text = "stuff", DishName = "Goose", Least = 0.9, Likely = 1.25, Most = 1.5, Meals = 2, AcceptedAt = 1 },
            new SettingsRow { FoodRegion = Domain.FoodSafety.Region.Scotland, Spoons = null });
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        await Kitchen.StartAsync();
        await Kitchen.House.Get<PushKeys>().OfAsync(TestContext.Current.CancellationToken);
        using var to = new MemoryStream();
        await new HouseholdArchive(Kitchen.House.Get<IDbContextFactory<CookAlongDb>>(), Kitchen.House.Clock).ExportAsync(to, TestContext.Current.CancellationToken);
        Archive = to.ToArray();
    }

    public ValueTask DisposeAsync() => lunch.DisposeAsync();
}
