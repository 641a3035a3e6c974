using CookAlong.Domain.Kitchens;

namespace CookAlong.Web.Features.Live.Runs;

/// <summary>Whose hands a name stands for.</summary>
static class Names
{
    /// <summary>The helper of that name, in any case; null = none.</summary>
    public static Helper? Called(this IEnumerable<Helper> helpers, string name) =>
        helpers.FirstOrDefault(helper => string.Equals(helper.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>
    /// A host is the grown-up of their name. Under another name they are the meal's only grown-up where there is just
    /// one, and otherwise nobody the plan knows: whoever is planned for must find their own name free.
    /// </summary>
    public static Helper? OfHost(this IEnumerable<Helper> helpers, string name)
    {
        var grownUps = helpers.Where(helper => !helper.IsChild).ToList();
        return grownUps.Called(name) ?? (grownUps.Count == 1 ? grownUps[0] : null);
    }
}
