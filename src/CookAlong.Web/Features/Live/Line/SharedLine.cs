using StackExchange.Redis;

namespace CookAlong.Web.Features.Live.Line;

/// <summary>The live line over several servers: what one says to a run's screens, Redis carries to those of the others.</summary>
static class SharedLine
{
    public static bool IsAddress(string text)
    {
        try
        {
            return ConfigurationOptions.Parse(text).EndPoints.Count > 0;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
