using SpecLint.Book;

namespace SpecLint.Rules.Balance;

[Rule("SL3012", "dairy-contradicts-style", "Cream or milk where the style has none, or none where it has some", Level.Warning)]
internal sealed partial class DairyContradictsStyle : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style) return;
        var dairy = Builds.First(context.Profile, Substances.IsDairy);
        if (dairy is not null && !style.HasDairy && !style.MayHaveDairy)
        {
            // Cream floats on a hot drink, goes into a flip, a blended or a tropical drink, and tops some fizzes.
            if (style.IsHot || style.IsTopped || style.Egg != EggPart.None) return;
            context.Report(new(Rule)
            {
                At = context.At(drink.Style.Span, "style"),
                Message = $"It holds {dairy.Line.Item.Or("dairy")}, but a `{style.Id}` has no cream or milk, so its bands do not fit.",
                Advice = "Write `creamy`, or change the recipe.",
                Related = [context.See(dairy.Line.Span, "the dairy")],
                Corrections = context.Write(drink.Style.Span, "creamy", "Name the style `creamy`."),
            });
        }
        else if (dairy is null && style.HasDairy)
        {
            // Cream liqueurs and plant milks make a creamy drink as well.
            if (Builds.First(context.Profile, Builds.IsCreamy) is not null) return;
            context.Report(new(Rule)
            {
                At = context.At(drink.Style.Span, "style"),
                Message = $"A `{style.Id}` drink needs cream, milk or a plant milk, and this one has none.",
                Advice = "Add the cream, or name the right style.",
            });
        }
    }
}
