using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7035", "package-without-allergens", "Bottles filled for sale have no allergens to print on them, and the state asks for them",
    Level.Error, Safety = true)]
internal sealed partial class PackageWithoutAllergens : PrepRule
{
    private const string State = "US-NY";

    private static readonly LabelRule Law = LabellingTable.Of("allergens-on-package-ny");

    public override void Check(RecipeContext context, Prep prep)
    {
        // A list that is given is held against what is in it by SL7001; what is packed after the order is not prepacked.
        if (!Law.AppliesIn(context.Settings) || !prep.PortionCount.IsGiven || AllergenWords.Declared(prep).IsGiven) return;
        AllergenOrigin? first = null;
        List<string>? tokens = null;
        foreach (var origin in context.Profile.Allergens.Origins)
        {
            if (!origin.Certain
                || AllergenTable.Of(State, origin.Token) is null
                || !origin.CountsIn("US")
                || tokens?.Contains(origin.Token) == true)
                continue;
            (tokens ??= []).Add(origin.Token);
            if (first is null || (first.Mark == Mark.Memory && origin.Mark != Mark.Memory)) first = origin;
        }

        if (first is null) return;
        context.Report(new(Rule)
        {
            AskedLevel = first.Mark == Mark.Memory ? Level.Warning : Law.LevelCap,
            Place = prep.Declares is { } d ? context.At(d.Span) : prep.Head,
            Path = "declares.allergens",
            Key = Law.Id,
            Message = $"It is filled into {Say.Number(prep.PortionCount.Value, 0)} portions and holds {Say.List(tokens!)} "
                + $"({first.Token} {AllergenWords.Way(first)}), but no list says so. What is prepacked and sold where it is made has "
                + $"its allergens on the package ({Law.Source}).",
            Advice = "List them under `declares.allergens`, and print them on the bottle or on a label fixed to it.",
            Caution = AllergenWords.Caution,
            Evidence = [AllergenWords.ComesIn(context, first), Proof.Of("law", Law.Source)],
            Related = [context.See(first.Part.Line.Span, $"brings {first.Token}")],
            Corrections = Correction.Propose($"Declare {Say.List(tokens!)}.", Declares.Edit(prep, "allergens", Declares.List(tokens!))),
        });
    }
}
