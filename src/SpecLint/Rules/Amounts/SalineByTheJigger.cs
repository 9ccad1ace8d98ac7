using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

[Rule("SL2023", "seasoning-poured", "Saline, salt or dry acid beyond what seasons one drink", Level.Error, IsCause = true)]
[Limit("amount-salt-per-serve", "Salt")]
[Limit("amount-acid-per-serve", "Acid")]
internal sealed partial class SalineByTheJigger : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        double serves = drink.ServesOrOne;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || !part.IsWeighed || part.Material is not { } material || !part.Line.Amount.IsGiven) continue;
            bool salty = material.Kind.IsSalt, sour = material.Kind.IsAcid;
            if (!salty && !sour) continue;
            var limit = salty ? Salt : Acid;
            double grams = salty
                ? part.Grams.Low * material.Of(Component.SodiumChloride) / serves
                : part.Grams.Typical * (material.State == MaterialState.Powder ? 1 : Solving.AcidsOf(material.PerGram)) / serves;
            if (grams <= limit.Value) continue;
            var line = part.Line;
            bool poured = Written.IsPoured(line.Amount.Value.Unit);
            double drops = Math.Max(1, Math.Round(line.Amount.Value.Value));
            var corrections = new List<Correction>();
            string drop = drops == 1 ? "1 drop" : $"{Written.Number(drops)} drops";
            if (salty && poured && material.State == MaterialState.Liquid && drops <= Guards.MostDropsWritten)
                corrections.Add(new Correction(
                    CorrectionGrade.Proposed, $"Write {drop}.", [new TextEdit(context.At(line.Amount.Span), $"\"{drop}\"")]));
            double most = line.Amount.Value.Value * limit.Value / grams;
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = salty
                    ? $"{Written.Text(context, line.Amount.Span)} of {Written.Item(line)} adds {Say.With(grams, "g")} of salt to one "
                        + $"drink, above the {Say.With(Salt.Value, "g")} (600 mg of sodium) limit of seasoning ({Salt.Source})."
                    : $"{Written.Text(context, line.Amount.Span)} of {Written.Item(line)} "
                        + $"{(material.State == MaterialState.Powder ? "is" : "holds")} {Say.With(grams, "g")} of "
                        + $"{(material.State == MaterialState.Powder ? "dry " : "")}acid in one drink, above the "
                        + $"{Say.With(Acid.Value, "g")} in 50 mL of lime juice ({Acid.Source}).",
                Advice = corrections.Count > 0
                    ? $"Write drops if they are meant. The most is {Written.Number(most)} {line.Amount.Value.Unit.Name}."
                    : $"At most {Written.Number(most)} {line.Amount.Value.Unit.Name} would stay within the limit.",
                Evidence = [Proof.Of("amount", line.Amount.Value, context.At(line.Amount.Span)), Proof.Of(limit)],
                Corrections = corrections,
            });
        }
    }
}
