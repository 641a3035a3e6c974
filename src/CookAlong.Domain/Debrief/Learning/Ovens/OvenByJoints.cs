namespace CookAlong.Domain.Debrief.Learning.Ovens;

/// <summary>
/// Several joints' readings put together: a single one cannot tell its oven's error from its own size, but sizes are not all wrong the
/// same way. What they share, a fan that blows harder or a model that is a little off, does not shrink with their number.
/// </summary>
static class OvenByJoints
{
    const int Least = 4;

    /// <summary>°C, one standard deviation: of what all joints of one oven share, and of how far kitchen ovens' dials are out. Own estimates.</summary>
    const double Shared = 7, Dials = 20;

    /// <summary>Standard deviations by which it must be out before anything is said.</summary>
    const double Sure = 1.5;

    /// <summary>Null where they are few, contradict each other, or lie too near the dial to say that it is out.</summary>
    public static OvenFigure? Of(IReadOnlyCollection<JointReading> joints)
    {
        if (joints.Count < Least)
        {
            return null;
        }

        var weights = joints.Sum(one => 1 / (one.Error * one.Error));
        var mean = joints.Sum(one => one.ReadsHighBy / (one.Error * one.Error)) / weights;
        var apart = joints.Sum(one => Math.Pow((one.ReadsHighBy - mean) / one.Error, 2));
        var error = Math.Sqrt((1 / weights) + (Shared * Shared));
        var isContradictory = apart > joints.Count - 1 + (2 * Math.Sqrt(2 * (joints.Count - 1)));

        // Little weight: drawn towards the dial by as much as it is unsure.
        return isContradictory || Math.Abs(mean) < Sure * error ? null : new(mean * Dials * Dials / ((Dials * Dials) + (error * error)), joints.Count);
    }
}
