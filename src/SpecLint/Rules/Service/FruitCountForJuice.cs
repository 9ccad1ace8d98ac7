using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule("SL8025", "fruit-count-for-juice", "Juice measured in fruit", Level.Warning, IsCause = true)]
internal sealed partial class FruitCountForJuice : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || !part.Line.Amount.IsGiven || part.Line.Amount.Value.Dimension != Dimension.Count) continue;
            if (part.Material is not { Kind.IsJuice: true, State: MaterialState.Liquid } || part.Item is null) continue;
            var amount = part.Line.Amount.Value;
            string item = part.Item.Id;
            var one = JuiceOfOne.Find(item);

            // A can or a bottle of juice is no fruit: its size is asked for elsewhere.
            if (amount.Unit.Name is "can") continue;
            double typical = one is { } o ? Math.Max(1, Math.Round(o.Typical * amount.Value / 2.5)) * 2.5 : double.NaN;
            context.Report(new(Rule)
            {
                At = context.AmountOf(part.Line),
                Message = one is { } range
                    ? $"One fruit gives {Say.Number(range.Low)} to {Say.With(range.High, "mL")} of {item} ({range.Source}), so the "
                        + $"acidity of the drink depends on the crate."
                    : $"{item} is given by the number of fruit, and the amount of juice differs from crate to crate.",
                Advice = one is null
                    ? "Measure it in millilitres."
                    : $"Measure it: {Say.With(typical, "mL")} is what {Say.Number(amount.Value, 1)} usually "
                        + $"{(amount.Value <= 1 ? "gives" : "give")}.",
                Evidence = one is { } e ? [new Evidence($"{item} of one", e.Typical, e.Low, e.High, "mL", e.Source)] : [],
                Corrections = one is null
                    ? []
                    : [new Correction(
                        CorrectionGrade.Proposed, $"Write {Say.Number(typical, 1)} ml.",
                        [new TextEdit(context.At(part.Line.Amount.Span), $"\"{Say.Number(typical, 1)} ml\"")]) { KeepsTheThing = true }],
            });
        }
    }

    /// <summary>The table of what one fruit gives.</summary>
    private static class JuiceOfOne
    {
        private static readonly Dictionary<string, (double Typical, double Low, double High, string Source)> ByItem = Load();

        public static (double Typical, double Low, double High, string Source)? Find(string item) => ByItem.TryGetValue(item, out var one) ? one : null;

        private static Dictionary<string, (double, double, double, string)> Load()
        {
            var rows = new Dictionary<string, (double, double, double, string)>(StringComparer.Ordinal);
            using var document = Tables.Open("measures");
            foreach (var row in document.Root.Get("pieces").Items)
            {
                string unit = row.Text("unit");
                if (unit.StartsWith("of one", StringComparison.Ordinal))
                    rows[row.Text("item")] = (row.Number("typicalMl"), row.Number("lowMl"), row.Number("highMl"), row.Text("source"));
            }

            return rows;
        }
    }
}
