using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Science;
using Bar = SpecLint.Science.Bar;

namespace SpecLint.Rules.Service;

/// <summary>The gas of a carbonated preparation: under what pressure it is put, and what of it is dissolved.</summary>
/// <param name="Volumes">Volumes of carbon dioxide that are dissolved.</param>
/// <param name="Strength">Strength of the drink.</param>
/// <param name="Sugar">Its sugar.</param>
internal sealed record Pressures(GasVolumes Volumes, AlcoholByVolume Strength, GramsPerLitre Sugar)
{
    /// <summary>°C of a keg in the refrigerator, where the recipe names none.</summary>
    private const double Fridge = 4;

    /// <summary>
    /// What a gauge pressure dissolves at the temperature of carbonation; <see langword="null"/> where that cannot be told.
    /// </summary>
    public static Pressures? Of(RecipeContext context, Prep prep, double gauge)
    {
        var abv = context.Fact(Fact.Abv);
        var sugar = context.Fact(Fact.Sugar);
        if (!abv.IsKnown || !sugar.IsKnown) return null;
        var strength = new AlcoholByVolume(abv.Value / 100);
        var sweet = new GramsPerLitre(sugar.Value * 10);
        return Carbonation.Volumes(new Bar(gauge + Carbonation.Atmosphere), new Celsius(Temperature(prep)), strength, sweet) is { } volumes
            ? new Pressures(volumes, strength, sweet)
            : null;
    }

    /// <summary>
    /// The same of water, where strength and sugar are not known: they change how much dissolves, and hardly the pressure that the same gas
    /// comes to when it is warm.
    /// </summary>
    public static Pressures? OfWater(Prep prep, double gauge) =>
        Carbonation.Volumes(new Bar(gauge + Carbonation.Atmosphere), new Celsius(Temperature(prep)), new(0), new(0)) is { } volumes
            ? new Pressures(volumes, new(0), new(0))
            : null;

    /// <summary>Highest gauge pressure that the model gives, bar.</summary>
    public static double Highest => Carbonation.HighestBar - Carbonation.Atmosphere;

    /// <summary>Gauge pressure of so many volumes in the drink at a temperature, bar; NaN where that cannot be told.</summary>
    public double Gauge(GasVolumes volumes, double celsius) =>
        Carbonation.Pressure(volumes, new Celsius(celsius), Strength, Sugar) is { } bar ? bar.Value - Carbonation.Atmosphere : double.NaN;

    /// <summary>Gauge pressure that the recipe asks for, bar.</summary>
    public static (double Bar, TextSpan Span) Asked(Prep prep)
    {
        if (prep.Target is { Pressure: { IsGiven: true, Value.Dimension: Dimension.Pressure } target })
            return (target.Value.Base, target.Span);
        foreach (var step in prep.Method)
        {
            if (step.Amount is { IsGiven: true, Value.Dimension: Dimension.Pressure }) return (step.Amount.Value.Base, step.Amount.Span);
        }

        return (double.NaN, default);
    }

    /// <summary>The place and path of the pressure that is asked for.</summary>
    public static Spot At(FileContext context, Prep prep, TextSpan span) =>
        context.At(span, prep.Target is { Pressure.IsGiven: true } ? "target.pressure" : "method");

    /// <summary>°C at which it is carbonated, within the model: the warmer, the less dissolves, and ice takes up none.</summary>
    public static double Temperature(Prep prep)
    {
        foreach (var step in prep.Method)
        {
            if (step.Verb.Carbonates && step.At.IsGiven) return Within(step.At.Value.Base);
        }

        return prep.Keep is { At.IsGiven: true } keep ? Within(keep.At.Value.Base) : Fridge;

        static double Within(double celsius) => Math.Min(Carbonation.HighestCelsius, Math.Max(0, celsius));
    }
}
