using System.Collections.Immutable;
using CookAlong.Domain.FoodSafety;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;

namespace CookAlong.Domain.Runs.Rehearsing;

/// <summary>The same run without food: where it begins, and who is in it from the start.</summary>
public static class Rehearsal
{
    /// <summary>What lies further before the last table time is done ahead, so that nobody watches a night pass.</summary>
    const int KitchenDay = 12 * 60;

    /// <summary>Minutes to look round before the first job.</summary>
    const int Before = 1;

    /// <summary>A minute before the first step of the kitchen day.</summary>
    public static DateTimeOffset Begins(Plan plan)
    {
        var day = plan.Courses.Max(course => course.TableTime) - KitchenDay;
        return (plan.Steps.Select(step => step.Start).Where(start => start >= day).DefaultIfEmpty(plan.Steps.Max(step => step.Start)).Min() - Before).Utc;
    }

    /// <summary>The events that begin it, in order, each with its time: everybody of the plan has joined, and what is to be done ahead is done.</summary>
    /// <param name="host">The host who starts it, and which of the meal's helpers they are; null = none.</param>
    /// <param name="newPerson">Ids for the others.</param>
    public static ImmutableArray<(DateTimeOffset At, PersonId By, RunEvent Event)> Start(
        Meal meal, Plan plan, PersonId host, string name, HelperId? hands, Region? authority, Func<PersonId> newPerson)
    {
        var begins = Begins(plan);
        var ahead = plan.Steps.Where(step => step.Start.Utc < begins).SelectMany(step => Ahead(step, begins)).OrderBy(done => done.At).ToList();
        var first = ahead.Count == 0 ? begins : ahead[0].At;
        var joins = meal.Helpers.Where(helper => helper.Id != hands)
            .Select(helper => new RunEvent.PersonJoined(newPerson(), helper.Name, Role.Helper, helper.Id));
        return
        [
            .. Run.Start(meal, plan, host, name, hands, authority).Select(happened => (first, host, happened)),
            .. joins.Select(join => (first, join.Person, (RunEvent)join)),
            .. ahead.Select(done => (done.At, host, done.Event)),
        ];
    }

    static IEnumerable<(DateTimeOffset At, RunEvent Event)> Ahead(PlannedStep step, DateTimeOffset begins)
    {
        yield return (step.Start.Utc, new RunEvent.StepStarted(step.Step));
        if (step.End.Utc <= begins)
        {
            yield return (step.End.Utc, new RunEvent.StepFinished(step.Step));
        }
    }
}
