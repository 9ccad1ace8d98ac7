using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Rules.Service;

/// <summary>What the cold makes of a drink.</summary>
internal static class Cold
{
    private static readonly Limit Usual = Limits.Of("freezer-temperature");

    /// <summary>°C of the bar's freezer; the usual one where the bar does not say.</summary>
    public static double Freezer(Settings settings) => settings.Bar is { Freezer.IsGiven: true } bar ? bar.Freezer.Value.Base : Usual.Value;

    /// <summary>How much of it is ice at a temperature, %; NaN where that cannot be told.</summary>
    public static double Ice(ReadOnlySpan<double> grams, double celsius) =>
        100 * (Freezing.IceFraction(grams, new Celsius(celsius))?.Value ?? double.NaN);
}
