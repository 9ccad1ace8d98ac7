using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Profile;

/// <summary>How exactly bars measure, as half widths of about 95 %.</summary>
internal static class Tolerances
{
    private static readonly Limit SmallPour = Limits.Of("tolerance-pour-small");
    private static readonly Limit LargePour = Limits.Of("tolerance-pour-large");
    private static readonly Limit SmallPourUpTo = Limits.Of("tolerance-pour-small-up-to");
    private static readonly Limit ScaleStep = Limits.Of("tolerance-scale-step");
    private static readonly Limit Bulk = Limits.Of("tolerance-bulk-density");

    /// <summary>Share by which a powder's bulk density differs.</summary>
    public static double BulkDensityShare => Bulk.Value / 100;

    /// <summary>Share by which a poured volume differs.</summary>
    /// <param name="millilitres">The volume, mL.</param>
    public static double PouringShare(double millilitres) =>
        (millilitres <= SmallPourUpTo.Value ? SmallPour.Value : LargePour.Value) / 100;

    /// <summary>Share by which a weighed mass differs: half a step of the scale.</summary>
    /// <param name="grams">The mass, g.</param>
    /// <param name="settings">Settings, for the step of the bar's scale.</param>
    public static double WeighingShare(double grams, Settings settings)
    {
        double step = settings.Bar is { Scale.IsGiven: true } bar ? bar.Scale.Value.Base : ScaleStep.Value;
        return grams <= 0 ? 0 : Math.Min(0.5, step / 2 / grams);
    }
}
