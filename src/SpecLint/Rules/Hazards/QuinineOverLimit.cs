using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

/// <summary>SL6006: more quinine in a drink than the law allows.</summary>
internal sealed class QuinineOverLimit : DrinkRule
{
    private static readonly Limit Most = Limits.Of("quinine-us");
    private static readonly Limit Soft = Limits.Of("quinine-eu-soft");
    private static readonly Limit Strong = Limits.Of("quinine-eu-strong");
    private static readonly Limit Tonic = Limits.Of("quinine-anz");
    private static readonly Limit Strength = Limits.Of("declare-strength-from");
    private static readonly Limit Extraction = Limits.Of("tolerance-extraction-low");

    private static readonly RuleInfo Rule = new("SL6006", "quinine-over-limit", "A drink holds more quinine than the law allows", Level.Error)
    {
        Safety = true,
        IsConsequence = true,
        Needs = [Fact.Quinine, Fact.ServedVolume, Fact.Abv],
        Limits = [Most.Id, Soft.Id, Strong.Id, Tonic.Id, Strength.Id, Extraction.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Drink drink)
    {
        var quinine = context.Fact(Fact.Quinine);
        var volume = context.Fact(Fact.ServedVolume);
        if (!volume.IsKnown || volume.Value <= 0) return;
        double serves = drink.ServesOrOne;
        double low = quinine.IsKnown ? quinine.Low : 0, high = quinine.IsKnown ? quinine.High : 0, typical = quinine.IsKnown ? quinine.Value : 0;
        HazardLoad? from = null;
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Hazard.Id is "quinine" or "house-tonic-syrup") from ??= load;
            if (load.Hazard.Id != "cinchona-bark" || load.Hazard.Contents.Count == 0 || double.IsNaN(load.Grams)) continue;
            var content = load.Hazard.Contents[0];
            low += load.Grams / serves * content.Low * (load.Strained ? Extraction.Value / 100 : 1);
            typical += load.Grams / serves * content.Typical;
            high += load.Grams / serves * content.High;
            from = load;
        }

        // Any part may bring it, a house's own too: the one that brings the most is named.
        Part? most = from?.Part;
        double brought = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (from is not null || part.Material is not { } material || !part.IsWeighed || part.Phase == PartPhase.Beside) continue;
            double mg = part.Grams.Typical * material.Traces.Quinine.Typical;
            if (mg <= brought) continue;
            brought = mg;
            most = part;
        }

        var limit = LimitOf(context);
        double perLitre = 1000 / volume.Value;
        if (most is null || typical * perLitre <= limit.Value) return;
        bool broken = low * perLitre > limit.Value;
        bool law = limit.AppliesIn(context.Settings);
        context.Report(new Finding(Rule)
        {
            Answer = broken ? Answer.Broken : Answer.NotShown,
            AskedLevel = broken && law && limit.LevelCap is null ? null : Level.Warning,
            Place = context.At(most.Line.Amount.IsGiven ? most.Line.Amount.Span : HazardWords.SpanOf(most.Line)),
            Subject = context.Id,
            Path = RecipeContext.PathOf(most.Line, "amount"),
            Message = $"The drink comes to {Say.Range(typical * perLitre, low * perLitre, high * perLitre, "mg/L")} of quinine and related alkaloids from {(from is null ? $"`{most.Line.Item.Or("")}`" : HazardWords.NameOf(from))}. The limit is {Say.Number(limit.Value)} mg/L{(law ? "" : ", the yardstick here")} ({limit.Source}).",
            Advice = "Use less of it or lengthen it with soda, and name quinine on the menu.",
            Caution = HazardWords.Caution,
            Evidence = [new Evidence("quinine", typical * perLitre, low * perLitre, high * perLitre, "mg/L"), Proof.Of(limit)],
        });
    }

    /// <summary>The limit in force: that of the US, of the EU and Great Britain by strength, of Australia and New Zealand; else that of the US as a yardstick.</summary>
    private static Limit LimitOf(RecipeContext context)
    {
        if (Most.AppliesIn(context.Settings)) return Most;
        bool alcoholic = context.Fact(Fact.Abv) is { IsKnown: true } abv && abv.Low > Strength.Value;
        if (Soft.AppliesIn(context.Settings)) return alcoholic ? Strong : Soft;
        return Tonic.AppliesIn(context.Settings) ? Tonic : Most;
    }
}
