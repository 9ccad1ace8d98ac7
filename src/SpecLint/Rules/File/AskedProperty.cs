using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.File;

[Rule("SL1013", "asked-property-missing", "A property that the bar requires in every recipe is missing", Level.Warning)]
internal sealed partial class AskedProperty : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        if (context.Settings.Bar is not { Asks.Count: > 0 } bar) return;
        foreach (var asked in bar.Asks)
        {
            if (!asked.IsGiven || Has(context.Recipe, asked.Value)) continue;
            context.Report(new(Rule)
            {
                At = new(context.File.Head, asked.Value),
                Message = $"bar.json requires `{asked.Value}` in every recipe, and "
                    + $"{(context.Recipe is Drink ? "this drink" : "this preparation")} does not give it.",
                Advice = asked.Value switch
                {
                    "source" => "Write where the recipe comes from: `house recipe`, a book with its page, a person.",
                    "author" => "Write who answers for it.",
                    "date" => "Write the day on which it was last changed, as 2026-11-25.",
                    "revision" => "Write a number that rises with each change.",
                    _ => $"Give `{asked.Value}`.",
                },
                Related = [new RelatedPlace(bar.At(asked.Span), "asked here")],
            });
        }
    }

    /// <summary>What a kind of recipe does not have is not asked of it.</summary>
    private static bool Has(Recipe recipe, string property)
    {
        var drink = recipe as Drink;
        var prep = recipe as Prep;
        return property switch
        {
            "author" => recipe.Author.IsGiven,
            "date" => recipe.Date.IsGiven,
            "revision" => recipe.Revision.IsGiven,
            "source" => recipe.Origin.IsGiven,
            "method" => recipe.MethodSpan.Length > 0,
            "declares" => recipe.Declares is not null,
            "measured" => recipe.AsMeasured is not null || drink is not null,
            "notes" => recipe.Notes.Count > 0,
            "style" => drink is null || drink.Style.IsGiven,
            "glass" => drink is null || drink.Glass.IsGiven,
            "garnish" => drink is null || drink.Garnish.Count > 0,
            "serves" => drink is null || drink.Serves.IsGiven,
            "yield" => prep is null || prep.Yield.IsGiven,
            "target" => prep is null || prep.Target is not null,
            "keep" => prep is null || prep.Keep is not null,
            "portions" => prep is null || prep.PortionCount.IsGiven,
            _ => true,
        };
    }
}
