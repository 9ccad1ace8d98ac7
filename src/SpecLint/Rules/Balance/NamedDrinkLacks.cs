using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3031", "named-drink-lacks-part", "A drink of a well-known name without what it is made with", Level.Note)]
internal sealed partial class NamedDrinkLacks : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (!drink.Name.IsGiven) return;
        string name = drink.Name.Value, plain = NamedDrinkTable.Plain(name);
        var told = Promised(context, drink, plain);
        if (NamedDrinkTable.Find(plain, out string[] before) is not { } known) return;
        foreach (var part in known.Parts)
        {
            if (IsIn(context, part) || told.Exists(t => t.What == part.What)) continue;
            if (part.IsBase && (NamedDrinkTable.IsWithoutAlcohol(before) || NamesAnotherBase(context, before))) continue;
            context.Report(new(Rule)
            {
                At = context.At(drink.IngredientsSpan, "ingredients"),
                Key = part.What,
                Message = $"\"{name}\" is called a {known.Names[0]}, which is made with {part.What} ({known.Source}), and no line has any.",
                Advice = "Look for a line that was left out, or for an item that slipped. If it is meant, say in the name or the menu "
                    + "what guests get.",
                Evidence = [Proof.Of("name", name, context.At(drink.Name.Span))],
            });
        }
    }

    /// <summary>Tells of each spirit that the name says and the drink does not hold.</summary>
    private List<NamedPart> Promised(RecipeContext context, Drink drink, string plain)
    {
        var told = new List<NamedPart>();
        foreach (var spirit in NamedDrinkTable.SpiritsIn(plain))
        {
            if (told.Contains(spirit) || IsIn(context, spirit)) continue;
            told.Add(spirit);
            context.Report(new(Rule)
            {
                AskedLevel = Level.Warning,
                At = context.At(drink.Name.Span, "name"),
                Key = spirit.What,
                Message = $"Guests read \"{drink.Name.Value}\", and no line has any {spirit.What} (Reg (EU) 1169/2011 Art 7: what is "
                    + "said about a food must not mislead).",
                Advice = "Look for an item that slipped, or change the name.",
                Related = [context.See(drink.IngredientsSpan, "the lines")],
            });
        }

        return told;
    }

    /// <summary>Whether the words before the name are those of another part with alcohol: "Mezcal Negroni".</summary>
    private static bool NamesAnotherBase(RecipeContext context, string[] before)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (!part.Line.Item.IsGiven || part.Material?.Of(Science.Component.Ethanol) is not > 0) continue;
            foreach (string word in before)
            {
                if (NamedDrinkTable.Holds(part.Line.Item.Value, word)) return true;
                if (part.Item is { } item && NamedDrinkTable.Holds(item.CountsAs, word)) return true;
            }
        }

        return false;
    }

    /// <summary>
    /// By the ids of the lines, of what their preparations hold, and of what a house's own ingredient is like. What nothing is known of may
    /// be anything.
    /// </summary>
    private static bool IsIn(RecipeContext context, NamedPart named)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (!part.Line.Item.IsGiven || part.Item is not { } item || NamedDrinkTable.Holds(named, part.Line.Item.Value)) return true;
            if (NamedDrinkTable.Holds(named, item.CountsAs)) return true;
            if (item.File.Name.IsGiven && NamedDrinkTable.Holds(named, BuiltInCatalogue.Slug(item.File.Name.Value))) return true;
        }

        foreach (var leaf in RecipeTree.Of(context.Profile))
        {
            if (NamedDrinkTable.Holds(named, leaf.Ingredient.Id)) return true;
            if (leaf.Ingredient.Like.IsGiven && NamedDrinkTable.Holds(named, leaf.Ingredient.Like.Value)) return true;
        }

        return false;
    }
}
