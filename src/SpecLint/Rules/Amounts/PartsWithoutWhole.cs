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
        bool others = false;
        foreach (var part in context.Profile.Parts)
        {
            if (!part.Line.Amount.IsGiven || part.Phase == PartPhase.Beside) continue;
            others |= !IsOfParts(part);
            if (!IsOfParts(part)) continue;
            first ??= part.Line;
            parts += part.Line.Amount.Value.Value;
        }

        if (first is null) return;

        // A preparation of parts alone that states its yield gives the part its size.
        double size = UsualPart;
        string unit = "ml";
        bool byYield = false;
        if (!others && context.Recipe is Prep { Yield: { IsGiven: true, Value: { Dimension: Dimension.Mass or Dimension.Volume } yield } })
            (byYield, size, unit) = (true, yield.Base / parts, yield.Dimension == Dimension.Mass ? "g" : "ml");
        var edits = new List<TextEdit>();
        foreach (var part in context.Profile.Parts)
        {
            if (!IsOfParts(part)) continue;
            var given = part.Line.Amount;
            edits.Add(context.Rewrite(given.Span, $"{Written.Number(given.Value.Value * size)} {unit}"));
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
            Corrections = Correction.Propose($"Write amounts with {Written.Number(size)} {unit} a part.", edits),
        });
    }

    private static bool IsOfParts(Part part) =>
        part.Line.Amount is { IsGiven: true, Value.Dimension: Dimension.Part } && part.Phase != PartPhase.Beside;
}
