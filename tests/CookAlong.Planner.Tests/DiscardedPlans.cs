using System.Runtime.CompilerServices;

namespace CookAlong.Planner.Tests;

/// <summary>In a kitchen a plan that breaks a rule is discarded without a word; here it fails whatever test made it.</summary>
internal static class DiscardedPlans
{
    /// <summary>Of this name a test's meal may have broken plans.</summary>
    public const string OnPurpose = "Broken on purpose";

    [ModuleInitializer]
    internal static void Watch() => Checking.Discarded = (meal, breaches) =>
    {
        if (meal.Name != OnPurpose)
        {
            throw new InvalidOperationException($"The planner broke its own rules: {string.Join("; ", breaches)}");
        }
    };
}
