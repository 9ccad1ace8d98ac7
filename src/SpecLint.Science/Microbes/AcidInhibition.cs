namespace SpecLint.Science;

/// <summary>How the undissociated part u of an acid slows growth, MIC the least that stops it.</summary>
public enum InhibitionForm
{
    /// <summary>1 − u/MIC.</summary>
    Linear,

    /// <summary>1 − u/MIC in the rate, 1 − √(u/MIC) in the interaction.</summary>
    LinearWithRootInteraction,

    /// <summary>1 − √(u/MIC).</summary>
    Root,

    /// <summary>(1 − u/MIC)² in the rate, 1 − u/MIC in the interaction.</summary>
    Squared,
}

/// <summary>The least undissociated acid that stops an organism.</summary>
/// <param name="Acid">The acid.</param>
/// <param name="Pka">The pKa that the limit was published with.</param>
/// <param name="MicMillimolal">The least concentration of undissociated acid that stops growth, mmol/kg of water (published per litre of water phase).</param>
/// <param name="Form">The form of the term.</param>
[Source(
    "Mejlholm & Dalgaard, J. Food Prot. 72:2132, 2009; Mejlholm et al., Int. J. Food Microbiol. 141:137, 2010; Mejlholm & Dalgaard "
        + "2013, 2015 (lactic acid bacteria)")]
public readonly record struct AcidInhibition(Component Acid, double Pka, double MicMillimolal, InhibitionForm Form)
{
    /// <summary>Undissociated acid, mmol/kg: total / (1 + 10^(pH − pKa)). Null for a negative total or a pH outside 0 to 14.</summary>
    /// <param name="totalMillimolal">Acid in all forms, mmol/kg of water.</param>
    /// <param name="ph">pH.</param>
    public double? Undissociated(double totalMillimolal, Ph ph) =>
        totalMillimolal >= 0 && ph.Value is >= 0 and <= 14 ? totalMillimolal / (1 + Math.Pow(10, ph.Value - Pka)) : null;

    /// <summary>The factor of the growth rate, 0 from the limit upward.</summary>
    /// <param name="undissociated">Undissociated acid, mmol/kg of water.</param>
    public double Factor(double undissociated)
    {
        var share = undissociated / MicMillimolal;
        return !(share < 1) ? 0 : Form switch
        {
            InhibitionForm.Root => 1 - Math.Sqrt(share),
            InhibitionForm.Squared => (1 - share) * (1 - share),
            _ => 1 - share,
        };
    }

    /// <summary>φ of the interaction: the square of one less the term of <see cref="Form"/>; 1 from the limit upward.</summary>
    /// <param name="undissociated">Undissociated acid, mmol/kg of water.</param>
    public double Phi(double undissociated)
    {
        var share = undissociated / MicMillimolal;
        if (!(share < 1))
            return 1;
        return Form is InhibitionForm.Root or InhibitionForm.LinearWithRootInteraction ? share : share * share;
    }

    /// <summary>Limits of Listeria monocytogenes.</summary>
    public static IReadOnlyList<AcidInhibition> Listeria { get; } =
    [
        new(Component.Lactic, 3.86, 3.79, InhibitionForm.LinearWithRootInteraction),
        new(Component.Acetic, 4.76, 10.3, InhibitionForm.Root),
        new(Component.Citric, 3.13, 2.119, InhibitionForm.Linear),
        new(Component.Benzoic, 4.19, 0.349, InhibitionForm.Linear),
        new(Component.Sorbic, 4.76, 1.896, InhibitionForm.Linear),
    ];

    /// <summary>Limits of lactic acid bacteria.</summary>
    public static IReadOnlyList<AcidInhibition> LacticAcidBacteria { get; } =
    [
        new(Component.Lactic, 3.86, 12.0, InhibitionForm.LinearWithRootInteraction),
        new(Component.Acetic, 4.76, 10.3, InhibitionForm.Root),
        new(Component.Citric, 3.13, 10.3, InhibitionForm.Squared),
        new(Component.Benzoic, 4.19, 1.51, InhibitionForm.Squared),
        new(Component.Sorbic, 4.76, 12.6, InhibitionForm.Squared),
    ];
}
