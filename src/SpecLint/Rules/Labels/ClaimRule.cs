using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>A rule that holds one kind of claim of a recipe against what is in it.</summary>
internal abstract class ClaimRule : RecipeRule
{
    /// <summary>Whether the rule is about a kind of claim.</summary>
    protected abstract bool IsAbout(ClaimKind kind);

    /// <summary>The caution, where someone can be hurt.</summary>
    protected virtual string? Caution => null;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        if (context.Recipe.Declares is not { Claims.Count: > 0 } declares) return;
        for (int c = 0; c < declares.Claims.Count; c++)
        {
            var claim = declares.Claims[c];
            if (!claim.IsGiven) continue;
            var kind = Claims.KindOf(claim.Value);
            if (kind == ClaimKind.None || !IsAbout(kind) || Claims.Judge(kind, context.Profile, context.Settings) is not { } verdict) continue;
            context.Report(new Finding(Info)
            {
                AskedLevel = verdict.Cap is { } cap && cap < Info.Level ? cap : null,
                Answer = verdict.Answer,
                Place = context.At(claim.Span),
                Subject = context.Id,
                Path = $"declares.claims[{claim.Value}]",
                Message = $"It is called {claim.Value}, and {verdict.Because} ({verdict.Source}).",
                Advice = verdict.Answer == Answer.Broken
                    ? verdict.Culprit is { } leaf ? $"Drop the claim, or swap `{leaf.Through[0]}`." : "Drop the claim, or change the recipe."
                    : verdict.Culprit is { } unsure ? $"Ask the maker of `{unsure.Through[unsure.Through.Count - 1]}` and write the answer in the bar's own ingredient file, or drop the claim." : "Show it by a measurement, or drop the claim.",
                Caution = Caution,
                Evidence = verdict.Evidence,
                Related = verdict.Culprit is { } culprit ? [new RelatedPlace(context.At(culprit.Part.Line.Span), "stands against the claim")] : [],
                Corrections = [new Correction(CorrectionGrade.Proposed, $"Drop the claim `{claim.Value}`.", [JsonEdits.RemoveFromList(context.Recipe, declares.Claims, c)])],
            });
        }
    }
}
