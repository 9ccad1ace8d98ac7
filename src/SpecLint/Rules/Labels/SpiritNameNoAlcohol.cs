using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule("SL7021", "spirit-name-without-alcohol", "A drink without alcohol has the name of a spirit", Level.Error)]
internal sealed partial class SpiritNameNoAlcohol : FileRule
{
    private static readonly LabelRule LawEu = LabellingTable.Of("alcohol-free-spirit-name");
    private static readonly LabelRule LawGb = LabellingTable.Of("alcohol-free-spirit-name-gb");
    private static readonly string[] Denials =
    [
        "alcohol-free", "alcohol free", "non-alcoholic", "nonalcoholic", "no-alcohol", "zero", "0 %", "0%", "0.0", "0.0%", "virgin",
        "zero-proof", "0,0", "0,0 %", "without alcohol", "alcohol-less", "mocktail", "alkoholfrei", "alkoholfreier", "alcoholvrij",
        "alcoholvrije", "sans alcool", "analcolico", "sin alcohol", "senza alcol",
    ];

    private static readonly string[] Spirits =
    [
        "gin", "rum", "vodka", "whisky", "whiskey", "brandy", "tequila", "mezcal", "cognac", "bourbon", "aquavit", "akvavit", "genever",
        "pastis", "cachaça", "pisco", "scotch", "irish whiskey", "liqueur", "likör", "grappa", "calvados", "armagnac", "ouzo", "sambuca",
        "advocaat", "rhum", "wodka",
    ];

    private static readonly WordFilter FirstOfDenials = new(Denials.Select(static d => new string([.. d.TakeWhile(char.IsLetterOrDigit)])));

    public override void Check(FileContext context)
    {
        var law = LawEu.AppliesIn(context.Settings) ? LawEu : LawGb;
        if (!law.AppliesIn(context.Settings)) return;
        if (context.File is Recipe { Name.IsGiven: true } recipe) Look(context, law, recipe.Name, "name", recipe.Name.Value);
        if (context.File is not Menu menu) return;
        foreach (var (_, at, path, text) in MenuPieces.Texts(menu)) Look(context, law, at, path, text);
    }

    /// <summary>Whether the text may hold a denial: the filter reads over an apostrophe, behind which a word ends here.</summary>
    private static bool MayDeny(string text) => FirstOfDenials.MayHold(text) || text.IndexOf('\'') >= 0;

    private static void Look(FileContext context, LabelRule law, Given<string> at, string path, string text)
    {
        if (!MayDeny(text)
            || WordSearch.First(text, Denials) is not { } denial
            || WordSearch.First(text, Spirits) is not { } spirit)
            return;
        context.Report(new(Rule)
        {
            AskedLevel = law.LevelCap,
            At = context.At(at.Span, path),
            Key = text,
            Message = $"\"{text}\": {spirit} is reserved for a spirit with a minimum strength, and \"{denial}\" does not change that "
                + $"({law.Source}).",
            Advice = "Describe it, e.g. \"juniper drink, without alcohol\".",
            Evidence = [Proof.Of("words", text, context.At(at.Span))],
        });
    }
}
