using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

[Rule("SL6013", "grapefruit-not-named", "The menu does not name grapefruit, which changes how medicines work", Level.None, Safety = true)]
internal sealed partial class GrapefruitNotNamed : MenuEntryRule
{
    protected override void Check(FileContext context, Menu menu, MenuEntry entry)
    {
        if (context.Settings.LevelOf(Rule.Id) is null or { Level: Level.None }) return;
        if (!entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Drink drink) return;
        if (Says(entry.Words) || Says(entry.Name) || Says(drink.Name)) return;
        if (context.Profiles.Of(drink).HazardLoads.FirstOrDefault(static l => l.Hazard.Id == "grapefruit") is not { } load) return;
        context.Report(new(Rule)
        {
            At = context.At(entry.Words.IsGiven ? entry.Words.Span : entry.Drink.Span, $"drinks[{entry.Drink.Value}].words"),
            Message = $"`{drink.Id}` holds {HazardWords.NameOf(load)} and the menu does not say so. Grapefruit and its relatives "
                + $"change how many medicines work ({load.Hazard.Rules[0].Source}).",
            Advice = "Name grapefruit on the menu.",
            Caution = HazardWords.Caution,
            Related = [new RelatedPlace(drink.At(load.Part.Line.Item.Span), "the line it comes from")],
        });
    }

    private static bool Says(Given<string> text) =>
        HazardWords.Holds(text, "grapefruit") || HazardWords.Holds(text, "pomelo") || HazardWords.Holds(text, "paloma");
}
