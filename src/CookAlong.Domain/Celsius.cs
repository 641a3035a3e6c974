namespace CookAlong.Domain;

/// <summary>A range of oven temperatures in °C on the conventional scale, both ends included.</summary>
/// <param name="Ideal">Where inside the range the food does best; the oven programme aims for it.</param>
public readonly record struct CelsiusRange(int Min, int Ideal, int Max)
{
    public bool Meets(CelsiusRange other) => Min <= other.Max && other.Min <= Max;
}
