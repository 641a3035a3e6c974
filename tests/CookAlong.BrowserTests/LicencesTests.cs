using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CookAlong.BrowserTests;

[Collection(Browsers.Name)]
public sealed class LicencesTests(Household house) : IClassFixture<Household>
{
    [Theory]
    [MemberData(nameof(ApiTests.Sizes), MemberType = typeof(ApiTests))]
    public async Task The_licences_are_read_at_every_size(string name, int width, int height)
    {
        await using var screen = await house.HostAsync(new(width, height));
        await screen.GoToAsync("/licences");
        await Expect(screen.Page.GetByRole(AriaRole.Heading, new() { Name = "Licences", Level = 1 })).ToBeVisibleAsync();
        await screen.PictureAsync($"licences-{name}");
        await screen.ShouldBeCleanAsync();
    }
}
