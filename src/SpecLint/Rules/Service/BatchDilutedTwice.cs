using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Service;

[Rule("SL8012", "batch-diluted-twice", "A batch with water in it that is diluted on ice again", Level.Warning, Needs = [Fact.Dilution])]
[Limit("batch-water-low", "Low")]
internal sealed partial class BatchDilutedTwice : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        if (context.Recipe is Prep prep)
        {
            if (!Batch.Is(prep) || Watered(context.Profile) is not var (water, percent)) return;
            if (prep.Method.FirstOrDefault(static s => s.Verb.Chills && s.HasIce) is { } step)
                Report(context, step, water, context.At(water.Line.Span), percent, "this batch", double.NaN);
            return;
        }

        if (context.Profile is not
            {
                Technique: TechniqueKind.Shaken or TechniqueKind.Stirred or TechniqueKind.Thrown or TechniqueKind.Blended,
                TechniqueStep: { } chills,
            })
            return;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix
                || part.Item?.File is not Prep made
                || part.Item.ByProduct is not null
                || made.Family.OrNone() is not { IsBatch: true, IsCarbonated: false })
                continue;
            if (Watered(context.Profiles.Of(made)) is not var (water, percent)) continue;

            // A seasoning batch is a small part; a batch of the drink is most of it.
            if (!part.IsWeighed || part.Grams.Typical < Guards.BatchShare * context.Profile.InputMass) continue;
            Report(
                context, chills, part, made.At(water.Line.Span), percent, $"`{made.Id}`",
                context.Fact(Fact.Dilution) is { IsKnown: true } d ? d.Value : double.NaN);
            return;
        }
    }

    /// <summary>The water of a batch that has as much of it as ice would give; <see langword="null"/> where it has less.</summary>
    private static (Part Line, double Percent)? Watered(RecipeProfile batch) =>
        Batch.Water(batch) is ({ } line, var percent) && !(percent < Low.Value * Guards.WateredBatch) ? (line, percent) : null;

    private static void Report(RecipeContext context, Step step, Part part, Reading.Place water, double percent, string batch, double more)
    {
        context.Report(new(Rule)
        {
            At = context.VerbOf(step),
            Message = $"There is {Say.With(Math.Round(percent, 1), "%")} of water in {batch} already, and the step to {step.Written} "
                + $"it on ice adds {(double.IsNaN(more) ? "as much again" : $"{Say.Number(more, 0)} % more")}.",
            Advice = "Take the water out of the batch, or pour it cold without ice.",
            Evidence =
            [
                Proof.Of("water of the rest", percent, "%"), Proof.Of(Low),
                Proof.Of("batch", part.Line.Item.Or(""), context.At(part.Line.Span)),
            ],
            Related = [new RelatedPlace(water, "the water in the batch")],
        });
    }
}
