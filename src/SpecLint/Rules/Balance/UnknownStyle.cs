using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Balance;

[Rule("SL3007", "unknown-style", "A style that is not in the table", Level.Warning)]
internal sealed partial class UnknownStyle : DrinkRule
{
    private static readonly string[] Ids = [.. Style.All.Select(s => s.Id)];
    private static readonly string InWords = Say.List([.. Ids.Select(i => $"`{i}`")], "or");

    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.Style is not { IsGiven: true, Value: { IsKnown: false, Id: var word, Meant: var meant } } style) return;
        string? near = meant?.Id ?? NearestName.Of(word, Ids);
        var grade = meant is null ? CorrectionGrade.Proposed : CorrectionGrade.Assured;
        context.Report(new(Rule)
        {
            // A word near none of the table is the house's own, and no slip.
            AskedLevel = meant is null && near is not null ? null : Level.Note,
            At = context.At(style.Span, "style"),
            Message = meant is not null
                ? $"`{word}` is another word for the style `{meant.Id}`, with which the drink is compared."
                : $"`{word}` is not a style in the table, so no band is checked.",
            Advice = near is not null
                ? $"Write `{near}`{(meant is null ? ", if that is meant" : "")}."
                : $"Write one of {InWords}, or leave the style out.",
            Corrections = near is null ? [] : [new Correction(grade, $"Write `{near}`.", [context.Rewrite(style.Span, near)])],
        });
    }
}
