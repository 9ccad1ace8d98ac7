using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

[Rule("SL2007", "tenfold-pour", "A pour far beyond one drink: centilitres for millilitres, or a digit too many", Level.Error,
    IsCause = true)]
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

            // A cup or a splash has no sharp size: its least counts. Beer and lemonade come in bottles of their own sizes, which another
            // rule asks for, and bitters over an ounce are told by their own rule.
            double each = (Written.IsPoured(amount.Unit) ? amount.Base : amount.BaseLow) / serves;
            if (limit is null || each <= limit.Value || material.Kind.IsBitters) continue;
            if (ReferenceEquals(limit, Long) && Written.IsBottle(amount.Unit)) continue;
            Pour(context, line, limit, each, serves);
        }
    }

    private static void Pour(RecipeContext context, Line line, Limit limit, double each, double serves)
    {
        // A part of a drink is at least an eighth of what one drink takes of it at most.
        double least = limit.Value * LeastPour.Value / 100;
        var slip = Slips.Find(line.Amount.Value, context.Settings.Measures, b => b / serves <= limit.Value && b / serves >= least);
        string rinse = line.Role == LineRole.Rinse ? "the " : "";
        context.Report(new(Rule)
        {
            At = context.AmountOf(line),
            Message = $"{Written.Item(line)} comes to {Say.With(each, "mL")} in one drink, above the {Say.With(limit.Value, "mL")} "
                + $"maximum for {rinse}{limit.Condition.Replace(" of one drink", "")} ({limit.Source}).",
            Advice = Better(slip, "Check the amount: neither another unit nor a tenth of it is a part of one drink"),
            Evidence = [Written.Given(context, line), Proof.Of(limit)],
            Corrections = context.Write(line.Amount.Span, slip?.Text),
        });
    }

    /// <summary>A thick syrup, honey or dry sugar within a pour of syrup can bring more sugar than one drink takes.</summary>
    private static bool SugarOver(RecipeContext context, Part part, Material material, double serves)
    {
        var line = part.Line;
        bool poured = line.Amount.Value.Dimension == Dimension.Volume && material.State == MaterialState.Liquid;
        if (!part.IsWeighed || (poured && part.Millilitres / serves > Sweetener.Value)) return false;
        double each = part.Grams.Typical * Solving.SugarOf(material.PerGram) / serves;
        if (!(each > Sugar.Value) || each * serves * 100 < context.Profile.InputMass * SugarShare.Value) return false;
        Sweet(context, line, each);
        return true;
    }

    private static void Sweet(RecipeContext context, Line line, double each)
    {
        var amount = line.Amount.Value;
        var slip = Slips.Find(
            amount, context.Settings.Measures,
            b => b / amount.Base * each <= Sugar.Value && b / amount.Base * each >= Sugar.Value * SugarLeast);
        context.Report(new(Rule)
        {
            At = context.AmountOf(line),
            Message = $"{Written.Item(line)} brings {Say.With(each, "g")} of sugar to one drink, above the "
                + $"{Say.With(Sugar.Value, "g")} maximum for one sweetener ({Sugar.Source}).",
            Advice = Better(slip, "Check the amount"),
            Evidence = [Written.Given(context, line), Proof.Of(Sugar)],
            Corrections = context.Write(line.Amount.Span, slip?.Text),
        });
    }

    private static string Better(Slip? slip, string otherwise)
    {
        string what = slip is { } meant
            ? $"Write {meant.Text}, if {(meant.Rank == 0 ? "the unit slipped" : "a digit is too many")}"
            : otherwise;
        return $"{what}; if it makes several drinks, say so in `serves`.";
    }

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
