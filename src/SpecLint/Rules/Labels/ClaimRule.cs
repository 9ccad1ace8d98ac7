using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>A rule that holds one kind of claim of a recipe against what is in it.</summary>
internal abstract class ClaimRule : RecipeRule
{
    /// <summary>Whether the rule is about a kind of claim.</summary>
    protected abstract bool IsAbout(ClaimKind kind);

    /// <summary>The level of a claim that is only not shown; the rule's own where nothing else is said.</summary>
    protected virtual Level UnshownLevel => Info.Level;

    /// <summary>The caution, where someone can be hurt.</summary>
    protected virtual string? Caution => null;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var placed in context.Claims)
        {
            var claim = placed.Claim;
            if (!IsAbout(claim.Meaning.Kind)
                || Claims.Judge(claim.Meaning, context, context.Profile, placed.Of) is not { } verdict)
                continue;
            context.Report(new(Info)
            {
                AskedLevel = Lowest(placed.Capped(verdict.Cap), verdict.Answer == Answer.Broken ? Info.Level : UnshownLevel),
                Answer = verdict.Answer,
                At = context.At(placed.Text.Span, placed.Path),
                Key = placed.InList >= 0 ? "" : claim.Words,
                Message = $"It is called {claim.Words}, and {verdict.Because} ({verdict.Source}).",
                Advice = verdict.Answer == Answer.Broken
                    ? $"Remove the claim, or {(verdict.Culprit is { } leaf ? $"replace `{leaf.Through[0]}`" : "change the recipe")}."
                    : verdict.Culprit is { } unsure
                        ? $"Ask the maker of `{unsure.Through[unsure.Through.Count - 1]}` and write the answer in the bar's own "
                            + "ingredient file, or remove the claim."
                        : "Support it with a measurement or the maker's statement, or remove the claim.",
                Caution = Caution,
                Evidence = verdict.Evidence,
                Related = verdict.Against is { } part ? [context.See(part.Line.Span, "contradicts the claim")] : [],
                Corrections = placed.InList < 0
                    ? []
                    : Correction.Propose(
                        $"Remove the claim `{placed.Text.Value}`.",
                        JsonEdits.RemoveFromList(context.Recipe, context.Recipe.Declares!.Claims, placed.InList)),
            });
        }
    }

    private Level? Lowest(Level? cap, Level level)
    {
        if (cap is { } highest && highest < level) level = highest;
        return level < Info.Level ? level : null;
    }
}
