using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4015", "syrup-ratio-not-as-named", "A syrup whose name or note says one ratio and whose amounts another", Level.Warning, Needs = [Fact.Sugar])]
[Limit("syrup-ratio-tolerance", "Off")]
internal sealed partial class SyrupRatioNotAsNamed : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        double named = SyrupRatio.Named(prep);
        if (double.IsNaN(named) || SyrupRatio.Parts(context, prep) is not var (sweet, water)) return;

        // Volumes of dry sugar are another mistake; two liquids by volume keep their ratio in the name by volume.
        bool byVolume = SyrupRatio.IsVolume(sweet) && SyrupRatio.IsVolume(water);
        if (byVolume && sweet.Material!.State != MaterialState.Liquid) return;
        double is1 = byVolume ? sweet.Line.Amount.Value.Base / water.Line.Amount.Value.Base : sweet.Grams.Typical / water.Grams.Typical;
        if (double.IsNaN(is1) || Math.Abs(is1 - named) <= named * Off.Value / 100) return;
        var amount = water.Line.Amount.Value;
        double rounded = Rounding.ToStep(amount.Base * is1 / named, amount, context.Settings);
        string words = Rounding.Words(rounded, amount), item = water.Line.Item.Or("water");
        var sugar = context.Fact(Fact.Sugar);
        var place = water.Line;
        string text = Rounding.Text(rounded, amount);
        if (Slipped(context, sweet, water, is1, named) is { } found)
        {
            place = found.Line;
            (words, item, text) = (found.Slip.Text, place.Item.Or("it"), $"\"{found.Slip.Text}\"");
        }

        context.Report(new(Rule)
        {
            At = context.AmountOf(water.Line),
            Message = $"The name or a note says {Ratio(named)}, but the amounts make {Ratio(is1)}{(sugar.IsKnown ? $", with {Say.Fact(Fact.Sugar, sugar)} of sugar" : "")}. Pouring by the name is {Say.Number(100 * Math.Abs((is1 / (1 + is1)) / (named / (1 + named)) - 1), 0)} % off in sugar by mass.",
            Advice = $"Take {words} of {item}, or rename it.",
            Evidence = [Proof.Of("ratio of the name", named, "1"), Proof.Of("ratio of the amounts", is1, "1"), Proof.Of(Off)],
            Related = [new RelatedPlace(prep.Head, "the name")],
            Corrections = SyrupRatio.IsVolume(sweet) && sweet.Material!.State != MaterialState.Liquid ? []
                : IsExchanged(sweet, water, is1, named) ? [new Correction(CorrectionGrade.Proposed, "Exchange the two amounts.", [new TextEdit(context.At(sweet.Line.Amount.Span), context.File.Source.TextOf(water.Line.Amount.Span)), new TextEdit(context.At(water.Line.Amount.Span), context.File.Source.TextOf(sweet.Line.Amount.Span))])]
                : [new Correction(CorrectionGrade.Proposed, $"Write {words} of `{item}`, for {Ratio(named)}.", [new TextEdit(context.At(place.Amount.Span), text)])],
        });
    }

    /// <summary>Whether the two amounts, exchanged, have the ratio of the name.</summary>
    private static bool IsExchanged(Part sweet, Part water, double is1, double named) =>
        sweet.Line.Amount.Value.Dimension == water.Line.Amount.Value.Dimension && Fits(1 / is1, named);

    /// <summary>A slip of one of the two amounts that gives the ratio of the name: the likelier of both, the sweetener's first.</summary>
    private static (Line Line, Amounts.Slip Slip)? Slipped(RecipeContext context, Part sweet, Part water, double is1, double named)
    {
        var measures = context.Settings.Measures;
        var first = Amounts.Slips.Find(sweet.Line.Amount.Value, measures, b => Fits(is1 * b / sweet.Line.Amount.Value.Base, named));
        var second = Amounts.Slips.Find(water.Line.Amount.Value, measures, b => Fits(is1 * water.Line.Amount.Value.Base / b, named));
        if (first is { } a && (second is not { } b1 || a.Rank <= b1.Rank)) return (sweet.Line, a);
        return second is { } c ? (water.Line, c) : null;
    }

    private static bool Fits(double ratio, double named) => Math.Abs(ratio - named) <= named * Off.Value / 100;

    private static string Ratio(double ratio) => ratio >= 1 ? $"{Say.Number(ratio, 2)}:1" : $"1:{Say.Number(1 / ratio, 2)}";
}
