using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2007: centilitres for millilitres, or a digit too many.</summary>
internal sealed class TenfoldPour : DrinkRule
{
    private static readonly Limit Spirit = Limits.Of("amount-pour-spirit");
    private static readonly Limit Sweetener = Limits.Of("amount-pour-sweetener");
    private static readonly Limit Sour = Limits.Of("amount-pour-sour");
    private static readonly Limit Long = Limits.Of("amount-pour-long");
    private static readonly Limit SourFrom = Limits.Of("amount-sour-juice");
    private static readonly Limit Other = Limits.Of("amount-pour-other");

    private static readonly RuleInfo Rule = new("SL2007", "tenfold-pour", "A pour far beyond one drink: centilitres for millilitres, or a digit too many", Level.Error)
    {
        IsCause = true,
        Limits = [Spirit.Id, Sweetener.Id, Sour.Id, SourFrom.Id, Long.Id, Other.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Drink drink)
    {
        double serves = Written.Serves(drink);
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Material is not { } material || !line.Amount.IsGiven || part.Phase == PartPhase.Beside) continue;
            var amount = line.Amount.Value;
            if (!Written.IsPoured(amount.Unit) || part.Material.State != MaterialState.Liquid) continue;
            if (BatchLike(part)) continue;
            var limit = LimitOf(material);
            double each = part.Millilitres / serves;
            if (limit is null || each <= limit.Value) continue;

            // Bitters over an ounce are told by their own rule.
            if (material.Kind == "bitters") continue;
            double tenth = amount.Value / 10;
            bool centi = amount.Unit.Name == "cl";
            string unit = Written.Text(context, line.Amount.Span).EndsWith("oz", StringComparison.OrdinalIgnoreCase) ? "oz" : "ml";
            double likely = centi ? amount.Value : Written.IsOunce(amount.Unit) ? amount.Value / 10 : part.Millilitres / 10;
            bool fits = (centi ? each / 10 : part.Millilitres / 10 / serves) <= limit.Value;
            string right = centi ? $"Write {Written.Number(likely)} ml, if millilitres are meant." : $"Write {Written.Number(tenth)} {amount.Unit.Name}, if a digit is too many; if it makes several drinks, say so in `serves`.";
            context.Report(new Finding(Rule)
            {
                Place = context.At(line.Amount.Span),
                Subject = context.Id,
                Path = RecipeContext.PathOf(line, "amount"),
                Message = $"{Written.Item(line)} comes to {Say.With(each, "mL")} in one drink, over the {Say.With(limit.Value, "mL")} that {limit.Condition.Replace(" of one drink", "")} takes at most ({limit.Source}).",
                Advice = fits ? right : "Check the amount: a tenth of it would still be over; if it makes several drinks, say so in `serves`.",
                Evidence = [Proof.Of("amount", amount, context.At(line.Amount.Span)), Proof.Of(limit)],
                Corrections = fits ? [Written.Set(context, line.Amount.Span, likely, unit, CorrectionGrade.Proposed, $"Write {Written.Number(likely)} {unit}, a tenth.")] : [],
            });
        }
    }

    private static Limit? LimitOf(Material material) => material.Kind switch
    {
        var kind when Written.IsStrong(kind) => Spirit,
        "syrup" or "honey" or "sugar" or "cordial" or "oleo-saccharum" => Sweetener,
        "juice" or "acid-adjusted-juice" or "acid-solution" or "juice-extension" when 100 * Solving.AcidsOf(material.PerGram) >= SourFrom.Value => Sour,
        "sparkling-wine" or "beer" or "cider" or "soda" or "tonic" or "water" when material.Kind != "water" || material.Of(Component.CarbonDioxide) > 0 => Long,
        "juice" or "puree" or "dairy" or "egg" or "plant-milk" or "wine" or "sake" or "vinegar" or "shrub" or "acid-adjusted-juice" or "acid" or "acid-solution"
            or "juice-extension" => Other,
        _ => null,
    };

    /// <summary>A drink that is poured ready from a batch is one large part.</summary>
    private static bool BatchLike(Part part) => part.Item?.File is Prep { Family.IsGiven: true } prep && prep.Family.Value is "batch" or "freezer-batch" or "carbonated" or "milk-wash" or "clarification";
}
