using CookAlong.Domain;
using CookAlong.Web.Features.Plans;
using CsCheck;

namespace CookAlong.Web.Tests.Plans;

public sealed class PlacesTests
{
    static Minute M(int minute) => new(minute);

    [Fact]
    public void A_tray_that_comes_out_makes_room_for_the_next_one()
    {
        var places = Places.Assign([(M(0), M(60), 1), (M(60), M(90), 1)], places: 3);

        Assert.Equal([0], places[0]);
        Assert.Equal([0], places[1]);
    }

    [Fact]
    public void What_takes_two_shelves_gets_neighbours()
    {
        var places = Places.Assign([(M(0), M(100), 1), (M(0), M(40), 1), (M(50), M(80), 2)], places: 3);

        Assert.Equal([1, 2], places[2]);
    }

    [Fact]
    public void Two_things_never_stand_on_one_place_at_once_and_no_place_is_invented_for_single_ones() =>
        Gen.Select(Gen.Int[0, 200], Gen.Int[1, 60]).Array[1, 25].Sample(spans =>
        {
            var asked = spans.Select(span => (From: M(span.Item1), To: M(span.Item1 + span.Item2), 1)).ToList();
            var most = asked.Max(one => asked.Count(other => other.From <= one.From && one.From < other.To));

            var places = Places.Assign(asked, most);

            for (var i = 0; i < asked.Count; i++)
            {
                Assert.InRange(places[i].Single(), 0, most - 1);
                Assert.DoesNotContain(Enumerable.Range(0, i), j => places[j][0] == places[i][0] && asked[i].From < asked[j].To && asked[j].From < asked[i].To);
            }
        });
}
