using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>A reading that what went in cannot give.</summary>
/// <param name="Path">JSON path of the reading.</param>
/// <param name="Span">Its place.</param>
/// <param name="What">What was read, with its figure, as the beginning of a sentence.</param>
/// <param name="Value">The reading.</param>
/// <param name="Bound">What it cannot pass.</param>
/// <param name="Why">Where the bound comes from, as the end of a sentence.</param>
internal sealed record ImpossibleReading(string Path, TextSpan Span, string What, double Value, double Bound, string Why);

/// <summary>
/// What a preparation cannot be, whatever a meter says of it: more acid, drier, sweeter or stronger than all that went into it
/// allows. The bounds give every part more than its entry does (limits <c>bound-…</c>), so that only a mistake lies beyond them.
/// Where an input is not known, or a step may move a figure without end, there is no bound.
/// </summary>
internal static class ReadingBounds
{
    private static readonly Limit More = Limits.Of("bound-more");
    private static readonly Limit Minerals = Limits.Of("bound-minerals");
    private static readonly Limit Strength = Limits.Of("bound-strength");

    /// <summary>The readings of a preparation that cannot be; none where all can.</summary>
    /// <param name="prep">The preparation.</param>
    /// <param name="reading">Its readings.</param>
    /// <param name="weighed">All that goes in.</param>
    /// <param name="made">The same after what the method does to it.</param>
    /// <param name="profile">The profile, of which the parts are there.</param>
    public static FixedList<ImpossibleReading> Of(Prep prep, Measurement reading, Composed weighed, Composed made, RecipeProfile profile)
    {
        var parts = profile.Parts;
        List<ImpossibleReading>? found = null;
        if (made.Mix.Total <= 0 || weighed.Lack.Has(Unknowns.Mass | Unknowns.Composition)) return [];
        bool concentrates = Techniques.Has(prep, static v => v.BoilsDown || v.Dries || v.HeatsDry || v.Distils || v.Freezes);
        bool ferments = Processing.Ferments(prep) || parts.Any(p => RecipeTree.AnyIn(p, profile, static m => m.Kind.IsLiveCulture));
        var mix = made.Mix;
        double ethanol = mix.Of(Component.Ethanol);
        if (reading.Ph.IsGiven
            && !ferments
            && LowestPh(mix, made.Lack, profile) is { } lowest
            && reading.Ph.Value.High + Meters.PhHalfWidth(reading, profile.Set.Book) < lowest)
            Add(
                "measured.ph", reading.Ph.Span, $"pH {Number(reading.Ph.Value.Value, 2)}", reading.Ph.Value.Value, lowest,
                $"all acids that go in come to pH {Number(lowest, 1)} at the lowest");
        if (reading.Abv.IsGiven
            && !ferments
            && !concentrates
            && StrongestPart(parts) is var strongest
            && reading.Abv.Value.BaseLow > strongest + Strength.Value)
            Add(
                "measured.abv", reading.Abv.Span, $"{Number(reading.Abv.Value.Base, 1)} % vol", reading.Abv.Value.Base, strongest,
                $"nothing that goes in is over {Number(strongest, 1)} % vol");
        if (concentrates || made.Lack.Has(Unknowns.Water | Unknowns.Sugar)) return Found();
        if (reading.Brix.IsGiven && ethanol < 0.005 * mix.Total && MostBrix(mix) is var most && reading.Brix.Value.BaseLow > most)
            Add(
                "measured.brix", reading.Brix.Span, $"{Number(reading.Brix.Value.Base, 1)} °Brix", reading.Brix.Value.Base, most,
                $"all that could dissolve comes to {Number(most, 1)} °Brix at the most");
        if (reading.WaterActivity.IsGiven && LeastActivity(mix) is { } least && reading.WaterActivity.Value.High + Meters.WaterActivityHalfWidth < least)
            Add(
                "measured.waterActivity", reading.WaterActivity.Span, $"A water activity of {Number(reading.WaterActivity.Value.Value, 2)}",
                reading.WaterActivity.Value.Value, least, $"what is dissolved in its water comes to {Number(least, 2)} at the least");
        return Found();

        void Add(
            string path, TextSpan span, string what, double value, double bound, string why) =>
                (found ??= []).Add(new ImpossibleReading(path, span, what, value, bound, why));

        FixedList<ImpossibleReading> Found() => found is null ? [] : FixedList.Of(found);
    }

    /// <summary>The readings that can be; <see langword="null"/> where none is left.</summary>
    public static Measurement? Without(Measurement reading, FixedList<ImpossibleReading> impossible)
    {
        var left = reading;
        foreach (var one in impossible)
        {
            left = one.Path switch
            {
                "measured.ph" => left with { Ph = default },
                "measured.abv" => left with { Abv = default },
                "measured.brix" => left with { Brix = default },
                _ => left with { WaterActivity = default },
            };
        }

        return left;
    }

    /// <summary>
    /// The lowest pH that the acids could reach: more of each acid and less of what holds it than the entries give, but no higher
    /// than the lowest pH of a liquid part; <see langword="null"/> where the acids are not known.
    /// </summary>
    private static double? LowestPh(Mix mix, Lack lack, RecipeProfile profile)
    {
        if (lack.Has(Unknowns.Acid | Unknowns.Water)) return null;
        var grams = mix.Grams.ToArray();
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) grams[(int)c] *= 1 + (More.Value / 100);
        foreach (var ion in new[] { Component.Potassium, Component.Sodium, Component.Calcium, Component.Magnesium, Component.Chloride, Component.Sulphate })
            grams[(int)ion] *= Minerals.Value / 100;
        double lowest = AcidBase.Ph(grams, Celsius.Reference)?.Value ?? double.NaN;
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (part.Material is not { } material) return null;

            // What a dried plant or a spice gives off in water is not known.
            if (material.State != MaterialState.Liquid
                && RecipeTree.AnyIn(
                    part, profile, static m => m.State != MaterialState.Liquid && m.Kind is { PerishesWet: true } or { IsSpice: true }))
                return null;
            if (material.State == MaterialState.Liquid && material.Ph.Low < lowest) lowest = material.Ph.Low;
        }

        return double.IsNaN(lowest) ? null : lowest;
    }

    /// <summary>Strength of the strongest part, % vol.</summary>
    private static double StrongestPart(FixedList<Part> parts)
    {
        double most = 0;
        foreach (var part in parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (part.Material is not { } material || (material.Unknown & Unknowns.Strength) != 0) return 100;
            if (material.Of(Component.Ethanol) > 0) most = Math.Max(most, Mixture.Abv(material.PerGram)?.Percent ?? 100);
        }

        return most;
    }

    /// <summary>°Brix if all dry matter dissolved, and there were more of it than the entries give.</summary>
    private static double MostBrix(Mix mix)
    {
        double water = mix.Of(Component.Water), solids = (mix.Total - water - mix.Of(Component.Ethanol) - mix.Of(Component.Fat)) * (1 + (More.Value / 100));
        return solids + water > 0 ? 100 * solids / (solids + water) : 100;
    }

    /// <summary>Water activity with more of all that is dissolved than the entries give; <see langword="null"/> where the model has no answer.</summary>
    private static double? LeastActivity(Mix mix)
    {
        var grams = mix.Grams.ToArray();
        for (int c = 0; c < grams.Length; c++)
        {
            if (c != (int)Component.Water) grams[c] *= 1 + (More.Value / 100);
        }

        return WaterActivityModel.Of(grams, new Celsius(25))?.Value is { } activity && activity > 0
            ? activity - (2 * WaterActivityModel.MixtureError.At(activity).Value)
            : null;
    }

    private static string Number(double value, int digits) => Math.Round(value, digits).ToString(System.Globalization.CultureInfo.InvariantCulture);
}
