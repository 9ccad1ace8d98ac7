using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

/// <summary>SL6006: more quinine in a drink than the law allows.</summary>
internal sealed class QuinineOverLimit : DrinkRule
{
    private static readonly Limit Most = Limits.Of("quinine-us");
    private static readonly Limit Extraction = Limits.Of("tolerance-extraction-low");

    private static readonly RuleInfo Rule = new("SL6006", "quinine-over-limit", "A drink holds more quinine than the law allows", Level.Error)
    {
        Safety = true,
        IsConsequence = true,
        Needs = [Fact.Quinine, Fact.ServedVolume],
        Limits = [Most.Id, Extraction.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Profile.HazardLoads.Count == 0) return;
        var quinine = context.Fact(Fact.Quinine);
        var volume = context.Fact(Fact.ServedVolume);
        if (!volume.IsKnown || volume.Value <= 0) return;
        double serves = HazardWords.Serves(drink);
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

        double perLitre = 1000 / volume.Value;
        if (from is null || typical * perLitre <= Most.Value) return;
        bool broken = low * perLitre > Most.Value;
        bool law = Most.AppliesIn(context.Settings);
        context.Report(new Finding(Rule)
        {
            Answer = broken ? Answer.Broken : Answer.NotShown,
            AskedLevel = broken && law ? null : Level.Warning,
            Place = context.At(from.Part.Line.Amount.IsGiven ? from.Part.Line.Amount.Span : from.Part.Line.Item.Span),
            Subject = context.Id,
            Path = RecipeContext.PathOf(from.Part.Line, "amount"),
            Message = $"The drink comes to {Say.Range(typical * perLitre, low * perLitre, high * perLitre, "mg/L")} of quinine and its kin from {HazardWords.NameOf(from)}; {Say.Number(Most.Value)} mg/L is the most{(law ? "" : " in the US, here the yardstick")} ({Most.Source}).",
            Advice = "Use less of it, or lengthen it with soda; name quinine on the menu.",
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, from), new Evidence("quinine", typical * perLitre, low * perLitre, high * perLitre, "mg/L"), Proof.Of(Most)],
        });
    }
}
