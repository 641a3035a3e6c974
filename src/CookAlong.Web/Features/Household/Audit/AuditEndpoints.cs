using System.Globalization;
using System.Text;
using CookAlong.Web.Data;
using CookAlong.Web.Shared;
using CsvHelper;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Household.Audit;

/// <summary>The household's log, for its hosts: a page at a time, or all of it as a table.</summary>
static class AuditEndpoints
{
    const int APage = 100;

    public static void MapAudit(this RouteGroupBuilder account)
    {
        account.MapGet("/log", async (AuditLog log, long? before, CancellationToken stop) =>
        {
            var rows = await log.ReadAsync(before, APage + 1, stop);
            return new RazorComponentResult<AuditPage>(new { Rows = rows.Take(APage).ToArray(), Older = rows.Count > APage ? rows[APage - 1].Id : (long?)null });
        });
        account.MapGet("/log.csv", async (HttpContext http, AuditLog log, CancellationToken stop) =>
        {
            var table = Csv(await log.ReadAsync(before: null, int.MaxValue, stop));
            await log.WriteAsync(http, AuditDeed.Exported, "this log");
            return Results.File(table, "text/csv; charset=utf-8", "household-log.csv");
        }).WithMetadata(new Heavy());
    }

    static byte[] Csv(IReadOnlyList<AuditRow> rows)
    {
        using var bytes = new MemoryStream();
        using (var writer = new StreamWriter(bytes, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true)))
        using (var csv = new CsvWriter(writer, SafeCsv.Table))
        {
            csv.WriteRecords(rows.Select(row => new
            {
                Utc = DateTimeOffset.FromUnixTimeMilliseconds(row.At).ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
                Deed = row.Deed.ToString(),
                row.Who,
                row.About,
                row.Address,
            }));
        }

        return bytes.ToArray();
    }
}
