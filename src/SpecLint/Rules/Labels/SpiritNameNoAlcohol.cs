using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

/// <summary>SL7021: the name of a spirit for what holds no alcohol.</summary>
internal sealed class SpiritNameNoAlcohol : FileRule
{
    private static readonly LabelRule Law = LabellingTable.Of("alcohol-free-spirit-name");
    private static readonly string[] Denials = ["alcohol-free", "alcohol free", "non-alcoholic", "nonalcoholic", "no-alcohol", "zero", "0 %", "0%", "0.0", "0.0%", "virgin", "zero-proof"];
    private static readonly string[] Spirits = ["gin", "rum", "vodka", "whisky", "whiskey", "brandy", "tequila", "mezcal", "cognac", "bourbon", "aquavit", "akvavit", "genever", "pastis", "cachaça", "pisco"];

    private static readonly RuleInfo Rule = new("SL7021", "spirit-name-without-alcohol", "Something without alcohol bears the name of a spirit", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(FileContext context)
    {
        if (!Law.AppliesIn(context.Settings)) return;
        switch (context.File)
        {
            case Recipe recipe:
                Look(context, recipe.Name, "name", recipe.Name.Or(""));
                break;
            case Menu menu:
                foreach (var entry in menu.Drinks)
                {
                    Look(context, entry.Name, $"drinks[{entry.Drink.Or("")}].name", entry.Name.Or(""));
                    if (!entry.Words.IsGiven) continue;
                    foreach (string piece in MenuPieces.Of(entry.Words.Value)) Look(context, entry.Words, $"drinks[{entry.Drink.Or("")}].words", piece);
                }

                break;
        }
    }

    private static void Look(FileContext context, Given<string> at, string path, string text)
    {
        if (!at.IsGiven || WordSearch.First(text, Denials) is not { } denial || WordSearch.First(text, Spirits) is not { } spirit) return;
        context.Report(new Finding(Rule)
        {
            AskedLevel = Law.LevelCap,
            Place = context.At(at.Span),
            Subject = context.Id,
            Path = path,
            Key = text,
            Message = $"\"{text}\": {spirit} is the name of a spirit with a least strength, and \"{denial}\" does not lift that ({Law.Source}).",
            Advice = "Describe it, e.g. \"juniper drink, without alcohol\".",
            Evidence = [Proof.Of("words", text, context.At(at.Span))],
        });
    }
}
