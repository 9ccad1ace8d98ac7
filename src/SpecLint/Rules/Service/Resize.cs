using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Balance;

namespace SpecLint.Rules.Service;

/// <summary>The same drink at another size.</summary>
internal static class Resize
{
    private static readonly Limit Drift = Limits.Of("batch-ratio-tolerance");

    /// <summary>Scales a drink to a volume in the glass with its ratios kept.</summary>
    /// <param name="context">The drink.</param>
    /// <param name="millilitres">The volume to come to, mL.</param>
    /// <param name="instead">What else would do, without a full stop.</param>
    public static Remedy To(RecipeContext context, double millilitres, string instead)
    {
        if (!context.OffersCorrections
            || !(millilitres > 0)
            || Scaling.To(context.Profile, millilitres, context.Settings) is not { } scaled)
            return Remedy.Say($"{instead}.");
        var edits = ScaledEdits.Of(scaled, context.File);
        if (edits.Count == 0 || scaled.Factor is < 0.3 or > 3 || scaled.LargestDrift > Drift.Value / 100)
            return Remedy.Say($"{instead}.");
        var words = new List<string>();
        foreach (var line in scaled.Lines)
        {
            if (line.Part.Phase is PartPhase.Mix or PartPhase.Top) words.Add($"{line.Text} {line.Part.Line.Item.Or("")}");
        }

        string size = $"{Say.Number(scaled.Volume, 0)} mL";
        return new Remedy(
            $"{instead}, or scale it with the same ratios to {Say.List(words)}: {size} in the glass.",
            Correction.Propose($"Scale every amount by {Say.Number(scaled.Factor, 2)}, to {size} in the glass.", edits));
    }
}
