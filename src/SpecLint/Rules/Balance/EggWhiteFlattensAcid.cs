using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3011", "egg-white-flattens-acid", "Egg white in a sour whose acid was not raised", Level.Note,
    Needs = [Fact.Acid], IsConsequence = true)]
[Limit("egg-white-foam", "Foam")]
[Limit("amount-sour-of-serve", "SourOfServe")]
internal sealed partial class EggWhiteFlattensAcid : DrinkRule
{
    private static readonly Style EggWhiteSour = Style.Of("egg-white-sour");

    /// <summary>Whether it is a shaken sour (or a drink without a style) with more white of egg than a few drops.</summary>
    internal static bool Speaks(RecipeProfile profile, Drink drink)
    {
        if (profile.Technique != TechniqueKind.Shaken || drink.Style is { IsGiven: true, Value.IsSour: false }) return false;

        // Without a style, only what is soured by a juice as sour as lemon, and by enough of it, is a sour.
        if (!drink.Style.IsGiven && Builds.Millilitres(profile, Builds.IsSharp) / drink.ServesOrOne < SourOfServe.Value) return false;
        return Builds.Grams(profile, Substances.IsEggWhite) / drink.ServesOrOne >= Foam.Value;
    }

    public override void Check(RecipeContext context, Drink drink)
    {
        if (!Speaks(context.Profile, drink) || EggWhiteSour?.Usual(Fact.Acid) is not { } usual) return;
        var acid = context.Fact(Fact.Acid);
        if (Findings.Check.AtLeast(acid, usual.Low) != Stand.Broken) return;
        if (drink.KnownStyle is { } style && Builds.LacksSide(context.Profile, style, Fact.Acid)) return;
        var white = Builds.First(context.Profile, Substances.IsEggWhite)!;
        var remedy = Remedy.Acid(context, usual.Low * 1.15, "Raise the juice or the acid solution.");
        context.Report(new(Rule)
        {
            AskedLevel = EggWhiteSour.Seen(Fact.Acid) is { } seen && acid.High < seen.Low ? Level.Warning : null,
            At = context.At(white.Line.Span, RecipeContext.PathOf(white.Line)),
            Message = $"With the egg white the acid comes to {Say.Fact(Fact.Acid, acid)}, below the {Say.With(usual.Low, "g/100 mL")} "
                + $"at which egg white sours usually start ({EggWhiteSour.UsualInShort}).",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Evidence = [Proof.Of(Fact.Acid, acid), Proof.Of("acid of egg white sours from", usual.Low, "g/dL", EggWhiteSour.UsualSource)],
        });
    }
}
