using CookAlong.Domain.Kitchens;
using CookAlong.Domain.Meals;
using CookAlong.Domain.Planning;
using static CookAlong.Domain.Tests.MealBuilder;
using Change = System.Func<CookAlong.Domain.Meals.Meal, CookAlong.Domain.Planning.Plan, (CookAlong.Domain.Meals.Meal Meal, CookAlong.Domain.Planning.Plan Plan)>;

namespace CookAlong.Domain.Tests.Planning;

public sealed partial class PlanCheckTests
{
    static readonly (RuleId Broken, string What, Change Make)[] Changes =
    [
        (RuleId.EveryStepOnce, "a step twice", Plan(plan => plan with { Steps = plan.Steps.Add(plan.Step(new("cream-chill"))) })),
        (RuleId.EveryStepOnce, "a step left out", Plan(plan => plan with { Steps = plan.Steps.Remove(plan.Step(new("cream-chill"))) })),
        (RuleId.EveryStepOnce, "a step nobody knows", Plan(plan => plan with { Steps = plan.Steps.Add(plan.Steps[0] with { Step = new("soup") }) })),
        (RuleId.EveryStepOnce, "a step without an id", Plan(plan => plan with { Steps = plan.Steps.Add(plan.Steps[0] with { Step = default }) })),
        (RuleId.StepLength, "too short", Step("roast-prepare", step => step with { End = At(15) })),
        (RuleId.StepLength, "too long", Step("roast-prepare", step => step with { End = At(25) })),
        (RuleId.StepLength, "an option there is not", Step("toast-grill", step => step with { Option = 3 })),
        (RuleId.NotBefore, "a step before the first minute", Moved("roast-prepare", -1)),
        (RuleId.NotBefore, "the plan before the first minute", Plan(plan => plan with { NotBefore = At(-5) })),
        (RuleId.NotBefore, "more than three days ahead", (meal, plan) => (meal with { NotBefore = null }, plan with { NotBefore = At(180 - 4321) })),
        (RuleId.OvenRates, "lit before the first minute", Programme((-1, 20), (14, 20), (30, 180), (130, 180), (150, 80))),
        (RuleId.Gaps, "too soon", Moved("potato-wash", 46)),
        (RuleId.Gaps, "too late", Moved("potato-wash", 10)),
        (RuleId.FixedTimes, "off its fixed start", Moved("cream-whip", 201)),
        (RuleId.FixedTimes, "before its window", Moved("green-trim", 99)),
        (RuleId.FixedTimes, "after its window", MealStep("green-trim", step => step with { Window = new(At(100), At(149)) })),
        (RuleId.HostsChoice, "given to somebody else", MealStep("roast-prepare", step => step with { By = [new("ida")] })),
        (RuleId.HostsChoice, "another option", Step("cream-chill", step => step with { Option = -1 })),
        (RuleId.TableTime, "served early", Both(Course("pudding", course => course with { TableTime = At(239) }), Hold("cream", hold => hold with { To = At(239) }))),
        (RuleId.TableTime, "a course missing", Plan(plan => plan with { Courses = plan.Courses.RemoveAt(1) })),
        (RuleId.TableTime, "a course twice", Plan(plan => plan with { Courses = plan.Courses.Add(plan.Courses[1]) })),
        (RuleId.TableTime, "a course nobody knows", Plan(plan => plan with { Courses = plan.Courses.Add(plan.Courses[1] with { Course = new("tea") }) })),
        (RuleId.TableTime, "another promise", Course("pudding", course => course with { Promised = At(230) })),
        (RuleId.TableTime, "one dish before the others", Hold("greens", hold => hold with { To = At(179) })),
        (RuleId.HoldLimits, "no rest", MealHold("roast", hold => hold with { Least = 61, Limit = 70 })),
        (RuleId.HoldLimits, "too long a wait", MealHold("roast", hold => hold with { Limit = 59 })),
        (RuleId.HoldLimits, "no hold", Plan(plan => plan with { Holds = plan.Holds.RemoveAt(0) })),
        (RuleId.HoldLimits, "two holds", Plan(plan => plan with { Holds = plan.Holds.Add(plan.Holds[0]) })),
        (RuleId.HoldLimits, "a dish nobody knows", Plan(plan => plan with { Holds = plan.Holds.Add(plan.Holds[0] with { Dish = new("soup") }) })),
        (RuleId.HoldLimits, "a hold the dish has not", Hold("roast", hold => hold with { Hold = 1 })),
        (RuleId.HoldLimits, "another place", Hold("roast", hold => hold with { Place = HoldPlace.Side })),
        (RuleId.HoldLimits, "from another minute", Hold("roast", hold => hold with { From = At(121) })),
        (RuleId.WarmHold, "stood out too long", Hold("potatoes", hold => hold with { From = At(151) })),
        (RuleId.WarmHold, "in before it is done", Both(Hold("potatoes", hold => hold with { From = At(129) }), MealHold("potatoes", hold => hold with { Oven = hold.Oven! with { Celsius = new(70, 85, 200) } }, 1))),
        (RuleId.WarmHold, "out before the table", Hold("potatoes", hold => hold with { To = At(179) })),
        (RuleId.WarmHold, "in no oven", Hold("potatoes", hold => hold with { Oven = null })),
        (RuleId.OvenTemperature, "too cold when it goes in", Programme((14, 20), (30, 169), (60, 180), (130, 180), (150, 80))),
        (RuleId.OvenTemperature, "too hot for a minute", Programme((14, 20), (30, 180), (60, 180), (61, 190), (62, 191), (70, 180), (130, 180), (150, 80))),
        (RuleId.OvenTemperature, "too hot for a dish kept warm", Programme((14, 20), (30, 180), (130, 180), (150, 101))),
        (RuleId.OvenTemperature, "lit too late", Programme((20, 20), (36, 180), (130, 180), (150, 80))),
        (RuleId.OvenRates, "heats too fast", Programme((15, 20), (30, 180), (130, 180), (150, 80))),
        (RuleId.OvenRates, "cools too fast", Programme((14, 20), (30, 180), (131, 180), (150, 80))),
        (RuleId.OvenRates, "hot from the start", Programme((0, 180), (130, 180), (150, 80))),
        (RuleId.OvenRates, "points out of order", Programme((14, 20), (30, 180), (130, 180), (150, 80), (190, 80), (185, 80))),
        (RuleId.OvenRates, "an oven nobody knows", Plan(plan => plan with { Ovens = plan.Ovens.Add(plan.Ovens[0] with { Oven = new("stove") }) })),
        (RuleId.OvenLimits, "hotter than it keeps", Oven("oven", oven => oven with { Max = 179 })),
        (RuleId.OvenLimits, "colder than it keeps", Oven("oven", oven => oven with { Min = 81 })),
        (RuleId.Places, "no oven", Step("potato-roast", step => step with { Oven = null })),
        (RuleId.Places, "an oven nobody knows", Step("potato-roast", step => step with { Oven = new("stove") })),
        (RuleId.Places, "not the oven asked for", Way("roast-cook", way => way with { Uses = way.Uses with { Oven = way.Uses.Oven! with { Oven = new("small") } } })),
        (RuleId.Places, "an oven it does not take", Step("green-boil", step => step with { Oven = new("small") })),
        (RuleId.Places, "a grill nobody knows", Step("toast-grill", step => step with { Grill = new("barbecue") })),
        (RuleId.Places, "without its appliance", Step("cream-whip", step => step with { Appliances = [] })),
        (RuleId.Places, "another appliance", Step("cream-whip", step => step with { Appliances = [new("scale")] })),
        (RuleId.Shelves, "too few", Oven("oven", oven => oven with { Shelves = 2 })),
        (RuleId.Rings, "too few", Kitchen(kitchen => kitchen with { Rings = 1 })),
        (RuleId.Grills, "two at once", Both(Way("green-boil", way => way with { Uses = way.Uses with { Grill = new(null) } }), Both(Step("green-boil", step => step with { Grill = new("grill") }), Both(Moved("toast-grill", 169), Hold("toast", hold => hold with { From = At(174) }))))),
        (RuleId.Grills, "inside an oven that is in use", Kitchen(kitchen => kitchen with { Grills = [new(new("grill"), new("oven"))] })),
        (RuleId.Appliances, "more than there are", Kitchen(kitchen => kitchen with { Appliances = [new(new("mixer"), 0)] })),
        (RuleId.OneJobEach, "two steps at once", Both(Moved("roast-prepare", 10), Both(Moved("potato-wash", 29), Step("potato-wash", step => step with { Helpers = [new("sam")] })))),
        (RuleId.OneJobEach, "a tend during a step", Both(Tend(0, tend => tend with { At = At(59) }), Step("potato-wash", step => step with { Helpers = [new("sam")] }))),
        (RuleId.EnoughHands, "one pair too few", Step("cream-whip", step => step with { Helpers = [new("ida")] })),
        (RuleId.EnoughHands, "one pair counted twice", Step("cream-whip", step => step with { Helpers = [new("ida"), new("ida")] })),
        (RuleId.EnoughHands, "hands where none are taken", Step("cream-chill", step => step with { Helpers = [new("ida")] })),
        (RuleId.EnoughHands, "a helper nobody knows", Step("toast-grill", step => step with { Helpers = [new("bo")] })),
        (RuleId.Availability, "before she comes", Helper("ida", helper => helper with { Available = [new(At(141), At(260))] })),
        (RuleId.Availability, "after she leaves", Helper("ida", helper => helper with { Available = [new(At(60), At(209))] })),
        (RuleId.Availability, "a tend before she comes", Tend(0, tend => tend with { At = At(59), Helper = new("ida") })),
        (RuleId.Nights, "hands the night before", Both(DayBefore, Moved("roast-prepare", -600))),
        (RuleId.Nights, "into the night before", Both(DayBefore, Moved("roast-prepare", -739))),
        (RuleId.Skills, "for a step", Helper("sam", helper => helper with { Can = [] })),
        (RuleId.Skills, "for a tend, those of its step", Both(Helper("sam", helper => helper with { Can = ["hot"] }), MealStep("roast-cook", step => step with { Needs = ["knife"] }))),
        (RuleId.Children, "a step that is not for them", MealStep("potato-wash", step => step with { ChildSafe = false })),
        (RuleId.Children, "a tend that is not for them", Both(Tend(0, tend => tend with { At = At(61), Helper = new("kit") }), MealStep("roast-cook", step => step with { ChildSafe = true }))),
        (RuleId.Nearby, "only a child in the kitchen", Both(
            Helper("sam", helper => helper with { Available = [new(At(0), At(165)), new(At(168), At(300))] }),
            Helper("ida", helper => helper with { Available = [new(At(60), At(165)), new(At(168), At(260))] }))),
        (RuleId.Tends, "left out", Plan(plan => plan with { Tends = plan.Tends.RemoveAt(0) })),
        (RuleId.Tends, "done twice", Plan(plan => plan with { Tends = plan.Tends.Add(plan.Tends[0] with { Helper = new("ida") }) })),
        (RuleId.Tends, "too late", Tend(0, tend => tend with { At = At(64) })),
        (RuleId.Tends, "too long", Tend(0, tend => tend with { Minutes = 2 })),
        (RuleId.Tends, "a turn too many", Tend(1, tend => tend with { Turn = 2 })),
        (RuleId.Tends, "by a helper nobody knows", Tend(0, tend => tend with { Helper = new("bo") })),
        (RuleId.Tends, "after its step", Both(
            MealStep("roast-cook", step => step with { Tends = [new("turn", 2, null, -1, 3, false)] }),
            Plan(plan => plan with { Tends = [plan.Tends[0] with { At = At(119), Minutes = 2 }] }))),
    ];

    /// <summary>Where it is ten in the morning at minute 0, and work may begin the day before.</summary>
    static Change DayBefore => (meal, plan) => (
        meal with { NotBefore = At(-1000), TimeZone = TimeZoneInfo.CreateCustomTimeZone("ten hours ahead", TimeSpan.FromHours(10), null, null) },
        plan with { NotBefore = At(-1000) });

    static Change Both(Change one, Change other) => (meal, plan) =>
    {
        var changed = one(meal, plan);
        return other(changed.Meal, changed.Plan);
    };

    static Change Plan(Func<Plan, Plan> change) => (meal, plan) => (meal, change(plan));

    static Change Step(string id, Func<PlannedStep, PlannedStep> change) =>
        Plan(plan => plan with { Steps = [.. plan.Steps.Select(step => step.Step.Value == id ? change(step) : step)] });

    static Change Moved(string id, int start) => Step(id, step => step with { Start = At(start), End = At(start) + step.Minutes });

    static Change Tend(int index, Func<PlannedTend, PlannedTend> change) => Plan(plan => plan with { Tends = plan.Tends.SetItem(index, change(plan.Tends[index])) });

    static Change Hold(string dish, Func<PlannedHold, PlannedHold> change) =>
        Plan(plan => plan with { Holds = [.. plan.Holds.Select(hold => hold.Dish.Value == dish ? change(hold) : hold)] });

    static Change Course(string id, Func<PlannedCourse, PlannedCourse> change) =>
        Plan(plan => plan with { Courses = [.. plan.Courses.Select(course => course.Course.Value == id ? change(course) : course)] });

    static Change Programme(params (int, int)[] points) => Plan(plan => plan with { Ovens = new PlanBuilder(Lunch).Programme("oven", points).Ovens });

    static Change MealStep(string id, Func<Step, Step> change) => (meal, plan) =>
        (meal with { Dishes = [.. meal.Dishes.Select(dish => dish with { Steps = [.. dish.Steps.Select(step => step.Id.Value == id ? change(step) : step)] })] }, plan);

    static Change Way(string id, Func<Way, Way> change) => MealStep(id, step => step with { Way = change(step.Way) });

    static Change MealHold(string id, Func<Hold, Hold> change, int index = 0) => (meal, plan) =>
        (meal with { Dishes = [.. meal.Dishes.Select(dish => dish.Id.Value == id ? dish with { Holds = dish.Holds.SetItem(index, change(dish.Holds[index])) } : dish)] }, plan);

    static Change Helper(string id, Func<Helper, Helper> change) => (meal, plan) =>
        (meal with { Helpers = [.. meal.Helpers.Select(helper => helper.Id.Value == id ? change(helper) : helper)] }, plan);

    static Change Kitchen(Func<Kitchen, Kitchen> change) => (meal, plan) => (meal with { Kitchen = change(meal.Kitchen) }, plan);

    static Change Oven(string id, Func<Oven, Oven> change) =>
        Kitchen(kitchen => kitchen with { Ovens = [.. kitchen.Ovens.Select(oven => oven.Id.Value == id ? change(oven) : oven)] });
}
