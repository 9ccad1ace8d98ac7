using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4029", "killed-by-heat", "An enzyme or a live culture goes into something so hot that it cannot work", Level.Warning)]
internal sealed partial class KilledByHeat : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item is not { } item || EnzymeTable.Find(item) is not { } enzyme) continue;
            int entry = Pot.Of(prep).Entry(part.Line);
            if (entry >= prep.Method.Count || StepHeat.At(prep, entry) is not var (celsius, span) || !(celsius > enzyme.Kills)) continue;
            string kills = $"{Say.Number(enzyme.Kills, 0)} °C";
            context.Report(new(Rule)
            {
                At = context.ItemOf(part.Line),
                Message = $"`{item.Id}` goes in at {Say.Number(celsius, 0)} °C, and {enzyme.Name} stops working for good above {kills} "
                    + $"({enzyme.Source}).",
                Advice = $"Let it cool below {kills} first, and give it its time there.",
                Evidence = [Proof.Of("works below", enzyme.Kills, "Cel", enzyme.Source)],
                Related = [context.See(span, "how hot it is")],
            });
        }
    }
}
