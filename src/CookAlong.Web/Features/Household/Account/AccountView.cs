using CookAlong.Web.Data;
using CookAlong.Web.Features.Settings;

namespace CookAlong.Web.Features.Household.Account;

/// <summary>What the account's page shows one host.</summary>
/// <param name="Place">The server's name as this browser calls it.</param>
/// <param name="IsFresh">They signed in a moment ago; only then may they change what opens the house.</param>
/// <param name="Invitation">The address for a new host, shown this once; null = none was just made.</param>
/// <param name="Token">The token that was just made for a program, shown this once; null = none was.</param>
public sealed record AccountView(
    string Place,
    Visitor Visitor,
    bool IsFresh,
    IReadOnlyList<PasskeyRow> Passkeys,
    IReadOnlyList<SessionRow> Sessions,
    IReadOnlyList<HostRow> Hosts,
    IReadOnlyList<ApiTokenRow> Tokens,
    TimeZoneInfo Zone,
    string? Message = null,
    string? Done = null,
    string? Invitation = null,
    string? Token = null)
{
    public string Name => Hosts.SingleOrDefault(host => host.Id == Visitor.Person.Value)?.Name ?? "";

    /// <summary>"Sunday 20 December 2026, 03:10".</summary>
    public string At(long instant) => BackupWords.At(DateTimeOffset.FromUnixTimeMilliseconds(instant), Zone);
}
