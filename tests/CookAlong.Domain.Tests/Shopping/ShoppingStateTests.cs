using CookAlong.Domain.Shopping;
using CsCheck;

namespace CookAlong.Domain.Tests.Shopping;

public sealed class ShoppingStateTests
{
    static readonly int Aisles = Enum.GetValues<Aisle>().Length;

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
    public void An_order_counts_whole_and_what_it_does_not_name_comes_last()
    {
        var arranged = After(new ShoppingTap.ArrangeAisles([Aisle.Frozen]), new ShoppingTap.ArrangeAisles([Aisle.Drinks, Aisle.Bread]));
        Assert.Equal([Aisle.Drinks, Aisle.Bread, Aisle.Produce, Aisle.MeatAndFish], arranged.Aisles.Take(4));
        Assert.Equal(Enum.GetValues<Aisle>(), arranged.Aisles.Order());
    }

    /// <summary>
    /// Two phones rearrange what they see, with and without the house's network, and send their taps one by one, some of them twice.
    /// Whatever comes between what, all are shown the order of the last tap that the server took.
    /// </summary>
    [Fact]
    public void Two_phones_end_with_one_order_whatever_came_between()
    {
        var happening = from phone in Gen.Int[0, 1]
                        from what in Gen.Frequency((4, Gen.Const("move")), (3, Gen.Const("send")), (1, Gen.Const("send, the answer lost")), (1, Gen.Const("look")))
                        from place in Gen.Int[0, Aisles - 2]
                        select (phone, what, place);
        happening.Array[0, 60].Sample(story =>
        {
            var (server, known, last) = (ShoppingState.Empty, new HashSet<int>(), ShoppingState.Empty.Aisles);
            var seen = new[] { server.Aisles, server.Aisles };
            Queue<(int Id, ShoppingTap.ArrangeAisles Tap)>[] outboxes = [new(), new()];
            var ids = 0;
            foreach (var (phone, what, place) in story.Concat(from phone in new[] { 0, 1 } from again in Enumerable.Range(0, story.Length) select (phone, "send", 0)))
            {
                var outbox = outboxes[phone];
                if (what == "move")
                {
                    seen[phone] = seen[phone].RemoveAt(place).Insert(place + 1, seen[phone][place]);
                    outbox.Enqueue((++ids, new ShoppingTap.ArrangeAisles(seen[phone])));
                }
                else if (what == "look")
                {
                    // What waits here is shown over what the server says.
                    seen[phone] = outbox.Count > 0 ? seen[phone] : server.Aisles;
                }
                else if (outbox.TryPeek(out var first))
                {
                    if (known.Add(first.Id))
                    {
                        (server, last) = (server.Apply(first.Tap), first.Tap.Order);
                    }

                    if (what == "send")
                    {
                        outbox.Dequeue();
                    }
                }
            }

            return server.Aisles.SequenceEqual(last) && outboxes.All(outbox => outbox.Count == 0);
        });
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("   ", false)]
    [InlineData("candles", true)]
    public void Nothing_empty_is_added(string text, bool isSound) => Assert.Equal(isSound, new ShoppingTap.AddExtra("a", text).IsSound);

    [Fact]
    public void What_no_screen_offers_is_not_sound() => Assert.All(
        [
            new ShoppingTap.AddExtra("a", new string('x', ShoppingTap.LongestText + 1)),
            new ShoppingTap.AddExtra(new string('x', ShoppingTap.LongestKey + 1), "candles"),
            new ShoppingTap.RemoveExtra(""),
            new ShoppingTap.RemoveExtra(new string('x', ShoppingTap.LongestKey + 1)),
            new ShoppingTap.SetPortions(new DishId("soup"), 0),
            new ShoppingTap.SetPortions(new DishId(""), 4),
            new ShoppingTap.SetPortions(new DishId(new string('x', 101)), 4),
            new ShoppingTap.ArrangeAisles([]),
            new ShoppingTap.ArrangeAisles([Aisle.Bread, Aisle.Bread]),
            new ShoppingTap.ArrangeAisles([(Aisle)99]),
            new ShoppingTap.MarkLine("onion", (Mark)9, ""),
            new ShoppingTap.SetPrice("", 1),
            new ShoppingTap.SetPrice("onion", -0.01m),
            new ShoppingTap.SetPrice("onion", 1.005m),
            new ShoppingTap.SetPrice("onion", Cost.Most + 0.01m),
            new ShoppingTap.SetCurrency("eur"),
        ],
        (ShoppingTap tap) => Assert.False(tap.IsSound));

    [Fact]
    public void The_last_price_of_a_line_counts_and_a_line_without_one_has_none()
    {
        var priced = After(new ShoppingTap.SetPrice("onion", 4.20m), new ShoppingTap.SetPrice("onion", Cost.Most), new ShoppingTap.SetPrice("salt", 0));
        Assert.Equal((Cost.Most, 0m), (priced.Prices["onion"], priced.Prices["salt"]));
        Assert.Equal(["salt"], priced.Apply(new ShoppingTap.SetPrice("onion", null)).Prices.Keys);
    }
}
