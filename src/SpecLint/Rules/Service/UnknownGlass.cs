using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule("SL8004", "unknown-glass", "A glass that is neither in bar.json nor a known kind", Level.Warning)]
internal sealed partial class UnknownGlass : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (!drink.Glass.IsGiven || drink.Glass.Value.IsKnown) return;
        var bar = context.Settings.Bar;
        if (bar is not null && bar.Glasses.ContainsKey(drink.GlassWritten)) return;
        IEnumerable<string> names = GlassType.All.Select(g => g.Id);
        if (bar is not null) names = bar.Glasses.Keys.Concat(names);
        string? near = NearestName.Of(drink.GlassWritten, names);
        var place = context.At(drink.Glass.Span);
        context.Report(new(Rule)
        {
            Place = place,
            Path = "glass",
            Message = $"`{drink.GlassWritten}` is neither a glass in bar.json nor a known kind of glass, so its volume is not known.",
            Advice = near is null
                ? "Add the glass to bar.json with its brim and wash line."
                : $"Write `{near}` if that is meant, or add the glass to bar.json with its brim and wash line.",
            Corrections = near is null ? [] : [new Correction(CorrectionGrade.Proposed, $"Name `{near}`.", [new TextEdit(place, $"\"{near}\"")])],
        });
    }
}
