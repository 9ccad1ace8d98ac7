using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Balance;

[Rule("SL3021", "acid-curdles-dairy", "Milk or cream with so much acid that it curdles", Level.Warning, Needs = [Fact.Acid])]
[Limit("curdling-acid", "Most")]
internal sealed partial class AcidCurdlesDairy : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        // White of egg keeps cream in a fizz from splitting, and sour milks have curdled in peace.
        if (Clarifies(context.Recipe) || Builds.First(context.Profile, Substances.IsEggWhite) is not null) return;
        if (First(context.Profile) is not { } dairy) return;
        var acid = context.Fact(Fact.Acid);
        if (Findings.Check.AtMost(acid, Most.Value) != Stand.Broken || Sours(context.Profile) is not { } sour) return;
        context.Report(new(Rule)
        {
            At = context.At(dairy.Line.Span, RecipeContext.PathOf(dairy.Line)),
            Message = $"{dairy.Line.Item.Or("The milk")} meets {sour.Line.Item.Or("acid")}: the acid comes to "
                + $"{Say.Fact(Fact.Acid, acid)}, above the {Say.With(Most.Value, "g/100 mL")} at which milk protein sets, so it "
                + $"curdles in the glass ({Most.Source}).",
            Advice = "Take out the sour part, or use coconut or another cream that tolerates acid. If it is meant to curdle, strain off "
                + "the curds and say so in the method.",
            Evidence = [Proof.Of(Fact.Acid, acid), Proof.Of(Most)],
            Related = [context.See(sour.Line.Span, "what sours it")],
        });
    }

    /// <summary>Curds that are strained off are the point of a milk wash.</summary>
    private static bool Clarifies(Recipe recipe)
    {
        if (recipe is Prep { Family.IsGiven: true } prep && !prep.Family.Value.IsSmooth) return true;
        foreach (var step in recipe.Method)
        {
            if (step.Verb.Clarifies || step.Verb.Straining == Straining.Clear) return true;
        }

        return false;
    }

    /// <summary>Fresh milk or cream, or a liqueur on cream, mixed in; a float on top is eaten before it curdles.</summary>
    private static Part? First(RecipeProfile profile)
    {
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || part.Material is not { } material || part.Line.Role == LineRole.Float) continue;
            if (100 * Solving.AcidsOf(material.PerGram) > Most.Value) continue;
            if (Substances.IsDairy(material) || IsCreamLiqueur(material)) return part;
        }

        return null;
    }

    private static bool IsCreamLiqueur(Material material) =>
        material.Kind.IsLiqueur
        && material.Of(Component.Fat) > Guards.CreamyFat
        && material.Of(Component.Protein) > Guards.CurdProtein;

    /// <summary>The part that brings the most acid.</summary>
    private static Part? Sours(RecipeProfile profile)
    {
        Part? most = null;
        double grams = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || !part.IsWeighed || part.Material is null) continue;
            double acid = part.Grams.Typical * Solving.AcidsOf(part.Material.PerGram);
            if (acid > grams && !Substances.IsDairy(part.Material)) (grams, most) = (acid, part);
        }

        return most;
    }
}
