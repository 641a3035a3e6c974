using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.DataProtection.Repositories;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;

namespace CookAlong.Web.Data.Postgres;

/// <summary>The keys that seal cookies, in the database, so that every server of the household reads what another sealed.</summary>
sealed class SharedKeys(IDbContextFactory<CookAlongDb> databases) : IXmlRepository, IConfigureOptions<KeyManagementOptions>
{
    const string Prefix = "seal:";

    public void Configure(KeyManagementOptions options) => options.XmlRepository = this;

    public IReadOnlyCollection<XElement> GetAllElements()
    {
        using var db = databases.CreateDbContext();
        return [.. db.Set<HouseKeyRow>().AsNoTracking().Where(row => row.Name.StartsWith(Prefix)).AsEnumerable().Select(row => XElement.Parse(row.Value))];
    }

    public void StoreElement(XElement element, string friendlyName)
    {
        using var db = databases.CreateDbContext();
        db.Add(new HouseKeyRow { Name = Prefix + friendlyName, Value = element.ToString(SaveOptions.DisableFormatting) });
        db.SaveChanges();
    }
}
