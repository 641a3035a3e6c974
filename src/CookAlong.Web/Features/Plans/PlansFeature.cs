using CookAlong.Domain.Planning;
using CookAlong.Planner;

namespace CookAlong.Web.Features.Plans;

public static class PlansFeature
{
    public static IServiceCollection AddPlanning(this IServiceCollection services) => services
        .AddSingleton<IMealPlanner>(_ => MealPlanners.ForThisMachine())
        .AddSingleton<PlanningDesk>()
        .AddHostedService<WarmSolver>();
}
