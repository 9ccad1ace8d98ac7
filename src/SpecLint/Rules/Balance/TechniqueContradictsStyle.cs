using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Balance;

/// <summary>SL3008: a technique that is none of the style's.</summary>
internal sealed class TechniqueContradictsStyle : DrinkRule
{
    private static readonly RuleInfo Rule = new("SL3008", "technique-contradicts-style", "A technique that is none of the style's", Level.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Drink drink)
    {
        if (!drink.Style.IsGiven || StyleTable.Find(drink.Style.Value) is not { } style || drink.Method.Count == 0) return;
        if (!Builds.Contradicts(context.Profile.Technique, style)) return;
        string verb = Builds.Verb(context.Profile.Technique)!;
        Style? other = null;
        foreach (var candidate in StyleTable.All)
        {
            if (!Fits(context, candidate)) continue;
            other = candidate;
            break;
        }

        var step = context.Profile.TechniqueStep;
        context.Report(new Finding(Rule)
        {
            Place = context.At(drink.Style.Span),
            Subject = context.Id,
            Path = "style",
            Message = $"The method comes to `{verb}`, and a `{style.Id}` is made with {Say.List([.. style.Techniques.Select(t => $"`{t}`")], "or")} (table of styles; {style.UsualInShort}).",
            Advice = other is null ? "Change the method, or name the style that it is." : $"Change the method, or name the style that its numbers fit: `{other.Id}`.",
            Evidence = [Proof.Of("technique", verb, step is null ? null : context.At(step.Do.Span))],
            Related = step is null ? [] : [new RelatedPlace(context.At(step.Do.Span), $"the step that makes it a drink to {verb}")],
            Corrections = other is null
                ? []
                : [new Correction(CorrectionGrade.Proposed, $"Name the style `{other.Id}`.", [new TextEdit(context.At(drink.Style.Span), $"\"{other.Id}\"")])],
        });
    }

    private static bool Fits(RecipeContext context, Style style)
    {
        if (Builds.Contradicts(context.Profile.Technique, style)) return false;
        bool topped = Builds.First(context.Profile, Substances.IsSparkling) is not null;
        string egg = Builds.First(context.Profile, Substances.IsEggWhite) is not null ? "white" : Builds.First(context.Profile, Substances.IsYolkyEgg) is not null ? "whole" : "none";
        if (style.IsTopped != topped || style.Egg != egg || style.HasDairy != (Builds.First(context.Profile, Substances.IsDairy) is not null)) return false;
        foreach (var fact in new[] { Profile.Fact.Abv, Profile.Fact.Sugar, Profile.Fact.Acid, Profile.Fact.MixVolume })
        {
            var value = context.Fact(fact);
            if (!value.IsKnown || style.Seen(fact) is not { } band || value.Value < band.Low || value.Value > band.High) return false;
        }

        return true;
    }
}
