using CookAlong.Web.Features.Meals.Recipes;
using CookAlong.Web.Security;

namespace CookAlong.Web.Features.Meals;

public static class MealsFeature
{
    public static IServiceCollection AddMeals(this IServiceCollection services, HouseSettings settings)
    {
        services.AddHttpClient(RecipeFetch.Client, RecipeFetch.Introduce)
            .ConfigurePrimaryHttpMessageHandler(() => RecipeFetch.Handler(PublicAddresses.OfThisMachine));
        return services.AddSingleton<MealBook>()
            .AddSingleton(all => new RecipeFetch(all.GetRequiredService<IHttpClientFactory>(), all.GetRequiredService<TimeProvider>(), settings.RecipeSites));
    }
}
