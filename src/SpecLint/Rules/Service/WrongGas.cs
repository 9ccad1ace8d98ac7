using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Hazards;

namespace SpecLint.Rules.Service;

[Rule("SL8035", "wrong-gas", "Cream or foam charged with carbon dioxide, or a sparkling drink with laughing gas", Level.Warning)]
internal sealed partial class WrongGas : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        foreach (var step in prep.Method)
        {
            if (!step.Verb.Carbonates && !step.Verb.Aerates) continue;
            bool sparkles = Says(step, TextWords.CarbonDioxide), whips = Says(step, TextWords.NitrousOxide);
            if (sparkles == whips) continue;
            bool foams = prep.Family.OrNone().IsFoam || Creamy(context) is not null;
            if (sparkles ? !foams : foams || !prep.Family.OrNone().IsCarbonated) continue;
            context.Report(new(Rule)
            {
                At = context.VerbOf(step),
                Message = sparkles
                    ? "It is charged with carbon dioxide, which makes cream and foam prickly and sour, can curdle milk, and whips little "
                        + "(common practice, no source)."
                    : "It is charged with nitrous oxide, which leaves a drink flat and sweetish: it holds few bubbles and no acid "
                        + "(common practice, no source).",
                Advice = sparkles
                    ? "Use chargers of nitrous oxide, those for cream."
                    : "Use carbon dioxide, in chargers for soda or from a regulator, in a vessel made for that pressure.",
                Caution = "Never fill a siphon past its line, and use only chargers that its maker names.",
                Evidence = [Proof.Of("family", prep.Family.OrNone().Id, prep.Family.IsGiven ? context.At(prep.Family.Span) : prep.Head)],
            });
            return;
        }
    }

    private static Part? Creamy(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is { Kind.IsDairy: true } material && material.Of(Science.Component.Fat) > Guards.CreamyFat) return part;
        }

        return null;
    }

    private static bool Says(Step step, FixedList<string> words) =>
        HazardWords.HasWords(step.Note, words)
        || HazardWords.HasWords(step.Into, words)
        || HazardWords.HasWords(step.Until, words)
        || step.Items.Any(item => words.Any(w => HazardWords.HasWords(item.Value.Replace('-', ' '), w)));
}
