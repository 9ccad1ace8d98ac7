using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8011", "batch-lacks-water", "A batch poured as it is, without the water that ice would add", Level.Warning,
    Needs = [Fact.Abv, Fact.Dilution], IsConsequence = true)]
[Limit("batch-water-low", "Low")]
internal sealed partial class BatchLacksWater : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!IsPoured(context, prep)) return;
        var (line, percent) = Batch.Water(context.Profile);
        var batch = Batch.Of(context, prep);
        var abv = context.Fact(Fact.Abv);
        if (!abv.IsKnown) return;
        double wants;
        string words;
        if (batch is not null)
        {
            // The drink says how much water its ice gives; a freezer bottle wants less than that, not next to none.
            var dilution = batch.DrinkProfile.Get(Fact.Dilution);
            if (!dilution.IsKnown || dilution.Value < Low.Value || percent >= Low.Value * Guards.WateredBatch) return;
            wants = prep.Family.OrNone().IsKeptInFreezer ? Math.Min(dilution.Value, Low.Value * 1.5) : dilution.Value;
            words = $"`{batch.Drink.Id}` gains {Say.Fact(Fact.Dilution, dilution)} of water on ice";
        }
        else
        {
            var style = Style.Of(prep.Family.OrNone().IsCarbonated ? "carbonated" : "freezer");
            if (percent > 0 || style.Usual(Fact.Abv) is not { } usual || abv.Low <= usual.High) return;
            wants = Low.Value * 1.5;
            words = $"drinks of this kind are poured at up to {Say.With(usual.High, "% vol")}";
        }

        double millilitres = Rounded(wants / 100 * context.Profile.InputVolume * (100 / (100 + percent)));
        bool solved = !double.IsNaN(millilitres) && millilitres > 0;
        var corrections = new List<Correction>();
        if (solved && line is { } water)
        {
            corrections.Add(new Correction(
                CorrectionGrade.Proposed, $"Write {Say.Number(millilitres, 0)} ml of `{water.Line.Item.Or("water")}`.",
                [new TextEdit(context.At(water.Line.Amount.Span), $"\"{Say.Number(millilitres, 0)} ml\"")]));
        }
        else if (solved && prep.Ingredients.Count > 0)
        {
            var last = prep.Ingredients[prep.Ingredients.Count - 1].Span;
            corrections.Add(new Correction(
                CorrectionGrade.Proposed,
                $"Add {Say.Number(millilitres, 0)} ml of `water`.",
                [new TextEdit(
                    context.At(new Reading.TextSpan(last.End, 0)),
                    $",\n    {{ \"item\": \"water\", \"amount\": \"{Say.Number(millilitres, 0)} ml\" }}")]));
        }

        context.Report(new(Rule)
        {
            At = context.At(line is { } l && l.Line.Amount.IsGiven ? l.Line.Amount.Span : prep.IngredientsSpan, "ingredients"),
            Message = $"It is poured as it is at {Say.Fact(Fact.Abv, abv)} with {Say.With(Math.Round(percent, 1), "%")} of water in "
                + $"it, and {words}. A bottle for pouring has at least {Say.Number(Low.Value)} % ({Low.Source}).",
            Advice = solved
                ? $"Add {Say.Number(millilitres, 0)} mL of water ({Say.Number(wants, 0)} % of the rest), or pour it over ice and say so."
                : "Add the water that ice would give, or pour it over ice and say so.",
            Evidence = [Proof.Of(Fact.Abv, abv), Proof.Of("water of the rest", percent, "%"), Proof.Of(Low)],
            Related = batch is null ? [] : [new RelatedPlace(batch.Drink.Head, "the drink that it is a batch of")],
            Corrections = solved && Batch.LosesItsHold(context, millilitres) ? [] : corrections,
        });
    }

    private static bool IsPoured(RecipeContext context, Prep prep)
    {
        if (Batch.IsPouredStraight(prep)) return true;
        if (!prep.Family.OrNone().IsBatch) return false;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Pours && !step.Ice.IsGiven && IsGlass(step)) return true;
        }

        if (SaysPoured(prep)) return true;
        foreach (var user in context.Book.UsersOf(prep.Id))
        {
            if (user is not Drink drink || drink.Ingredients.Count != 1) continue;
            if (context.Profiles.Of(drink).Technique == TechniqueKind.NoIce && drink.Method.Count > 0) return true;
        }

        return false;
    }

    /// <summary>Words by which a note says that nobody stirs it on ice any more.</summary>
    private static readonly string[] Poured = ["no ice", "without ice", "no stirring", "ready to pour", "straight from the fridge", "straight from the tap", "straight off the", "straight into the glass", "pour straight"];

    private static bool SaysPoured(Prep prep)
    {
        foreach (var note in prep.Notes)
        {
            if (Hazards.HazardWords.HasWords(note, Poured)) return true;
        }

        foreach (var step in prep.Method)
        {
            if (Hazards.HazardWords.HasWords(step.Note, Poured)) return true;
        }

        return false;
    }

    private static bool IsGlass(Step step) => !step.Into.IsGiven || step.Into.Value.IndexOf("glass", StringComparison.OrdinalIgnoreCase) >= 0;

    private static double Rounded(double millilitres) => millilitres >= 50 ? Math.Round(millilitres / 5) * 5 : Math.Round(millilitres);
}
