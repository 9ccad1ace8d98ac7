using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Service;

/// <summary>SL8002: a drink that stands over the wash line of its glass.</summary>
internal sealed class OverWashLine : DrinkRule
{
    private static readonly RuleInfo Rule = new("SL8002", "over-wash-line", "A drink filled above the wash line of its glass", Level.Warning)
    {
        Needs = [Fact.ServedVolume],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Glass is not { } glass || double.IsNaN(glass.WashLine)) return;

        // Foam may stand over the line.
        if (glass.Fill.Low - glass.Foam <= glass.WashLine || GlassOverflows.Overflows(glass)) return;
        var served = context.Fact(Fact.ServedVolume);
        var remedy = Resize.To(context, glass.WashLine - glass.Ice, "Pour it into a larger glass");
        context.Report(new Finding(Rule)
        {
            Place = context.At(drink.Glass.Span),
            Subject = context.Id,
            Path = "glass",
            Message = $"It comes to {glass.Words(served)}, above the {Say.With(glass.WashLine, "mL")} to which {glass.Name} is filled (bar.json, wash line).",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Evidence = [Proof.Of(Fact.ServedVolume, served), Proof.Of("ice displaces", glass.Ice, "mL"), Proof.Of("washLine", glass.WashLine, "mL", "bar.json")],
            Related = glass.HouseSpan is { } span ? [new RelatedPlace(context.Settings.Bar!.At(span), "the glass")] : [],
        });
    }
}
