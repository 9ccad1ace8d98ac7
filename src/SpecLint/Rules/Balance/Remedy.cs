using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Balance;

/// <summary>What puts a finding right: a sentence, and the corrections that do it.</summary>
/// <param name="Words">One sentence.</param>
/// <param name="Corrections">Corrections, the best first.</param>
internal sealed record Remedy(string Words, IReadOnlyList<Correction> Corrections)
{
    private static readonly Limit MostAlcohol = Limits.Of("alcohol-per-serve");

    /// <summary>The one part that it changes; <see langword="null"/> where there is none, or more.</summary>
    public Part? Part { get; private init; }

    /// <summary>What that part is multiplied by.</summary>
    public double Factor { get; private init; } = 1;

    /// <summary>A remedy in words alone.</summary>
    public static Remedy Say(string words) => new(words, []);

    /// <summary>Solves for the part that brings the most acid: g in 100 mL.</summary>
    public static Remedy Acid(RecipeContext context, double target, string otherwise) =>
        Amount(context, AcidOf, Solving.AcidPerVolume, target, "g of acid in 100 mL", otherwise);

    /// <summary>Solves for the part that brings the most sugar: g in 100 mL.</summary>
    public static Remedy Sugar(RecipeContext context, double target, string otherwise) =>
        Amount(context, SugarOf, Solving.SugarPerVolume, target, "g of sugar in 100 mL", otherwise);

    /// <summary>
    /// Solves for the amount of the part that brings the most of something; in words alone where there is none or the
    /// solved amount is more than six times what it is, or hardly any of it, and where a correction is tried, which offers none.
    /// </summary>
    /// <param name="context">The recipe.</param>
    /// <param name="weight">How much of it a gram of a part brings.</param>
    /// <param name="measure">The number to bring to its target.</param>
    /// <param name="target">The target.</param>
    /// <param name="unit">Unit of the number, for the sentence.</param>
    /// <param name="otherwise">What to say where no amount is found.</param>
    public static Remedy Amount(
        RecipeContext context, Func<Material, double> weight, Solving.Measure measure, double target, string unit, string otherwise)
    {
        var chief = context.OffersCorrections ? Chief(context.Profile, weight) : null;
        if (chief is null) return Say(otherwise);
        double factor = Solving.Factor(context.Profile, p => ReferenceEquals(p, chief), measure, target);
        if (double.IsNaN(factor) || factor is < 0.15 or > 6) return Say(otherwise);
        var amount = chief.Line.Amount.Value;
        double rounded = Rounding.ToStep(amount.Base * factor, amount, context.Settings);
        if (Math.Abs(rounded - amount.Base) < 1e-9 || IsTooMuch(context, chief, rounded / amount.Base)) return Say(otherwise);
        double then = Solving.With(context.Profile, p => ReferenceEquals(p, chief), rounded / amount.Base, measure);
        string item = chief.Line.Item.Or("it"), words = Rounding.Words(rounded, amount);
        string gives = Vocabulary.Say.With(then, unit);
        return new Remedy(
            $"Take {words} of {item} instead of {Rounding.Words(amount.Base, amount)}: it then comes to {gives}.",
            context.Write(chief.Line.Amount.Span, words, $"Write {words} of `{item}`, which gives {gives}."))
        {
            Part = chief,
            Factor = rounded / amount.Base,
        };
    }

    /// <summary>Whether the part would be more than one drink takes of it, or the drink more alcohol than a serve.</summary>
    public static bool IsTooMuch(RecipeContext context, Part part, double factor)
    {
        if (factor <= 1) return false;
        double serves = context.Recipe.ServesOrOne, ethanol = 0;
        if (Amounts.TenfoldPour.LimitOf(part.Material!) is { } most && part.Millilitres * factor / serves > most.Value) return true;
        foreach (var other in context.Profile.Parts)
        {
            if (other.Phase is PartPhase.Mix or PartPhase.Top && other.IsWeighed && other.Material is { } material)
                ethanol += other.Grams.Typical * material.Of(Component.Ethanol) * (ReferenceEquals(other, part) ? factor : 1) / serves;
        }

        return part.Material!.Of(Component.Ethanol) > 0 && ethanol > MostAlcohol.Value;
    }

    /// <summary>The part that brings the most of something; <see langword="null"/> where none does.</summary>
    public static Part? Chief(RecipeProfile profile, Func<Material, double> weight)
    {
        Part? chief = null;
        double most = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is null || !part.Line.Amount.IsGiven) continue;
            double brings = weight(part.Material) * part.Grams.Typical;
            if (brings > most) (most, chief) = (brings, part);
        }

        return chief;
    }

    /// <summary>Grams of titratable acid that a gram brings, about: the acids by mass.</summary>
    public static double AcidOf(Material material) => Solving.AcidsOf(material.PerGram);

    /// <summary>Grams of sugar that a gram brings.</summary>
    public static double SugarOf(Material material) => Solving.SugarOf(material.PerGram);

    /// <summary>Grams of ethanol that a gram brings.</summary>
    public static double EthanolOf(Material material) => material.Of(Component.Ethanol);
}
