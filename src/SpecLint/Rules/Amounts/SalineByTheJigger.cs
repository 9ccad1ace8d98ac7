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
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || !part.IsWeighed || !part.Line.Amount.IsGiven) continue;
            if (part.Material is not { } material) continue;
            bool salty = material.Kind.IsSalt, powder = material.State == MaterialState.Powder;
            if (!salty && !material.Kind.IsAcid) continue;
            var limit = salty ? Salt : Acid;
            double grams = salty
                ? part.Grams.Low * material.Of(Component.SodiumChloride) / drink.ServesOrOne
                : part.Grams.Typical * (powder ? 1 : Solving.AcidsOf(material.PerGram)) / drink.ServesOrOne;
            if (grams <= limit.Value) continue;
            var line = part.Line;
            var amount = line.Amount.Value;
            double drops = Math.Max(1, Math.Round(amount.Value));
            bool mayBeDrops = salty && material.State == MaterialState.Liquid && Written.IsPoured(amount.Unit);
            string? drop = !mayBeDrops || !(drops <= Guards.MostDropsWritten) ? null
                : drops == 1 ? "1 drop"
                : $"{Written.Number(drops)} drops";
            string most = $"{Written.Number(amount.Value * limit.Value / grams)} {amount.Unit.Name}";
            string it = $"{Written.Text(context, line.Amount.Span)} of {Written.Item(line)}";
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = salty
                    ? $"{it} adds {Say.With(grams, "g")} of salt to one drink, above the {Say.With(Salt.Value, "g")} (600 mg of sodium) "
                        + $"limit of seasoning ({Salt.Source})."
                    : $"{it} {(powder ? "is" : "holds")} {Say.With(grams, "g")} of {(powder ? "dry " : "")}acid in one drink, above the "
                        + $"{Say.With(Acid.Value, "g")} in 50 mL of lime juice ({Acid.Source}).",
                Advice = drop is not null
                    ? $"Write drops if they are meant. The most is {most}."
                    : $"At most {most} would stay within the limit.",
                Evidence = [Written.Given(context, line), Proof.Of(limit)],
                Corrections = context.Write(line.Amount.Span, drop),
            });
        }
    }
}
