using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>Why a preparation needs cold unless its pH or water activity shows otherwise; the worse, the later.</summary>
internal enum Perishable
{
    /// <summary>Nothing in it does.</summary>
    None,

    /// <summary>A plant part: fruit, herb, vegetable, flower, brewed coffee or tea.</summary>
    Plant,

    /// <summary>Juice or purée.</summary>
    Juice,

    /// <summary>Cut melon, cut tomato or cut leaves: controlled by name in Food Code 1-201.10.</summary>
    ListedPlant,

    /// <summary>Nut, coconut or pulse.</summary>
    NutOrPulse,

    /// <summary>Milk and what is made of it.</summary>
    Dairy,

    /// <summary>Egg.</summary>
    Egg,
}

/// <summary>Tells which parts of a preparation need cold.</summary>
internal static class Perishables
{
    /// <summary>Whether the Food Code names such food as controlled (raw or heated animal food, cut melon, tomato, leaves).</summary>
    public static bool IsListed(Perishable what) => what is Perishable.ListedPlant or Perishable.Dairy or Perishable.Egg;

    /// <summary>What a catalogue ingredient or one of the bar is.</summary>
    public static Perishable Of(Material material)
    {
        if (material.Ingredient is not { } ingredient) return Perishable.None;
        string animal = ingredient.Animal.Or("none");
        bool cold = ingredient.KeepsCold.Or(false);
        switch (material.Kind)
        {
            case "dairy": return Perishable.Dairy;
            case "egg": return Perishable.Egg;
            case "plant-milk": return Perishable.NutOrPulse;
            case "nut": return Perishable.NutOrPulse;
            case "fat": return cold && animal == "milk" ? Perishable.Dairy : Perishable.None;
            case "foaming-agent": return cold ? Perishable.NutOrPulse : Perishable.None;
            case "fruit" or "vegetable" or "herb" or "garnish" when cold: return IsListedPlant(ingredient.Id) ? Perishable.ListedPlant : Perishable.Plant;
            case "juice" or "puree" when cold: return IsListedPlant(ingredient.Id) ? Perishable.ListedPlant : Perishable.Juice;
            case "flower" or "coffee" or "tea" or "ferment" or "sauce" or "other" when cold: return Perishable.Plant;
            case "syrup" when cold: return animal == "milk" ? Perishable.Dairy : animal == "egg" ? Perishable.Egg : HoldsNut(ingredient) ? Perishable.NutOrPulse : Perishable.None;
            default: return Perishable.None;
        }
    }

    private static bool HoldsNut(Ingredient ingredient)
    {
        if (ingredient.Allergens is not { } allergens) return false;
        foreach (string token in allergens.Contains)
        {
            if (token is "almond" or "hazelnut" or "walnut" or "cashew" or "pecan" or "brazil-nut" or "pistachio" or "macadamia" or "pine-nut" or "coconut" or "peanut" or "soybean") return true;
        }

        return false;
    }

    private static bool IsListedPlant(string id) =>
        id.IndexOf("melon", StringComparison.Ordinal) >= 0 || id.IndexOf("cantaloupe", StringComparison.Ordinal) >= 0
        || id.IndexOf("honeydew", StringComparison.Ordinal) >= 0 || id is "tomato" or "cherry-tomato" or "tomato-water" or "spinach" or "watercress";
}
