using CookAlong.Domain;

namespace CookAlong.Planner.Ovens;

/// <summary>Something in an oven, its times settled; the range holds at both of its ends.</summary>
/// <param name="MayYield">It has begun already: where the oven cannot serve it any more, it gives way.</param>
internal readonly record struct Stay(int Start, int End, CelsiusRange Celsius, bool MayYield);

/// <summary>A minute at which the temperature is settled, and what it may be then.</summary>
internal readonly record struct Knot(int At, int Min, int Max);
