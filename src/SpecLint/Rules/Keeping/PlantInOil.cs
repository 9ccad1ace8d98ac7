using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule("SL5016", "plant-in-oil", "Garlic, herb, chilli or vegetable under oil is kept long or warm", Level.Error, Safety = true)]
[Limit("oil-infusion-days", "Days")]
[Limit("oil-infusion-ph", "Ph")]
[Limit("food-code-cold-hold")]
internal sealed partial class PlantInOil : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!SpecialCases.IsPlantInOil(context.Profile, out var plant)) return;
        double days = Storage.Days(prep), celsius = Storage.Celsius(prep, context.Settings);
        bool soured = prep.Measured is { Ph.IsGiven: true } measured
            && measured.Ph.Value.High + Meters.PhHalfWidth(measured, context.Book) <= Ph.Value;
        bool warm = StoredTooWarm.IsTooWarm(celsius, context.Settings), unknown = double.IsNaN(days) || double.IsNaN(celsius);
        if (Storage.IsFrozen(celsius) || soured || (!(days > Days.Value) && !warm && !unknown)) return;

        // Of an oil that only its name tells of, nobody knows whether there is anything of the plant in it.
        bool named = plant!.Material is { } of && of.Kind.IsFat && SpecialCases.NamesPlant(of);
        string how = warm ? $"at {KeepingWords.Degrees(celsius)}"
            : unknown ? "for a time or at a temperature that is not stated"
            : KeepingWords.Days(days);
        context.Report(new(Rule)
        {
            Answer = !named && (warm || !unknown) ? Answer.Broken : Answer.NotShown,
            AskedLevel = named ? Level.Warning : null,
            Place = warm && prep.Keep!.At.IsGiven ? context.At(prep.Keep.At.Span) : KeepingWords.At(context, prep),
            Path = warm && prep.Keep!.At.IsGiven ? "keep.at" : "keep.for",
            Message = $"{KeepingWords.NameOf(plant)} under oil is kept {how}. Without air and acid Clostridium botulinum can grow "
                + $"there, so the limit is {KeepingWords.Days(Days.Value)} in the cold ({Days.Source}).",
            Advice = $"Keep it at 5 °C or colder and discard it after {KeepingWords.Days(Days.Value)}, freeze it, or use the dried plant. "
                + "Souring first has only been tested for garlic, basil, oregano and rosemary by the published recipe.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Days), Proof.Of(Ph), Proof.Of("part", plant.Line.Item.Or(""), context.At(plant.Line.Item.Span))],
        });
    }
}
