using System.Collections.Immutable;
using CookAlong.Domain.Meals;
using CookAlong.Intake;
using CookAlong.Intake.MealFiles;
using CookAlong.Web.Data;

namespace CookAlong.Web.Features.Dishes;

/// <summary>A dish as it is kept: its row, the version that holds, and what that says.</summary>
public sealed record KeptDish(DishRow Row, DishVersionRow Version, Dish Dish)
{
    /// <summary>To read what a <see cref="Dish"/> has no place for, or to change a copy.</summary>
    public DishDocument Document => DishDocument.Of(Version.Document);
}

/// <summary>What came of taking in or changing a dish.</summary>
public abstract record DishEdit
{
    public sealed record Kept(KeptDish Dish) : DishEdit;

    /// <summary>It would not be a dish; nothing was kept.</summary>
    public sealed record Refused(ImmutableArray<FileError> Errors) : DishEdit;

    /// <summary>Somebody else changed or deleted the dish meanwhile; nothing was kept.</summary>
    public sealed record Outdated : DishEdit;
}
