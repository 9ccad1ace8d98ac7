using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Balance;

/// <summary>
/// Solves for the amounts of what brings the strength, the sugar and the acid of a drink so that all bands of its style hold
/// together, with the smallest change. Amounts lie on the steps of the bar's tools, between half and twice what is written.
/// </summary>
internal sealed class BandSolver
{
    private static readonly Limit LeastFactor = Limits.Of("balance-factor-least");
    private static readonly Limit MostFactor = Limits.Of("balance-factor-most");

    /// <summary>The facts whose bands are solved for.</summary>
    public static readonly Fact[] Facts = [Fact.Abv, Fact.Sugar, Fact.Acid];

    private const int Steps = 6;

    private readonly RecipeContext context;
    private readonly Style style;
    private readonly List<Part> chiefs = [];
    private readonly double[] rest = new double[Components.Count];
    private readonly double[] mixed = new double[Components.Count];
    private readonly int[] held;

    /// <summary>% vol that a gram of ethanol in a millilitre comes to.</summary>
    private static readonly double EthanolStrength = StrengthOfEthanol();

    private readonly double mass;

    // Only a search asks for the size of the drink, of which the range takes long to work out.
    private double size = double.NaN;
    private Band? sizes;

    private BandSolver(RecipeContext context, Style style)
    {
        this.context = context;
        this.style = style;
        var profile = context.Profile;
        foreach (var weight in new Func<Material, double>[] { Remedy.EthanolOf, Remedy.SugarOf, Remedy.AcidOf })
        {
            if (Remedy.Chief(profile, weight) is { } chief && !chiefs.Contains(chief)) chiefs.Add(chief);
        }

        var grams = profile.Grams;
        for (int i = 0; i < rest.Length; i++) rest[i] = grams[i];
        foreach (var part in profile.Parts)
        {
            if (!IsPoured(part) || part.Material is not { } material) continue;
            mass += part.Grams.Typical;
            var per = material.PerGram;
            for (int i = 0; i < rest.Length; i++) mixed[i] += part.Grams.Typical * per[i];
        }

        // What neither the glass nor a part holds stays away from all that is tried.
        var some = new List<int>(rest.Length);
        for (int i = 0; i < rest.Length; i++)
        {
            rest[i] -= mixed[i];
            if (rest[i] != 0 || mixed[i] != 0) some.Add(i);
        }

        held = [.. some];
    }

    private static double StrengthOfEthanol()
    {
        Span<double> ethanol = stackalloc double[Components.Count];
        ethanol.Clear();
        ethanol[(int)Component.Ethanol] = 1;
        return 100 * Solving.VolumeOf(ethanol);
    }

    /// <summary>The remedy; <see langword="null"/> where no such amounts are found.</summary>
    public static Remedy? Solve(RecipeContext context, Style style)
    {
        var solver = new BandSolver(context, style);
        return solver.chiefs.Count == 0 || !(solver.mass > 0) ? null : solver.Search();
    }

    /// <summary>Whether a fact whose band holds now is still in it with one part multiplied.</summary>
    public static bool KeepsOthers(RecipeContext context, Style style, Part part, double factor, Fact mended)
    {
        var solver = new BandSolver(context, style);
        if (!(solver.mass > 0)) return true;
        double[] then = new double[Facts.Length];
        solver.Work([part], [factor], then);
        for (int i = 0; i < Facts.Length; i++)
        {
            if (Facts[i] == mended || style.Seen(Facts[i]) is not { } band) continue;
            var now = context.Fact(Facts[i]);
            if (now.IsKnown && now.Value >= band.Low && now.Value <= band.High && (then[i] < band.Low || then[i] > band.High)) return false;
        }

        return true;
    }

    private Remedy? Search()
    {
        sizes = style.Seen(Fact.MixVolume);
        size = context.Fact(Fact.MixVolume) is { IsKnown: true } volume ? volume.Value : double.NaN;
        var choices = chiefs.Select(Choices).ToArray();
        var logs = choices.Select(c => c.Select(f => Math.Abs(Math.Log(f))).ToArray()).ToArray();
        int[] at = new int[chiefs.Count];
        double[] factors = new double[at.Length], values = new double[Facts.Length];
        double[]? best = null, bestValues = null;
        double least = double.PositiveInfinity;
        var forecast = new Forecast(this);
        while (true)
        {
            double cost = 0;
            for (int i = 0; i < at.Length; i++)
            {
                factors[i] = choices[i][at[i]];
                cost += logs[i][at[i]];
            }

            // Thousands of amounts are tried for a drink: nothing is made for each of them.
            if (cost > 0 && cost < least && forecast.MayHold(factors))
            {
                cost += Try(factors, values);
                if (cost < least) (least, best, bestValues) = (cost, [.. factors], [.. values]);
            }

            int next = 0;
            while (next < at.Length && ++at[next] == choices[next].Count) at[next++] = 0;
            if (next == at.Length) break;
        }

        if (best is null) return null;
        for (int i = 0; i < best.Length; i++)
        {
            if (Remedy.IsTooMuch(context, chiefs[i], best[i])) return null;
        }

        return Write(best, bestValues!);
    }

    /// <summary>Factors that lie on the steps of the tool that measures the part; one first.</summary>
    private List<double> Choices(Part part)
    {
        var amount = part.Line.Amount.Value;
        var factors = new List<double> { 1 };
        for (int i = -Steps; i <= Steps; i++)
        {
            double wanted = i < 0 ? Math.Pow(LeastFactor.Value, -i / (double)Steps) : Math.Pow(MostFactor.Value, i / (double)Steps);
            double factor = Rounding.ToStep(amount.Base * wanted, amount, context.Settings) / amount.Base;
            if (factor >= LeastFactor.Value && factor <= MostFactor.Value && !factors.Contains(factor)) factors.Add(factor);
        }

        return factors;
    }

    private static bool IsPoured(Part part) => part is { Phase: PartPhase.Mix or PartPhase.Top, IsWeighed: true, Material: not null };

    /// <summary>
    /// What the figures with the chief parts multiplied cost: what lies outside the usual bands costs a little, what lies outside the
    /// seen ones cannot be had, and then the figures that take longer to work out are not.
    /// </summary>
    private double Try(double[] factors, double[] values)
    {
        Span<double> grams = stackalloc double[Components.Count];
        double volume = Mix(chiefs, factors, grams);
        values[0] = StrengthOf(grams, volume);
        double cost = Outside(Facts[0], values[0]) + OutsideSize(factors);
        if (double.IsPositiveInfinity(cost)) return cost;
        values[1] = 100 * Solving.SugarOf(grams) / volume;
        cost += Outside(Facts[1], values[1]);
        if (double.IsPositiveInfinity(cost)) return cost;
        values[2] = 100 * Solving.Titratable(grams) / volume;
        return cost + Outside(Facts[2], values[2]) + Outside(Fact.SugarAcidRatio, values[1] / values[2]);
    }

    /// <summary>Strength, sugar and acid with some parts multiplied.</summary>
    private void Work(List<Part> parts, double[] factors, double[] values)
    {
        Span<double> grams = stackalloc double[Components.Count];
        double volume = Mix(parts, factors, grams);
        values[0] = StrengthOf(grams, volume);
        values[1] = 100 * Solving.SugarOf(grams) / volume;
        values[2] = 100 * Solving.Titratable(grams) / volume;
    }

    private double StrengthOf(ReadOnlySpan<double> grams, double volume) =>
        Math.Min(100, EthanolStrength * grams[(int)Component.Ethanol] / volume);

    /// <summary>The composition with some parts multiplied; hands back its volume, mL.</summary>
    private double Mix(List<Part> parts, double[] factors, Span<double> grams)
    {
        double now = mass;
        for (int i = 0; i < parts.Count; i++) now += IsPoured(parts[i]) ? (factors[i] - 1) * parts[i].Grams.Typical : 0;

        // The water of the technique keeps its share of the mix.
        grams.Clear();
        foreach (int i in held) grams[i] = mixed[i] + (rest[i] * now / mass);
        for (int p = 0; p < parts.Count; p++)
        {
            if (!IsPoured(parts[p])) continue;
            double more = (factors[p] - 1) * parts[p].Grams.Typical;
            var per = parts[p].Material!.PerGram;
            foreach (int i in held) grams[i] += more * per[i];
        }

        foreach (int i in held) grams[i] = Math.Max(0, grams[i]);
        return Solving.VolumeOf(grams);
    }

    /// <summary>A size that the style does not have costs as much; one that is outside as written may come no further out.</summary>
    private double OutsideSize(double[] factors)
    {
        if (sizes is not { } band || double.IsNaN(size)) return 0;
        double now = mass;
        for (int i = 0; i < chiefs.Count; i++) now += (factors[i] - 1) * chiefs[i].Grams.Typical;
        double then = size * now / mass;
        return (then > band.High && then > size) || (then < band.Low && then < size) ? double.PositiveInfinity : 0;
    }

    private double Outside(Fact fact, double value)
    {
        if (style.Seen(fact) is not { } seen) return 0;
        if (!(value >= seen.Low && value <= seen.High)) return double.PositiveInfinity;
        return style.Usual(fact) is { } usual && (value < usual.Low || value > usual.High) ? 0.1 : 0;
    }

    private Remedy Write(double[] factors, double[] values)
    {
        var words = new List<string>();
        var edits = new List<TextEdit>();
        for (int i = 0; i < chiefs.Count; i++)
        {
            if (factors[i] == 1) continue;
            var line = chiefs[i].Line;
            var amount = line.Amount.Value;
            double to = amount.Base * factors[i];
            words.Add($"{Rounding.Words(to, amount)} of {line.Item.Or("it")} in place of {Rounding.Words(amount.Base, amount)}");
            edits.Add(context.Rewrite(line.Amount.Span, Rounding.Words(to, amount)));
        }

        string gives = $"{Say.With(values[0], "% vol")}, {Say.Number(values[1])} g of sugar and {Say.Number(values[2])} g of acid in "
            + "100 mL";
        string all = Say.List(words);
        return new Remedy($"Take {all}: it then comes to {gives}.", Correction.Propose($"Write {all}, which gives {gives}.", edits));
    }

    /// <summary>
    /// Rules out amounts that miss the band of a figure by far. Masses and acids add up, and volumes do to a few per cent:
    /// what misses a band by more than a tenth with volumes that add up misses it with the true one, and that is not worked out.
    /// </summary>
    private readonly struct Forecast
    {
        private const double Under = 0.9, Over = 1.1;

        private readonly Sums whole;
        private readonly Sums[] slopes;
        private readonly Band? strength;
        private readonly Band? sugar;
        private readonly Band? acid;
        private readonly Band? ratio;

        public Forecast(BandSolver solver)
        {
            strength = solver.style.Seen(Fact.Abv);
            sugar = solver.style.Seen(Fact.Sugar);
            acid = solver.style.Seen(Fact.Acid);
            ratio = solver.style.Seen(Fact.SugarAcidRatio);
            double[] factors = new double[solver.chiefs.Count];
            factors.AsSpan().Fill(1);
            whole = Sums.Of(solver, factors);
            slopes = new Sums[factors.Length];
            for (int p = 0; p < factors.Length; p++)
            {
                factors[p] = 2;
                slopes[p] = Sums.Of(solver, factors).Less(whole);
                factors[p] = 1;
            }
        }

        public bool MayHold(double[] factors)
        {
            var at = whole;
            for (int p = 0; p < slopes.Length; p++) at = at.With(slopes[p], factors[p] - 1);
            double titratable = Math.Max(0, at.Acid);
            return MayHold(strength, EthanolStrength * at.Ethanol / at.Volume) && MayHold(sugar, 100 * at.Sugar / at.Volume)
                && MayHold(acid, 100 * titratable / at.Volume) && MayHold(ratio, at.Sugar / titratable);
        }

        // What cannot be had rules nothing out.
        private static bool MayHold(Band? band, double value) =>
            band is not { } seen || !(value < seen.Low * Under || value > seen.High * Over);
    }

    /// <summary>
    /// What amounts add up to: g of ethanol, of sugar and of titratable acid (less than nought where there is more base), mL.
    /// </summary>
    private readonly record struct Sums(double Ethanol, double Sugar, double Acid, double Volume)
    {
        public static Sums Of(BandSolver solver, double[] factors)
        {
            Span<double> grams = stackalloc double[Components.Count];
            double volume = solver.Mix(solver.chiefs, factors, grams);
            return new Sums(grams[(int)Component.Ethanol], Solving.SugarOf(grams), AcidIn(grams), volume);
        }

        private static double AcidIn(ReadOnlySpan<double> grams) =>
            (AcidBase.Equivalents(grams, Titration.JuiceEndPoint) ?? double.NaN)
            * Titration.GramsPerEquivalent(TitrationBasis.CitricAnhydrous);

        public Sums Less(Sums other) => new(Ethanol - other.Ethanol, Sugar - other.Sugar, Acid - other.Acid, Volume - other.Volume);

        public Sums With(Sums slope, double times) =>
            new(
                Ethanol + (times * slope.Ethanol), Sugar + (times * slope.Sugar),
                Acid + (times * slope.Acid), Volume + (times * slope.Volume));
    }
}
