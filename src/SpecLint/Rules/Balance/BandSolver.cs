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
    private readonly double mass;

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
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || !part.IsWeighed || part.Material is not { } material) continue;
            mass += part.Grams.Typical;
            var per = material.PerGram;
            for (int i = 0; i < rest.Length; i++) rest[i] -= part.Grams.Typical * per[i];
        }
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
        var then = solver.Values([part], [factor]);
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
        var choices = chiefs.Select(Choices).ToArray();
        var at = new int[chiefs.Count];
        double[]? best = null, bestValues = null;
        double least = double.PositiveInfinity;
        while (true)
        {
            var factors = new double[at.Length];
            double cost = 0;
            for (int i = 0; i < at.Length; i++)
            {
                factors[i] = choices[i][at[i]];
                cost += Math.Abs(Math.Log(factors[i]));
            }

            if (cost > 0 && cost < least)
            {
                var values = Values(chiefs, factors);
                cost += Outside(values);
                if (cost < least) (least, best, bestValues) = (cost, factors, values);
            }

            int next = 0;
            while (next < at.Length && ++at[next] == choices[next].Count) at[next++] = 0;
            if (next == at.Length) break;
        }

        return best is null ? null : Write(best, bestValues!);
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

    private double[] Values(IReadOnlyList<Part> parts, double[] factors)
    {
        Span<double> grams = stackalloc double[Components.Count];
        double now = 0;
        grams.Clear();
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || !part.IsWeighed || part.Material is not { } material) continue;
            double factor = 1;
            for (int i = 0; i < parts.Count; i++)
            {
                if (ReferenceEquals(parts[i], part)) factor = factors[i];
            }

            double g = factor * part.Grams.Typical;
            now += g;
            var per = material.PerGram;
            for (int i = 0; i < grams.Length; i++) grams[i] += g * per[i];
        }

        // The water of the technique keeps its share of the mix.
        for (int i = 0; i < grams.Length; i++) grams[i] = Math.Max(0, grams[i] + (rest[i] * now / mass));
        return [Solving.Strength(grams), Solving.SugarPerVolume(grams), Solving.AcidPerVolume(grams)];
    }

    /// <summary>What lies outside the usual bands costs a little, what lies outside the seen ones cannot be had.</summary>
    private double Outside(double[] values)
    {
        double cost = 0;
        for (int i = 0; i < Facts.Length; i++) cost += Outside(Facts[i], values[i]);
        return cost + Outside(Fact.SugarAcidRatio, values[1] / values[2]);
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
            edits.Add(new TextEdit(context.At(line.Amount.Span), Rounding.Text(to, amount)));
        }

        string gives = $"{Say.With(values[0], "% vol")}, {Say.Number(values[1])} g of sugar and {Say.Number(values[2])} g of acid in 100 mL";
        return new Remedy($"Take {Say.List(words)}: it then comes to {gives}.", [new Correction(CorrectionGrade.Proposed, $"Write {Say.List(words)}, which gives {gives}.", edits)]);
    }
}
