using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;

namespace CookAlong.Domain.Runs;

public sealed partial record Run
{
    /// <summary>
    /// What a tap does. Pure: the same run, tap and time give the same answer, and nothing changes until the events are
    /// applied. A tap that had its effect already is accepted again and has no second one.
    /// </summary>
    /// <remarks>
    /// Who may be whom is the edge's to check: a <see cref="RunCommand.Join"/> comes from a session or a join code,
    /// never from a screen's own wish.
    /// </remarks>
    public Decision Decide(Tap tap, DateTimeOffset now)
    {
        if (Commands.Contains(tap.Id))
        {
            return Decision.Nothing;
        }

        if (Ended is not null)
        {
            return new Refusal.RunOver();
        }

        if (tap.Command is RunCommand.Join join)
        {
            return Admit(join);
        }

        if (tap.By is not { } by)
        {
            return DecideByItself(tap.Command, now);
        }

        if (!People.TryGetValue(by, out var who))
        {
            return new Refusal.NotInThisRun();
        }

        var needed = RoleFor(tap.Command);
        return who.Role < needed ? new Refusal.NotYourRole(needed) : Decide(tap.Command, who, now);
    }

    Decision Decide(RunCommand command, RunPerson who, DateTimeOffset now) => command switch
    {
        RunCommand.PutOut c => PutOut(c.Person),
        RunCommand.StartStep c => OnStep(c.Step, step => Start(step, who)),
        RunCommand.FinishStep c => OnStep(c.Step, step => Finish(step, who)),
        RunCommand.TakeBack c => OnStep(c.Step, step => TakeBack(step, who)),
        RunCommand.ClaimStep c => OnStep(c.Step, step => Claim(step, who)),
        RunCommand.LetGoStep c => OnStep(c.Step, step => LetGo(step, who)),
        RunCommand.GiveStep c => OnStep(c.Step, step => Give(step, c.To, who)),
        RunCommand.TakeOver c => OnStep(c.Step, step => TakeOver(step, who)),
        RunCommand.TakeBackGiving c => OnStep(c.Step, step => TakeBackGiving(step, who)),
        RunCommand.KeepStep c => OnStep(c.Step, step => Keep(step, who, now)),
        RunCommand.AddTime c => OnStep(c.Step, step => AddTime(step, c.Minutes, who)),
        RunCommand.TakeBackTime c => OnStep(c.Step, step => TakeBackTime(step, c.Minutes, who)),
        RunCommand.FinishTend c => OnStep(c.Step, step => FinishTend(step, c.Tend, c.Turn, who)),
        RunCommand.TakeBackTend c => OnStep(c.Step, step => TakeBackTend(step, c.Tend, c.Turn, who)),
        RunCommand.ReadCore c => OnStep(c.Step, step => ReadCore(step, c.Celsius, c.At, who, now)),
        RunCommand.TakeBackReading c => OnStep(c.Step, step => TakeBackReading(step, who)),
        RunCommand.VouchFor c => OnStep(c.Step, step => VouchFor(step, c.Check)),
        RunCommand.TakeBackWord c => OnStep(c.Step, step => StateOf(step.Id).Vouched is null ? new Refusal.NothingToTakeBack() : new RunEvent.CoreWordTakenBack(step.Id)),
        RunCommand.SetFoil c => OnStep(c.Step, step => SetFoil(step, c.IsOn, who)),
        RunCommand.TakeBackFoil c => OnStep(c.Step, step => TakeBackFoil(step, who)),
        RunCommand.CoverRest c => OnStep(c.Step, step => Cover(step, c, who, now)),
        RunCommand.TakeBackCover c => OnStep(c.Step, step => TakeBackCover(step, who)),
        RunCommand.Acknowledge c => Acknowledge(c.Call, now),
        RunCommand.TakeBackAnswer c => TakeBackAnswer(c.Call, now),
        RunCommand.HoldEverything => Pause is null ? new RunEvent.KitchenPaused(After: null) : new Refusal.Paused(),
        RunCommand.GoOn => Pause is null ? new Refusal.NotPaused() : new RunEvent.KitchenWentOn(),
        RunCommand.AcceptPlan c => Accept(c),
        RunCommand.TakeBackPlan => TakeBackPlan(),
        RunCommand.SetPlanRule c => SetPlanRule(c.Minutes),
        RunCommand.HelperLeaves c => Leave(c.Helper, c.InMinutes, now),
        RunCommand.HelperStays c => Leaving.ContainsKey(c.Helper) ? new RunEvent.HelperStayed(c.Helper) : new Refusal.NothingToTakeBack(),
        RunCommand.AddDish c => Add(c.Dish, now),
        RunCommand.DropDish c => Drop(c.Dish),
        RunCommand.BringBackDish c => LeftOut.ContainsKey(c.Dish) ? new RunEvent.DishBroughtBack(c.Dish) : new Refusal.NothingToTakeBack(),
        RunCommand.MoveTable c => MoveTable(c.Course, c.Minutes, now),
        RunCommand.TakeBackTable c => TakeBackTable(c.Course, now),
        RunCommand.OvenStillHeats c => StillHeats(c.Oven, c.Minutes, now),
        RunCommand.OvenOnTime c => SlowOvens.ContainsKey(c.Oven) ? new RunEvent.OvenCaughtUp(c.Oven) : new Refusal.NothingToTakeBack(),
        RunCommand.ReadOven c => ReadOven(c.Oven, c.Celsius, c.At, now),
        RunCommand.TakeBackOvenReading c => TakeBackOvenReading(c.Oven),
        RunCommand.FreeStep => new Refusal.NotYourRole(Role.Host),
        RunCommand.EndRun => new RunEvent.RunEnded(),
        _ => throw new UnreachableException($"No decision is written for {command.GetType().Name}."),
    };

    /// <summary>The least role that may ask for it.</summary>
    public static Role RoleFor(RunCommand command) => command switch
    {
        RunCommand.PutOut or RunCommand.TakeOver or RunCommand.FreeStep or RunCommand.HoldEverything or RunCommand.GoOn or RunCommand.AcceptPlan
            or RunCommand.TakeBackPlan or RunCommand.SetPlanRule or RunCommand.HelperLeaves or RunCommand.HelperStays
            or RunCommand.AddDish or RunCommand.DropDish or RunCommand.BringBackDish or RunCommand.MoveTable or RunCommand.TakeBackTable
            or RunCommand.OvenStillHeats or RunCommand.OvenOnTime
            or RunCommand.VouchFor or RunCommand.TakeBackWord or RunCommand.EndRun => Role.Host,
        RunCommand.StartStep or RunCommand.FinishStep or RunCommand.TakeBack or RunCommand.ClaimStep or RunCommand.LetGoStep
            or RunCommand.GiveStep or RunCommand.TakeBackGiving or RunCommand.KeepStep or RunCommand.AddTime or RunCommand.TakeBackTime
            or RunCommand.FinishTend or RunCommand.TakeBackTend or RunCommand.ReadCore or RunCommand.TakeBackReading
            or RunCommand.CoverRest or RunCommand.TakeBackCover or RunCommand.SetFoil or RunCommand.ReadOven or RunCommand.TakeBackOvenReading or RunCommand.TakeBackFoil or RunCommand.Acknowledge or RunCommand.TakeBackAnswer => Role.Helper,
        RunCommand.Join => Role.Watcher,
        _ => throw new UnreachableException($"Nobody has said who may ask for {command.GetType().Name}."),
    };

    /// <summary>A day after its last table nobody cooks it any more, though nobody said so.</summary>
    public bool IsLongOver(DateTimeOffset now) => Ended is null && now - Meal.Courses.Max(course => Minute.Later(course.TableTime, Plan.TableTime(course.Id))).Utc > TimeSpan.FromDays(1);

    /// <summary>What the kitchen does without anybody's tap.</summary>
    Decision DecideByItself(RunCommand command, DateTimeOffset now) => command switch
    {
        RunCommand.FreeStep c => OnStep(c.Step, step => Free(step, c.From, c.IsSilent, now)),
        RunCommand.EndRun when IsLongOver(now) => new RunEvent.RunEnded(),
        RunCommand.AcceptPlan c => TakesByItself(c.Plan) ? Accept(c) : new Refusal.NotYourRole(Role.Host),
        _ => new Refusal.NotInThisRun(),
    };

    Decision Admit(RunCommand.Join join)
    {
        if (join.As is { } wanted)
        {
            if (Helpers.All(helper => helper.Id != wanted))
            {
                return new Refusal.UnknownHelper(wanted);
            }

            if (PersonOf(wanted) is { } other && other.Person != join.Person)
            {
                return new Refusal.HelperTaken(wanted);
            }
        }

        var before = People.GetValueOrDefault(join.Person);
        var hands = join.Role switch
        {
            Role.Watcher => null,
            Role.Helper => join.As ?? before?.Helper ?? WalkIn(),
            Role.Host => join.As ?? before?.Helper,
            _ => throw new UnreachableException($"Nobody joins as {join.Role}."),
        };
        return before == new RunPerson(join.Person, join.Name, join.Role, hands)
            ? Decision.Nothing
            : new RunEvent.PersonJoined(join.Person, join.Name, join.Role, hands);
    }

    /// <summary>The id of a pair of hands nobody planned for; numbers are never used twice.</summary>
    HelperId WalkIn()
    {
        for (var number = 1; ; number++)
        {
            var id = new HelperId(string.Create(CultureInfo.InvariantCulture, $"walk-in-{number}"));
            if (Helpers.All(helper => helper.Id != id))
            {
                return id;
            }
        }
    }

    Decision PutOut(PersonId person) =>
        !People.TryGetValue(person, out var who) ? new Refusal.NotInThisRun()
        : who.Role == Role.Host ? new Refusal.HostStays()
        : new RunEvent.PersonPutOut(person);

    /// <summary>A call whose matter is settled may still be acknowledged by a screen that has not heard of it; that changes nothing.</summary>
    Decision Acknowledge(CallId call, DateTimeOffset now) =>
        Acknowledged.ContainsKey(call) ? Decision.Nothing
        : CallSchedule.Of(this, now).Any(one => one.Id == call) ? new RunEvent.CallAcknowledged(call)
        : CallSchedule.IsSettled(this, call) ? Decision.Nothing
        : new Refusal.UnknownCall(call);
}
