using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7020", "liqueur-short", "A house liqueur has too little sugar or strength for its name", Level.Error,
    Needs = [Fact.Abv, Fact.Sugar], IsConsequence = true)]
internal sealed partial class LiqueurShort : PrepRule
{
    // Sucrose gives 360.31/342.30 of its mass in invert sugar (molar masses), and all of it is counted as sucrose here.
    private const double ToInvert = 360.31 / 342.30;

    private static readonly LegalName[] Categories = [.. NameTable.All.Where(n => n.Kind == "category" && !double.IsNaN(n.SugarAtLeast))];

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Name.IsGiven || LongestName(context, prep.Name.Value) is not var (law, word)) return;
        var sugar = context.Fact(Fact.Sugar);
        var abv = context.Fact(Fact.Abv);
        bool sweet = sugar.IsKnown && 10 * ToInvert * sugar.High < law.SugarAtLeast;
        bool weak = abv.IsKnown && abv.High < law.StrengthAtLeast;
        bool declared = !weak && prep.Declares is { Abv.IsGiven: true } says && says.Abv.Value.Base < law.StrengthAtLeast;
        if (!sweet && !weak && !declared) return;
        string what = sweet
            ? $"holds {Say.Range(10 * ToInvert * sugar.Value, 10 * ToInvert * sugar.Low, 10 * ToInvert * sugar.High, "g/L")} of sugar as "
                + $"invert sugar, below {Say.Number(law.SugarAtLeast)} g/L"
            : (declared ? $"is declared at {Say.Number(prep.Declares!.Abv.Value.Base)} % vol" : $"comes to {Say.Fact(Fact.Abv, abv)}")
                + $", below {Say.Number(law.StrengthAtLeast)} % vol";
        context.Report(new(Rule)
        {
            // The law is about what is sold by the name; where it is made, the name is worth a word before somebody prints it.
            AskedLevel = Sold.IsSold(context, prep) ? law.LevelCap : Level.Note,
            At = context.At(prep.Name.Span, "name"),
            Message = $"It is named {word}, and {what} ({law.Source}).",
            Advice = (sweet ? $"Raise the sugar to {Say.Number(law.SugarAtLeast)} g/L" : "Make it stronger")
                + $", or leave the word {word} out of its name.",
            Evidence =
            [
                Proof.Of(Fact.Sugar, sugar), Proof.Of(Fact.Abv, abv),
                Proof.Of($"{word}, least sugar", law.SugarAtLeast, "g/L", law.Source),
                Proof.Of($"{word}, least strength", law.StrengthAtLeast, "%{vol}", law.Source),
            ],
        });
    }

    /// <summary>The law that the longest word of a name goes by, and that word; <see langword="null"/> where there is none.</summary>
    private static (LegalName Law, string Word)? LongestName(RecipeContext context, string name)
    {
        (LegalName Law, string Word)? found = null;
        foreach (var law in Categories)
        {
            foreach (string term in law.Terms)
            {
                // The last words say what a thing is; "crème de" is the start of such a name.
                bool isNamed = term.EndsWith(" de", StringComparison.Ordinal)
                    ? WordSearch.Has(name, term)
                    : WordSearch.EndsWith(name, term);
                if (!isNamed || term.Length <= (found?.Word.Length ?? 0) || !law.AppliesIn(context.Settings)) continue;
                if (!law.NeedsSpirit || SpiritNameUnderStrength.HoldsSpirit(context)) found = (law, term);
            }
        }

        return found;
    }
}
