using CookAlong.Domain.Doneness;

namespace CookAlong.Domain.FoodSafety;

/// <summary>Which of the foods that authorities speak of a cut is.</summary>
public static class CutFood
{
    /// <summary>Null = it is cooked already, and only warmed.</summary>
    public static Food? Of(Cut cut) => cut switch
    {
        Cut.WholeTurkey or Cut.WholeChicken or Cut.WholeDuck or Cut.WholeGoose => Food.WholePoultry,
        Cut.TurkeyBreast => Food.PoultryPieces,
        Cut.BeefRib or Cut.BeefRound or Cut.BeefFillet or Cut.LambLegOnTheBone or Cut.VealRib or Cut.VealLoin => Food.WholeCut,
        Cut.LambLegRolled => Food.RolledJoint,
        Cut.PorkLoin or Cut.PorkShoulder or Cut.PorkFillet => Food.Pork,
        Cut.RawHam => Food.RawHam,
        Cut.CookedHam => null,
        _ => throw new System.Diagnostics.UnreachableException(cut.ToString()),
    };
}
