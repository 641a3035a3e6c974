namespace CookAlong.Intake;

/// <summary>What is wrong with a file, where, and what to do about it.</summary>
/// <param name="Place">JSON Pointer (RFC 6901) to the place; "" = the whole file.</param>
/// <param name="Problem">A sentence for the cook.</param>
/// <param name="Remedy">A sentence that says what to do.</param>
public sealed record FileError(string Place, string Problem, string Remedy);
