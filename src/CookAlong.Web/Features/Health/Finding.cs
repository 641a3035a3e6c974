namespace CookAlong.Web.Features.Health;

public enum Grade
{
    Well,

    /// <summary>Worth knowing; nothing is wrong yet.</summary>
    Heed,

    /// <summary>Something is to be done.</summary>
    Wrong,
}

/// <summary>What one check of the server's health found.</summary>
/// <param name="Of">What was looked at, a word or two.</param>
/// <param name="Says">What was found, and what to do where something is to be done. Whole sentences.</param>
public sealed record Finding(string Of, Grade Grade, string Says);
