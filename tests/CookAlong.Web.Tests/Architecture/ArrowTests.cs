using ArchUnitNET.Domain;
using ArchUnitNET.Fluent;
using ArchUnitNET.Loader;
using CookAlong.Domain.Meals;
using CookAlong.Intake;
using static ArchUnitNET.Fluent.ArchRuleDefinition;
using Assembly = System.Reflection.Assembly;

namespace CookAlong.Web.Tests.Architecture;

/// <summary>Domain &lt;- Planner &lt;- Web and Domain &lt;- Intake &lt;- Web, and no other arrows.</summary>
public sealed class ArrowTests
{
    static readonly Assembly Domain = typeof(Meal).Assembly;
    static readonly Assembly Planner = Assembly.Load("CookAlong.Planner");
    static readonly Assembly Intake = typeof(FileError).Assembly;
    static readonly Assembly Web = typeof(HouseSettings).Assembly;

    [Theory]
    [InlineData("CookAlong.Domain", new string[0])]
    [InlineData("CookAlong.Planner", new[] { "CookAlong.Domain" })]
    [InlineData("CookAlong.Intake", new[] { "CookAlong.Domain" })]
    public void A_room_knows_only_the_rooms_its_arrow_points_to(string room, string[] known)
    {
        var assembly = Assembly.Load(room);
        Assert.NotEmpty(assembly.GetTypes());

        var own = assembly.GetReferencedAssemblies().Select(one => one.Name!).Where(name => name.StartsWith("CookAlong.", StringComparison.Ordinal));

        Assert.Subset(known.ToHashSet(), own.ToHashSet());
    }

    [Fact]
    public void The_domain_uses_nothing_but_the_base_library()
    {
        var used = Domain.GetReferencedAssemblies().Select(one => one.Name!).ToArray();
        Assert.NotEmpty(used);

        Assert.All(used, name => Assert.StartsWith("System.", name, StringComparison.Ordinal));
    }

    [Fact]
    public void The_domain_asks_nobody_for_the_time_or_for_chance()
    {
        var house = new ArchLoader().LoadAssemblies(Domain, typeof(TimeProvider).Assembly).Build();
        var domain = Types().That().ResideInAssembly(Domain);
        Assert.NotEmpty(domain.GetObjects(house));

        Holds(domain.Should().NotDependOnAny(typeof(TimeProvider)), house);
        Holds(
            MethodMembers().That().AreDeclaredIn(domain).Should().NotCallAny(
                MethodMembers().That().HaveFullNameMatching(@"System\.(DateTime|DateTimeOffset)::get_(Now|UtcNow|Today)\(|System\.Guid::NewGuid\(|System\.Random::get_Shared\(")),
            house);
    }

    [Fact]
    public void Only_the_edge_touches_files_the_network_and_the_database()
    {
        Assembly[] inner = [Domain, Planner, Intake];
        string[] edge = ["System.Net.Http", "System.Net.Sockets", "Microsoft.EntityFrameworkCore", "Microsoft.Data.Sqlite", "Microsoft.AspNetCore"];

        Assert.All(inner, room => Assert.DoesNotContain(
            room.GetReferencedAssemblies(), one => edge.Any(name => one.Name!.StartsWith(name, StringComparison.Ordinal))));
        Assert.Contains(Web.GetReferencedAssemblies(), one => one.Name == "Microsoft.EntityFrameworkCore");
    }

    static void Holds(IArchRule rule, ArchUnitNET.Domain.Architecture house) =>
        Assert.True(rule.HasNoViolations(house), string.Join('\n', rule.Evaluate(house).Where(one => !one.Passed).Select(one => one.Description)));
}
