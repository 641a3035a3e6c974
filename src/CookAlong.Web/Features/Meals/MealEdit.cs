using System.Collections.Immutable;
using CookAlong.Intake;

namespace CookAlong.Web.Features.Meals;

/// <summary>What came of taking in or changing a meal.</summary>
public abstract record MealEdit
{
    public sealed record Kept(KeptMeal Meal) : MealEdit;

    /// <summary>It would not be a meal; nothing was kept.</summary>
    public sealed record Refused(ImmutableArray<FileError> Errors) : MealEdit;

    /// <summary>Somebody else changed or deleted the meal meanwhile; nothing was kept.</summary>
    public sealed record Outdated : MealEdit;
}
