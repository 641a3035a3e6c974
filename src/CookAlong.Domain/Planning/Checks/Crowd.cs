namespace CookAlong.Domain.Planning.Checks;

/// <summary>A use of something countable, its end not included.</summary>
readonly record struct Taking(Minute Start, Minute End, int Amount, StepId? Step, DishId? Dish);

/// <summary>How much of a thing is taken at once.</summary>
static class Crowd
{
    /// <summary>Each stretch of time in which more is taken than there is, named by what tipped it over.</summary>
    public static IEnumerable<(Minute At, int Found, Taking Last)> Over(IEnumerable<Taking> takings, int capacity)
    {
        var all = takings.Where(taking => taking.End > taking.Start).OrderBy(taking => taking.Start).ToArray();
        var wasOver = false;
        foreach (var minute in all.SelectMany(taking => new[] { taking.Start, taking.End }).Distinct().Order())
        {
            var here = all.Where(taking => taking.Start <= minute && minute < taking.End).ToArray();
            var found = here.Sum(taking => taking.Amount);
            if (found > capacity && !wasOver)
            {
                yield return (minute, found, here[^1]);
            }

            wasOver = found > capacity;
        }
    }
}
