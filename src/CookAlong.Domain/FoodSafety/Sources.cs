namespace CookAlong.Domain.FoodSafety;

/// <summary>The publications behind the limits.</summary>
static class Sources
{
    public static readonly Source UsChart = new("USDA FSIS", "Safe Minimum Internal Temperature Chart", null, "foodsafety.gov, text since 2011");
    public static readonly Source UkCooking = new("UK Food Standards Agency", "Cooking time and temperature combinations (Safer food, better business)", null, "equivalents of 70 °C for 2 minutes");
    public static readonly Source Canada = new("Health Canada", "Safe internal cooking temperatures", 2012, "page issued again on 2024-06-04");
    public static readonly Source UkHygiene = new("UK Parliament", "Food Safety and Hygiene (England) Regulations 2013; Food Hygiene (Wales) Regulations 2006", 2013, "Schedule 4, paragraphs 6 and 7");
    public static readonly Source UkChill = new("UK Parliament", "Food Safety and Hygiene (England) Regulations", 2013, "Schedule 4, paragraph 2");
    public static readonly Source Scottish = new("Scottish Government", "Food Hygiene (Scotland) Regulations", 2006, "Schedule 4");
    public static readonly Source UsHome = new("USDA FSIS", "Advice to homes", null, "danger zone 40 to 140 °F; two-hour rule");
    public static readonly Source FoodCode = new("US FDA", "Food Code", 2017, "3-501.14");
    public static readonly Source UkHome = new("UK Food Standards Agency", "Home food safety advice", null, "leftovers");
    public static readonly Source FoodKeeper = new("USDA FSIS", "FoodKeeper", null, "deli and prepared foods");
    public static readonly Source ColdChart = new("US HHS and USDA", "Cold Food Storage Chart", null, "foodsafety.gov");
    public static readonly Source UsThaw = new("USDA FSIS", "Turkey thawing tables", null, "in the refrigerator; in cold water");
    public static readonly Source UkThaw = new("UK Food Standards Agency", "Advice on thawing a turkey", null, "hours a kilogram");
}
