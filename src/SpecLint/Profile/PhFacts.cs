using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>The pH of a recipe: measured, else computed from its acids and ions.</summary>
internal static class PhFacts
{
    private const Unknowns Needs = Unknowns.Ph | Unknowns.Acid | Unknowns.Composition | Unknowns.Mass | Unknowns.Water;

    /// <summary>g/mol.</summary>
    private const double PotassiumMolarMass = 39.0983;

    private static readonly Limit ProteinBuffer = Limits.Of("tolerance-protein-buffer");
    private static readonly Limit StrayIons = Limits.Of("stray-ions");
    private static readonly Limit ComputedPhHalfWidth = Limits.Of("tolerance-ph-computed");
    private static readonly Evaluator PhEvaluator = static (grams, r) => r[0] = AcidBase.Ph(grams, Celsius.Reference)?.Value ?? double.NaN;

    /// <summary>pH as served or made, and before dilution.</summary>
    public static void Work(FactBasis of, FactStore facts, FactValue density)
    {
        if (of.Reading is { Ph.IsGiven: true } reading)
        {
            double half = Meters.PhHalfWidth(reading, of.Book);
            facts[Fact.Ph] = new FactValue(reading.Ph.Value.Value, reading.Ph.Value.Low - half, reading.Ph.Value.High + half, "measured", null);
        }
        else
        {
            facts[Fact.Ph] = of.IsDrink && density.OpenBecause is { } open && !of.IsSolid ? FactValue.Open(open) : Computed(of);
        }

        if (!of.IsDrink) facts.Leave(Fact.MixPh, "a preparation has no dilution");
        else facts[Fact.MixPh] = of.Mix.Lack.Has(Needs) ? FactValue.Open(of.Mix.Lack.Because) : Of(of, of.Mix.Mix);
    }

    /// <summary>As the composition gives it, also where a measurement replaces it; open where it cannot be had.</summary>
    public static FactValue Computed(FactBasis of) => of.Mix.Lack.Has(Needs) ? FactValue.Open(of.Mix.Lack.Because) : Of(of, of.Served);

    /// <summary>
    /// The computed pH with a range that also holds the minerals of water, sugar and spices that no table gives: where there is
    /// little acid they shift it far. Only for holding a reading against it.
    /// </summary>
    public static FactValue ComputedWithStrayIons(FactBasis of)
    {
        var computed = Computed(of);
        if (!computed.IsKnown) return computed;
        double potassium = StrayIons.Value / 1000 * PotassiumMolarMass * of.Served.Total / 1000;
        var more = of.Served.Copy();
        more.Replace(Component.Potassium, of.Served.Of(Component.Potassium) + potassium);
        var less = of.Served.Copy();
        less.Replace(Component.Potassium, Math.Max(0, of.Served.Of(Component.Potassium) - potassium));
        FactValue high = Of(of, more), low = Of(of, less);
        return computed with { Low = low.IsKnown ? Math.Min(computed.Low, low.Low) : computed.Low, High = high.IsKnown ? Math.Max(computed.High, high.High) : computed.High };
    }

    private static FactValue Of(FactBasis basis, Mix of)
    {
        if (basis.IsSolid) return FactValue.Open("it is a solid");
        double total = of.Total;
        if (total <= 0) return FactValue.Open("it has no parts that weigh anything");
        if (100 * of.Of(Component.Protein) / total > ProteinBuffer.Value) return FactValue.Open("protein buffers it, which is not modelled: measure the pH");
        double acids = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) acids += of.Of(c);
        if (acids / total < 1e-5) return FactValue.Open("there is too little acid to compute a pH from");
        Span<double> v = stackalloc double[1], low = stackalloc double[1], high = stackalloc double[1];
        Propagation.Run(of, PhEvaluator, v, low, high);
        if (double.IsNaN(v[0])) return FactValue.Open("it lies outside the range of the acid model");
        double least = ComputedPhHalfWidth.Value;
        return new FactValue(v[0], Math.Min(low[0], v[0] - least), Math.Max(high[0], v[0] + least), "computed", null);
    }
}
