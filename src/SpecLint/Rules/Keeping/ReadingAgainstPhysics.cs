using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule("SL5038", "reading-against-physics", "A reading lies beyond what all that went in can give", Level.Warning, Safety = true)]
[Limit("bound-more")]
[Limit("bound-minerals")]
[Limit("bound-strength")]
[Limit("bound-dry-matter", "DryMatter")]
internal sealed partial class ReadingAgainstPhysics : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        foreach (var one in context.Profile.ImpossibleReadings)
        {
            string why = $"{one.What} is written under `measured`, and {one.Why}: the reading is not believed, and replaces and clears "
                + "nothing.";
            Report(context, one.Span, one.Path, why, one.Value, one.Bound);
        }

        if (prep.AsMeasured is not { Mass: { IsGiven: true, Value.Dimension: Reading.Dimension.Mass } mass }
            || !Techniques.Has(prep, static v => v.Dries))
            return;
        double dry = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.TakenOut) return;
            if (part.Phase != PartPhase.Mix) continue;
            if (!part.IsWeighed
                || part.Material is not { } material
                || (material.Unknown & (Unknowns.Composition | Unknowns.Water)) != 0)
                return;
            dry += KeepingWords.DryGramsOf(part, material);
        }

        double least = dry * (1 - (DryMatter.Value / 100));
        if (mass.Value.BaseHigh >= least || prep.Method.Any(static s => s.Verb.Strains || s.Verb.Clarifies)) return;
        Report(
            context, mass.Span, "measured.mass",
            $"{Say.Number(mass.Value.Base, 0)} g is written under `measured`, and about {Say.Number(dry, 0)} g of what goes in are dry "
                + "matter, which no drying takes away: the reading shows nothing.",
            mass.Value.Base, least);
    }

    private static void Report(RecipeContext context, Reading.TextSpan span, string path, string message, double value, double bound) =>
        context.Report(new(Rule)
        {
            At = context.At(span, path),
            Message = message,
            Advice = "Calibrate and measure again; if the reading stands, the amounts in the file are not what is made: correct them.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("reading", value, ""), Proof.Of("bound", bound, "")],
        });
}
