namespace CookAlong.Web.Features.Dishes;

public static class DishesFeature
{
    public static IServiceCollection AddDishes(this IServiceCollection services) => services
        .AddSingleton<DishBook>()
        .AddSingleton<DemoDishes>();
}
