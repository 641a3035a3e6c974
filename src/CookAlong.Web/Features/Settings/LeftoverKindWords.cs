using CookAlong.Domain.FoodSafety;

namespace CookAlong.Web.Features.Settings;

public static class LeftoverKindWords
{
    public static string Of(LeftoverKind kind) => kind switch
    {
        LeftoverKind.MeatPoultryOrFish => "Meat, poultry or fish",
        LeftoverKind.Rice => "Rice",
        LeftoverKind.Pasta => "Pasta",
        LeftoverKind.SoupOrStew => "Soup or stew",
        LeftoverKind.Stuffing => "Stuffing",
        LeftoverKind.Gravy => "Gravy",
        LeftoverKind.Ham => "Ham",
        LeftoverKind.EggDish => "Egg dish",
        LeftoverKind.Salad => "Salad",
        LeftoverKind.Vegetables => "Vegetables and all else",
        _ => throw new System.Diagnostics.UnreachableException(kind.ToString()),
    };
}
