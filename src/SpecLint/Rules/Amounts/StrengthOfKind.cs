using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Amounts;

[Rule("SL2027", "strength-of-another-kind", "A strength that this kind of ingredient cannot have", Level.Error, IsCause = true)]
[Limit("strength-of-wine-most", "Wine")]
internal sealed partial class StrengthOfKind : IngredientRule
{
    public override void Check(FileContext context, Ingredient ingredient)
    {
        if (!ingredient.Values.TryGetValue("strength", out var strength)) return;
        if (context.Profiles.MaterialOf(ingredient.Id) is not { } material || StrengthTable.Find(material.Kind.Id) is not { } kind) return;
        if (strength.Low <= kind.High && strength.High >= kind.Low)
        {
            HoldToItsName(context, ingredient, strength, material.Kind);
            HoldToItsKind(context, ingredient, strength, material.Kind);
            return;
        }

        // What it is like says more than its kind: an aperitif of 11 % vol, a distillate without alcohol.
        if (ProofForStrength.IsProof(context, ingredient, out _) || IsAsWhatItIsLike(ingredient, strength)) return;

        // An alcohol-free spirit or aperitif stands in the place of one.
        if (strength.High < Guards.AlcoholFreeStandIn && kind.Low > 0) return;
        bool over = strength.Low > kind.High;
        double tenth = over ? strength.Typical / 10 : strength.Typical * 10;
        bool isTen = tenth >= kind.Low && tenth <= kind.High && kind.High > Guards.TenfoldKind;
        string text = $"{Say.Number(tenth)} % v/v";
        context.Report(new(Rule)
        {
            At = context.At(strength.Span, "strength"),
            AskedLevel = kind.Mark == Mark.Memory ? Level.Warning : null,
            Message = $"{Say.Number(strength.Typical)} % vol is {(over ? "above" : "below")} the possible strengths of the kind "
                + $"`{material.Kind}`, {Say.Number(kind.Low)}–{Say.Number(kind.High)} % vol ({kind.Source}).",
            Advice = isTen
                ? $"Write {text} if the decimal point is wrong. Otherwise correct the kind."
                : "Correct the strength, or the kind.",
            Evidence = [Proof.Of("strength", strength.Typical, "%{vol}"), Proof.Of("most", kind.High, "%{vol}", kind.Source)],
            Corrections = context.Write(strength.Span, isTen && Written.IsQuoted(context, strength.Span) ? text : null),
        });
    }

    /// <summary>A spirit weaker than the law of the bar's country lets a thing of its name be.</summary>
    private static void HoldToItsName(FileContext context, Ingredient ingredient, SourcedValue strength, ItemKind kind)
    {
        if (!ingredient.Name.IsGiven || !kind.IsSpirit || strength.High < Guards.AlcoholFreeStandIn) return;
        if (Labels.SpiritNameUnderStrength.Strictest(context.Settings, ingredient.Name.Value, static () => true) is not { } found) return;
        var (word, least, source) = (found.Word, found.Law.StrengthAtLeast, found.Law.Source);
        if (strength.High >= least) return;
        context.Report(new(Rule)
        {
            At = context.At(strength.Span, "strength"),

            // Half of it is no weak bottling but a digit that slipped, or another thing.
            AskedLevel = strength.High < least / 2 ? null : Level.Warning,
            Message = $"It is named {word}, and {Say.Number(strength.Typical)} % vol is below the minimum of {Say.Number(least)} % vol "
                + $"for {word} ({source}).",
            Advice = "Read the label again: correct the strength, or name it as the label does.",
            Evidence = [Proof.Of("strength", strength.Typical, "%{vol}"), Proof.Of($"{word}, least strength", least, "%{vol}", source)],
        });
    }

    /// <summary>
    /// A weak spirit that is called after a wine, vermouth or the like of its strength is one of those, under the wrong kind.
    /// </summary>
    private static void HoldToItsKind(FileContext context, Ingredient ingredient, SourcedValue strength, ItemKind kind)
    {
        if (!kind.IsSpirit || !ingredient.IngredientKind.IsGiven || ingredient.Like.IsGiven || strength.Typical > Wine.Value) return;
        foreach (string word in Namesakes.WordsOf(ingredient))
        {
            if (KindTable.Find(word) is not { IsSpirit: false, IsLiqueur: false, IsBottled: true } other
                || StrengthTable.Find(other.Id) is not { } usual)
                continue;
            if (strength.Typical < usual.Low || strength.Typical > usual.High) continue;
            context.Report(new(Rule)
            {
                AskedLevel = Level.Warning,
                At = context.At(ingredient.IngredientKind.Span, "kind"),
                Message = $"It is entered as `{kind.Id}` and called {word}: at {Say.Number(strength.Typical)} % vol it is a "
                    + $"{other.Id.Replace('-', ' ')}, which has {Say.Number(usual.Low)}–{Say.Number(usual.High)} % vol ({usual.Source}).",
                Advice = $"Write the kind `{other.Id}`: how long it keeps, its allergens and its name go by it.",
                Evidence = [Proof.Of("strength", strength.Typical, "%{vol}"), Proof.Of("kind called", other.Id)],
            });
            return;
        }
    }

    private static bool IsAsWhatItIsLike(Ingredient ingredient, SourcedValue strength) =>
        ingredient.Like.IsGiven
        && BuiltInCatalogue.Find(ingredient.Like.Value) is { } like && like.Values.TryGetValue("strength", out var known)
        && strength.Typical >= known.Low - LikeMargin && strength.Typical <= known.High + LikeMargin;

    /// <summary>How far a bottle may lie from what it is like, % vol: makers differ by this much.</summary>
    private const double LikeMargin = 1;
}
