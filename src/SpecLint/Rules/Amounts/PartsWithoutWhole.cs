using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2032", "parts-without-whole", "Parts, with no size given for a part", Level.Warning, IsCause = true)]
internal sealed partial class PartsWithoutWhole : RecipeRule
{
    /// <summary>mL of a part in a drink, where nothing says better; common practice, no source.</summary>
    private const double UsualPart = 30;

    public override void Check(RecipeContext context)
    {
        Line? first = null;
        double parts = 0;
        int others = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (!part.Line.Amount.IsGiven || part.Phase == PartPhase.Beside) continue;
            if (part.Line.Amount.Value.Dimension == Dimension.Part)
            {
                first ??= part.Line;
                parts += part.Line.Amount.Value.Value;
            }
            else
            {
                others++;
            }
        }

        if (first is null) return;

        // A preparation of parts alone that states its yield gives the part its size.
        double size = UsualPart;
        string unit = "ml";
        bool byYield = others == 0 && context.Recipe is Prep { Yield.IsGiven: true } prep && prep.Yield.Value.Dimension is Dimension.Mass or Dimension.Volume;
        if (byYield)
        {
            var yield = ((Prep)context.Recipe).Yield.Value;
            size = yield.Base / parts;
            unit = yield.Dimension == Dimension.Mass ? "g" : "ml";
        }

        var edits = new List<TextEdit>();
        foreach (var part in context.Profile.Parts)
        {
            if (!part.Line.Amount.IsGiven || part.Phase == PartPhase.Beside || part.Line.Amount.Value.Dimension != Dimension.Part) continue;
            edits.Add(new TextEdit(context.At(part.Line.Amount.Span), $"\"{Written.Number(part.Line.Amount.Value.Value * size)} {unit}\""));
        }

        context.Report(new(Rule)
        {
            At = context.AmountOf(first),
            Message = $"{Say.Count(edits.Count, "line")} of the recipe {(edits.Count == 1 ? "is" : "are")} in parts "
                + $"({Say.Number(parts)} in all), and no size is given for a part, so neither strength nor volume can be computed.",
            Advice = byYield
                ? $"Write amounts: for the stated yield a part is {Written.Number(size)} {unit}."
                : $"Write amounts, for example {Written.Number(size)} {unit} a part.",
            Evidence = [Proof.Of("parts", parts, "")],
            Corrections = [new Correction(CorrectionGrade.Proposed, $"Write amounts with {Written.Number(size)} {unit} a part.", edits)],
        });
    }
}
