using CookAlong.Domain;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

/// <summary>What one part of a meal file may refer to in another.</summary>
/// <param name="zone">Null when the file names none that exists; then times are held to their form only.</param>
internal sealed class MealIds(TimeZoneInfo? zone)
{
    public TimeZoneInfo? Zone { get; } = zone;

    public Names Courses { get; } = new("course");

    public Names Helpers { get; } = new("helper");

    public Names Ovens { get; } = new("oven");

    public Names Grills { get; } = new("grill");

    public Names Appliances { get; } = new("appliance");

    public Names Dishes { get; } = new("dish");

    public Names Steps { get; } = new("step");

    public string PlaceOf(Step step) => Steps.PlaceOf(step.Id.Value);

    public string PlaceOf(Dish dish) => Dishes.PlaceOf(dish.Id.Value);
}
