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
    private static readonly Limit CarboxylGroups = Limits.Of("protein-carboxyl-groups");
    private static readonly Limit CarboxylPk = Limits.Of("protein-carboxyl-pk");
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
    public static FactValue Computed(FactBasis of)
    {
        // What consists of one thing has the pH of that thing.
        if (of.OnlyPart is { Material: { } only } && !of.IsSolid && !double.IsNaN(only.Ph.Typical))
            return new FactValue(only.Ph.Typical, only.Ph.Low, only.Ph.High, only.Id, null);
        return of.Mix.Lack.Has(Needs) ? FactValue.Open(of.Mix.Lack.Because) : Of(of, of.Served);
    }

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
        var estimate = Propagation.Through(of, PhEvaluator);
        return double.IsNaN(estimate.Value + estimate.Low + estimate.High)
            ? FactValue.Open("it lies outside the range of the acid model")
            : WithProtein(of, estimate).With(AcidBase.PhError.At(estimate.Value)).Within(0, 14).ToFact();
    }

    /// <summary>
    /// What protein can take up of the acid: its carboxyl groups that were charged in the ingredient. The entry's own pH holds it
    /// already, so that it only raises the pH, from nothing up to all groups.
    /// </summary>
    private static Estimate WithProtein(Mix of, Estimate estimate)
    {
        double protein = of.Of(Component.Protein);
        if (!(protein > 0)) return estimate;
        double free = 1 / (1 + Math.Pow(10, estimate.Value - CarboxylPk.Value));
        var buffered = of.Copy();
        buffered.Replace(Component.Potassium, of.Of(Component.Potassium) + (protein * CarboxylGroups.Value / 1000 * free * PotassiumMolarMass));
        double ph = AcidBase.Ph(buffered.Grams, Celsius.Reference)?.Value ?? double.NaN;
        if (double.IsNaN(ph)) return estimate;
        double rise = Math.Max(0, ph - estimate.Value), high = estimate.High - estimate.Value;
        return estimate with { High = estimate.Value + Math.Sqrt((high * high) + (rise * rise)) };
    }
}
