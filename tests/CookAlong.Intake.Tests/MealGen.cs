using System.Collections.Immutable;
using CookAlong.Domain;
using CookAlong.Domain.Doneness;
using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CsCheck;

namespace CookAlong.Intake.Tests;

/// <summary>Any meal that a file can hold, in a kitchen that can do everything, with no sense of taste.</summary>
internal static class MealGen
{
    // 30 October 2027, 18:00 UTC: the clocks go back in the following night, so some times fall into the repeated hour.
    static readonly Minute First = Minute.Of(new DateTimeOffset(2027, 10, 30, 18, 0, 0, TimeSpan.Zero));
    static readonly Minute Table = First + 600;

    static readonly Gen<string> Words = OneOf("Chop", "Stir & wait", "Dämpfen", "\"Quote\"", "a/b~c", "日本", "5 < 6");
    static readonly Gen<int> Minutes = Gen.Int[1, 300];
    static readonly Gen<Minute> Time = Gen.Int[0, 600].Select(minutes => First + minutes);

    static Gen<string> OneOf(params string[] words) => Gen.Int[0, words.Length - 1].Select(index => words[index]);

    static Gen<ImmutableArray<T>> Some<T>(Gen<T> gen, int most) => gen.Array[0, most].Select(items => items.ToImmutableArray());

    static Gen<T?> Maybe<T>(Gen<T> gen) where T : struct => Gen.Select(gen, Gen.Bool, (value, isThere) => isThere ? value : (T?)null);

    static Gen<string?> MaybeWords { get; } = Gen.Select(Words, Gen.Bool, (text, isThere) => isThere ? text : null);

    static readonly Gen<Durations> Lengths = Gen.Select(Minutes, Minutes, Minutes, (one, two, three) =>
    {
        int[] order = [one, two, three];
        Array.Sort(order);
        return new Durations(order[0], order[1], order[2]);
    });

    static readonly Gen<CelsiusRange> Celsius = Gen.Select(Gen.Int[0, 100], Gen.Int[0, 50], Gen.Int[0, 50], (min, up, more) => new CelsiusRange(60 + min, 60 + min + up, 60 + min + up + more));

    static readonly Gen<Uses> AnyUses = Gen.Select(Gen.Bool, Celsius, Gen.Int[0, 2], Gen.Int[0, 2], Gen.Int[0, 2], (hasOven, celsius, rings, grill, mixers) => new Uses(
        hasOven ? new OvenUse(rings == 1 ? new OvenId("oven") : null, rings + 1, celsius) : null,
        rings,
        grill switch { 0 => null, 1 => new GrillUse(null), _ => new GrillUse(new GrillId("grill")) },
        [.. Enumerable.Repeat(new ApplianceId("mixer"), mixers)]));

    static readonly Gen<Way> AnyWay = Gen.Select(Lengths, Gen.Enum<Attention>(), Gen.Int[1, 2], AnyUses, (minutes, attention, people, uses) => new Way(minutes, attention, people, uses));

    static readonly Gen<Hold> AnyHold = Gen.Select(Gen.Enum<HoldPlace>(), Gen.Int[0, 60], Gen.Int[0, 60], Gen.Int[0, 60], Gen.Int[0, 9], Celsius, (place, best, good, limit, cost, celsius) => new Hold(
        place, best / 2, best, best + good, best + good + limit, cost, place == HoldPlace.WarmOven ? new WarmOven(celsius, 1, good) : null));

    static readonly Gen<Tend> AnyTend = Gen.Select(Words, Gen.Bool, Gen.Int[0, 9], Gen.Bool, (text, isRepeated, give, isSafe) =>
        new Tend(text, 1, isRepeated ? 1 : null, isRepeated ? null : -1, give, isSafe));

    static Gen<Step> StepOf(string id, ImmutableArray<string> before) =>
        Gen.Select(
            Gen.Select(Words, MaybeWords, MaybeWords, Gen.Bool, Gen.Bool),
            AnyWay,
            Some(AnyWay, 2),
            before.IsEmpty ? Gen.Const(ImmutableArray<After>.Empty) : Some(Gen.Select(OneOf([.. before]), Gen.Int[0, 9], Maybe(Gen.Int[9, 99]), (step, least, most) => new After(new(step), least, most)), 2),
            Some(AnyTend, 2),
            Gen.Select(Maybe(Time), Gen.Bool, Maybe(Gen.Const(-1))),
            (words, way, options, after, tends, fix) => new Step(
                new(id), words.Item1, words.Item2, words.Item3, way, options, words.Item4 ? ["knife"] : [], words.Item5, after,

                // A tend needs a minute before the end of each way.
                options.Add(way).All(one => one.Minutes.Likely > 1) ? tends : [],
                fix.Item2 ? null : fix.Item1,
                fix.Item2 ? new Window(First, Table) : null,
                fix.Item2 && way.Attention == Attention.HandsOn ? [new HelperId("ada")] : [],
                fix.Item3,
                words.Item5)
            {
                Core = words.Item4 ? new CoreWanted(74, words.Item5 ? new Joint(Cut.WholeGoose, 4.8, Stuffed: fix.Item2) : null, fix.Item2 ? 2 : 0) : null,
            });

    static readonly Gen<Dish> AnyDish = Gen.Select(StepOf("a", []), StepOf("b", ["a"]), StepOf("c", ["a", "b"]), Some(AnyHold, 3), Gen.Int[1, 99], (a, b, c, holds, serves) => new Dish(
        new("dish"), "A dish", new("main"), serves / 4m,
        [new Ingredient("leek", serves / 8m, "g", null, ["celery"]) { Alternatives = ["2 onions", "日本"], Written = "leek or onions" }, new Ingredient("salt", null, null, "ground", [])],
        holds.IsEmpty ? [Hold.OnTheTable] : holds,
        [a, b, c]));

    public static Gen<Meal> Any { get; } = Gen.Select(AnyDish, Maybe(Gen.Const(First)), Words, Gen.Bool, (dish, notBefore, name, hasGuests) => new Meal(
        name,
        TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"),
        notBefore,
        [new Course(new("main"), "Main", Table), new Course(new("late"), "Late", Table + 60)],
        hasGuests ? [new Guest("Ada", 1.25m, ["vegetarian"], ["nuts"])] : [],
        new Kitchen([new Oven(new("oven"), "Oven", 9, hasGuests, 20, 300, 7.5m, 3, 18) { ReadsHighBy = hasGuests ? -7 : 0 }], 9, [new Grill(new("grill"), null), new Grill(new("hob"), new OvenId("oven"))], [new Appliance(new("mixer"), 2)]) { Awake = hasGuests ? new(new(9, 30), new(0, 45)) : WakingHours.Usual },
        [new Helper(new("ada"), "Ada", [], null, false), new Helper(new("ben"), "Ben", [new Window(First, Table)], ["knife", "hot"], false), new Helper(new("cy"), "Cy", [], null, true)],
        [dish]));
}
