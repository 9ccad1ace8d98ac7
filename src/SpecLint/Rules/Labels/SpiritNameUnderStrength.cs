using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7019", "spirit-name-under-strength", "It is named after a spirit but is below that spirit's minimum strength", Level.Error,
    Needs = [Fact.Abv], IsConsequence = true)]
internal sealed partial class SpiritNameUnderStrength : PrepRule
{
    // Liqueurs that may bear these names in the EU and GB; in the US they are fruit brandies of 40 % vol.
    private static readonly string[] FruitBrandies = ["cherry brandy", "apricot brandy", "orange brandy", "prune brandy"];

    private static readonly LegalName[] Categories =
        [.. NameTable.All.Where(n => n.Kind == "category" && !double.IsNaN(n.StrengthAtLeast) && double.IsNaN(n.SugarAtLeast))];

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Name.IsGiven) return;
        if (Strictest(context.Settings, prep.Name.Value, () => HoldsSpirit(context)) is not var (strictest, word)) return;
        var abv = context.Fact(Fact.Abv);
        if (!abv.IsKnown || abv.High >= strictest.StrengthAtLeast) return;
        context.Report(new(Rule)
        {
            // The law is about what is sold by the name; where it is made, the name is worth a word before somebody prints it.
            AskedLevel = Sold.IsSold(context, prep) ? strictest.LevelCap : Level.Note,
            At = context.At(prep.Name.Span, "name"),
            Message = $"It is named {word} and comes to {Say.Fact(Fact.Abv, abv)}, below the minimum of "
                + $"{Say.Number(strictest.StrengthAtLeast)} % vol for {word} ({strictest.Source}).",
            Advice = $"Name it for what it is, e.g. \"{prep.Name.Value} infusion\" or \"{prep.Name.Value} preparation\", or use a "
                + $"stronger {word}.",
            Evidence =
                [Proof.Of(Fact.Abv, abv), Proof.Of($"{word}, least strength", strictest.StrengthAtLeast, "%{vol}", strictest.Source)],
        });
    }

    /// <summary>
    /// The strictest law on the strength of what a name says it is, and its word; <see langword="null"/> where there is none.
    /// </summary>
    internal static (LegalName Law, string Word)? Strictest(Settings settings, string named, Func<bool> holdsSpirit)
    {
        LegalName? strictest = null;
        string word = "";
        foreach (var name in Categories)
        {
            string? term = TermOf(named, name);
            if (term is null || term.Length < word.Length || !name.AppliesIn(settings) || (name.NeedsSpirit && !holdsSpirit())) continue;
            if (strictest is not null && term.Length == word.Length && name.StrengthAtLeast <= strictest.StrengthAtLeast) continue;
            (strictest, word) = (name, term);
        }

        return strictest is null ? null : (strictest, word);
    }

    private static string? TermOf(string name, LegalName legal)
    {
        foreach (string term in legal.Terms)
        {
            if (term.Length == 0 || !WordSearch.EndsWith(name, term)) continue;
            if (term == "brandy" && !legal.Jurisdictions.Contains("US") && IsFruitBrandy(name)) continue;
            return term;
        }

        return null;
    }

    private static bool IsFruitBrandy(string name) => Array.Exists(FruitBrandies, f => WordSearch.EndsWith(name, f));

    /// <summary>Whether a spirit or liqueur is in it.</summary>
    internal static bool HoldsSpirit(RecipeContext context) =>
        RecipeTree.First(context.Profile, IsStrong) is not null;

    private static bool IsStrong(Ingredient ingredient) =>
        ingredient.IngredientKind.OrNone() is { IsSpirit: true } or { IsLiqueur: true } or { IsBitters: true };
}
