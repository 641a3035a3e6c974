namespace CookAlong.Intake;

/// <summary>The JSON Schemas (2020-12) of the two formats, as text.</summary>
public static class FileSchemas
{
    public static string Meal { get; } = Read("meal.schema.json");

    public static string Plan { get; } = Read("plan.schema.json");

    private static string Read(string name)
    {
        using var stream = typeof(FileSchemas).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
