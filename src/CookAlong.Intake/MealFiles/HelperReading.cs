using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Intake.Reading;

namespace CookAlong.Intake.MealFiles;

internal static class HelperReading
{
    /// <summary>Who cooks when the file names nobody: one adult, always there, who can do everything.</summary>
    private static readonly Helper HostCook = new(new HelperId("host-cook"), "Host cook", [], null, IsChild: false);

    public static ImmutableArray<Helper> Helpers(Place root, MealIds ids)
    {
        var helpers = root.Objects("helpers", 50);
        if (helpers.Count > 0)
        {
            return [.. helpers.Select(helper => Helper(helper, ids))];
        }

        ids.Helpers.Know(HostCook.Id.Value);
        return [HostCook];
    }

    private static Helper Helper(Place helper, MealIds ids)
    {
        var id = ids.Helpers.Give(helper);
        var can = helper.Texts("can", 100);
        return new Helper(
            new(id),
            helper.OptionalText("name") ?? id,
            Available(helper, ids),
            can.Count == 0 ? null : [.. can.Select(skill => skill.Text)],
            helper.Flag("child"));
    }

    private static ImmutableArray<Window> Available(Place helper, MealIds ids)
    {
        var windows = new List<Window>();
        foreach (var span in helper.Objects("available", 100))
        {
            if (span.Window(ids.Zone) is not { } window)
            {
                continue;
            }

            if (windows.Count > 0 && window.From < windows[^1].To)
            {
                span.Note("This span overlaps or comes before the one above it.", "Write the spans in order and apart.");
                continue;
            }

            if (windows.Count > 0 && window.From == windows[^1].To)
            {
                // Two spans that touch are one: nobody leaves and comes back in the same minute.
                windows[^1] = windows[^1] with { To = window.To };
                continue;
            }

            windows.Add(window);
        }

        return [.. windows];
    }
}
