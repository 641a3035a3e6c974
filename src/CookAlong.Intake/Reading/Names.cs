namespace CookAlong.Intake.Reading;

/// <summary>The ids of one kind in a file, each with the place that gave it.</summary>
/// <param name="kind">What the cook calls such a thing: "helper", "oven".</param>
internal sealed class Names(string kind)
{
    private readonly Dictionary<string, string> places = new(StringComparer.Ordinal);

    public string PlaceOf(string id) => places.GetValueOrDefault(id, "");

    /// <summary>An id that every such file has without saying so.</summary>
    public void Know(string id) => places.Add(id, "");

    /// <summary>The entry's "id", noted when missing or taken.</summary>
    public string Give(Place entry)
    {
        var id = entry.Id("id");
        if (id.Any(char.IsControl))
        {
            entry.Note("id", "An id cannot hold line breaks or tabs.", "Use letters, digits and hyphens.");
        }
        else if (id.Length > 0 && !places.TryAdd(id, entry.Pointer))
        {
            entry.Note("id", $"The {kind} id \"{Place.Short(id)}\" is given twice; it is also at {places[id]}.", "Give one of the two another id.");
        }

        return id;
    }

    /// <summary>Notes an id that is not among these.</summary>
    public string Refer(string id, Place at)
    {
        if (id.Length > 0 && !places.ContainsKey(id))
        {
            at.Note($"There is no {kind} \"{Place.Short(id)}\".", Remedy());
        }

        return id;
    }

    private string Remedy()
    {
        const int shown = 8;
        var some = string.Join(", ", places.Keys.Take(shown).Select(Place.Short));
        return places.Count switch
        {
            0 => $"Add a {kind} with this id, or leave the reference out.",
            <= shown => $"Known {kind}s: {some}. Use one of these, or add it.",
            _ => $"Use the id of one of the {places.Count} {kind}s ({some}, ...), or add it.",
        };
    }
}
