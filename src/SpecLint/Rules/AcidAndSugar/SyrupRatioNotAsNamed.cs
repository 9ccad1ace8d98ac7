using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Amounts;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4015", "syrup-ratio-not-as-named", "A syrup whose name or note says one ratio and whose amounts another", Level.Warning,
    Needs = [Fact.Sugar])]
[Limit("syrup-ratio-tolerance", "Off")]
internal sealed partial class SyrupRatioNotAsNamed : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        double named = SyrupRatio.Named(prep);
        if (double.IsNaN(named) || SyrupRatio.Parts(context, prep) is not var (sweet, water)) return;

        // Volumes of dry sugar are another mistake; two liquids by volume keep their ratio in the name by volume.
        bool byVolume = SyrupRatio.IsVolume(sweet) && SyrupRatio.IsVolume(water);
        bool isDry = SyrupRatio.IsVolume(sweet) && sweet.Material!.State != MaterialState.Liquid;
        if (byVolume && isDry) return;
        double is1 = byVolume ? sweet.Line.Amount.Value.Base / water.Line.Amount.Value.Base : sweet.Grams.Typical / water.Grams.Typical;
        if (double.IsNaN(is1) || Fits(is1, named)) return;
        var amount = water.Line.Amount.Value;
        string words = Rounding.Words(Rounding.ToStep(amount.Base * is1 / named, amount, context.Settings), amount);
        string item = water.Line.Item.Or("water");
        var line = water.Line;
        if (Slipped(context, sweet, water, is1, named) is { } found)
            (line, words, item) = (found.Line, found.Slip.Text, found.Line.Item.Or("it"));
        var sugar = context.Fact(Fact.Sugar);
        string with = sugar.IsKnown ? $", with {Say.Fact(Fact.Sugar, sugar)} of sugar" : "";
        context.Report(new(Rule)
        {
            At = context.AmountOf(water.Line),
            Message = $"The name or a note says {Ratio(named)}, but the amounts make {Ratio(is1)}{with}. Pouring by the name is "
                + $"{Say.Number(100 * Math.Abs((is1 / (1 + is1)) / (named / (1 + named)) - 1), 0)} % off in sugar by mass.",
            Advice = $"Take {words} of {item}, or rename it.",
            Evidence = [Proof.Of("ratio of the name", named, "1"), Proof.Of("ratio of the amounts", is1, "1"), Proof.Of(Off)],
            Related = [new RelatedPlace(prep.Head, "the name")],
            Corrections = isDry ? []
                : IsExchanged(sweet, water, is1, named)
                    ? Correction.Propose("Exchange the two amounts.", Written.Exchange(context, sweet.Line, water.Line))
                : context.Write(line.Amount.Span, words, $"Write {words} of `{item}`, for {Ratio(named)}."),
        });
    }

    /// <summary>Whether the two amounts, exchanged, have the ratio of the name.</summary>
    private static bool IsExchanged(Part sweet, Part water, double is1, double named) =>
        sweet.Line.Amount.Value.Dimension == water.Line.Amount.Value.Dimension && Fits(1 / is1, named);

    /// <summary>A slip of one of the two amounts that gives the ratio of the name: the likelier of both, the sweetener's first.</summary>
    private static (Line Line, Slip Slip)? Slipped(RecipeContext context, Part sweet, Part water, double is1, double named)
    {
        var measures = context.Settings.Measures;
        var first = Slips.Find(sweet.Line.Amount.Value, measures, b => Fits(is1 * b / sweet.Line.Amount.Value.Base, named));
        var second = Slips.Find(water.Line.Amount.Value, measures, b => Fits(is1 * water.Line.Amount.Value.Base / b, named));
        if (first is { } a && (second is not { } b1 || a.Rank <= b1.Rank)) return (sweet.Line, a);
        return second is { } c ? (water.Line, c) : null;
    }

    private static bool Fits(double ratio, double named) => Math.Abs(ratio - named) <= named * Off.Value / 100;

    private static string Ratio(double ratio) => ratio >= 1 ? $"{Say.Number(ratio, 2)}:1" : $"1:{Say.Number(1 / ratio, 2)}";
}
