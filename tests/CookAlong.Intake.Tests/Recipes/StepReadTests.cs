using CookAlong.Intake.Recipes;

namespace CookAlong.Intake.Tests.Recipes;

public sealed class StepReadTests
{
    [Theory]
    [InlineData("Bake 25-30 min", "25-30 Takes")]
    [InlineData("Bake for 25 to 30 minutes", "25-30 Takes")]
    [InlineData("roast 2-1/2 to 3-1/2 hours", "150-210 Takes")]
    [InlineData("Cook 1-3/4 hr. more", "105-105 Takes")]
    [InlineData("simmer half an hour", "30-30 Takes")]
    [InlineData("simmer an hour and a half", "90-90 Takes")]
    [InlineData("simmer one and one-half hours", "90-90 Takes")]
    [InlineData("simmer 1½ hours", "90-90 Takes")]
    [InlineData("simmer three quarters of an hour", "45-45 Takes")]
    [InlineData("about 1 hour 20 minutes", "80-80 Takes")]
    [InlineData("for 20 minutes to half an hour", "20-30 Takes")]
    [InlineData("Boil from thirty minutes to one hour", "30-60 Takes")]
    [InlineData("between ten and fifteen minutes", "10-15 Takes")]
    [InlineData("twenty-five minutes", "25-25 Takes")]
    [InlineData("until golden, about 10 minutes more", "10-10 Takes")]
    [InlineData("Chill overnight", "480-720 Takes")]
    [InlineData("basting every 15 minutes", "15-15 Every")]
    [InlineData("After 20 minutes, turn", "20-20 After")]
    [InlineData("Ten minutes before serving, add the cream", "10-10 Before")]
    [InlineData("Let stand 10 minutes before slicing", "10-10 Takes")]
    [InlineData("for a total of 40 minutes", "40-40 Total")]
    [InlineData("20 minutes to the pound", "20-20 PerPound")]
    [InlineData("40 minutes per kg plus 20 minutes", "40-40 PerKilo, 20-20 Takes")]
    [InlineData("at 165 F. or higher for 15 seconds", "0.25-0.25 Dwell")]
    [InlineData("Slice into 3/16-inch slices", "")]
    [InlineData("Serve 4 to 6", "")]
    [InlineData("1/0 hours", "")]
    public void Times(string text, string read) =>
        Assert.Equal(read, string.Join(", ", StepRead.Of(text).Times.Select(time => FormattableString.Invariant($"{time.Least:0.##}-{time.Most:0.##} {time.Role}"))));

    // Exact by definition: °C = (°F - 32) / 1.8 (NIST SP 811). Gas marks: GNU units 2.22, gasmark table. Named ovens: common practice, no source.
    [Theory]
    [InlineData("Bake at 350 F. until done", "177-177 Oven")]
    [InlineData("Bake at 325-350°F", "163-177 Oven")]
    [InlineData("Roast at 180 °C/160 °C fan/gas 4", "180-180 Oven")]
    [InlineData("Roast at 400 degrees", "204-204 Oven")]
    [InlineData("Bake at gas mark 6", "204-204 Oven")]
    [InlineData("Dry at gas mark ½", "121-121 Oven")]
    [InlineData("Bake at gas mark 11", "")]
    [InlineData("bake in a very slow oven", "120-135 Oven")]
    [InlineData("bake in a moderate oven", "175-190 Oven")]
    [InlineData("Heat the oil to 180 °C and fry", "180-180 Fat")]
    [InlineData("until the internal temperature reaches 74 °C", "74-74 Core")]
    [InlineData("Keep warm at 65 °C", "65-65 Hold")]
    [InlineData("Refrigerate at 41 F. or lower", "5-5 Chill")]
    [InlineData("Add 2 C flour", "")]
    public void Heats(string text, string read) =>
        Assert.Equal(read, string.Join(", ", StepRead.Of(text).Heats.Select(heat => FormattableString.Invariant($"{heat.Least:0}-{heat.Most:0} {heat.Kind}"))));

    [Theory]
    [InlineData("Roast 40 minutes", CookedOn.Oven)]
    [InlineData("Simmer 10 minutes, then bake", CookedOn.Ring)]
    [InlineData("Cook two hours in a very slow oven", CookedOn.Oven)]
    [InlineData("Broil five minutes", CookedOn.Grill)]
    [InlineData("Soak one hour, then boil until soft", CookedOn.Nothing)]
    [InlineData("Chill 2 hours", CookedOn.Fridge)]
    [InlineData("Chop the onions", CookedOn.Nothing)]
    public void Places(string text, CookedOn uses) => Assert.Equal(uses, StepRead.Of(text).On);

    [Fact]
    public void Each_thing_stands_beside_the_words_it_was_read_from()
    {
        const string Text = "Using a hot oven, bake 20 to 25 minutes.";
        var read = StepRead.Of(Text);
        Assert.Equal("hot oven", Text.Substring(read.Heats[0].At, read.Heats[0].Length));
        Assert.Equal("20 to 25 minutes", Text.Substring(read.Times[0].At, read.Times[0].Length));
    }
}
