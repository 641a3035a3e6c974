using System.IO.Compression;
using System.Text;
using CookAlong.Web.Data;
using CookAlong.Web.Data.Archive;
using CookAlong.Web.Tests.Live;
using CookAlong.Web.Tests.Meals;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Time.Testing;

namespace CookAlong.Web.Tests.Data;

public sealed class HouseholdArchiveTests(LivedInHousehold lived) : IClassFixture<LivedInHousehold>, IDisposable
{
    static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    readonly HouseholdFile other = new();
    readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 12, 20, 9, 0, 0, TimeSpan.Zero));

    public void Dispose() => other.Dispose();

    HouseholdArchive Other => new(other, clock);

    static async Task<byte[]> ExportAsync(HouseholdArchive from)
    {
        using var to = new MemoryStream();
        await from.ExportAsync(to, Stop);
        return to.ToArray();
    }

    static SortedDictionary<string, string> Texts(byte[] archive)
    {
        using var zip = new ZipArchive(new MemoryStream(archive));
        var texts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var entry in zip.Entries)
        {
            using var reader = new StreamReader(entry.Open(), Encoding.UTF8);
            texts.Add(entry.FullName, reader.ReadToEnd());
        }

        return texts;
    }

    static byte[] Zip(IEnumerable<KeyValuePair<string, string>> texts)
    {
        using var to = new MemoryStream();
        using (var zip = new ZipArchive(to, ZipArchiveMode.Create))
        {
            foreach (var (name, text) in texts)
            {
                using var writer = new StreamWriter(zip.CreateEntry(name).Open());
                writer.Write(text);
            }
        }

        return to.ToArray();
    }

    [Fact]
    public async Task What_goes_out_comes_in_whole_and_goes_out_the_same()
    {
        var archive = lived.Archive;

        var imported = await Other.ImportAsync(new MemoryStream(archive), Stop);

        await using var from = lived.Kitchen.House.NewDb();
        Assert.Empty(imported.Bad);
        Assert.Equal((await from.Meals.CountAsync(Stop), await from.Dishes.CountAsync(Stop), 1), (imported.Meals, imported.Dishes, imported.Runs));
        var (first, second) = (Texts(archive), Texts(await ExportAsync(Other)));
        Assert.All(first.Keys.Where(name => name.StartsWith("tables/", StringComparison.Ordinal)), name => Assert.NotEqual("[]", first[name]));
        first.Remove("manifest.json");
        second.Remove("manifest.json");
        Assert.Equal(Lines(first), Lines(second));
        await using var to = other.CreateDbContext();
        var meal = await from.Meals.AsNoTracking().SingleAsync(row => row.Id == LiveKitchen.MealRow, Stop);
        Assert.Equal(meal.Document, (await to.Meals.SingleAsync(row => row.Id == meal.Id, Stop)).Document);

        // A run is played back there as it was here.
        var id = new Domain.Runs.RunId(lived.Kitchen.Run);
        Assert.Equal((await lived.Kitchen.LoadAsync()).Ended is not null, (await new EventLog(other).LoadAsync(id, Stop))!.Ended is not null);

        // Rows may stand in another order.
        static IEnumerable<string> Lines(SortedDictionary<string, string> texts) =>
            texts.Select(text => $"{text.Key} {string.Join('\n', text.Value.Split('\n').Select(line => line.TrimEnd(',')).Order(StringComparer.Ordinal))}");
    }

    [Fact]
    public async Task What_is_there_already_stays_as_it_is()
    {
        var archive = lived.Archive;
        await Other.ImportAsync(new MemoryStream(archive), Stop);
        await using (var db = other.CreateDbContext())
        {
            await db.Meals.ExecuteUpdateAsync(set => set.SetProperty(row => row.Name, "Ours"), Stop);
            await db.Dishes.Take(1).ExecuteDeleteAsync(Stop);
        }

        var again = await Other.ImportAsync(new MemoryStream(archive), Stop);

        Assert.Equal((0, 1, 0, 0), (again.Meals, again.Dishes, again.Runs, again.Bad.Count));
        await using var after = other.CreateDbContext();
        Assert.All(await after.Meals.ToListAsync(Stop), row => Assert.Equal("Ours", row.Name));
        Assert.Equal(await after.Dishes.CountAsync(Stop), await after.DishVersions.Select(row => row.Dish).Distinct().CountAsync(Stop));
    }

    [Fact]
    public async Task Every_table_is_taken_along_or_left_for_a_reason_and_no_secret_is()
    {
        // They belong to this server and its devices, or are secrets.
        Type[] left = [
            typeof(HostRow), typeof(SessionRow), typeof(JoinCodeRow), typeof(CallRow), typeof(DeliveryRow), typeof(PushSubscriptionRow), typeof(HouseKeyRow),
            typeof(PasskeyRow), typeof(PasskeyChallengeRow), typeof(HostInvitationRow), typeof(AuditRow), typeof(ApiTokenRow)];
        await using var db = other.CreateDbContext();
        var taken = typeof(HouseholdRows).GetProperties().Select(property => property.PropertyType.GetGenericArguments()[0]);
        Assert.Equal(db.Model.GetEntityTypes().Select(type => type.ClrType.Name).Order(), taken.Concat(left).Select(type => type.Name).Order());

        await using var from = lived.Kitchen.House.NewDb();
        var all = string.Join('\n', Texts(lived.Archive).Values);
        Assert.DoesNotContain((await from.Hosts.SingleAsync(Stop)).PasswordHash, all, StringComparison.Ordinal);
        Assert.DoesNotContain((await from.Set<HouseKeyRow>().SingleAsync(Stop)).Value[20..60], all, StringComparison.Ordinal);
        Assert.All(await from.Sessions.ToListAsync(Stop), session => Assert.DoesNotContain(session.Id.ToString(), all, StringComparison.Ordinal));
    }

    public static TheoryData<string, string, string?, string> Bad => new()
    {
        { "tables/runs.json", "tables/runs.json", null, "missing" },
        { "manifest.json", "manifest.json", """{"format":"cookalong-household/9","made":"2026-12-20T09:00:00Z","schema":"x","meals":0,"dishes":0,"runs":0}""", "cookalong-household/9" },
        { "meals/", "meals/", "{}", "" },
        { "meals/", "tables/meals.json", null, "is missing" },
        { "runs/", "runs/", """[{"run":1}]""", "Row 1" },
        { "runs/", "runs/", "[]", "Nothing of the run is there" },
        { "dishes/", "dishes/", "[", "" },
        { "tables/settings.json", "tables/settings.json", """[{"id":7}]""", "the id 1" },
        { "tables/learnedtimes.json", "tables/learnedtimes.json", """[{"dish":"a","text":"b","dishName":"A","least":2,"likely":1,"most":3,"meals":1,"acceptedAt":1}]""", "not in order" },
        { "tables/forgottenruns.json", "tables/forgottenruns.json", """[{"run":"00000000-0000-0000-0000-000000000001"},{"run":"00000000-0000-0000-0000-000000000001"}]""", "twice" },
        { "../../etc/passwd", "../../etc/passwd", "x", "No export writes" },
        { "meals/../x.json", "meals/../x.json", "x", "No export writes" },
    };

    /// <param name="spoil">The first entry whose name begins so gets another text, or goes; one that is not there is added.</param>
    [Theory]
    [MemberData(nameof(Bad))]
    public async Task A_bad_entry_is_named_and_nothing_is_added(string spoil, string named, string? text, string says)
    {
        var texts = Texts(lived.Archive);
        var name = texts.Keys.FirstOrDefault(one => one.StartsWith(spoil, StringComparison.Ordinal)) ?? spoil;
        texts.Remove(name);
        if (text is not null)
        {
            texts.Add(name, text);
        }

        var imported = await Other.ImportAsync(new MemoryStream(Zip(texts)), Stop);

        Assert.Contains(imported.Bad, bad => bad.Entry.StartsWith(named, StringComparison.Ordinal) && bad.Problem.Contains(says, StringComparison.Ordinal));
        await using var db = other.CreateDbContext();
        Assert.False(await db.Meals.AnyAsync(Stop) || await db.Dishes.AnyAsync(Stop) || await db.Set<RunRow>().AnyAsync(Stop));
    }

    [Fact]
    public async Task An_event_that_could_not_have_happened_is_named_with_its_number()
    {
        var texts = Texts(lived.Archive);
        var run = texts.Keys.Single(name => name.StartsWith("runs/", StringComparison.Ordinal));
        texts[run] = texts[run].Replace("\"stepFinished/1\"", "\"stepMelted/1\"", StringComparison.Ordinal);
        var bad = Assert.Single((await Other.ImportAsync(new MemoryStream(Zip(texts)), Stop)).Bad);
        Assert.Equal(run, bad.Entry);
        Assert.Matches(@"^Event \d+ \(stepMelted/1\): ", bad.Problem);
    }

    [Theory]
    [InlineData("not a zip at all", 0)]
    [InlineData("bomb", 17 << 20)]
    [InlineData("many", ArchiveEntries.MostEntries + 1)]
    public async Task A_file_that_is_no_archive_or_swells_is_refused(string kind, int size)
    {
        var bytes = kind switch
        {
            "bomb" => Zip([new("manifest.json", new string('0', size))]),
            "many" => Zip(Enumerable.Range(0, size).Select(index => new KeyValuePair<string, string>($"x{index}", ""))),
            _ => Encoding.UTF8.GetBytes(kind),
        };

        var bad = Assert.Single((await Other.ImportAsync(new MemoryStream(bytes), Stop)).Bad);

        Assert.Contains(kind switch { "bomb" => "larger than 16 MB", "many" => "at most 50000", _ => "not a zip file" }, bad.Problem, StringComparison.Ordinal);
    }
}
