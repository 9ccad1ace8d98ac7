using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3013", "top-contradicts-style", "A sparkling top where the style has none, or none where it has one", Level.Warning)]
internal sealed partial class TopContradictsStyle : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style || Builds.Contradicts(context.Profile.Technique, style)) return;
        var sparkling = Builds.First(context.Profile, Substances.IsSparkling);
        if (style.IsTopped && sparkling is null)
        {
            // A highball of juice, tea or water is one too.
            if (!style.MustSparkle || (context.Profile.Unknown & (Unknowns.Composition | Unknowns.Mass)) != 0) return;
            context.Report(new(Rule)
            {
                At = context.At(drink.Style.Span, "style"),
                Message = $"A `{style.Id}` is topped with something sparkling, but none of its parts is sparkling.",
                Advice = "Add the top, or name the right style.",
            });
        }
        else if (!style.IsTopped && sparkling is { } top && style.NeverSparkles)
        {
            string better = style.WantsAcid ? "fizz" : "highball";
            context.Report(new(Rule)
            {
                At = context.At(drink.Style.Span, "style"),
                Message = $"It is lengthened with {top.Line.Item.Or("something sparkling")}, but a `{style.Id}` is not topped, so its "
                    + "bands do not fit.",
                Advice = $"Write `{better}`, or leave out the top.",
                Related = [context.See(top.Line.Span, "the top")],
                Corrections = context.Write(drink.Style.Span, better, $"Name the style `{better}`."),
            });
        }
    }
}
