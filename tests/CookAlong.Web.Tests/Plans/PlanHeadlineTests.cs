using CookAlong.Domain.Planning;
using CookAlong.Web.Features.Plans;

namespace CookAlong.Web.Tests.Plans;

public sealed class PlanHeadlineTests
{
    [Fact]
    public void Kept_table_times_are_said_to_be_on_time() =>
        Assert.Equal("Main course at 15:00; Pudding at 16:10: on time.", PlanHeadline.TableTimes(AlderLane.Meal, AlderLane.Plan));

    [Fact]
    public void A_late_course_says_how_late()
    {
        var late = AlderLane.Plan with { Courses = [.. AlderLane.Plan.Courses.Select((course, i) => i == 0 ? course with { TableTime = course.Promised + 12 } : course)] };

        Assert.Equal("Main course at 15:12, 12 min late; Pudding at 16:10.", PlanHeadline.TableTimes(AlderLane.Meal, late));
    }

    [Theory]
    [InlineData(0.934, "Served within 10 minutes of it on 93 of 100 days.")]
    [InlineData(1.0, "Served within 10 minutes of it on more than 99 of 100 days.")]
    [InlineData(0.0, "Served within 10 minutes of it on 0 of 100 days.")]
    public void The_chance_is_counted_in_days_and_never_certain(double chance, string words) =>
        Assert.Equal(words, PlanHeadline.Chance(AlderLane.Plan with { Confidence = new(chance, 0, []) }));

    [Fact]
    public void An_unproven_plan_says_what_is_left_to_gain() =>
        Assert.Equal("A plan that holds, at most 4\u00A0% from the best there could be.", PlanHeadline.Gap(AlderLane.Plan with { Status = PlanStatus.Feasible, Gap = 0.034 }));

    [Fact]
    public void Two_plans_side_by_side_differ_by_chance_perhaps_unless_both_are_proven()
    {
        var (proven, found) = (AlderLane.Plan, AlderLane.Plan with { Status = PlanStatus.Feasible, Gap = 0.034 });

        Assert.Null(PlanHeadline.MayBeChance(proven, proven));
        Assert.Equal("One of the two plans is not proven the best there could be: a difference may be chance.", PlanHeadline.MayBeChance(proven, found));
        Assert.Equal("Neither plan is proven the best there could be: a difference may be chance.", PlanHeadline.MayBeChance(found, found));
        Assert.Contains(PlanHeadline.MayBeChance(found, proven), LeanPanelWords.Compared(AlderLane.Meal, found, proven));
    }

    [Theory]
    [InlineData(25, "25 min")]
    [InlineData(60, "1 h")]
    [InlineData(140, "2 h 20 min")]
    public void Minutes_are_said_as_a_cook_says_them(int minutes, string words) => Assert.Equal(words, PlanHeadline.Minutes(minutes));
}
