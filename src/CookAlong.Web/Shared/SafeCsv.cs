using System.Globalization;
using CsvHelper.Configuration;

namespace CookAlong.Web.Shared;

/// <summary>How tables to take away are written.</summary>
static class SafeCsv
{
    /// <summary>A name like "=1+1" must not become a formula where the table is opened (OWASP ASVS 5.0.0, 1.2.10).</summary>
    public static readonly CsvConfiguration Table = new(CultureInfo.InvariantCulture) { InjectionOptions = InjectionOptions.Escape };
}
