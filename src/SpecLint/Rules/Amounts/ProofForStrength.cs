using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Rules.Labels;

namespace SpecLint.Rules.Amounts;

[Rule("SL2026", "proof-for-strength", "Proof written as per cent by volume", Level.Error, IsCause = true, Needs = [Fact.Abv])]
[Limit("amount-strength-most", "Most")]
[Limit("amount-proof-apart", "Apart")]
internal sealed partial class ProofForStrength : FileRule
{
    /// <summary>
    /// Whether an ingredient's strength is proof: twice what its kind can hold, or over 75 where half of it is what the
    /// thing it is like holds.
    /// </summary>
    internal static bool IsProof(BookContext context, Ingredient ingredient, out double half)
    {
        half = double.NaN;
        if (!ingredient.Values.TryGetValue("strength", out var strength)
            || strength.Dimension == Dimension.Proof
            || SaysProof(ingredient, strength.Typical))
            return false;
        half = strength.Typical / 2;
        if (context.Profiles.MaterialOf(ingredient.Id) is not { } material) return false;
        var parent = ingredient.Like.IsGiven && context.Book.Resolve(ingredient.Like.Value) is { File: Ingredient like } ? like : null;
        var typical = parent is not null && parent.Values.TryGetValue("strength", out var usual) ? usual : null;
        if (typical is not null)
        {
            // The thing it is like tells what half should be; its own range is widened for stronger bottlings.
            return strength.Typical > typical.High * Guards.ProofOver
                && half >= typical.Low * Guards.ProofLow
                && half <= typical.High * Guards.ProofHigh
                && strength.Typical > Most.Value;
        }

        var kind = StrengthTable.Find(material.Kind.Id);
        if (kind is not null && kind.High > Guards.KindStrength && strength.Typical > kind.High && half <= kind.High && half >= kind.Low)
            return true;
        return material.Kind.IsSpirit
            && strength.Typical > Most.Value
            && strength.Typical < Guards.RectifiedStrength
            && strength.Typical >= Guards.OverproofStrength
            && !IsNamedStrong(ingredient);
    }

    public override void Check(FileContext context)
    {
        if (context.File is Ingredient ingredient)
        {
            if (!IsProof(context, ingredient, out double half)) return;
            var strength = ingredient.Values["strength"];
            Report(
                context, "strength", strength.Span, strength.Typical,
                $"{Say.Number(strength.Typical)} % vol is more than such an ingredient has, and half of it, {Say.Number(half)} %, is "
                    + "usual");
            return;
        }

        if (context is not RecipeContext { Recipe.Declares.Abv: { IsGiven: true } declared } recipe) return;
        if (declared.Value.Dimension is not (Dimension.PercentByVolume or Dimension.PercentOfUnknownBasis)) return;
        var abv = recipe.Fact(Fact.Abv);
        if (!abv.IsKnown || abv.Value < Guards.LeastStrengthForRatio) return;
        double ratio = declared.Value.Value / abv.Value;
        if (Math.Abs(ratio - Guards.ProofRatio) > Guards.ProofRatio * Apart.Value / 100) return;
        Report(
            context, "declares.abv", declared.Span, declared.Value.Value,
            $"The declared {Say.Number(declared.Value.Value)} % vol is twice what the recipe comes to, {Say.Fact(Fact.Abv, abv)}");
    }

    /// <summary>Whether the name or a note gives the proof, twice the strength: then the strength is no proof.</summary>
    private static bool SaysProof(Ingredient ingredient, double strength)
    {
        string proof = Say.Number(strength * Guards.ProofRatio, 1);
        return WordSearch.Find(ingredient.Name.Or(""), proof) >= 0
            || ingredient.Notes.Any(n => n.IsGiven && WordSearch.Find(n.Value, proof) >= 0);
    }

    /// <summary>Whether the name or the id is one of what is bottled stronger than others.</summary>
    private static bool IsNamedStrong(Ingredient ingredient)
    {
        string name = ingredient.Name.Or("");
        foreach (string word in Strong)
        {
            if (name.IndexOf(word, StringComparison.OrdinalIgnoreCase) >= 0) return true;
            if (ingredient.Id.IndexOf(word, StringComparison.Ordinal) >= 0) return true;
        }

        return false;
    }

    private static readonly string[] Strong = ["overproof", "neutral", "rectified", "absinthe", "navy"];

    private static void Report(FileContext context, string path, TextSpan span, double value, string words)
    {
        string half = $"{Say.Number(value / 2)} % v/v";
        context.Report(new(Rule)
        {
            At = context.At(span, path),
            Message = $"{words}. It looks like US proof, which is twice the strength (27 CFR 5.1).",
            Advice = $"Write {half}, or `{Say.Number(value)} proof`.",
            Evidence = [Proof.Of("stated", value, "%{vol}"), Proof.Of(Apart)],
            Corrections = context.Write(span, Written.IsQuoted(context, span) ? half : null),
        });
    }
}
