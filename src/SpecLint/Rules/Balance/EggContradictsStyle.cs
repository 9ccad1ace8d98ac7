using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3010", "egg-contradicts-style", "Egg where the style has none, or none where it has egg", Level.Warning)]
[Limit("egg-white-foam", "Foam")]
internal sealed partial class EggContradictsStyle : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style) return;
        bool foams = Builds.First(context.Profile, static m => m is { Kind.Foams: true }) is not null;

        // A few drops of white make a foam and no egg white sour.
        Part? eggWhite = Builds.First(context.Profile, Substances.IsEggWhite), yolk = Builds.First(context.Profile, Substances.IsYolkyEgg);
        double whites = Builds.Grams(context.Profile, Substances.IsEggWhite) / drink.ServesOrOne;
        bool white = whites >= Foam.Value || (style.Egg == EggPart.White && eggWhite is not null);
        var has = yolk is not null ? EggPart.Whole : white ? EggPart.White : EggPart.None;
        bool mayHaveWhite = style.Egg == EggPart.None && (style.IsTopped || (!style.WantsAcid && !style.HasDairy));
        if (has == style.Egg || (style.Egg == EggPart.White && foams) || (mayHaveWhite && has == EggPart.White)) return;
        string? better = has == EggPart.Whole ? "flip"
            : has == EggPart.White ? "egg-white-sour"
            : style.Egg == EggPart.White ? "shaken-sour"
            : null;
        var egg = yolk ?? eggWhite;
        context.Report(new(Rule)
        {
            At = context.At(drink.Style.Span, "style"),
            Message = style.Egg == EggPart.None
                ? $"It holds {egg!.Line.Item.Or("egg")}, but a `{style.Id}` has no egg. Foam and body make it a different drink, with "
                    + "other bands."
                : $"A `{style.Id}` has {(style.Egg == EggPart.White ? "egg white" : "whole egg")}, but this drink has "
                    + $"{(has == EggPart.None ? "none" : "another part of the egg")}.",
            Advice = better is null ? "Add the egg, or name the right style." : $"Write `{better}`, or change the recipe.",
            Evidence = [Proof.Of("egg of the style", InWords(style.Egg)), Proof.Of("egg of the drink", InWords(has))],
            Related = egg is null ? [] : [context.See(egg.Line.Span, "the egg")],
            Corrections = context.Write(drink.Style.Span, better, $"Name the style `{better}`."),
        });
    }

    private static string InWords(EggPart egg) => egg switch { EggPart.White => "white", EggPart.Whole => "whole", _ => "none" };
}
