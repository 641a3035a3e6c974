using AngleSharp.Dom;

namespace CookAlong.Intake.Recipes;

/// <summary>schema.org's Recipe as microdata: in the attributes of a page's own words.</summary>
static class RecipeMarkup
{
    /// <summary>Null when there is none.</summary>
    public static RecipeRead? Read(INode page) => All(page).FirstOrDefault(IsRecipe) is { } recipe
        ? RecipePage.Marked(name => Values(recipe, name), Own(recipe, "recipeInstructions").SelectMany(Steps))
        : null;

    static bool IsRecipe(IElement element) => element.GetAttribute("itemtype")?.Split(' ').Any(type => type.EndsWith("schema.org/Recipe", StringComparison.OrdinalIgnoreCase)) == true;

    static IEnumerable<string> Values(IElement recipe, string name) =>
        Own(recipe, name).SelectMany(one => Outermost(one, item => item.LocalName == "x-li").ToList() is { Count: > 0 } items ? items.Select(Value) : [Value(one)]).Where(one => one.Length > 0);

    static string Value(IElement element) => element.GetAttribute("content") ?? element.GetAttribute("datetime") ?? string.Join(' ', PageText.Lines(element));

    /// <summary>Sections hold steps, and steps their text (schema.org: itemListElement of HowToSection, text of HowToStep); else each item, else each line.</summary>
    static IEnumerable<string> Steps(IElement element) =>
        Outermost(element, one => Is(one, "itemListElement") || Is(one, "step") || Is(one, "steps")).ToList() is { Count: > 0 } parts ? parts.SelectMany(Steps)
        : Outermost(element, one => Is(one, "text")).ToList() is { Count: > 0 } texts ? texts.Select(Value).Where(text => text.Length > 0)
        : Outermost(element, one => one.LocalName == "x-li").ToList() is { Count: > 0 } items ? items.Select(Value).Where(text => text.Length > 0)
        : element.GetAttribute("content") is { } content ? [content]
        : PageText.Lines(element);

    static bool Is(IElement element, string property) => element.GetAttribute("itemprop")?.Split(' ').Contains(property) == true;

    /// <summary>The recipe's own, not those of an author or a rating inside it.</summary>
    static IEnumerable<IElement> Own(IElement item, string property)
    {
        foreach (var child in item.Children)
        {
            if (Is(child, property))
            {
                yield return child;
            }
            else if (!child.HasAttribute("itemscope"))
            {
                foreach (var one in Own(child, property))
                {
                    yield return one;
                }
            }
        }
    }

    /// <summary>Those below it that lie in no other of the kind.</summary>
    static IEnumerable<IElement> Outermost(IElement element, Func<IElement, bool> isMeant)
    {
        foreach (var child in element.Children)
        {
            if (isMeant(child))
            {
                yield return child;
                continue;
            }

            foreach (var one in Outermost(child, isMeant))
            {
                yield return one;
            }
        }
    }

    static IEnumerable<IElement> All(INode page) => page.GetDescendants().OfType<IElement>();
}
