using CookAlong.Domain.Doneness;

namespace CookAlong.Domain.Meals;

/// <summary>What the thermometer must say before a step is done.</summary>
/// <param name="Celsius">In the middle, 30 to 99 °C.</param>
/// <param name="Minutes">For how long it must stay there, as readings tell; 0 = one is enough. 0 to 60.</param>
/// <param name="Joint">What cooks, so that it can be said when it will be there; null where nobody knows, and then only the reading counts.</param>
public sealed record CoreWanted(int Celsius, Joint? Joint, int Minutes = 0);
