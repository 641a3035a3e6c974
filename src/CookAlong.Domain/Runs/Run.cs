namespace CookAlong.Domain.Runs;

/// <summary>The plan being cooked: immutable state, made of its events.</summary>
public sealed partial record Run;
