namespace CookAlong.Web.Features.Settings;

public static class SettingsFeature
{
    public static IServiceCollection AddSettings(this IServiceCollection services) => services.AddSingleton<HouseholdRegion>();
}
