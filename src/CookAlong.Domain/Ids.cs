namespace CookAlong.Domain;

// Ids are the ones the meal file gives; each kind is its own type so that a helper is never passed for a step.
public readonly record struct CourseId(string Value) { public override string ToString() => Value; }

public readonly record struct DishId(string Value) { public override string ToString() => Value; }

public readonly record struct StepId(string Value) { public override string ToString() => Value; }

public readonly record struct HelperId(string Value) { public override string ToString() => Value; }

public readonly record struct OvenId(string Value) { public override string ToString() => Value; }

public readonly record struct GrillId(string Value) { public override string ToString() => Value; }

public readonly record struct ApplianceId(string Value) { public override string ToString() => Value; }
