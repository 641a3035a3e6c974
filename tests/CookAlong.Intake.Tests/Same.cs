using System.Collections;
using System.Reflection;

namespace CookAlong.Intake.Tests;

/// <summary>
/// Equality of records by their contents: an immutable array inside a record is compared by reference by the
/// record's own equality.
/// </summary>
internal static class Same
{
    public static void As(object? expected, object? actual) => As(expected, actual, "");

    private static void As(object? expected, object? actual, string path)
    {
        if (expected is null || actual is null)
        {
            Assert.True(expected is null && actual is null, $"{path}: {expected ?? "null"} / {actual ?? "null"}");
            return;
        }

        Assert.True(expected.GetType() == actual.GetType(), path);
        if (expected is IEnumerable many and not string)
        {
            var (one, other) = (List(many), List((IEnumerable)actual));
            Assert.True(one.Count == other.Count, $"{path}: {one.Count} / {other.Count} entries");
            foreach (var (index, (left, right)) in one.Zip(other).Index())
            {
                As(left, right, $"{path}[{index}]");
            }
        }
        else if (expected is string or TimeZoneInfo || expected.GetType().IsPrimitive || expected.GetType().IsEnum || expected is decimal)
        {
            Assert.True(expected.Equals(actual), $"{path}: {expected} / {actual}");
        }
        else
        {
            foreach (var property in Own(expected.GetType()))
            {
                As(property.GetValue(expected), property.GetValue(actual), $"{path}.{property.Name}");
            }
        }
    }

    // A set has no order of its own.
    private static List<object?> List(IEnumerable many) =>
        many is ISet<string> ? [.. many.Cast<string>().Order(StringComparer.Ordinal)] : [.. many.Cast<object?>()];

    private static IEnumerable<PropertyInfo> Own(Type type) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0 && IsStored(type, property));

    /// <summary>The properties of a record's parameters, not the computed ones.</summary>
    private static bool IsStored(Type type, PropertyInfo property) =>
        type.GetField($"<{property.Name}>k__BackingField", BindingFlags.NonPublic | BindingFlags.Instance) is not null;
}
