using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Amounts;

[Rule("SL2037", "ounces-as-millilitres", "A figure in ounces with the unit millilitres", Level.Warning, IsCause = true)]
[Limit("amount-ounce-as-ml", "Most")]
[Limit("amount-ounce-as-ml-long", "MostLong")]
[Limit("amount-ounce-quarter", "Quarter")]
[Limit("amount-ounce-beside", "Beside")]
[Limit("amount-potent-strength", "Potent")]
internal sealed partial class OuncesAsMillilitres : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        bool beside = false;
        foreach (var part in context.Profile.Parts) beside |= part.Phase != PartPhase.Beside && part.Millilitres >= Beside.Value;
        if (!beside) return;
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || line.Role == LineRole.Float) continue;
            if (!line.Amount.IsGiven || part.Material is not { State: MaterialState.Liquid } material) continue;
            var amount = line.Amount.Value;
            if (amount.Unit.Name != "ml" || amount.Low < amount.High || !Written.IsMultiple(amount.Value, Quarter.Value)) continue;
            if (amount.Value < Quarter.Value || amount.Value > (material.Kind.Lengthens ? MostLong : Most).Value) continue;
            if (!IsJiggered(part, material)) continue;
            string text = $"{Say.Number(amount.Value, 2)} oz";
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Text(context, line.Amount.Span)} of {Written.Item(line)} is less than any jigger measures, and "
                    + $"{text} is an amount that a drink takes of it ({Most.Source}).",
                Advice = $"Write {text} if ounces are meant. If it is meant as an accent, count it in drops, dashes or bar spoons.",
                Evidence = [Written.Given(context, line), Proof.Of(Most)],
                Corrections = context.Write(line.Amount.Span, text),
            });
        }
    }

    /// <summary>What a jigger measures: not what is dosed in drops and dashes, nor what is too potent for more.</summary>
    private static bool IsJiggered(Part part, Material material)
    {
        var kind = material.Kind;
        if (kind.IsBitters || kind.IsDosed || Solving.Strength(material.PerGram) > Potent.Value) return false;
        // What a house infuses may be meant by the drop.
        if (kind.IsStrong && part.Item?.File is Prep) return false;
        return kind.IsStrong || kind.IsPouredInPart || kind.IsSweetPour || kind.Lengthens;
    }
}
