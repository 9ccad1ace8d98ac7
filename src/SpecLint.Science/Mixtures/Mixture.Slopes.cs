namespace SpecLint.Science;

/// <content>How far the measures of a mixture move with the mass of each component.</content>
public static partial class Mixture
{
    // Of a share, and of the mass of a part that is not there: as far as a difference is moved for a slope.
    private const double SlopeStep = 1e-6;

    // What changes which salts there are: metals, strong anions, and what holds metals before carbon dioxide does.
    private const ulong OfSalts = 1UL << (int)Component.Sodium | 1UL << (int)Component.Potassium | 1UL << (int)Component.Calcium
        | 1UL << (int)Component.Magnesium | 1UL << (int)Component.Chloride | 1UL << (int)Component.Sulphate | 1UL << (int)Component.CarbonDioxide;

    private static readonly ulong Acids = Bits(Components.FirstAcid, Components.LastAcid);

    private static readonly ulong Solutes = Bits(Components.FirstSolute, Components.LastSolute) | 1UL << (int)Component.OtherDissolved;

    /// <summary>
    /// The measures with their slopes by each mass, for a propagation of uncertainty. A mass moves a sum of the balance by its own part, and by the
    /// share of all solutes, which moves every part: the second is worked out once for all components.
    /// </summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="wanted">Bit n is set where the slopes by the n-th component are wanted.</param>
    /// <param name="volumeSlopes">Receives the slopes of the volume, mL/g, by <see cref="Component"/>; what is not wanted is left as it is.</param>
    /// <param name="brixSlopes">The same of °Brix, 1/g; left as it is where there is no °Brix.</param>
    /// <returns>Null where <see cref="Measure"/> is; then no slope is written.</returns>
    [Source(Balance)]
    public static LiquidMeasures? MeasureWithSlopes(ReadOnlySpan<double> grams, ulong wanted, Span<double> volumeSlopes, Span<double> brixSlopes)
    {
        if (Measure(grams) is not { } measures)
            return null;
        var solution = new Solution(grams);
        SlopesOfVolume(grams, solution, wanted, volumeSlopes);
        if (measures.Brix is { } brix)
            SlopesOfBrix(grams, solution, brix.Value, wanted, brixSlopes);
        return measures;
    }

    private static void SlopesOfVolume(ReadOnlySpan<double> grams, Solution solution, ulong wanted, Span<double> slopes)
    {
        var volumes = new SpecificVolumes(solution.Share, 20);
        var salts = VolumeOfSalts(grams, solution.Share);
        var byShare = 0.0;
        if (solution.Dissolved > 0)
        {
            var next = solution.Share + SlopeStep;
            var moved = new SpecificVolumes(next, 20).AddTo(0, grams) + VolumeOfSalts(grams, next);
            byShare = (moved - volumes.AddTo(0, grams) - salts) / SlopeStep;
        }

        var (byWater, byEthanol) = SlopesOfSolvent(grams);
        for (var c = 0; c < grams.Length; c++)
        {
            if ((wanted & (1UL << c)) == 0)
                continue;
            var own = (Component)c switch
            {
                Component.Water => byWater,
                Component.Ethanol => byEthanol,
                _ => volumes.Of((Component)c),
            };
            if (MovesSalts(grams, c))
                own += SlopeOfSalts(grams, c, solution.Share, salts, VolumeOfSalts);
            slopes[c] = own + (byShare * solution.ShareBy(c));
        }
    }

    // Slopes of the volume of ethanol and water, mL/g, by each of the two.
    private static (double Water, double Ethanol) SlopesOfSolvent(ReadOnlySpan<double> grams)
    {
        var solvent = grams.Of(Component.Water) + grams.Of(Component.Ethanol);
        if (!(solvent > 0))
            return (1000 / EthanolWater.RhoAt20(0, out _), 1000 / EthanolWater.RhoAt20(1, out _));
        var p = grams.Of(Component.Ethanol) / solvent;
        var rho = EthanolWater.RhoAt20(p, out var slope);
        return (1000 / rho * (1 + (slope * p / rho)), 1000 / rho * (1 - (slope * (1 - p) / rho)));
    }

    private static void SlopesOfBrix(ReadOnlySpan<double> grams, Solution solution, double brix, ulong wanted, Span<double> slopes)
    {
        var salts = RefractionOfSalts(grams, solution.Share);
        var byShare = solution.Dissolved > 0 ? (RefractionOfSalts(grams, solution.Share + SlopeStep) - salts) / SlopeStep : 0;
        var more = solution.Mass * (1 + SlopeStep);
        var bySolution = (Refracted(grams, more) - Refracted(grams, solution.Mass)) / (more - solution.Mass);
        for (var c = 0; c < grams.Length; c++)
        {
            if ((wanted & (1UL << c)) == 0)
                continue;
            double was = grams[c], moved = was + (SlopeStep * solution.Mass);
            var own = ((moved * Refraction((Component)c, moved / solution.Mass)) - (was * Refraction((Component)c, was / solution.Mass))) / (moved - was);
            if (MovesSalts(grams, c))
                own += SlopeOfSalts(grams, c, solution.Share, salts, RefractionOfSalts);
            own += byShare * solution.ShareBy(c);
            if (Solution.Holds(c))
                own += bySolution - (brix / 100);
            slopes[c] = own / solution.Mass * 100;
        }
    }

    private static bool MovesSalts(ReadOnlySpan<double> grams, int component) =>
        (OfSalts & (1UL << component)) != 0 || ((Acids & (1UL << component)) != 0 && grams.Of(Component.CarbonDioxide) > 0);

    private static double SlopeOfSalts(ReadOnlySpan<double> grams, int component, double share, double now, SaltSum sum)
    {
        Span<double> moved = stackalloc double[Components.Count];
        grams.CopyTo(moved);
        Composition.IsValid(grams, out var total);
        var step = SlopeStep * total;
        moved[component] += step;
        return (sum(moved, share) - now) / step;
    }

    private static ulong Bits(Component first, Component last) => (1UL << ((int)last + 1)) - (1UL << (int)first);

    private delegate double SaltSum(ReadOnlySpan<double> grams, double share);

    // The masses that the sums of a balance share, g.
    private readonly ref struct Solution
    {
        private readonly double water;

        public Solution(ReadOnlySpan<double> grams)
        {
            water = grams.Of(Component.Water);
            Dissolved = Composition.Dissolved(grams);
            Mass = water + grams.Of(Component.Ethanol) + Dissolved;
        }

        public double Dissolved { get; }

        /// <summary>Gets water, ethanol and what is dissolved.</summary>
        public double Mass { get; }

        /// <summary>Gets the share of all solutes in solutes and water.</summary>
        public double Share => Dissolved > 0 ? Dissolved / (Dissolved + water) : 0;

        public static bool Holds(int component) => component <= (int)Component.Ethanol || (Solutes & (1UL << component)) != 0;

        public double ShareBy(int component)
        {
            var both = Dissolved + water;
            if (!(both > 0))
                return 0;
            return component == (int)Component.Water ? -Dissolved / (both * both) : (Solutes & (1UL << component)) != 0 ? water / (both * both) : 0;
        }
    }
}
