using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

[Rule("SL2007", "tenfold-pour", "A pour far beyond one drink: centilitres for millilitres, or a digit too many", Level.Error, IsCause = true)]
[Limit("amount-pour-spirit", "Spirit")]
[Limit("amount-pour-sweetener", "Sweetener")]
[Limit("amount-pour-sour", "Sour")]
[Limit("amount-sour-juice", "SourFrom")]
[Limit("amount-pour-long", "Long")]
[Limit("amount-pour-other", "Other")]
[Limit("amount-pour-sugar", "Sugar")]
[Limit("amount-sugar-share", "SugarShare")]
[Limit("amount-pour-least", "LeastPour")]
[Limit("amount-pour-rinse", "Rinse")]
internal sealed partial class TenfoldPour : DrinkRule
{
    /// <summary>Share of the most sugar under which a corrected sweetener sweetens nothing.</summary>
    private const double SugarLeast = 0.04;

    public override void Check(RecipeContext context, Drink drink)
    {
        double serves = drink.ServesOrOne;
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            bool rinses = line.Role == LineRole.Rinse;
            if (part.Material is not { } material || !line.Amount.IsGiven || (part.Phase == PartPhase.Beside && !rinses)) continue;
            var amount = line.Amount.Value;
            if (material.Kind.IsSweetPour && SugarOver(context, part, material, serves)) continue;
            if (amount.Dimension != Dimension.Volume || material.State != MaterialState.Liquid || BatchLike(part)) continue;
            var limit = rinses ? Rinse : LimitOf(material);

            // A cup or a splash has no sharp size: its least counts.
            double each = (Written.IsPoured(amount.Unit) ? amount.Base : amount.BaseLow) / serves;
            if (limit is null || each <= limit.Value) continue;

            // Beer and lemonade come in bottles of their own sizes: another rule asks for it.
            if (ReferenceEquals(limit, Long) && Written.IsBottle(amount.Unit)) continue;

            // Bitters over an ounce are told by their own rule.
            if (material.Kind.IsBitters) continue;
            // A part of a drink is at least an eighth of what one drink takes of it at most.
            var slip = SlipOf(amount, context, serves, limit);
            string right = slip is { } meant
                ? $"Write {meant.Text}, if {(meant.Rank == 0 ? "the unit slipped" : "a digit is too many")}; if it makes several drinks, say so in `serves`."
                : "Check the amount: neither another unit nor a tenth of it is a part of one drink; if it makes several drinks, say so in `serves`.";
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Item(line)} comes to {Say.With(each, "mL")} in one drink, above the {Say.With(limit.Value, "mL")} "
                    + $"maximum for {(rinses ? "the " : "")}{limit.Condition.Replace(" of one drink", "")} ({limit.Source}).",
                Advice = right,
                Evidence = [Proof.Of("amount", amount, context.At(line.Amount.Span)), Proof.Of(limit)],
                Corrections = slip is { } write
                    ? [new Correction(
                        CorrectionGrade.Proposed, $"Write {write.Text}.", [new TextEdit(context.At(line.Amount.Span), $"\"{write.Text}\"")])]
                    : [],
            });
        }
    }

    /// <summary>A thick syrup, honey or dry sugar within a pour of syrup can bring more sugar than one drink takes.</summary>
    private static bool SugarOver(RecipeContext context, Part part, Material material, double serves)
    {
        if (!part.IsWeighed
            || part.Line.Amount.Value.Dimension == Dimension.Volume
                && material.State == MaterialState.Liquid
                && part.Millilitres / serves > Sweetener.Value)
            return false;
        var line = part.Line;
        var amount = line.Amount.Value;
        double each = part.Grams.Typical * Solving.SugarOf(material.PerGram) / serves;
        if (!(each > Sugar.Value) || each * serves * 100 < context.Profile.InputMass * SugarShare.Value) return false;
        var slip = Slips.Find(
            amount,
            context.Settings.Measures,
            b => b / amount.Base * each <= Sugar.Value && b / amount.Base * each >= Sugar.Value * SugarLeast);
        context.Report(new(Rule)
        {
            At = context.AmountOf(line),
            Message = $"{Written.Item(line)} brings {Say.With(each, "g")} of sugar to one drink, above the "
                + $"{Say.With(Sugar.Value, "g")} maximum for one sweetener ({Sugar.Source}).",
            Advice = slip is { } meant
                ? $"Write {meant.Text}, if {(meant.Rank == 0 ? "the unit slipped" : "a digit is too many")}; if it makes several drinks, say so in `serves`."
                : "Check the amount; if it makes several drinks, say so in `serves`.",
            Evidence = [Proof.Of("amount", amount, context.At(line.Amount.Span)), Proof.Of(Sugar)],
            Corrections = slip is { } write
                ? [new Correction(
                    CorrectionGrade.Proposed, $"Write {write.Text}.", [new TextEdit(context.At(line.Amount.Span), $"\"{write.Text}\"")])]
                : [],
        });
        return true;
    }

    private static Slip? SlipOf(Quantity amount, BookContext context, double serves, Limit limit) =>
        Slips.Find(amount, context.Settings.Measures, b => b / serves <= limit.Value && b / serves >= limit.Value * LeastPour.Value / 100);

    internal static Limit? LimitOf(Material material)
    {
        var kind = material.Kind;
        if (kind.IsStrong) return Spirit;
        if (kind.IsSweetPour) return Sweetener;
        if (kind.Sours && 100 * Solving.AcidsOf(material.PerGram) >= SourFrom.Value) return Sour;
        if (kind.Lengthens || (kind.IsWater && material.Of(Component.CarbonDioxide) > 0)) return Long;
        return kind.IsPouredInPart ? Other : null;
    }

    /// <summary>A drink that is poured ready from a batch is one large part.</summary>
    private static bool BatchLike(Part part) => part.Item?.File is Prep prep && prep.Family.OrNone().IsReadyDrink;
}
