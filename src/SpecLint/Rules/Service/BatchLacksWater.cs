using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Hazards;

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
            Corrections = solved && !Batch.LosesItsHold(context, millilitres) ? Add(context, prep, line, millilitres) : [],
        });
    }

    /// <summary>Brings the line of water to an amount, or adds one.</summary>
    private static IReadOnlyList<Correction> Add(RecipeContext context, Prep prep, Part? line, double millilitres)
    {
        string words = $"{Say.Number(millilitres, 0)} ml";
        if (line is not null) return context.Write(line.Line.Amount.Span, words, $"Write {words} of `{line.Line.Item.Or("water")}`.");
        if (prep.Ingredients.Count == 0) return [];
        var behind = context.At(new TextSpan(prep.Ingredients[prep.Ingredients.Count - 1].Span.End, 0));
        return Correction.Propose(
            $"Add {words} of `water`.", new TextEdit(behind, $",\n    {{ \"item\": \"water\", \"amount\": \"{words}\" }}"));
    }

    private static bool IsPoured(RecipeContext context, Prep prep)
    {
        if (Batch.IsPouredStraight(prep)) return true;
        if (!prep.Family.OrNone().IsBatch) return false;
        return prep.Method.Any(static s => s.Verb.Pours && !s.Ice.IsGiven && IsGlass(s))
            || (Says(prep, static t => HazardWords.HasWords(t, TextWords.PouredAsIs))
                && !Says(prep, static t => Phrases.Affirms(t.Value, TextWords.ToOrder)))
            || context.Book.UsersOf(prep.Id).Any(u => u is Drink { Ingredients.Count: 1, Method.Count: > 0 } drink
                && context.Profiles.Of(drink).Technique == TechniqueKind.NoIce);
    }

    /// <summary>Whether the notes of a preparation or of its steps say something.</summary>
    private static bool Says(Prep prep, Func<Reading.Given<string>, bool> says) =>
        prep.Notes.Any(n => n.IsGiven && says(n)) || prep.Method.Any(s => s.Note.IsGiven && says(s.Note));

    private static bool IsGlass(Step step) =>
        !step.Into.IsGiven || step.Into.Value.IndexOf("glass", StringComparison.OrdinalIgnoreCase) >= 0;

    private static double Rounded(double millilitres) => millilitres >= 50 ? Math.Round(millilitres / 5) * 5 : Math.Round(millilitres);
}
