using System.Text;
using CookAlong.Intake.Recipes;

namespace CookAlong.Intake.Tests.Recipes;

public class PageBytesTests
{
    static readonly byte[] oldCafe = [0x43, 0x61, 0x66, 0xE9, 0x20, 0x80];

    [Fact]
    public void Utf8_needs_no_name() => Assert.Equal("crème ½", PageBytes.Text(Encoding.UTF8.GetBytes("crème ½")));

    [Fact]
    public void What_is_not_utf8_and_says_nothing_is_read_as_windows_1252() => Assert.Equal("Café €", PageBytes.Text(oldCafe));

    // WHATWG Encoding standard, names and labels: iso-8859-1 is windows-1252.
    [Fact]
    public void Latin_1_is_read_as_windows_1252() => Assert.Equal("Café €", PageBytes.Text(oldCafe, "ISO-8859-1"));

    [Fact]
    public void The_page_says_it_where_the_sender_does_not()
    {
        var page = "<html><head><meta charset=\"koi8-r\">борщ";
        Assert.Equal(page, PageBytes.Text(CodePagesEncodingProvider.Instance.GetEncoding("koi8-r")!.GetBytes(page)));
    }

    // WHATWG HTML, "prescan a byte stream": a page that can be read as far as its own "utf-16" is not in it; UTF-8 is meant.
    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16le")]
    [InlineData("UTF-16BE")]
    public void A_page_that_calls_itself_utf_16_in_plain_letters_is_utf_8(string name)
    {
        var page = $"<html><head><meta charset=\"{name}\">crème ½";
        Assert.Equal(page, PageBytes.Text(Encoding.UTF8.GetBytes(page)));
    }

    [Fact]
    public void A_byte_order_mark_goes_before_every_name()
    {
        Assert.Equal("soupe", PageBytes.Text([0xFF, 0xFE, .. Encoding.Unicode.GetBytes("soupe")], "utf-8"));
        Assert.Equal("soupe", PageBytes.Text([0xEF, 0xBB, 0xBF, .. "soupe"u8], "iso-8859-1"));
    }

    [Theory]
    [InlineData("no-such-encoding")]
    [InlineData("utf-7")]
    [InlineData("")]
    public void A_name_that_nobody_knows_changes_nothing(string charset) => Assert.Equal("é", PageBytes.Text([0xC3, 0xA9], charset));
}
