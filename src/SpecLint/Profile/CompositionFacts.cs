using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Facts that follow from masses and volume: strength, sugar, acid, density, energy and traces.</summary>
internal static class CompositionFacts
{
    /// <summary>The facts as served, or as made.</summary>
    public static void Work(FactBasis of, FactStore facts)
    {
        WorkChilling(of, facts);
        Span<double> v = stackalloc double[CompositionFigures.Count];
        Span<double> low = stackalloc double[CompositionFigures.Count], high = stackalloc double[CompositionFigures.Count];
        Propagation.Run(of.Served, of.IsSolid ? CompositionFigures.OfSolid : CompositionFigures.OfLiquid, v, low, high);
        var results = new Results(v, low, high);
        var withTops = WithTops(of);
        var lack = of.DilutionIsOpen ? withTops.And(Unknowns.Mass, WhyDilutionIsOpen(of)) : withTops;
        WorkLiquid(of, facts, results, lack);

        facts.PutOrLeave(Fact.Sugar, results.At(CompositionFigures.Sugar).NotNegative, Unknowns.Sugar | Unknowns.Water, lack);
        facts.PutOrLeave(Fact.Acid, WithError(Titratable(results), AcidBase.TitratableAcidityError), Unknowns.Acid | Unknowns.Water, lack);
        facts.PutOrLeave(Fact.AcidAnalysed, results.At(CompositionFigures.Analysed).NotNegative, Unknowns.Acid | Unknowns.Water, lack);
        if (v[CompositionFigures.Acid] < 0.005) facts.Leave(Fact.SugarAcidRatio, "there is no acid to speak of");
        else facts.PutOrLeave(Fact.SugarAcidRatio, results.At(CompositionFigures.Ratio).NotNegative, Unknowns.Acid | Unknowns.Sugar, lack);
        facts.PutOrLeave(Fact.Salt, results.At(CompositionFigures.Salt).NotNegative, Unknowns.Salt | Unknowns.Water, lack);

        // Alcohol and energy: a drink per serve, a preparation per 100 mL (a solid per 100 g).
        double basis = of.IsDrink ? of.Serves : of.IsSolid ? of.Served.Total / 100 : v[CompositionFigures.Volume] / 100;

        // Dilution adds neither ethanol nor energy, so that they stand even where it is open.
        var amounts = of.DilutionIsOpen ? of.Mix.Lack : lack;
        // Per 100 mL they hang on the volume, and so on the water.
        var volume = of.IsDrink || of.IsSolid ? Unknowns.None : Unknowns.Water;
        facts.PutOrLeave(Fact.Alcohol, results.At(CompositionFigures.Ethanol).Times(1 / basis).NotNegative, Unknowns.Strength | volume, amounts);
        facts.PutOrLeave(
            Fact.Energy, WithError(results.At(CompositionFigures.Energy).Times(1 / basis), FoodEnergyModel.Error), Unknowns.Strength | Unknowns.Sugar | volume,
            amounts);
        var traces = of.Served.Traces;
        PutTrace(facts, Fact.Caffeine, traces.Caffeine, 1 / basis, amounts, Unknowns.Caffeine);
        PutTrace(facts, Fact.Quinine, traces.Quinine, 1 / basis, amounts);
        PutTrace(facts, Fact.Sulphite, traces.Sulphite, 1000 / (of.IsSolid ? of.Served.Total : v[CompositionFigures.Volume]), lack);
        ReplaceByReading(of, facts);
    }

    /// <summary>The volume of the mix.</summary>
    public static void WorkMixVolume(FactBasis of, FactStore facts)
    {
        if (of.IsSolid) facts.Leave(Fact.MixVolume, "it is a solid");
        else
        {
            var liquid = CompositionFigures.OfLiquidOne(of.Mix.Mix, CompositionFigures.Volume).Times(1 / of.Serves).NotNegative;
            facts.PutOrLeave(Fact.MixVolume, liquid, Unknowns.None, of.Mix.Lack);
        }
    }

    /// <summary>The mix before dilution; few rules ask for it.</summary>
    public static void WorkBeforeDilution(FactBasis of, FactStore facts)
    {
        if (!of.IsDrink)
        {
            facts.Leave(Fact.MixAbv, NoDilution);
            facts.Leave(Fact.MixSugar, NoDilution);
            facts.Leave(Fact.MixAcid, NoDilution);
            return;
        }

        Span<double> v = stackalloc double[CompositionFigures.Count];
        Span<double> low = stackalloc double[CompositionFigures.Count], high = stackalloc double[CompositionFigures.Count];
        Propagation.Run(of.Mix.Mix, CompositionFigures.OfLiquid, v, low, high);
        var results = new Results(v, low, high);
        facts.PutOrLeave(Fact.MixAbv, WithModel(results.At(CompositionFigures.Abv), of.Mix.Mix), Unknowns.Strength, of.Mix.Lack);
        facts.PutOrLeave(Fact.MixSugar, results.At(CompositionFigures.Sugar).NotNegative, Unknowns.Sugar, of.Mix.Lack);
        facts.PutOrLeave(Fact.MixAcid, Titratable(results), Unknowns.Acid, of.Mix.Lack);
    }

    /// <summary>°Brix as the amounts give it, also where a measurement replaces it; open where it cannot be had.</summary>
    public static FactValue BrixOfAmounts(FactBasis of, Composed amounts) =>
        amounts.Mix.Of(Component.Ethanol) > 0.004 * amounts.Mix.Total
            ? FactValue.Open("a refractometer does not read sugar beside ethanol")
            : OfAmounts(of, amounts, CompositionFigures.Brix, Unknowns.Sugar, MixErrors.WithBrix);

    /// <summary>The strength as the amounts give it, also where a measurement replaces it; open where it cannot be had.</summary>
    public static FactValue AbvOfAmounts(FactBasis of, Composed amounts) => OfAmounts(of, amounts, CompositionFigures.Abv, Unknowns.Strength, WithModel);

    private const string NoDilution = "a preparation has no dilution";

    private static FactValue OfAmounts(FactBasis of, Composed amounts, int figure, Unknowns needs, Func<Estimate, Mix, Estimate> withError)
    {
        if (of.IsSolid) return FactValue.Open("it is a solid");
        return amounts.Lack.Has(needs | Unknowns.Water | Unknowns.Mass | Unknowns.Composition)
            ? FactValue.Open("the amounts do not give it")
            : withError(CompositionFigures.OfLiquidOne(amounts.Mix, figure), amounts.Mix).ToFact();
    }

    private static void WorkChilling(FactBasis of, FactStore facts)
    {
        if (!of.IsDrink)
        {
            facts.Leave(Fact.Dilution, NoDilution);
            facts.Leave(Fact.Temperature, "a preparation is not served as it is");
            return;
        }

        if (of.DilutionIsOpen) facts.Leave(Fact.Dilution, WhyDilutionIsOpen(of));
        else if (of.Chill is { } c) facts[Fact.Dilution] = new FactValue(c.Ratio.Typical * 100, c.Ratio.Low * 100, c.Ratio.High * 100, "computed", null);
        else facts[Fact.Dilution] = new FactValue(0, 0, 0, "computed", null);
        if (of.Chill is { } t) facts[Fact.Temperature] = new FactValue(t.Temperature.Typical, t.Temperature.Low, t.Temperature.High, "computed", null);
        else facts.Leave(Fact.Temperature, of.DilutionIsOpen ? WhyDilutionIsOpen(of) : "no ice chills it and no temperature is given");
    }

    private static void WorkLiquid(FactBasis of, FactStore facts, Results results, Lack lack)
    {
        if (of.IsDrink) facts.PutOrLeave(Fact.ServedVolume, results.At(CompositionFigures.Volume).Times(1 / of.Serves).NotNegative, Unknowns.None, lack);
        else facts.Leave(Fact.ServedVolume, "a preparation is not served as it is");
        if (of.IsSolid)
        {
            facts.Leave(Fact.Abv, "it is a solid");
            facts.Leave(Fact.Brix, "it is a solid");
            facts.Leave(Fact.Density, "it is a solid");
            return;
        }

        facts.PutOrLeave(Fact.Abv, WithModel(results.At(CompositionFigures.Abv), of.Served), Unknowns.Strength, lack);
        if (results.At(CompositionFigures.Abv).Value > 0.5) facts.Leave(Fact.Brix, "ethanol is over 0.5 % vol: a refractometer does not read sugar there");
        else facts.PutOrLeave(Fact.Brix, MixErrors.WithBrix(results.At(CompositionFigures.Brix), of.Served), Unknowns.Sugar | Unknowns.Water, lack);
        if (of.OnlyPart?.Material is { } only && !double.IsNaN(only.MeasuredDensity.Typical))
            facts[Fact.Density] = new FactValue(only.MeasuredDensity.Typical, only.MeasuredDensity.Low, only.MeasuredDensity.High, only.Id, null);
        else
            facts.PutOrLeave(
                Fact.Density,
                MixErrors.WithDensity(
                    results.At(CompositionFigures.Density), of.Served,
                    results.At(CompositionFigures.Abv).Value / 100 * 10 * results.At(CompositionFigures.Sugar).Value),
                Unknowns.Strength | Unknowns.Sugar | Unknowns.Water,
                lack);
    }

    private static Lack WithTops(FactBasis of)
    {
        var lack = of.Mix.Lack;
        foreach (var part in of.Parts)
        {
            if (part.Phase != PartPhase.Top) continue;
            var missing = part.IsWeighed ? part.Material?.Unknown ?? Unknowns.Composition : Unknowns.Mass;
            if (missing == Unknowns.None) continue;
            lack = lack.And(missing, part.IsWeighed
                ? part.Material?.UnknownBecause ?? $"{part.Line.Item.Or("the top")} is not known"
                : $"how much {part.Line.Item.Or("the top")} is added is not known");
        }

        return lack;
    }

    private static string WhyDilutionIsOpen(FactBasis of) =>
        of.Technique == TechniqueKind.Unknown ? "the recipe has no method and no style that tells how it is diluted"
        : of.Mix.Lack.Because.Length > 0 ? of.Mix.Lack.Because
        : "the dilution of this mix lies outside the range of the models";

    /// <summary>The error of a share as that of a percentage.</summary>
    private static ModelError Percent(ModelError error) =>
        new(new StandardError(error.Floor.Value * 100), error.Share, 100 * error.Zero, "%", 100 * error.Lowest, 100 * error.Highest, error.Measured);

    private static Estimate WithError(Estimate of, ModelError error) => of.With(error.At(of.Value)).NotNegative.Tested(error.IsTested(of.Value));

    /// <summary>What stands above the end point has no acid to titrate; a part of its range may.</summary>
    private static Estimate Titratable(Results results)
    {
        var acid = results.At(CompositionFigures.Acid);
        return new Estimate(Math.Max(0, acid.Value), Math.Max(0, acid.Low), Math.Max(0, acid.High));
    }

    private static Estimate WithModel(Estimate abv, Mix of) => WithError(abv, Percent(MixErrors.Strength(of))).Within(0, 100);

    private static void PutTrace(FactStore facts, Fact fact, Trace trace, double factor, Lack lack, Unknowns needs = Unknowns.None)
    {
        if (!facts.LeaveIf(fact, needs, lack)) facts[fact] = new FactValue(trace.Typical * factor, trace.Low * factor, trace.High * factor, "computed", null);
    }

    /// <summary>A measured value replaces the estimate, with the range of its meter.</summary>
    private static void ReplaceByReading(FactBasis of, FactStore facts)
    {
        if (of.Reading is not { } reading) return;
        Replace(facts, Fact.Brix, reading.Brix, Meters.BrixHalfWidth(reading, of.Book));
        Replace(facts, Fact.Abv, reading.Abv, Meters.AbvHalfWidth);
    }

    private static void Replace(FactStore facts, Fact fact, Given<Quantity> value, double half)
    {
        if (value.IsGiven)
            facts[fact] = new FactValue(
                value.Value.Base, Math.Max(0, value.Value.BaseLow - half), value.Value.BaseHigh + half, "measured", null);
    }

    private readonly ref struct Results(Span<double> values, Span<double> low, Span<double> high)
    {
        private readonly Span<double> values = values;
        private readonly Span<double> low = low;
        private readonly Span<double> high = high;

        public Estimate At(int result) => new(values[result], low[result], high[result]);
    }
}
