
namespace SpecLint.Profile;

/// <summary>Second room, for drinks: ice and tops.</summary>
internal static class Serving
{
    private const Unknowns NeededToChill = Unknowns.Composition | Unknowns.Mass | Unknowns.Strength;

    /// <summary>What the technique does to a mix; <see langword="null"/> without ice, and where it is not known.</summary>
    public static Chilling? Chill(Composed mix, TechniqueKind technique, Book.Step? step, Book.Drink drink, FixedList<Part> parts)
    {
        if (technique is TechniqueKind.Unknown or TechniqueKind.NoIce || !(mix.Mix.Total > 0) || mix.Lack.Has(NeededToChill)) return null;
        return Chilling.Of(mix.Mix.Grams, technique, step, WeighedIce(drink, parts));
    }

    /// <summary>The ice that is weighed out as an ingredient; <see langword="null"/> where a step brings ice that nobody weighs, or there is none.</summary>
    private static Science.Grams? WeighedIce(Book.Drink drink, FixedList<Part> parts)
    {
        double ice = 0;
        foreach (var part in parts)
        {
            if (part.Material is not { Kind.IsIce: true }) continue;
            if (!part.IsWeighed) return null;
            ice += part.Grams.High;
        }

        if (!(ice > 0)) return null;
        foreach (var step in drink.Method)
        {
            if (step.HasIce) return null;
        }

        return new(ice);
    }

    /// <summary>The drink in the glass: the mix, what melted into it, and the tops.</summary>
    public static Mix Of(Mix mix, double millilitres, Chilling? chill, FixedList<Part> parts)
    {
        var result = mix;
        if (chill is { } c && !double.IsNaN(millilitres))
        {
            result = mix.Copy();
            double perVolume = millilitres * 0.9982;
            result.AddWater(new Trace(c.Ratio.Typical * perVolume, c.Ratio.Low * perVolume, c.Ratio.High * perVolume), "dilution");
        }

        foreach (var part in parts)
        {
            if (part.Phase != PartPhase.Top || !part.IsWeighed) continue;
            if (ReferenceEquals(result, mix)) result = mix.Copy();
            result.Add(part.Material ?? Weighing.Unresolved, part.Grams, part.Line.Item.Or("top"));
        }

        return result;
    }
}
