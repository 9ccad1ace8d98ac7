using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Solves for the amount of some parts that brings a recipe to a target.</summary>
internal static class Solving
{
    private const double Most = 12;
    private const double WaterDensity = 0.9982;

    /// <summary>A number of a composition; NaN where it cannot be had.</summary>
    internal delegate double Measure(ReadOnlySpan<double> grams);

    /// <summary>g per 100 mL.</summary>
    public static readonly Measure SugarPerVolume = static grams => 100 * SugarOf(grams) / VolumeOf(grams);

    /// <summary>g per 100 g.</summary>
    public static readonly Measure SugarByMass = static grams => 100 * SugarOf(grams) / MassOf(grams);

    /// <summary>Titratable to pH 8.1 as anhydrous citric acid, g per 100 mL.</summary>
    public static readonly Measure AcidPerVolume = static grams => 100 * Titratable(grams) / VolumeOf(grams);

    /// <summary>Titratable to pH 8.1 as anhydrous citric acid, g per 100 g.</summary>
    public static readonly Measure AcidByMass = static grams => 100 * Titratable(grams) / MassOf(grams);

    /// <summary>% vol.</summary>
    public static readonly Measure Strength = static grams => Mixture.Abv(grams)?.Percent ?? double.NaN;

    /// <summary>°Brix.</summary>
    public static readonly Measure Brix = static grams => Mixture.Brix(grams)?.Value ?? double.NaN;

    /// <summary>Salt as NaCl, g per 100 mL.</summary>
    public static readonly Measure SaltPerVolume = static grams => 100 * SaltOf(grams) / VolumeOf(grams);

    /// <summary>Salt as NaCl, g per 100 g.</summary>
    public static readonly Measure SaltByMass = static grams => 100 * SaltOf(grams) / MassOf(grams);

    /// <summary>mL.</summary>
    public static readonly Measure Volume = static grams => VolumeOf(grams);

    /// <summary>
    /// What the parts that vary are to be multiplied by; NaN where nothing between 0 and 12 does it. A drink keeps its
    /// dilution in per cent of the mix.
    /// </summary>
    /// <param name="profile">The recipe.</param>
    /// <param name="varies">Which parts.</param>
    /// <param name="measure">The number to reach.</param>
    /// <param name="target">Its target.</param>
    public static double Factor(RecipeProfile profile, Func<Part, bool> varies, Measure measure, double target)
    {
        var trial = new Trial(profile, varies, measure, target, stackalloc double[3 * Components.Count]);
        double here = trial.Miss(1);
        if (double.IsNaN(here)) return double.NaN;
        if (here == 0) return 1;

        // From one on outward on both sides, the nearer step first, so that the nearest answer is found.
        Walk down = new(0.75, here), up = new(1.35, here);
        double answer = double.NaN;
        while (true)
        {
            bool goesDown = down.Goes(answer), goesUp = up.Goes(answer);
            if (!goesDown && !goesUp) return answer;
            ref var walk = ref down;
            if (!goesDown || (goesUp && up.Next - 1 < 1 - down.Next)) walk = ref up;
            double next = walk.Next, there = trial.Miss(next);
            if (double.IsNaN(there))
            {
                walk.HasEnded = true;
            }
            else if (Math.Sign(there) != Math.Sign(walk.Miss))
            {
                double zero = trial.Zero(walk.At, walk.Miss, next, there);
                if (!(Math.Abs(zero - 1) >= Math.Abs(answer - 1))) answer = zero;
                walk.HasEnded = true;
            }
            else
            {
                walk.At = next;
                walk.Miss = there;
            }
        }
    }

    /// <summary>A number of the recipe with some parts multiplied.</summary>
    public static double With(RecipeProfile profile, Func<Part, bool> varies, double factor, Measure measure) =>
        new Trial(profile, varies, measure, 0, stackalloc double[3 * Components.Count]).Miss(factor);

    /// <summary>Sugars, g.</summary>
    public static double SugarOf(ReadOnlySpan<double> grams)
    {
        double sugar = 0;
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) sugar += grams[(int)c];
        return sugar;
    }

    /// <summary>Titratable acidity to pH 8.1 as anhydrous citric acid, g; NaN where it cannot be had.</summary>
    public static double Titratable(ReadOnlySpan<double> grams) =>
        AcidBase.TitratableAcidity(grams, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)?.Value ?? double.NaN;

    /// <summary>Organic acids and phosphoric acid, g.</summary>
    public static double AcidsOf(ReadOnlySpan<double> grams)
    {
        double acid = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) acid += grams[(int)c];
        return acid;
    }

    /// <summary>Salt as NaCl, g.</summary>
    public static double SaltOf(ReadOnlySpan<double> grams) => grams[(int)Component.SodiumChloride] + (grams[(int)Component.Sodium] * 2.542);

    /// <summary>Mass, g.</summary>
    public static double MassOf(ReadOnlySpan<double> grams)
    {
        double sum = 0;
        foreach (double g in grams) sum += g;
        return sum;
    }

    /// <summary>Volume at 20 °C, mL; NaN where it cannot be had.</summary>
    public static double VolumeOf(ReadOnlySpan<double> grams) => Mixture.Volume(grams, Celsius.Reference)?.Value ?? double.NaN;

    /// <summary>A search away from the factor 1, step by step.</summary>
    private struct Walk(double step, double miss)
    {
        /// <summary>How far it has come.</summary>
        public double At = 1;

        /// <summary>How far off the target the recipe is there.</summary>
        public double Miss = miss;

        /// <summary>Whether there is nothing left to look for.</summary>
        public bool HasEnded;

        /// <summary>The next factor to try.</summary>
        public readonly double Next => At * step < 0.02 ? 0 : At * step;

        /// <summary>Whether a nearer answer than the one there is may still lie ahead.</summary>
        public readonly bool Goes(double answer) => !HasEnded && At > 0 && Next <= Most && !(Math.Abs(At - 1) >= Math.Abs(answer - 1));
    }

    /// <summary>A recipe whose amounts are tried out.</summary>
    private readonly ref struct Trial
    {
        private readonly RecipeProfile profile;
        private readonly Measure measure;
        private readonly double target;
        private readonly Span<double> varied;

        /// <summary>The components that vary, a bit each: most do not, and are copied.</summary>
        private readonly ulong touched;
        private readonly Span<double> tried;
        private readonly Span<double> mix;

        /// <param name="profile">The recipe.</param>
        /// <param name="varies">Which parts vary.</param>
        /// <param name="measure">The number that is looked at.</param>
        /// <param name="target">What it is to come to.</param>
        /// <param name="room">Room for three compositions.</param>
        public Trial(RecipeProfile profile, Func<Part, bool> varies, Measure measure, double target, Span<double> room)
        {
            this.profile = profile;
            this.measure = measure;
            this.target = target;
            varied = room.Slice(0, Components.Count);
            tried = room.Slice(Components.Count, Components.Count);
            mix = room.Slice(2 * Components.Count, Components.Count);
            varied.Clear();
            touched = 0;
            foreach (var part in profile.Parts)
            {
                if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || !part.IsWeighed || part.Material is null || !varies(part)) continue;
                for (int c = 0; c < varied.Length; c++) varied[c] += part.Material.PerGram[c] * part.Grams.Typical;
            }

            for (int c = 0; c < varied.Length; c++) touched |= varied[c] == 0 ? 0 : 1UL << c;
        }

        /// <summary>How far the number is over its target when the parts that vary are multiplied; NaN where it cannot be had.</summary>
        public double Miss(double factor)
        {
            double more = factor - 1;
            Vary(profile.Grams, more, tried);
            if (profile.Chill is { } chill && !double.IsNaN(profile.InputVolume))
            {
                Vary(profile.MixGrams, more, mix);
                double change = VolumeOf(mix) - profile.InputVolume;
                if (!double.IsNaN(change))
                    tried[(int)Component.Water] = Math.Max(0, tried[(int)Component.Water] + (chill.Ratio.Typical * change * WaterDensity));
            }

            return measure(tried) - target;
        }

        /// <summary>The factor between two of which one is over and one under; NaN where the number cannot be had between them.</summary>
        public double Zero(double a, double missA, double b, double missB)
        {
            // Illinois variant of the false position: the end that stays twice counts half (M. Dowell and P. Jarratt, 1971).
            double last = a;
            for (int i = 0; i < 100 && missB != 0; i++)
            {
                double next = ((a * missB) - (b * missA)) / (missB - missA), miss = Miss(next);
                if (double.IsNaN(miss) || miss == 0 || Math.Abs(next - last) < 1e-10) return double.IsNaN(miss) ? double.NaN : next;
                if (Math.Sign(miss) != Math.Sign(missB))
                {
                    a = b;
                    missA = missB;
                }
                else
                {
                    missA /= 2;
                }

                b = last = next;
                missB = miss;
            }

            return b;
        }

        private void Vary(ReadOnlySpan<double> grams, double more, Span<double> into)
        {
            grams.CopyTo(into);
            for (ulong left = touched; left != 0; left &= left - 1)
            {
                int c = Propagation.LowestBit(left);
                into[c] = Math.Max(0, grams[c] + (more * varied[c]));
            }
        }
    }
}
