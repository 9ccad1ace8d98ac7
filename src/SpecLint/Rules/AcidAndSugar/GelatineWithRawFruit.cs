using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4023", "gelatine-with-raw-fruit", "Gelatine with a raw fruit whose enzyme keeps it from setting", Level.Warning)]
internal sealed partial class GelatineWithRawFruit : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        Part? gelatine = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item is { } item && GellingTable.Agent(item) is { IsProtein: true }) gelatine = part;
        }

        if (gelatine is null) return;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || part.Item is not { } fruit || GellingTable.Enzyme(fruit) is not { } enzyme) continue;
            double hottest = StepHeat.Hottest(prep, fruit.Id);
            if (double.IsNaN(hottest) || hottest >= enzyme.Kills) continue;
            context.Report(new(Rule)
            {
                At = context.ItemOf(part.Line),
                Message = $"`{fruit.Id}` is raw, and its {enzyme.Name} takes `{gelatine.Item!.Id}` apart: it does not set "
                    + $"({enzyme.Source}).",
                Advice = $"Heat the fruit to at least {Say.With(enzyme.Kills, "°C")} first, take it cooked or canned, or set it with agar.",
                Evidence = [Proof.Of("enzyme lasts below", enzyme.Kills, "Cel", enzyme.Source)],
                Related = [context.See(gelatine.Line.Span, "the gelatine")],
            });
        }
    }
}
