using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8028", "glass-contradicts-style", "A glass of another shape than the style's, or ice in a glass that takes none", Level.Note,
    IsConsequence = true)]
[Limit("hot-drink-from", "Hot")]
internal sealed partial class GlassContradictsStyle : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.Glass is not { IsGiven: true, Value: { IsKnown: true } glass }) return;
        if (glass.NeverIced && glass.Shape == "up" && GlassFill.IceOf(context.Profile, drink).Iced)
        {
            Report(
                context, drink, Level.Warning,
                $"Ice goes into the glass, and a {glass.Name.ToLowerInvariant()} is served without ice. The ice takes up the room of "
                    + $"the drink ({glass.Source}).",
                "Strain it without ice, or serve it in a rocks glass.");
            return;
        }

        if (glass.Shape == "up" && IsServedHot(drink))
        {
            Report(
                context, drink, Level.Warning,
                $"It is served hot, and a {glass.Name.ToLowerInvariant()} is made for cold drinks: thin glass may crack, and without a "
                    + "handle nobody can hold it (common practice, no source).",
                "Serve it in a glass or mug for hot drinks.");
            return;
        }

        if (drink.KnownStyle is not { Glasses.Count: > 0 } style) return;
        foreach (string id in style.Glasses)
        {
            if (id == glass.Id || GlassType.Of(id).Shape == glass.Shape) return;
        }

        Report(
            context, drink, Level.Note,
            $"A {glass.Name.ToLowerInvariant()} is the wrong shape for a `{style.Id}`, which is served in "
                + $"{Say.List([.. style.Glasses.Select(g => $"`{g}`")], "or")} (table of styles; {style.UsualInShort}).",
            "Use one of these glasses, or name the right style.");
    }

    /// <summary>Heated, and no ice or cold step behind it.</summary>
    private static bool IsServedHot(Drink drink)
    {
        bool hot = false;
        foreach (var step in drink.Method)
        {
            if (step.Verb.Chills && !step.Verb.Builds || step.HasIce || step.Verb.Cools || step.Verb.Freezes) return false;
            hot |= Heat.Reaches(step, Hot.Value);
        }

        return hot;
    }

    private static void Report(RecipeContext context, Drink drink, Level level, string message, string advice) => context.Report(new(Rule)
    {
        AskedLevel = level,
        At = context.At(drink.Glass.Span, "glass"),
        Message = message,
        Advice = advice,
        Related = drink.Style.IsGiven ? [context.See(drink.Style.Span, "the style")] : [],
    });
}
