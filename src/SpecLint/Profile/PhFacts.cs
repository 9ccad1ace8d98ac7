using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>The pH of a recipe: measured, else computed from its acids and ions.</summary>
internal static class PhFacts
{
    private const Unknowns Needs = Unknowns.Ph | Unknowns.Acid | Unknowns.Composition | Unknowns.Mass | Unknowns.Water;

    /// <summary>g/mol.</summary>
    private const double PotassiumMolarMass = 39.0983;

    /// <summary>g/mol.</summary>
    private const double SodiumMolarMass = 22.9898;

    /// <summary>g/mol.</summary>
    private const double CalciumMolarMass = 40.078;

    /// <summary>g/mol.</summary>
    private const double MagnesiumMolarMass = 24.305;

    private static readonly Limit StrayIons = Limits.Of("stray-ions");
    private static readonly Solving.Measure PhEvaluator = static grams => AcidBase.Ph(grams, Celsius.Reference)?.Value ?? double.NaN;
    private static readonly SlopeEvaluator PhSlopes =
        static (grams, wanted, slopes) => AcidBase.PhWithSlopes(grams, Celsius.Reference, wanted, slopes)?.Value ?? double.NaN;

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
    /// <param name="of">What it is worked out of.</param>
    /// <param name="computed">Its <see cref="Computed"/> pH.</param>
    public static FactValue ComputedWithStrayIons(FactBasis of, FactValue computed)
    {
        if (!computed.IsKnown) return computed;
        double potassium = StrayIons.Value / 1000 * PotassiumMolarMass * of.Served.Total / 1000;
        var more = of.Served.Copy();
        more.Replace(Component.Potassium, of.Served.Of(Component.Potassium) + potassium);
        var less = of.Served.Copy();
        less.Replace(Component.Potassium, Math.Max(0, of.Served.Of(Component.Potassium) - potassium));
        FactValue high = Of(of, more), low = Of(of, less);
        return computed with
        {
            Low = low.IsKnown
            ? Math.Min(computed.Low, low.Low)
            : computed.Low,
            High = high.IsKnown ? Math.Max(computed.High, high.High) : computed.High
        };
    }

    private static FactValue Of(FactBasis basis, Mix of)
    {
        if (basis.IsSolid) return FactValue.Open("it is a solid");
        double total = of.Total;
        if (total <= 0) return FactValue.Open("it has no parts that weigh anything");
        if (Solving.AcidsOf(of.Grams) / total < 1e-5) return FactValue.Open("there is too little acid to compute a pH from");
        var estimate = Propagation.Through(of, PhEvaluator, PhSlopes);
        if (double.IsNaN(estimate.Value + estimate.Low + estimate.High)
            || AcidBase.PhWithRange(of.Grams, Celsius.Reference, ShareOfTables(basis)) is not { } uncertain)
            return FactValue.Open("it lies outside the range of the acid model");
        if (estimate.Value > HighestOfFood && AcidBase.Unbalanced(of.Grams) > 0)
            return FactValue.Open("the acids that hold its minerals are not known: measure the pH");
        var range = estimate.With(uncertain.StandardError).Within(0, 14);
        if (BetweenParts(basis) is { } between) range = range.Within(between.Low, between.High);
        return range.High - range.Low > WidestOfUse
            ? FactValue.Open("too little in it holds its pH: measure it")
            : (range.ToFact() with { From = From(uncertain, (estimate.High - estimate.Low) / 2) }).Tested(uncertain.IsTested
                && AcidBase.PhError.IsTested(estimate.Value)
                && Solubilities.HoldAll(of));
    }

    /// <summary>Share of the strong ions that come from foods, whose tables leave some out, and not from salts; 1 where a part is not known.</summary>
    private static double ShareOfTables(FactBasis of)
    {
        double all = 0, listed = 0;
        foreach (var part in of.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (part.Material is not { } material || !part.IsWeighed) return 1;
            double ions = part.Grams.Typical * ((material.Of(Component.Sodium) / SodiumMolarMass) + (material.Of(Component.Potassium) / PotassiumMolarMass)
                + (2 * material.Of(Component.Calcium) / CalciumMolarMass) + (2 * material.Of(Component.Magnesium) / MagnesiumMolarMass));
            all += ions;
            if (!material.Kind.BindsIons) listed += ions;
        }

        return all > 0 ? listed / all : 1;
    }

    /// <summary>
    /// The lowest and the highest pH of the parts, where each has one that was measured: liquids mixed lie between them, since the charge of each
    /// falls with the pH. Spirit that brings neither acid nor ions shifts them by no more than it shifts the constants of their acids
    /// (<see cref="Electrolyte.PkaShift"/>); other drink with ethanol tells nothing.
    /// </summary>
    private static (double Low, double High)? BetweenParts(FactBasis of)
    {
        double lowest = double.PositiveInfinity, highest = double.NegativeInfinity;
        bool isSpiked = false;
        foreach (var part in of.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (part.Phase != PartPhase.Mix || part.Material is not { } material) return null;
            if (material.Of(Component.Ethanol) > 0)
            {
                if (!IsNeutral(material)) return null;
                isSpiked = true;
                continue;
            }

            if (double.IsNaN(material.Ph.Typical)) return null;
            lowest = Math.Min(lowest, material.Ph.Low);
            highest = Math.Max(highest, material.Ph.High);
        }

        if (of.IsDrink || highest < lowest) return null;
        if (!isSpiked) return (lowest, highest);
        double ethanol = of.Served.Of(Component.Ethanol);
        return Electrolyte.PkaShift(new MassFraction(ethanol / (ethanol + of.Served.Of(Component.Water)))) is { } shift
            ? (lowest - shift, highest + shift)
            : null;
    }

    /// <summary>Whether a part brings neither acid nor ions that would hold a pH.</summary>
    private static bool IsNeutral(Material material)
    {
        double ions = material.Of(Component.Sodium) + material.Of(Component.Potassium) + material.Of(Component.Calcium) + material.Of(Component.Magnesium);
        return ions + material.Of(Component.Protein) + Solving.AcidsOf(material.PerGram) < MostOfNeutral;
    }

    /// <summary>g of acid, minerals and protein in a gram of what holds no pH.</summary>
    private const double MostOfNeutral = 1e-5;

    /// <summary>A range wider than this says nothing to anyone.</summary>
    private const double WidestOfUse = 3;

    /// <summary>pH above which only a base that is meant to be there can have brought it.</summary>
    private const double HighestOfFood = 9;

    /// <summary>How it was had, with what widens its range most, where that is more than the acid model does.</summary>
    private static string From(UncertainPh of, double half)
    {
        double model = of.Model.Tolerance.HalfWidth, minerals = of.Minerals.Tolerance.HalfWidth, protein = of.Protein.Tolerance.HalfWidth;
        double most = Math.Max(Math.Max(model, minerals), Math.Max(protein, half));
        string wider = most == model ? ""
            : most == protein ? ", wider by protein that buffers"
            : most == minerals ? ", wider by minerals that no table lists"
            : ", wider by what its parts vary";
        return $"computed{wider}";
    }
}
