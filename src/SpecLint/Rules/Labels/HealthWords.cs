using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

/// <summary>SL7018: words of health for a drink with alcohol.</summary>
internal sealed class HealthWords : MenuRule
{
    private static readonly LabelRule Law = LabellingTable.Of("health-claim");
    private static readonly Limit ClaimStrength = Limits.Of("claims-strength");

    private static readonly RuleInfo Rule = new("SL7018", "health-words-with-alcohol", "The menu promises health of a drink with alcohol", Level.Error)
    {
        Needs = [Fact.Abv],
        Limits = ["claims-strength"],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(FileContext context, Menu menu)
    {
        if (!Law.AppliesIn(context.Settings)) return;
        foreach (var entry in menu.Drinks)
        {
            if (!entry.Drink.IsGiven) continue;
            Look(context, entry, entry.Words, "words");
            Look(context, entry, entry.Name, "name");
            foreach (var claim in entry.Claims) Look(context, entry, claim, $"claims[{claim.Or("")}]");
        }
    }

    private static void Look(FileContext context, MenuEntry entry, Given<string> text, string path)
    {
        if (!text.IsGiven || WordSearch.First(text.Value, Law.Words) is not { } word) return;
        if (context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) return;
        var abv = context.Profiles.Of(recipe).Get(Fact.Abv);
        if (Check(abv) != Stand.Broken) return;
        context.Report(new Finding(Rule)
        {
            AskedLevel = Law.LevelCap,
            Place = context.At(text.Span),
            Subject = context.Id,
            Path = $"drinks[{entry.Drink.Value}].{path}",
            Message = $"\"{word}\" speaks of health, and {recipe.Name.Or(recipe.Id)} comes to {Say.Fact(Fact.Abv, abv)}; over {Say.Number(ClaimStrength.Value)} % vol no such words may be used ({ClaimStrength.Source}).",
            Advice = $"Take \"{word}\" out.",
            Evidence = [Proof.Of(Fact.Abv, abv), Proof.Of(ClaimStrength), Proof.Of("word", word, context.At(text.Span))],
            Related = [new RelatedPlace(recipe.Head, "the drink")],
        });
    }

    private static Stand Check(FactValue abv) => abv.IsKnown ? Findings.Check.AtMost(abv, ClaimStrength.Value) : Stand.NotShown;
}
