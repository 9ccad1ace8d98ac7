using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>The acid of a preparation, parted into what was weighed in and what the rest brings by nature.</summary>
internal readonly struct AcidReckoning
{
    private AcidReckoning(double added, double native, double mass, double volume)
    {
        AddedGrams = added;
        NativeGrams = native;
        MassGrams = mass;
        Millilitres = volume;
    }

    /// <summary>Acids of the dry acids and acid solutions among the parts, g.</summary>
    public double AddedGrams { get; }

    /// <summary>Acids of the other parts, titratable as citric acid, g.</summary>
    public double NativeGrams { get; }

    /// <summary>Mass of the whole, g.</summary>
    public double MassGrams { get; }

    /// <summary>Volume of the whole, mL.</summary>
    public double Millilitres { get; }

    /// <summary>Parts the acid of a preparation.</summary>
    public static AcidReckoning Of(RecipeProfile profile)
    {
        double added = 0, native = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Material is null) continue;
            if (Substances.IsAcid(part.Material)) added += part.Grams.Typical * Solving.AcidsOf(part.Material.PerGram);
            else native += part.Grams.Typical * Titratable(part.Material);
        }

        return new AcidReckoning(added, native, profile.Mass, Solving.VolumeOf(profile.Grams));
    }

    /// <summary>Added and native acid in the basis of a target: per 100 g or per 100 mL.</summary>
    public (double Added, double Native) In(Dimension basis)
    {
        double of = (basis == Dimension.PercentMassInVolume ? Millilitres : MassGrams) / 100;
        return (AddedGrams / of, NativeGrams / of);
    }

    private static double Titratable(Material material)
    {
        double titratable = Solving.Titratable(material.PerGram);
        return double.IsNaN(titratable) ? Solving.AcidsOf(material.PerGram) : Math.Max(0, titratable);
    }
}
