using System.Collections.Immutable;

namespace CookAlong.Domain.Runs;

/// <summary>What goes wrong when a call of this kind is missed, and so how loudly it is made. The whole list; common practice, no source.</summary>
public static class Hazards
{
    public static ImmutableArray<Hazard> All { get; } =
    [
        new(CallKind.Out, IsOnHeat: true, CallPriority.High, "Food burns, boils dry or cooks to rags; fat can catch fire."),
        new(CallKind.Over, IsOnHeat: true, CallPriority.High, "What is on the heat has stayed there longer than it may."),
        new(CallKind.In, IsOnHeat: true, CallPriority.Medium, "The oven or the ring stands hot and empty, and all that follows is late."),
        new(CallKind.Tend, IsOnHeat: null, CallPriority.Medium, "One side browns more than the other, something sticks or dries out."),
        new(CallKind.Dial, IsOnHeat: null, CallPriority.Medium, "The oven is not as hot as the next tray needs, or too hot for this one."),
        new(CallKind.Over, IsOnHeat: false, CallPriority.Medium, "A job takes longer than planned, and table time may slip."),
        new(CallKind.Cools, IsOnHeat: null, CallPriority.Medium, "A joint that rests is soon colder than hot food is kept: serve it, or keep it hot."),
        new(CallKind.Pause, IsOnHeat: null, CallPriority.Medium, "Everybody waits at a pause point for somebody who does not know it."),
        new(CallKind.Begin, IsOnHeat: false, CallPriority.Low, "A job of somebody’s hands begins a little late."),
        new(CallKind.Table, IsOnHeat: null, CallPriority.Low, "The guests do not know that it is nearly time."),
    ];

    /// <param name="isOnHeat">It is about something in an oven, on a ring or under a grill.</param>
    public static CallPriority PriorityOf(CallKind kind, bool isOnHeat) =>
        All.Single(one => one.Kind == kind && (one.IsOnHeat ?? isOnHeat) == isOnHeat).Priority;
}

/// <param name="IsOnHeat">Null = wherever it is.</param>
/// <param name="WhatGoesWrong">A sentence in the cook's words.</param>
public sealed record Hazard(CallKind Kind, bool? IsOnHeat, CallPriority Priority, string WhatGoesWrong);
