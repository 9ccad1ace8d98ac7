using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Service;

[Rule("SL8003", "glass-by-name-only", "A glass by its common name, in a bar that lists its glasses", Level.Note)]
internal sealed partial class GlassByNameOnly : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.Glass is not { IsGiven: true, Value: { IsKnown: true } type }
            || context.Settings.Bar is not { Glasses.Count: > 0 } bar
            || bar.Glasses.ContainsKey(drink.GlassWritten))
            return;
        string? near = null;
        foreach (var own in bar.Glasses)
        {
            if (GlassType.Of(own.Key) == type || own.Key.IndexOf(type.Id, StringComparison.Ordinal) >= 0) near ??= own.Key;
        }

        context.Report(new(Rule)
        {
            At = context.At(drink.Glass.Span, "glass"),
            Message = $"`{drink.GlassWritten}` is a kind of glass of {Say.Number(type.BrimLow)} to {Say.With(type.BrimHigh, "mL")} "
                + $"({type.Source}) and not one of the glasses in bar.json, so nobody can tell how full it is.",
            Advice = near is null
                ? "Add the glass to bar.json with its brim and wash line, measured with water."
                : $"Name the bar's `{near}`, or add the glass to bar.json with its brim and wash line.",
            Evidence = [new Evidence("brim", type.BrimTypical, type.BrimLow, type.BrimHigh, "mL", type.Source)],
            Corrections = context.Write(drink.Glass.Span, near, $"Name `{near}`."),
        });
    }
}
