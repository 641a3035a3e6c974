using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Planning;

namespace CookAlong.Web.Features.Plans;

/// <summary>One strip of the timeline: an oven, a ring, a grill, an appliance, a person.</summary>
/// <param name="Rows">Shelves of an oven; 1 for the others.</param>
/// <param name="Mark">Set for people: 0, 1, 2, ..., the shape and colour that stand for them on every screen.</param>
/// <param name="Away">Spans in which a person is not in the kitchen.</param>
/// <param name="Programme">Set for ovens that are used.</param>
public sealed record Lane(
    LaneKind Kind,
    string Name,
    string? Note,
    int Rows,
    ImmutableArray<Bar> Bars,
    int? Mark = null,
    ImmutableArray<(Minute From, Minute To)> Away = default,
    OvenProgramme? Programme = null);

public enum LaneKind { Oven, Ring, Grill, Appliance, Person }

/// <summary>Something in a lane from one minute to another.</summary>
/// <param name="Step">Null for a dish that is only kept warm.</param>
/// <param name="Label">What it says, in full.</param>
/// <param name="Brief">What it says where the full words do not fit.</param>
/// <param name="Row">The first row it takes, from the top.</param>
public sealed record Bar(BarKind Kind, StepId? Step, string Label, string Brief, Minute From, Minute To, int Row = 0, int RowSpan = 1);

public enum BarKind { Step, Tend, KeptWarm }
