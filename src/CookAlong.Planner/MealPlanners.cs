using CookAlong.Domain.Planning;
using CookAlong.Planner.Quick;
using Google.OrTools.Sat;

namespace CookAlong.Planner;

/// <summary>Which planner this machine can run.</summary>
public static class MealPlanners
{
    /// <summary>The solver; where its native part does not load (it is built for a few platforms only), the quick search.</summary>
    public static IMealPlanner ForThisMachine() => SolverRuns() ? new CpSatPlanner() : new QuickPlanner();

    private static bool SolverRuns()
    {
        try
        {
            return new CpModel().Validate().Length == 0;
        }
        catch (Exception missing) when (missing is DllNotFoundException or TypeInitializationException or BadImageFormatException or EntryPointNotFoundException)
        {
            return false;
        }
    }
}
