using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using CookAlong.Domain.Planning;

namespace CookAlong.Intake.PlanFiles;

/// <summary>A plan, or every reason found why the file holds none.</summary>
/// <param name="Plan">Null exactly when there are errors.</param>
/// <param name="Errors">At most 50, in the order of reading.</param>
public sealed record PlanFileRead(Plan? Plan, ImmutableArray<FileError> Errors)
{
    [MemberNotNullWhen(true, nameof(Plan))]
    public bool IsGood => Plan is not null;
}
