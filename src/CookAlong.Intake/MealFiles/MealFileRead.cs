using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using CookAlong.Domain.Meals;

namespace CookAlong.Intake.MealFiles;

/// <summary>A meal, or every reason found why the file holds none.</summary>
/// <param name="Meal">Null exactly when there are errors.</param>
/// <param name="Errors">At most 50, in the order of reading.</param>
public sealed record MealFileRead(Meal? Meal, ImmutableArray<FileError> Errors)
{
    [MemberNotNullWhen(true, nameof(Meal))]
    public bool IsGood => Meal is not null;
}
