using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Intake;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Data;

namespace CookAlong.Web.Features.Dishes;

/// <summary>A dish as it is kept: its row, the version that holds, and what that says.</summary>
public sealed record KeptDish(DishRow Row, DishVersionRow Version, Dish Dish)
{
    readonly Lazy<DishDocument> asKept = new(() => DishDocument.Of(Version.Document));

    /// <summary>A copy of its own for whoever wants to change it.</summary>
    public DishDocument Document => DishDocument.Of(Version.Document);

    public string? Kind => asKept.Value.Kind;

    public string? Occasion => asKept.Value.Occasion;

    public string? Household => asKept.Value.Household;
}

/// <summary>One of a dish's versions, without what it says.</summary>
public sealed record DishVersion(int Number, DateTimeOffset ChangedAt);

/// <summary>What came of taking in or changing a dish.</summary>
public abstract record DishEdit
{
    public sealed record Kept(KeptDish Dish) : DishEdit;

    /// <summary>It would not be a dish; nothing was kept.</summary>
    public sealed record Refused(ImmutableArray<FileError> Errors) : DishEdit;

    /// <summary>Somebody else changed or deleted the dish meanwhile; nothing was kept.</summary>
    public sealed record Outdated : DishEdit;
}
