using CookAlong.Domain.FoodSafety;

namespace CookAlong.Domain.Tests.FoodSafety;

public sealed class LethalityTests
{
    static readonly DateTimeOffset Start = new(2026, 2, 7, 12, 0, 0, TimeSpan.Zero);

    static readonly Source Anybody = new("", "", null, "");

    [Fact]
    public void Kept_at_a_published_temperature_for_the_published_time_it_is_done() => Assert.All(PublishedRows.Kill, row =>
    {
        var table = Assert.Single(KillTables.All, table => table.Id == row.Id);
        var celsius = row.Id == "uk-equivalents" ? row.Degrees : (row.Degrees - 32) / 1.8;
        Assert.Equal(row.Seconds, table.Seconds(celsius)!.Value, 1e-6);
        Assert.Equal(1, Held(celsius, row.Seconds, table).Share, 1e-6);
        Assert.True(row.Seconds == 0 || Held(celsius, .98 * row.Seconds, table).DoneAt is null);
    });

    [Fact]
    public void No_row_of_any_fat_asks_for_longer_than_the_table_of_poultry()
    {
        var file = Path.Combine(Environment.GetEnvironmentVariable("COOKALONG_REFERENCE") ?? "", "fsis-poultry-7log-salmonella.csv");
        Assert.SkipUnless(File.Exists(file), "COOKALONG_REFERENCE names no folder with fsis-poultry-7log-salmonella.csv.");
        var rows = File.ReadLines(file).Skip(1).Select(line => Array.ConvertAll(line.Split(','), cell => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture))).ToList();
        Assert.Equal(360, rows.Count);
        Assert.All(rows, row =>
        {
            Assert.True(KillTables.Chicken.Seconds((row[1] - 32) / 1.8) >= row[3]);
            Assert.True(KillTables.Turkey.Seconds((row[1] - 32) / 1.8) >= row[5]);
        });
    }

    [Fact]
    public void Every_row_of_the_table_of_whole_meat_is_met()
    {
        var file = Path.Combine(Environment.GetEnvironmentVariable("COOKALONG_REFERENCE") ?? "", "fsis-beef-6p5-7log-salmonella.csv");
        Assert.SkipUnless(File.Exists(file), "COOKALONG_REFERENCE names no folder with fsis-beef-6p5-7log-salmonella.csv.");
        var rows = File.ReadLines(file).Skip(1).Select(line => Array.ConvertAll(line.Split(','), cell => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture))).ToList();
        Assert.Equal(31, rows.Count);
        Assert.All(rows, row =>
        {
            // Between two rows that the tables here have, never shorter than the row printed there.
            var celsius = (row[0] - 32) / 1.8;
            Assert.InRange(KillTables.WholeMeatAt65.Seconds(celsius)!.Value, row[2] - 1e-6, double.MaxValue);
            Assert.InRange(KillTables.WholeMeat.Seconds(celsius)!.Value, row[3] - 1e-6, double.MaxValue);
        });
    }

    [Theory]
    [InlineData(60)]
    [InlineData(65)]
    public void A_z_of_ten_is_refused(double celsius)
    {
        // It gives 20 minutes at 60 °C and 6.3 at 65 where the UK asks for 45 and 10.
        Assert.True(120 * Math.Pow(10, (70 - celsius) / 10) < KillTables.UnitedKingdom.Seconds(celsius) / 1.5);
        var unsafe_ = Assert.IsType<ZAnswer.Unsafe>(ZCurve.Of(70, 120, 10, Anybody, KillTables.UnitedKingdom));
        Assert.Equal((60, 2700), (unsafe_.Celsius, unsafe_.Published));
        Assert.Equal(1200, unsafe_.Seconds, 1);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-7.5)]
    [InlineData(double.NaN)]
    public void No_z_is_no_curve(double z) => Assert.IsType<ZAnswer.NoCurve>(ZCurve.Of(70, 120, z, Anybody, KillTables.UnitedKingdom));

    [Theory]
    [InlineData(60, 2585.3)]
    [InlineData(65, 557.0)]
    [InlineData(70, 120)]
    [InlineData(75, 25.9)]
    [InlineData(80, 5.6)]
    public void A_z_of_seven_and_a_half_makes_the_UKs_equivalents(double celsius, double seconds)
    {
        // Own arithmetic; the Food Standards Agency's rows are these, rounded up.
        Assert.Equal(seconds, ZCurve.Listeria.At(celsius), 0.1);
        Assert.InRange(KillTables.UnitedKingdom.Seconds(celsius)!.Value / seconds, 1, 1.17);
    }

    [Fact]
    public void Below_the_lowest_row_nothing_counts()
    {
        Assert.Equal(0, Held(59.9, 36_000, KillTables.UnitedKingdom).Share);
        Assert.Null(KillTables.Turkey.Seconds(57));
    }

    [Fact]
    public void Hotter_is_never_longer() => Assert.All(KillTables.All, table =>
    {
        var seconds = Enumerable.Range(500, 500).Select(tenth => table.Seconds(tenth / 10.0)).Where(one => one is not null).ToArray();
        Assert.Equal(seconds.OrderDescending(), seconds);
    });

    [Fact]
    public void A_rise_adds_up_and_counts_the_cooler_end_of_each_span()
    {
        // 10 minutes at 65 are all of it; 1 at 70 is half.
        (DateTimeOffset, double)[] core = [(Start, 64.9), (Start.AddMinutes(1), 65), (Start.AddMinutes(6), 70), (Start.AddMinutes(7), 70)];
        var done = Lethality.Of(core, KillTables.UnitedKingdom);
        Assert.InRange(done.Share, 1, 1.1);
        Assert.Equal(6 * done.Share, done.Logs, 1e-9);
        Assert.InRange(done.DoneAt!.Value, Start.AddMinutes(6.7), Start.AddMinutes(7));
    }

    [Fact]
    public void What_nobody_saw_does_not_count()
    {
        Assert.Equal(0, Lethality.Of([(Start, 70), (Start.AddHours(1), 70)], KillTables.UnitedKingdom).Share);
        Assert.Equal(0, Lethality.Of([(Start, 70), (Start, 70), (Start.AddMinutes(-5), 70)], KillTables.UnitedKingdom).Share);
        Assert.Equal(0, Lethality.Of([(Start, double.NaN), (Start.AddMinutes(5), 70)], KillTables.UnitedKingdom).Share);
    }

    [Fact]
    public void Of_two_tables_the_slower_decides()
    {
        var tables = Assert.IsType<Published<System.Collections.Immutable.ImmutableArray<KillTable>>.Is>(KillTables.Of(Region.UnitedStates, Food.WholePoultry)).Limit;
        Assert.Equal(["fsis-chicken", "fsis-turkey"], tables.Select(table => table.Id));
        Assert.Equal("fsis-turkey", Lethality.Of([(Start, 68), (Start.AddMinutes(1), 68)], tables).Table.Id);
        Assert.Equal("fsis-chicken", Lethality.Of([(Start, 60), (Start.AddMinutes(1), 60)], tables).Table.Id);
    }

    static Lethality Held(double celsius, double seconds, KillTable table) =>
        Lethality.Of([.. Enumerable.Range(0, 101).Select(part => (Start.AddSeconds(Math.Max(1e-3, seconds) * part / 100), celsius))], table);
}
