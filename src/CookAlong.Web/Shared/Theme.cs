using MudBlazor;

namespace CookAlong.Web.Shared;

/// <summary>The household's look for the component library, from the same tokens as the live pages.</summary>
public static class Theme
{
    static readonly string[] Words = ["Atkinson Hyperlegible Next", "system-ui", "sans-serif"];

    public static MudTheme Household { get; } = new()
    {
        PaletteLight = Palette(new PaletteLight(), Tokens.Light),
        PaletteDark = Palette(new PaletteDark(), Tokens.Dark),
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "0.5rem" },
        Typography = new Typography
        {
            Default = new DefaultTypography { FontFamily = Words, FontSize = "1.125rem", LineHeight = "1.4", LetterSpacing = "normal" },
            Button = new ButtonTypography { FontFamily = Words, FontSize = "1.125rem", FontWeight = "650", TextTransform = "none", LetterSpacing = "normal" },
        },
    };

    static TPalette Palette<TPalette>(TPalette palette, Tokens tokens)
        where TPalette : Palette
    {
        palette.Primary = tokens["action"];
        palette.PrimaryContrastText = tokens["on-action"];
        palette.Success = tokens["done"];
        palette.SuccessContrastText = tokens["on-done"];
        palette.Error = tokens["on-caution"];
        palette.ErrorContrastText = tokens["caution"];
        palette.Warning = tokens["medium-edge"];
        palette.Info = tokens["action"];
        palette.Background = tokens["ground"];
        palette.BackgroundGray = tokens["ground-2"];
        palette.Surface = tokens["surface"];
        palette.TextPrimary = tokens["ink"];
        palette.TextSecondary = tokens["ink-2"];
        palette.ActionDefault = tokens["ink-2"];
        palette.Divider = tokens["rule"];
        palette.LinesDefault = tokens["rule"];
        palette.LinesInputs = tokens["edge"];
        palette.Dark = tokens["iron"];
        palette.DarkContrastText = tokens["on-iron"];
        return palette;
    }
}
