using CookAlong.Web.Features.Household;

namespace CookAlong.Web.Tests.Household;

/// <summary>Against OWASP ASVS 5.0.0, 6.2 (password security).</summary>
public sealed class PasswordsTests
{
    [Theory]
    [InlineData("1234567", PasswordFault.TooShort)] // 6.2.1
    [InlineData("password123", PasswordFault.TooWellKnown)] // 6.2.4
    [InlineData("PASSWORD123", PasswordFault.TooWellKnown)]
    [InlineData("Chocolate", PasswordFault.TooWellKnown)] // among the 10,000, in any case
    [InlineData("midnight", PasswordFault.TooWellKnown)]
    [InlineData("12345678", PasswordFault.TooWellKnown)]
    [InlineData("1234567890", PasswordFault.TooWellKnown)]
    [InlineData("hgfedcba", PasswordFault.TooWellKnown)]
    [InlineData("aaaaaaaaaa", PasswordFault.TooWellKnown)]
    [InlineData("abcabcabc", PasswordFault.TooWellKnown)]
    [InlineData("Alderman1", PasswordFault.IsTheName)]
    public void A_weak_password_is_refused_for_a_reason(string password, PasswordFault fault) =>
        Assert.Equal(fault, Passwords.FaultOf(password, "Alderman"));

    [Theory]
    [InlineData("goosefat")]
    [InlineData("all lower case and blanks")] // 6.2.5: no rules of composition
    [InlineData("ženská říše")]
    public void A_password_needs_no_mixture_of_kinds(string password) => Assert.Null(Passwords.FaultOf(password, "Alderman"));

    [Fact]
    public void Long_passwords_are_allowed_to_at_least_64_characters() => // 6.2.9
        Assert.Null(Passwords.FaultOf(string.Concat(Enumerable.Range(0, 16).Select(i => $"{i:x}pa!")), "Alderman"));

    [Fact]
    public void A_password_is_not_a_way_to_keep_the_server_busy() =>
        Assert.Equal(PasswordFault.TooLong, Passwords.FaultOf(new string('x', 201), "Alderman"));

    [Fact]
    public void Length_counts_characters_not_their_encoding() =>
        Assert.Equal(PasswordFault.TooShort, Passwords.FaultOf("🍳🥄🍲🧂", "Alderman"));
}
