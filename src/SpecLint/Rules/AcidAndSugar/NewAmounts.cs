using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>Amounts of a preparation multiplied by one factor, on the steps of the bar's tools.</summary>
/// <param name="Words">What they come to: "12 g of citric-acid and 3 g of salt".</param>
/// <param name="Edits">The edits that write them; empty where nothing is multiplied.</param>
internal sealed record NewAmounts(string Words, IReadOnlyList<TextEdit> Edits)
{
    /// <summary>Multiplies what is weighed of the parts that a test names; nothing where the factor is no number.</summary>
    public static NewAmounts Of(RecipeContext context, double factor, Func<Part, bool> moved, bool saysOld = false)
    {
        var words = new List<string>();
        var edits = new List<TextEdit>();
        foreach (var part in context.Profile.Parts)
        {
            if (double.IsNaN(factor) || !part.IsWeighed || !moved(part)) continue;
            var amount = part.Line.Amount.Value;
            double rounded = Rounding.ToStep(amount.Base * factor, amount, context.Settings);
            string instead = saysOld ? $" instead of {Rounding.Words(amount.Base, amount)}" : "";
            words.Add($"{Rounding.Words(rounded, amount)} of {part.Line.Item.Or("it")}{instead}");
            edits.Add(context.Rewrite(part.Line.Amount.Span, Rounding.Words(rounded, amount)));
        }

        return new(Say.List(words), edits);
    }

    /// <summary>Multiplies the acids and acid solutions of the mix.</summary>
    public static NewAmounts OfAcids(RecipeContext context, double factor, bool saysOld = false) =>
        Of(context, factor, static p => p.Phase == PartPhase.Mix && Substances.IsAcid(p.Material), saysOld);
}
