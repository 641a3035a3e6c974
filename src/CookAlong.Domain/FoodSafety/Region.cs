namespace CookAlong.Domain.FoodSafety;

/// <summary>Whose food authority a household follows. Limits differ; the household's choice decides, and none is ever averaged.</summary>
public enum Region
{
    /// <summary>England, Wales and Northern Ireland.</summary>
    UnitedKingdom,

    /// <summary>As the rest of the United Kingdom, with a reheating law of its own.</summary>
    Scotland,

    UnitedStates,

    /// <summary>Core temperatures only; of the rest no limit is held, and none is borrowed.</summary>
    Canada,
}

/// <summary>What a core temperature is asked for.</summary>
public enum Food
{
    WholePoultry,

    /// <summary>And its mince.</summary>
    PoultryPieces,
    Stuffing,

    /// <summary>Mince, burgers, sausages of beef, veal, lamb and pork: of poultry, <see cref="PoultryPieces"/>.</summary>
    GroundMeat,

    /// <summary>Beef, veal and lamb, whole and not rolled.</summary>
    WholeCut,

    /// <summary>Rolled or boned and tied: the outside is inside.</summary>
    RolledJoint,
    Pork,
    RawHam,
    Fish,
    EggDish,
    Casserole,
}
