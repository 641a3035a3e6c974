using CookAlong.Domain.Shopping;
using CsCheck;

namespace CookAlong.Domain.Tests.Shopping;

public sealed class ShoppingStateTests
{
    static ShoppingState After(params ShoppingTap[] taps) => taps.Aggregate(ShoppingState.Empty, (state, tap) => state.Apply(tap));

    [Fact]
    public void The_later_mark_counts()
    {
        var marked = After(new ShoppingTap.MarkLine("onion", Mark.Cupboard, "6"), new ShoppingTap.MarkLine("onion", Mark.Bought, "6"), new ShoppingTap.MarkLine("salt", Mark.Bought, ""));
        Assert.Equal((Mark.Bought, "6"), marked.Marks["onion"]);
        Assert.False(marked.Apply(new ShoppingTap.MarkLine("onion", Mark.Open, "6")).Marks.ContainsKey("onion"));
    }

    [Fact]
    public void A_line_typed_in_twice_is_one_and_goes_with_its_mark()
    {
        var add = new ShoppingTap.AddExtra("a", " candles ");
        Assert.Equal([new Extra("a", "candles")], After(add, add).Extras);
        var gone = After(add, new ShoppingTap.MarkLine("a", Mark.Bought, ""), new ShoppingTap.RemoveExtra("a"));
        Assert.True(gone.Extras.IsEmpty && gone.Marks.IsEmpty);
    }

    [Fact]
    public void An_aisle_moves_one_place_and_not_off_the_end()
    {
        Assert.Equal([Aisle.Bread, Aisle.Produce], After(new ShoppingTap.MoveAisle(Aisle.Bread, -1)).Aisles.Take(2));
        Assert.Equal(ShoppingState.Empty.Aisles, After(new ShoppingTap.MoveAisle(Aisle.Produce, -1)).Aisles);
    }

    [Fact]
    public void Aisles_are_never_lost_or_doubled() =>
        (from aisle in Gen.OneOf(Enum.GetValues<Aisle>()) from places in Gen.OneOf(-1, 1) select new ShoppingTap.MoveAisle(aisle, places)).Array[0, 40]
            .Sample(moves => After([.. moves]).Aisles.Order().SequenceEqual(Enum.GetValues<Aisle>()));

    [Theory]
    [InlineData("", false)]
    [InlineData("   ", false)]
    [InlineData("candles", true)]
    public void Nothing_empty_is_added(string text, bool isSound) => Assert.Equal(isSound, ShoppingState.IsSound(new ShoppingTap.AddExtra("a", text)));

    [Fact]
    public void What_no_screen_offers_is_not_sound()
    {
        Assert.False(ShoppingState.IsSound(new ShoppingTap.AddExtra("a", new string('x', ShoppingState.LongestText + 1))));
        Assert.False(ShoppingState.IsSound(new ShoppingTap.SetPortions(new DishId("soup"), 0)));
        Assert.False(ShoppingState.IsSound(new ShoppingTap.MoveAisle(Aisle.Bread, 2)));
        Assert.False(ShoppingState.IsSound(new ShoppingTap.MarkLine("onion", (Mark)9, "")));
    }
}
