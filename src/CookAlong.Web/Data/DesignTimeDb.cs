using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace CookAlong.Web.Data;

/// <summary>For <c>dotnet ef migrations add</c> only: the tables' shape without starting a server.</summary>
sealed class DesignTimeDb : IDesignTimeDbContextFactory<CookAlongDb>
{
    public CookAlongDb CreateDbContext(string[] args)
    {
        var options = new DbContextOptionsBuilder<CookAlongDb>();
        HouseholdData.UseFile(options, "design-time.db");
        return new CookAlongDb(options.Options);
    }
}
