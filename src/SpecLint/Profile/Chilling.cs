using SpecLint.Book;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>What chilling with ice does to a drink.</summary>
/// <param name="Ratio">Water added over the volume of the mix: typical, low, high.</param>
/// <param name="Temperature">Temperature, °C: typical, low, high.</param>
public readonly record struct Chilling(Trace Ratio, Trace Temperature)
{
    /// <summary>Temperature of parts kept at room temperature; common practice, no source.</summary>
    private static readonly Celsius Room = new(20);

    /// <summary>Chilling of a mix by a technique; <see langword="null"/> where the models do not reach.</summary>
    /// <param name="grams">Masses of the mix, g.</param>
    /// <param name="technique">How it is chilled.</param>
    /// <param name="step">The step that does it.</param>
    /// <param name="ice">Mass of all the ice, g; <see langword="null"/> where nothing says: enough.</param>
    internal static Chilling? Of(ReadOnlySpan<double> grams, TechniqueKind technique, Step? step, Grams? ice)
    {
        var how = technique switch
        {
            TechniqueKind.Shaken => ChillTechnique.Shaken,
            TechniqueKind.Stirred => ChillTechnique.Stirred,
            TechniqueKind.Thrown => ChillTechnique.Thrown,
            TechniqueKind.Blended => ChillTechnique.Blended,
            TechniqueKind.Swizzled => ChillTechnique.Swizzled,
            _ when step is { Ice.IsGiven: true } && step.Ice.Value.IsBlock => ChillTechnique.OnRock,

            // Crushed ice has the surface of a swizzle, whether it is swizzled or not.
            _ when step is { Ice.IsGiven: true } && step.Ice.Value.IsCrushed => ChillTechnique.Swizzled,
            _ => ChillTechnique.Built,
        };
        double? seconds = step is { For.IsGiven: true } ? step.For.Value.Base : null;
        var result = IceDilution.Of(grams, how, Room, seconds: seconds, iceGrams: ice);
        if (result is not { } d) return null;
        return new Chilling(
            new Trace(d.WaterPerVolume.Typical, d.WaterPerVolume.Low, d.WaterPerVolume.High),
            new Trace(d.FinalCelsius.Typical, d.FinalCelsius.Low, d.FinalCelsius.High));
    }
}
