using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

/// <summary>Which published heat process a food asks for, and whether a step meets it.</summary>
internal static class HeatedFood
{
    /// <summary>g in 100 g of sugar or salt from which the table of egg has a row of its own.</summary>
    private const double Added = 2;

    /// <summary>
    /// g in 100 g of fat, or of dry matter, from which milk is heated as cream (Pasteurized Milk Ordinance, definition of
    /// pasteurization).
    /// </summary>
    private const double CreamFat = 10, CreamSolids = 18;

    /// <summary>The product whose table applies to a preparation; <see langword="null"/> where none does.</summary>
    public static HeatedProduct? ProductOf(RecipeProfile profile)
    {
        bool egg = false, white = true, yolk = true, dairy = false, apple = false;
        double sugar = 0, salt = 0, fat = 0, water = 0, all = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Material is not { } material || part.Phase == PartPhase.Beside) continue;
            egg |= RecipeTree.AnyIn(part, profile, static m => m.Kind.IsEgg);
            white &= !RecipeTree.AnyIn(part, profile, static m => m.Kind.IsEgg && !Substances.IsEggWhite(m));
            yolk &= !RecipeTree.AnyIn(part, profile, static m => m.Kind.IsEgg && !IsYolk(m));
            dairy |= RecipeTree.AnyIn(part, profile, static m => m.Kind.IsDairy);
            apple |= RecipeTree.AnyIn(
                part, profile, static m => m.Kind.IsJuice && (Phrases.Has(m.Id, "apple") || Phrases.Has(m.Id, "cider")));
            if (!part.IsWeighed) continue;
            all += part.Grams.Typical;
            salt += part.Grams.Typical * material.Of(Component.SodiumChloride);
            fat += part.Grams.Typical * material.Of(Component.Fat);
            water += part.Grams.Typical * material.Of(Component.Water);
            for (var c = Components.FirstSugar; c <= Components.LastSugar; c++)
            {
                if (c != Component.Lactose) sugar += part.Grams.Typical * material.Of(c);
            }
        }

        bool sweet = 100 * sugar >= Added * all, salted = 100 * salt >= Added * all;
        if (egg && dairy) return HeatedProduct.EggNog;
        if (egg)
        {
            // White with sugar has no row of its own: the stricter one of whole egg.
            if (white && !sweet && !salted) return HeatedProduct.EggWhite;
            if (yolk) return sweet ? HeatedProduct.SweetenedYolk : salted ? HeatedProduct.SaltedYolk : HeatedProduct.Yolk;
            return sweet ? HeatedProduct.SweetenedWholeEgg : salted ? HeatedProduct.SaltedWholeEgg : HeatedProduct.WholeEgg;
        }

        if (!dairy) return apple ? HeatedProduct.AppleJuice : null;
        return sweet || 100 * fat >= CreamFat * all || 100 * (all - water) >= CreamSolids * all ? HeatedProduct.Cream : HeatedProduct.Milk;
    }

    private static bool IsYolk(Material egg) => Phrases.Has(egg.Id, "yolk") || egg.Of(Component.Fat) > 0.2;

    /// <summary>Whether a step gives a temperature and a time that meet a row of a product's table.</summary>
    public static bool Meets(HeatedProduct product, Step step)
    {
        if (KeepingWords.HeatOf(step) is not { IsGiven: true } heat
            || step.For is not { IsGiven: true, Value.Dimension: Dimension.Duration }
            || !WetHeat.IsPossible(step))
            return false;
        var t = new Celsius(heat.Value.BaseLow);
        ReadOnlySpan<TemperatureReading> record = [new(0, t), new(step.For.Value.BaseLow / 60, t)];
        return HeatProcesses.Meets(product, record) == true;
    }
}
