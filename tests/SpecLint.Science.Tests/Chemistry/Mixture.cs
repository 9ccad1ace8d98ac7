using System.Globalization;

namespace SpecLint.Science.Tests.Chemistry;

/// <summary>Compositions for the tests of the acids.</summary>
internal static class Mixture
{
    public static double[] Of(params (Component Component, double Grams)[] parts)
    {
        var grams = new double[Components.Count];
        foreach (var (component, mass) in parts)
            grams[(int)component] += mass;
        return grams;
    }

    /// <summary>Reads "citric=40;malic=20".</summary>
    public static IEnumerable<(string Acid, double Amount)> Parts(string text) =>
        from part in text.Split(';', StringSplitOptions.RemoveEmptyEntries)
        where part.Contains('=', StringComparison.Ordinal)
        let pair = part.Split('=')
        select (pair[0].Trim(), double.Parse(pair[1], CultureInfo.InvariantCulture));

    public static Component ComponentOf(string acid) => AcidData.All.Single(a => a.Name == acid).Component!.Value;

    /// <summary>Water and acids in grams.</summary>
    public static double[] Acids(double water, IEnumerable<(string Acid, double Grams)> acids) =>
        Of([(Component.Water, water), .. acids.Select(a => (ComponentOf(a.Acid), a.Grams))]);
}
