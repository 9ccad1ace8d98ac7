using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule("SL8004", "unknown-glass", "A glass that is neither in bar.json nor a known kind", Level.Warning)]
internal sealed partial class UnknownGlass : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        var bar = context.Settings.Bar;
        if (!drink.Glass.IsGiven || drink.Glass.Value.IsKnown || bar?.Glasses.ContainsKey(drink.GlassWritten) == true) return;
        var types = GlassType.All.Select(static g => g.Id);
        string? near = NearestName.Of(drink.GlassWritten, bar is null ? types : bar.Glasses.Keys.Concat(types));
        context.Report(new(Rule)
        {
            At = context.At(drink.Glass.Span, "glass"),
            Message = $"`{drink.GlassWritten}` is neither a glass in bar.json nor a known kind of glass, so its volume is not known.",
            Advice = near is null
                ? "Add the glass to bar.json with its brim and wash line."
                : $"Write `{near}` if that is meant, or add the glass to bar.json with its brim and wash line.",
            Corrections = context.Write(drink.Glass.Span, near, $"Name `{near}`."),
        });
    }
}
