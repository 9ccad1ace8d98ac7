using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Balance;

/// <summary>A style that stands on sweet and sour, in a drink that lacks one of them.</summary>
internal abstract class MissingSideRule : DrinkRule
{
    /// <summary>Sugar or acid.</summary>
    protected abstract Fact Of { get; }

    /// <summary>What the table of styles calls it, and people.</summary>
    protected abstract string Noun { get; }

    /// <summary>"sweetens" or "sours".</summary>
    protected abstract string Does { get; }

    /// <summary>What brings so many grams of it: "15 ml of simple-syrup".</summary>
    protected abstract string Brings(double grams, Settings settings);

    /// <inheritdoc/>
    public sealed override void Check(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style || style.Seen(Of) is not { } seen || !Builds.LacksSide(context.Profile, style, Of)) return;
        if (Builds.Contradicts(context.Profile.Technique, style)) return;
        var value = context.Fact(Of);
        bool missing = Builds.IsMissing(value, seen);
        double target = (style.Usual(Of) ?? seen).Low;
        var served = context.Fact(Fact.ServedVolume);
        double lacks = served.IsKnown ? (target - value.Value) * served.Value * drink.ServesOrOne / 100 : double.NaN;
        context.Report(new(Info)
        {
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = missing
                ? $"The {Noun} comes to {Say.Fact(Of, value)}, below {Say.With(seen.Low, "g/100 mL")}, the lowest among the reference "
                    + $"`{style.Id}` drinks ({style.SeenInShort}). What {Does} it seems to be missing."
                : $"The {Noun} comes to {Say.Fact(Of, value)}, below {Say.With(target, "g/100 mL")}, where the usual range of "
                    + $"`{style.Id}` drinks starts ({style.UsualInShort}), and no part of it {Does} by itself.",
            Advice = double.IsNaN(lacks)
                ? "Add what is missing, or name the right style."
                : $"Add about {Say.Number(lacks, 1)} g of {Noun}, which is {Brings(lacks, context.Settings)}, or name the right style.",
            Evidence = [Proof.Of(Of, value), Proof.Of($"{style.Id} seen from", seen.Low, "g/dL", style.SeenSource)],
        });
    }

    /// <summary>A volume in words, at the step of the jigger.</summary>
    protected static string Volume(double millilitres, string item, Settings settings)
    {
        double step = settings.Bar is { Jigger.IsGiven: true } bar && bar.Jigger.Value.Base > 0 ? bar.Jigger.Value.Base : 2.5;
        return $"{Say.Number(Math.Max(1, Math.Round(millilitres / step)) * step, 1)} ml of {item}";
    }
}
