using CookAlong.Web.Features.Meals.Recipes;
using CookAlong.Web.Security;

namespace CookAlong.Web.Features.Meals;

public static class MealsFeature
{
    public static IServiceCollection AddMeals(this IServiceCollection services)
    {
        services.AddHttpClient(RecipeFetch.Client, RecipeFetch.Introduce)
            .ConfigurePrimaryHttpMessageHandler(() => RecipeFetch.Handler(PublicAddresses.OfThisMachine));
        return services.AddSingleton<MealBook>().AddSingleton<RecipeFetch>();
    }
}
