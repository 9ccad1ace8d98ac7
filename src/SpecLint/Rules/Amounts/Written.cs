using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>Amounts as people write them, and corrections that write them anew.</summary>
internal static class Written
{
    /// <summary>Whether a unit is a fluid ounce of some country or house.</summary>
    public static bool IsOunce(Unit unit) =>
        unit.Dimension == Dimension.Volume
            && (unit.Name is "oz" or "oz US" or "oz UK" or "bar-oz" || unit.Name.EndsWith("fl-oz", StringComparison.Ordinal));

    /// <summary>Whether a unit is the ounce that no country is named for.</summary>
    public static bool IsPlainOunce(Unit unit) => unit.Dimension == Dimension.Volume && unit.Name == "oz";

    /// <summary>Whether a unit is a metric volume.</summary>
    public static bool IsMetricVolume(Unit unit) => unit.Dimension == Dimension.Volume && unit.System == UnitSystem.Metric;

    /// <summary>Whether a unit is one of those that a jigger or jug is marked in: metric, or an ounce.</summary>
    public static bool IsPoured(Unit unit) => IsMetricVolume(unit) || IsOunce(unit);

    /// <summary>Whether it is a bottle without a size.</summary>
    public static bool IsBottle(Unit unit) => unit.Name is "bottle";

    /// <summary>Whether it is an ounce by weight or a pound.</summary>
    public static bool IsPound(Unit unit) =>
        unit.Dimension == Dimension.Mass
            && unit.System is UnitSystem.UnitedStates or UnitSystem.Imperial or UnitSystem.Trade
            && unit.Name is "lb" or "oz av" or "oz-wt";

    /// <summary>A quantity as the file has it, without quotes.</summary>
    public static string Text(FileContext context, TextSpan span) => context.File.Source.TextOf(span).Trim('"');

    /// <summary>An item's id, in backquotes.</summary>
    public static string Item(Line line) => line.Item.IsGiven ? $"`{line.Item.Value}`" : $"line {line.Number}";

    /// <summary>Whether a value is written as a text with its unit: a bare number has no place for one.</summary>
    public static bool IsQuoted(FileContext context, TextSpan span) =>
        context.File.Source.TextOf(span).StartsWith("\"", StringComparison.Ordinal);

    /// <summary>The amount of a line, as what a finding rests on.</summary>
    public static Evidence Given(FileContext context, Line line) => Proof.Of("amount", line.Amount.Value, context.At(line.Amount.Span));

    /// <summary>The edits that write two amounts in each other's place.</summary>
    public static TextEdit[] Exchange(FileContext context, Line one, Line other)
    {
        var source = context.File.Source;
        return
        [
            new TextEdit(context.At(one.Amount.Span), source.TextOf(other.Amount.Span)),
            new TextEdit(context.At(other.Amount.Span), source.TextOf(one.Amount.Span)),
        ];
    }

    /// <summary>A number as an amount is written: three digits that count at most.</summary>
    public static string Number(double value) => Say.Number(value);

    /// <summary>Share of a yield under which its rounding says too little of a part.</summary>
    private const double LeastShare = 0.1;

    /// <summary>Grams of a part as its share says, else as the yield of a plain mix does; NaN where neither is to be had.</summary>
    public static double GramsMeant(RecipeProfile profile, Part part)
    {
        double byShare = GramsByShare(profile, part);
        if (!double.IsNaN(byShare)
            || profile.Recipe is not Prep { Yield: { IsGiven: true, Value: { Dimension: Dimension.Mass } yield } } prep)
            return byShare;
        foreach (var step in prep.Method)
        {
            if (step.Verb.BoilsDown || step.Verb.Boils || step.Verb.Dries || step.Verb.Ferments) return double.NaN;
        }

        double others = 0;
        foreach (var other in profile.Parts)
        {
            if (ReferenceEquals(other, part) || other.Phase == PartPhase.Beside) continue;
            if (!other.IsWeighed || other.Phase == PartPhase.TakenOut) return double.NaN;
            others += other.Grams.Typical;
        }

        double left = yield.Base - others;
        return left >= yield.Base * LeastShare ? left : double.NaN;
    }

    /// <summary>
    /// Grams of a part as its share of the whole says, where it gives one and all others are weighed; NaN where not.
    /// </summary>
    public static double GramsByShare(RecipeProfile profile, Part part)
    {
        if (!part.Line.Share.IsGiven || part.Line.Share.Value is not { Dimension: Dimension.PercentByMass, Base: > 0 and < 100 } share)
            return double.NaN;
        double others = 0;
        foreach (var other in profile.Parts)
        {
            if (ReferenceEquals(other, part) || other.Phase == PartPhase.Beside) continue;
            if (!other.IsWeighed) return double.NaN;
            others += other.Grams.Typical;
        }

        return share.Base / (100 - share.Base) * others;
    }

    /// <summary>The correction that writes the grams which the whole leaves for a part.</summary>
    public static IReadOnlyList<Correction> Rest(FileContext context, Line line, double grams) =>
        context.Write(line.Amount.Span, $"{Number(grams)} g", $"Write {Number(grams)} g, which is what the whole leaves for it.");

    /// <summary>Nearest multiple of a step.</summary>
    public static double Nearest(double value, double step) =>
        step > 0 ? Math.Round(value / step, MidpointRounding.AwayFromZero) * step : value;

    /// <summary>Whether a value is a multiple of a step, within a thousandth of the step.</summary>
    public static bool IsMultiple(double value, double step) => Math.Abs((value / step) - Math.Round(value / step)) < 0.002;

    /// <summary>Millilitres of all parts that are poured into a drink, tops included.</summary>
    public static double Poured(RecipeProfile profile)
    {
        double sum = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase is PartPhase.Mix or PartPhase.Top && !double.IsNaN(part.Millilitres)) sum += part.Millilitres;
        }

        return sum;
    }
}
