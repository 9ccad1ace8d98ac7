using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Balance;

[Rule("SL3010", "egg-contradicts-style", "Egg where the style has none, or none where it has egg", Level.Warning)]
[Limit("egg-white-foam", "Foam")]
internal sealed partial class EggContradictsStyle : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style) return;
        bool foams = Builds.First(context.Profile, m => m is { Kind.Foams: true }) is not null;

        // A few drops of white make a foam and no egg white sour.
        double whites = Builds.Grams(context.Profile, Substances.IsEggWhite) / drink.ServesOrOne;
        bool white = whites >= Foam.Value || (style.Egg == EggPart.White && Builds.First(context.Profile, Substances.IsEggWhite) is not null);
        var yolk = Builds.First(context.Profile, Substances.IsYolkyEgg);
        var has = yolk is not null ? EggPart.Whole : white ? EggPart.White : EggPart.None;
        if (has == style.Egg || (style.Egg == EggPart.White && foams) || (style.Egg == EggPart.None && style.IsTopped && has == EggPart.White)) return;
        if (style.Egg == EggPart.None && !style.WantsAcid && has == EggPart.White && !style.HasDairy) return;
        string? better = has switch
        {
            EggPart.Whole => "flip",
            EggPart.White => "egg-white-sour",
            _ when style.Egg == EggPart.White => "shaken-sour",
            _ => null,
        };
        var egg = yolk ?? Builds.First(context.Profile, Substances.IsEggWhite);
        context.Report(new(Rule)
        {
            At = context.At(drink.Style.Span, "style"),
            Message = style.Egg == EggPart.None
                ? $"It holds {egg!.Line.Item.Or("egg")}, but a `{style.Id}` has no egg. Foam and body make it a different drink, with other bands."
                : $"A `{style.Id}` has {(style.Egg == EggPart.White ? "egg white" : "whole egg")}, but this drink has "
                    + $"{(has == EggPart.None ? "none" : "another part of the egg")}.",
            Advice = better is null ? "Add the egg, or name the right style." : $"Write `{better}`, or change the recipe.",
            Evidence = [Proof.Of("egg of the style", InWords(style.Egg)), Proof.Of("egg of the drink", InWords(has))],
            Related = egg is null ? [] : [new RelatedPlace(context.At(egg.Line.Span), "the egg")],
            Corrections = better is null
                ? []
                : [new Correction(
                    CorrectionGrade.Proposed, $"Name the style `{better}`.", [new TextEdit(context.At(drink.Style.Span), $"\"{better}\"")])],
        });
    }

    private static string InWords(EggPart egg) => egg switch { EggPart.White => "white", EggPart.Whole => "whole", _ => "none" };
}
