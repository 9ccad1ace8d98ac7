using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Third room: a composition made to agree with what was measured of it.</summary>
internal static class Fitting
{
    /// <summary>Sugar that makes a gram of ethanol: C6H12O6 gives 2 C2H5OH, 180.16 g to 92.14 g.</summary>
    private const double SugarPerEthanol = 180.16 / 92.14;

    /// <summary>Whether a reading moves the composition.</summary>
    public static bool Moves(Measurement? reading) => reading is { Abv.IsGiven: true } or { Brix.IsGiven: true };

    /// <summary>The composition with the strength and the dissolved solids of a reading.</summary>
    /// <param name="made">As the amounts give it.</param>
    /// <param name="reading">The reading.</param>
    /// <param name="ferments">Whether ethanol beyond that of the parts comes out of their sugar.</param>
    /// <param name="book">The book, for its meters.</param>
    public static Composed Of(Composed made, Measurement reading, bool ferments, LinkedBook book)
    {
        var mix = made.Mix.Copy();
        var lack = made.Lack;
        if (reading.Abv.IsGiven && FitStrength(mix, reading.Abv.Value.Base, ferments)) lack = lack.Without(Unknowns.Strength | Unknowns.Sugar);
        if (reading.Brix.IsGiven && mix.Of(Component.Ethanol) < 0.005 * mix.Total && !lack.Has(Unknowns.Composition | Unknowns.Mass))
            FitSolids(mix, reading.Brix.Value.Base, Meters.BrixHalfWidth(reading, book));
        return new Composed(mix, lack);
    }

    /// <summary>The composition with the strong ions that a measured pH tells of; itself where no such are found.</summary>
    public static Mix ToPh(Mix mix, double ph)
    {
        if (Juice.PotassiumForPh(mix.Grams, new Ph(ph), Celsius.Reference) is not { } potassium) return mix;
        var fitted = mix.Copy();
        fitted.Replace(Component.Potassium, potassium.Value);
        return fitted;
    }

    /// <summary>Sets the ethanol so that the strength is the measured one; in a ferment it comes out of the sugar, else out of the water.</summary>
    private static bool FitStrength(Mix mix, double percentByVolume, bool ferments)
    {
        var fitted = new double[Components.Count];
        double low = 0, high = mix.Of(Component.Ethanol) + mix.Of(Component.Water);
        double was = mix.Of(Component.Ethanol), sugars = mix.Sugars;
        for (int i = 0; i < 50; i++)
        {
            double ethanol = (low + high) / 2;
            mix.Grams.CopyTo(fitted);
            fitted[(int)Component.Ethanol] = ethanol;
            if (ferments) Ferment(fitted, (ethanol - was) * SugarPerEthanol, sugars);
            else fitted[(int)Component.Water] = Math.Max(0, fitted[(int)Component.Water] - (ethanol - was));
            if (Mixture.Abv(fitted) is { } abv && abv.Percent < percentByVolume) low = ethanol;
            else high = ethanol;
        }

        if (Mixture.Abv(fitted) is null) return false;
        for (int c = 0; c < fitted.Length; c++) mix.Replace((Component)c, fitted[c]);
        return true;
    }

    /// <summary>Sets the sugars so that the dissolved solids are the measured ones, and narrows their range to that of the meter.</summary>
    private static void FitSolids(Mix mix, double brix, double halfWidth)
    {
        var solids = CompositionFigures.OfLiquidOne(mix, CompositionFigures.Brix);
        double sugars = mix.Sugars;
        if (double.IsNaN(solids.Value) || sugars <= 0) return;
        var fitted = new double[Components.Count];
        double least = 0, most = 1 + (mix.Of(Component.Water) / sugars);
        for (int i = 0; i < 50; i++)
        {
            double factor = (least + most) / 2;
            mix.Grams.CopyTo(fitted);
            for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) fitted[(int)c] *= factor;
            fitted[(int)Component.Water] = Math.Max(0, fitted[(int)Component.Water] - (sugars * (factor - 1)));
            if (Mixture.Brix(fitted) is { } computed && computed.Value < brix) least = factor;
            else most = factor;
        }

        double half = (solids.High - solids.Low) / 2;
        double narrowed = half > 0 ? Math.Min(1, halfWidth / half) : 1;
        for (int c = 0; c < fitted.Length; c++) mix.Keep((Component)c, narrowed);
        for (int c = 0; c < fitted.Length; c++) mix.Replace((Component)c, fitted[c]);
    }

    private static void Ferment(double[] grams, double eaten, double sugars)
    {
        double left = sugars <= 0 ? 0 : Math.Max(0, Math.Min(1, 1 - (eaten / sugars)));
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) grams[(int)c] *= left;
    }
}
