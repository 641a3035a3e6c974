using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Domain.Tests.MealBuilder;

namespace CookAlong.Domain.Tests.Planning;

/// <summary>The nights before a meal, of minutes from the midnight before its day.</summary>
public sealed class NightsTests
{
    const int Day = 24 * 60;

    static Meal Meal(int table, int? notBefore, int? fixedAt = null) => new MealBuilder()
        .Course("main", table).NotBefore(notBefore).Helper("sam").Helper("ida", available: (-Day, table))
        .Dish("goose", "main", dish => dish.Step("salt", 60, step => fixedAt is { } at ? step.StartsAt(at) : step))
        .Build();

    static IEnumerable<(int From, int To)> Of(Meal meal) => Nights.Of(meal).Select(night => (night.From - Zero, night.To - Zero));

    [Fact]
    public void Each_night_that_a_plan_may_reach_is_one_from_ten_to_seven() =>
        Assert.Equal([(-Day - (26 * 60), -Day - (17 * 60)), (-26 * 60, -17 * 60), (-2 * 60, 7 * 60)], Of(Meal(18 * 60, null)));

    [Theory]
    [InlineData(13, -120, 300)] // A lunch at one may have its cook up at five.
    [InlineData(15, -120, 420)]
    public void The_day_itself_begins_eight_hours_before_the_first_table_at_the_latest(int table, int from, int to) =>
        Assert.Equal((from, to), Of(Meal(table * 60, -Day)).Last());

    [Theory]
    [InlineData(6, 21, -180, 360)]
    [InlineData(10, 1, 60, 600)] // To bed after midnight.
    [InlineData(10, 0, 0, 600)]
    public void The_kitchen_says_when_it_is_up(int up, int bed, int from, int to)
    {
        var meal = Meal(20 * 60, -6 * 60);
        Assert.Equal([(from, to)], Of(meal with { Kitchen = meal.Kitchen with { Awake = new(new(up, 0), new(bed, 0)) } }));
    }

    [Fact]
    public void A_supper_at_midnight_has_no_night_before_it() => Assert.Empty(Of(Meal(30, -12 * 60)));

    [Theory]
    [InlineData(-60)]
    [InlineData(240)]
    public void Who_begins_in_the_night_by_the_meals_first_minute_is_up(int notBefore) => Assert.Empty(Of(Meal(18 * 60, notBefore)));

    [Fact]
    public void Somebody_is_up_for_a_step_with_its_fixed_start() =>
        Assert.Equal([(-120, 60), (120, 420)], Of(Meal(18 * 60, -6 * 60, fixedAt: 60)));

    [Fact]
    public void A_night_in_which_the_clocks_go_forward_ends_by_the_wall_clock()
    {
        // Berlin, 28 March 2027.
        var zone = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");
        var table = LocalTime.Resolve(new DateTime(2027, 3, 28, 18, 0, 0), zone)!.Value;
        var meal = Meal(18 * 60, null) with { TimeZone = zone, NotBefore = table - Day };
        var night = Assert.Single(Nights.Of(meal with { Courses = [meal.Courses[0] with { TableTime = table }] }));
        Assert.Equal(8 * 60, night.To - night.From);
    }

    [Fact]
    public void Only_who_is_otherwise_always_there_is_asleep()
    {
        var meal = Nights.Observed(Meal(18 * 60, -Day));
        Assert.False(meal.Helpers[0].IsHere(At(0), At(10)));
        Assert.True(meal.Helpers[0].IsHere(At(-130), At(-120)));
        Assert.True(meal.Helpers[0].IsHere(At(420), At(430)));
        Assert.True(meal.Helpers[1].IsHere(At(0), At(10)));
    }
}
