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

    /// <summary>Whether the drink is more likely one of another style than a mistake in this one.</summary>
    protected virtual bool IsLikelyAnother(RecipeContext context, Style style) => false;

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
        bool isSolvedFor = Array.IndexOf(BandSolver.Facts, Of) >= 0;
        var others = isSolvedFor ? OthersOut(context, style) : [];

        // Two or more of one drink are one finding: that of the fact which lies furthest out.
        double far = Distance(value, seen);
        foreach (var (fact, other, band) in others)
        {
            double theirs = Distance(other, band);
            if (theirs > far || (theirs == far && fact < Of)) return;
        }

        var usual = style.Usual(Of) ?? seen;
        bool over = value.Value > seen.High;
        var remedy = !context.OffersCorrections ? Remedy.Say("")
            : isSolvedFor && others.Count > 0 ? null
            : PutRight(context, value, seen, usual);
        if (remedy is null || (isSolvedFor && !Keeps(context, style, remedy)))
            remedy = BandSolver.Solve(context, style) ?? Remedy.Say(others.Count > 0 ? NothingBringsAll : TakesAnotherOut);
        string unit = Say.Unit(Of), ucum = FactNames.Unit(Of, solid: false);
        context.Report(new(Info)
        {
            AskedLevel = (likely && others.Count == 0) || IsLikelyAnother(context, style) ? Level.Note : null,
            At = context.At(drink.Style.Span, "style"),
            Message = $"The {Noun} comes to {Say.Fact(Of, value)}, {(over ? "above" : "below")} "
                + $"{Say.With(over ? seen.High : seen.Low, unit)}, the {(over ? "highest" : "lowest")} among the reference "
                + $"`{style.Id}` drinks; most have {Words(usual, unit)} ({style.SeenInShort}).{Also(others)}",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Evidence =
            [
                Proof.Of(Of, value),
                new Evidence($"{style.Id} seen", (seen.Low + seen.High) / 2, seen.Low, seen.High, ucum, style.SeenSource),
                new Evidence($"{style.Id} usual", (usual.Low + usual.High) / 2, usual.Low, usual.High, ucum, style.UsualSource),
            ],
        });
    }

    /// <summary>
    /// The other facts of the drink that lie outside their bands, and are not what is forgotten in it. Of one alone the whole
    /// range has to; two are no chance.
    /// </summary>
    private List<(Fact Fact, FactValue Value, Band Band)> OthersOut(RecipeContext context, Style style)
    {
        var found = new List<(Fact, FactValue, Band)>();
        foreach (var fact in BandSolver.Facts)
        {
            if (fact == Of || style.Seen(fact) is not { } band) continue;
            var value = context.Fact(fact);
            if (value.IsKnown && (value.Value < band.Low || value.Value > band.High) && !Builds.LacksSide(context.Profile, style, fact))
                found.Add((fact, value, band));
        }

        return found;
    }

    /// <summary>How far a value lies outside its band, as a share of the end that is nearest.</summary>
    private static double Distance(FactValue value, Band band)
    {
        double end = Nearest(band, value.Value);
        return end > 0 ? Math.Abs(value.Value - end) / end : double.PositiveInfinity;
    }

    private static string Also(List<(Fact Fact, FactValue Value, Band Band)> others)
    {
        if (others.Count == 0) return "";
        var words = others.Select(static o =>
            $"{FactNames.Name(o.Fact)} at {Say.Fact(o.Fact, o.Value)} against {Words(o.Band, Say.Unit(o.Fact))}");
        return $" Outside too: {Say.List([.. words])}.";
    }

    private const string NothingBringsAll =
        "No amounts between half and twice what is written bring all of them into the bands: look for a line that is missing or slipped, "
        + "or name the style that it is.";

    private const string TakesAnotherOut =
        "What would bring it into its band takes another figure out: look for a line that is missing or slipped, or name the style that "
        + "it is.";

    /// <summary>Whether a remedy of one part leaves the other facts in their bands.</summary>
    private bool Keeps(RecipeContext context, Style style, Remedy remedy) =>
        remedy.Part is not { } part || BandSolver.KeepsOthers(context, style, part, remedy.Factor, Of);

    /// <summary>The end of a band that is nearest to a value.</summary>
    protected static double Nearest(Band band, double value) => value > band.High ? band.High : band.Low;

    private static string Words(Band band, string unit) => $"{Say.Number(band.Low)}–{Say.With(band.High, unit)}";
}
