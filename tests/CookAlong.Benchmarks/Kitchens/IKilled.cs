namespace CookAlong.Benchmarks.Kitchens;

/// <summary>Something that a kitchen hangs on and that is killed in the middle of it.</summary>
interface IKilled
{
    /// <summary>The hard way: no goodbye, no flush.</summary>
    Task KillAsync();

    /// <returns>How long it took until it was there again.</returns>
    Task<TimeSpan> RestartAsync();
}
