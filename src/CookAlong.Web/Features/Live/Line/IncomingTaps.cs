using System.Diagnostics;
using CookAlong.Domain.Runs;
using CookAlong.Web.Data;
using CookAlong.Web.Features.Household;
using CookAlong.Web.Features.Household.Audit;
using CookAlong.Web.Features.Live.More;
using CookAlong.Web.Features.Live.Runs;
using CookAlong.Web.Features.Live.Wording;
using CookAlong.Web.Features.Telemetry;
using Microsoft.AspNetCore.SignalR;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>Takes what screens send, over the socket or by a plain post, and answers in words.</summary>
public sealed class IncomingTaps(LiveRuns runs, ReplanOffers offers, Sessions sessions, OpenScreens open, MoreDishes more, AuditLog audit, IHubContext<LiveHub> hub, Boards boards, TimeProvider time)
{
    /// <summary>The visitor as a person of the run. A host of the household is let in; anybody else must have joined.</summary>
    public async Task<RunPerson?> AdmitAsync(LiveRun live, Visitor visitor, string? name)
    {
        if (!live.Current.People.ContainsKey(visitor.Person) && visitor.IsHost && live.Current.Ended is null)
        {
            // A second host gets the hands of their name, unless somebody else has them already.
            var hands = name is null ? null : live.Current.Helpers.Where(helper => !helper.IsChild && live.Current.PersonOf(helper.Id) is null).Called(name);
            var join = new RunCommand.Join(visitor.Person, name ?? "Host", Role.Host, hands?.Id);
            await live.SendAsync(new Tap(new CommandId(Guid.CreateVersion7(time.GetUtcNow())), visitor.Person, join));
        }

        return live.Current.People.GetValueOrDefault(visitor.Person) ?? (visitor.IsHost ? Onlooker(visitor, name) : null);
    }

    public async Task<TapAnswer> SendAsync(RunId id, Visitor visitor, TapRequest tap)
    {
        if (!visitor.MaySee(id) || await runs.FindAsync(id) is not { } live)
        {
            return new TapAnswer(false, 0, "This screen is not in this kitchen. Ask the host for the code and join again.");
        }

        var added = WireCommand.AddDish(tap.Command);
        RunCommand? command = added is { } wanted
            ? await more.ForAsync(live.Current, wanted.Dish, wanted.Course) is { } dish ? new RunCommand.AddDish(dish) : null
            : WireCommand.Read(tap.Command, offer => offers.Find(live.Current, offer));
        if (command is null)
        {
            return WireCommand.IsAcceptPlan(tap.Command) ? Refused(live.Current, new Refusal.PlanIsStale())
                : new TapAnswer(false, live.Current.Sequence, added is not null
                    ? "That dish is not in the library any more, or cannot be cooked in this kitchen."
                    : "That is nothing this kitchen knows how to do. Reload the page.");
        }

        return await DecideAsync(live, visitor, new Tap(new CommandId(tap.CommandId), visitor.Person, command)) switch
        {
            Decision.Accepted => new TapAnswer(true, live.Current.Sequence, null),
            Decision.Refused refused => Refused(live.Current, refused.Why),
            var other => throw new UnreachableException($"A decision without an answer: {other.GetType().Name}."),
        };
    }

    /// <summary>From the host's page.</summary>
    /// <returns>Why not, as a sentence; null when they are out.</returns>
    public async Task<string?> PutOutAsync(LiveRun live, Visitor visitor, PersonId person)
    {
        var tap = new Tap(new CommandId(Guid.CreateVersion7(time.GetUtcNow())), visitor.Person, new RunCommand.PutOut(person));
        return await DecideAsync(live, visitor, tap) is Decision.Refused refused ? Refused(live.Current, refused.Why).Reason : null;
    }

    async Task<Decision> DecideAsync(LiveRun live, Visitor visitor, Tap tap)
    {
        using var trace = Measures.Traces.StartActivity("tap");
        trace?.SetTag("command", tap.Command.GetType().Name);
        var before = live.Current;
        var decision = await live.SendAsync(tap);
        if (decision is Decision.Refused refused)
        {
            Measures.Refused(refused.Why.GetType().Name);
            trace?.SetTag("refusal", refused.Why.GetType().Name);
        }
        else
        {
            Measures.Accepted();
        }

        if (decision is Decision.Accepted && tap.Command is RunCommand.PutOut putOut)
        {
            await CloseDoorAsync(live.Current.Id, putOut.Person);
            if (before.People.GetValueOrDefault(putOut.Person) is { } person)
            {
                await audit.WriteAsync(visitor.Session, AuditDeed.GuestPutOut, before.People.GetValueOrDefault(visitor.Person)?.Name, person.Name);
            }
        }

        return decision;
    }

    /// <summary>The person's browsers are signed out, which closes their sockets; they are told first, as far as they listen.</summary>
    async Task CloseDoorAsync(RunId run, PersonId person)
    {
        await hub.Clients.Clients(open.Of(person, run)).SendAsync("PutOut");
        await sessions.EndOfAsync(person, run);
    }

    TapAnswer Refused(Run run, Refusal why) =>
        new(false, run.Sequence, new Words(run.Meal, boards.Of(run).People).Of(why));

    /// <summary>A host may look at a run that is over, which nobody can join any more.</summary>
    static RunPerson Onlooker(Visitor visitor, string? name) => new(visitor.Person, name ?? "Host", Role.Host, Helper: null);
}
