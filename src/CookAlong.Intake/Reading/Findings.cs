using System.Collections.Immutable;

namespace CookAlong.Intake.Reading;

/// <summary>What is wrong with a file, collected while reading goes on; after <see cref="Most"/> the rest is not kept.</summary>
internal sealed class Findings
{
    public const int Most = 50;

    private readonly List<FileError> errors = [];
    private readonly HashSet<FileError> known = [];

    /// <summary>How many were noted, kept or not.</summary>
    public int Count { get; private set; }

    public void Note(string place, string problem, string remedy)
    {
        var error = new FileError(place, problem, remedy);
        if (errors.Count < Most && known.Add(error))
        {
            errors.Add(error);
        }

        Count++;
    }

    public ImmutableArray<FileError> All => [.. errors];
}
