using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

/// <summary>
/// Holds one fact of a drink against the band in which accepted drinks of its style are seen. Only what lies outside with
/// its whole range is reported, and only where the drink is built as its style is: another build is another finding.
/// </summary>
internal abstract class StyleBandRule : DrinkRule
{
    /// <summary>The fact.</summary>
    protected abstract Fact Of { get; }

    /// <summary>The fact in words: "strength".</summary>
    protected abstract string Noun { get; }

    /// <summary>The value where it is to be had without its range, which costs more; NaN where not.</summary>
    protected virtual double About(RecipeContext context, Drink drink) => double.NaN;

    /// <summary>Whether another rule says it better.</summary>
    protected abstract bool IsSaidElsewhere(RecipeContext context, Drink drink, Style style, Band seen, FactValue value);

    /// <summary>What to do.</summary>
    protected abstract Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim);

    /// <inheritdoc/>
    public sealed override void Check(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style || style.Seen(Of) is not { } seen) return;
        double about = About(context, drink);
        if (about >= seen.Low && about <= seen.High) return;
        var value = context.Fact(Of);
        bool broken = Findings.Check.Within(value, seen.Low, seen.High) == Stand.Broken;

        // The range of one recipe may straddle the end of the band; the value to expect lies outside it all the same.
        bool likely = !broken && value.IsKnown && (value.Value < seen.Low || value.Value > seen.High);
        if (!broken && !likely) return;
        if (Builds.Contradicts(context.Profile.Technique, style) || IsSaidElsewhere(context, drink, style, seen, value)) return;
        var usual = style.Usual(Of);
        bool over = value.Value > seen.High;
        var remedy = PutRight(context, value, seen, usual ?? seen);
        string unit = Say.Unit(Of);
        context.Report(new Finding(Info)
        {
            AskedLevel = likely ? Level.Note : null,
            Place = context.At(drink.Style.Span),
            Subject = context.Id,
            Path = "style",
            Message = $"The {Noun} comes to {Say.Fact(Of, value)}, {(over ? "over" : "under")} the {Say.With(over ? seen.High : seen.Low, unit)} {(over ? "up to" : "from")} which `{style.Id}` drinks are seen; most lie at {Words(usual ?? seen, unit)} ({style.SeenInShort}).",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Evidence =
            [
                Proof.Of(Of, value),
                new Evidence($"{style.Id} seen", (seen.Low + seen.High) / 2, seen.Low, seen.High, FactNames.Unit(Of, solid: false), style.SeenSource),
                new Evidence($"{style.Id} usual", ((usual ?? seen).Low + (usual ?? seen).High) / 2, (usual ?? seen).Low, (usual ?? seen).High, FactNames.Unit(Of, solid: false), style.UsualSource),
            ],
        });
    }

    /// <summary>The end of a band that is nearest to a value.</summary>
    protected static double Nearest(Band band, double value) => value > band.High ? band.High : band.Low;

    private static string Words(Band band, string unit) => $"{Say.Number(band.Low)}–{Say.With(band.High, unit)}";
}
