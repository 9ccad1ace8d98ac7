using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Rules.Hazards;

namespace SpecLint.Rules.Service;

[Rule("SL8033", "hot-into-cold-glass", "A hot liquid poured into a chilled or frozen glass", Level.Warning, Safety = true)]
[Limit("hot-pour", "Hot")]
[Limit("glass-shock", "Shock")]
[Limit("chilled-glass", "Chilled")]
[Limit("freezer-temperature", "Frozen")]
internal sealed partial class HotIntoColdGlass : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (Vessel.Of(drink.GlassWritten) is { IsCopper: true } or { IsAluminium: true } or { IsPewter: true }) return;
        (double Celsius, Spot At)? cold = InWords(context, drink);
        double liquid = double.NaN;
        foreach (var step in drink.Method)
        {
            double stated = Stated(step);
            if (step.Verb.WarmsGlass) cold = null;
            else if (ColdOf(context, drink, step) is { } chilled) cold = chilled;
            else if (step.HasIce || step.Verb.Cools || step.Verb.Freezes)
            {
                // Ice takes the heat; ice in the glass takes it before the wall does.
                liquid = double.NaN;
                if (step.HasIce && step.Verb.IcesGlass) cold = null;
            }
            else if (!double.IsNaN(stated) || step.Verb.Boils)
            {
                liquid = double.IsNaN(stated) ? Boiling : stated;
            }

            bool pours = step.Verb.Adds || step.Verb.Pours || step.Verb.Builds || step.Verb.UsesStrainer;
            if (!pours || cold is not { } glass || !(liquid >= Hot.Value) || liquid - glass.Celsius <= Shock.Value) continue;
            context.Report(new(Rule)
            {
                At = context.VerbOf(step),
                Message = $"What is poured at {Say.Number(liquid, 0)} °C meets a glass of about {Say.Number(glass.Celsius, 0)} °C: "
                    + $"{Say.Number(liquid - glass.Celsius, 0)} K at once, and glass is tested for about "
                    + $"{Say.Number(Shock.Value)} K ({Shock.Source}).",
                Advice = "Do not chill a glass for a hot drink. Preheat it with warm water and pour that out first, or use a "
                    + "heatproof glass.",
                Caution = "A glass that cracks scalds and cuts. Follow the maker's instructions for the glass and the house's "
                    + "safety rules.",
                Evidence = [Proof.Of("liquid", liquid, "Cel"), Proof.Of("glass", glass.Celsius, "Cel"), Proof.Of(Shock)],
                Related = [new RelatedPlace(glass.At.Place, "the cold glass")],
            });
            return;
        }
    }

    private const double Boiling = 100;

    private static double Stated(Step step) =>
        step.To is { IsGiven: true, Value.Dimension: Dimension.Temperature } ? step.To.Value.Base
        : step.At is { IsGiven: true, Value.Dimension: Dimension.Temperature } ? step.At.Value.Base
        : double.NaN;

    /// <summary>The glass that a step chills, and how cold it gets.</summary>
    private static (double, Spot)? ColdOf(RecipeContext context, Drink drink, Step step)
    {
        bool glass = step.Verb.CoolsGlass
            || ((step.Verb.Cools || step.Verb.Freezes) && step.Items.Count == 0
                && (IsGlass(drink, step.Vessel.IsGiven ? step.Vessel.Value.Id : "") || IsGlass(drink, step.Into.Or(""))));
        double stated = Stated(step);
        bool said = HazardWords.HasWords(step.Note, TextWords.ColdGlass) || HazardWords.HasWords(step.Into, TextWords.ColdGlass);
        if (said) return (Frozen.Value, context.VerbOf(step));
        return !glass ? null : (!double.IsNaN(stated) ? stated : step.Verb.Freezes ? Frozen.Value : Chilled.Value, context.VerbOf(step));
    }

    private static bool IsGlass(Drink drink, string word) =>
        word.Length > 0 && (word == drink.GlassWritten || GlassType.Of(word).IsKnown || Phrases.HasAny(word, TextWords.Glass));

    /// <summary>A glass that the notes or its own name call frozen.</summary>
    private static (double, Spot)? InWords(RecipeContext context, Drink drink)
    {
        foreach (var note in drink.Notes)
        {
            if (HazardWords.HasWords(note, TextWords.ColdGlass)) return (Frozen.Value, context.At(note.Span, "notes"));
        }

        bool named = drink.Glass.IsGiven && context.Settings.Bar is { } bar && bar.Glasses.TryGetValue(drink.GlassWritten, out var own)
            && HazardWords.HasWords(own.Name, TextWords.ColdGlass);
        return named ? (Frozen.Value, context.At(drink.Glass.Span, "glass")) : null;
    }
}
