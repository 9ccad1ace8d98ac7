using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Service;

/// <summary>A figure that the amounts of a recipe are to bring about.</summary>
/// <param name="Measure">The figure.</param>
/// <param name="Low">Its least value.</param>
/// <param name="High">Its largest; the same as the least where one value is wanted.</param>
/// <param name="Tolerance">How far it may stay away and still count as reached; more than 0.</param>
internal sealed record AmountGoal(Solving.Measure Measure, double Low, double High, double Tolerance)
{
    /// <summary>How far a value lies outside: below it negative, above it positive, 0 within.</summary>
    public double Gap(double value) => value < Low ? value - Low : value > High ? value - High : 0;

    /// <summary>Whether a value counts as reached.</summary>
    public bool IsReached(double value) => Math.Abs(Gap(value)) <= Tolerance;
}

/// <summary>A line whose amount may change.</summary>
/// <param name="Item">Id of the item.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Like">An amount in whose unit it is written.</param>
/// <param name="Now">Its amount now, mL or g; 0 for a line that is not there yet.</param>
/// <param name="GramsPerUnit">g in a mL or g of it.</param>
internal sealed record AmountLine(string Item, Material Material, Quantity Like, double Now, double GramsPerUnit)
{
    /// <summary>The part that it is; <see langword="null"/> for a line that is not there yet.</summary>
    public Part? Part { get; init; }
}

/// <summary>
/// Searches the amounts of some lines that bring figures of a recipe to their targets and keep others near what they are, with
/// the smallest change. First without steps, by least squares with damping (D. W. Marquardt, 1963); then on the steps of the
/// bar's tools, one or two lines at a time. A drink keeps its dilution in per cent of the mix, a preparation what its making takes
/// out or adds.
/// </summary>
internal sealed class AmountSearch
{
    /// <summary>What is written may become so many times as much, or that part of it.</summary>
    public const double Most = 12;

    // What counts how much: a target, a figure that is to stay, a change of a line, and that a line changes at all.
    // A target beyond half its tolerance comes before everything else; within, it is one wish among others.
    private const double OfTarget = 100, OfNearTarget = 3, NearTarget = 0.5, OfKept = 1, OfChange = 0.5, OfTouch = 0.02, OfAddition = 0.05;
    private const int MostRounds = 60;

    private readonly AmountLine[] lines;
    private readonly Settings settings;
    private readonly double[] fixedGrams = new double[Components.Count];
    private readonly double[] rest = new double[Components.Count];
    private readonly double mass;
    private readonly double fixedMass;

    /// <param name="profile">The recipe.</param>
    /// <param name="lines">The lines that may change.</param>
    /// <param name="settings">Settings, for the steps of the tools.</param>
    public AmountSearch(RecipeProfile profile, IReadOnlyList<AmountLine> lines, Settings settings)
    {
        this.lines = [.. lines];
        this.settings = settings;
        var grams = profile.Grams;
        for (int c = 0; c < rest.Length; c++) rest[c] = grams[c];
        foreach (var part in profile.Parts)
        {
            if (part is not { Phase: PartPhase.Mix or PartPhase.Top, IsWeighed: true, Material: { } material }) continue;
            double g = part.Grams.Typical;
            mass += g;
            bool varies = this.lines.Any(l => ReferenceEquals(l.Part, part));
            if (!varies) fixedMass += g;
            for (int c = 0; c < rest.Length; c++)
            {
                rest[c] -= material.PerGram[c] * g;
                if (!varies) fixedGrams[c] += material.PerGram[c] * g;
            }
        }
    }

    /// <summary>
    /// How many times as much the recipe is to become, more than 0; 1 unless a volume is a
    /// target. A change of a line is counted from there.
    /// </summary>
    public double Scale { get; init; } = 1;

    /// <summary>The amounts as they are, mL or g.</summary>
    public double[] Now => [.. lines.Select(l => l.Now)];

    /// <summary>A figure at some amounts; NaN where it cannot be had.</summary>
    public double Value(Solving.Measure measure, double[] amounts)
    {
        Span<double> grams = stackalloc double[Components.Count];
        Compose(amounts, grams);
        return measure(grams);
    }

    /// <summary>Amounts without regard to the steps of the tools.</summary>
    /// <param name="wanted">What is to be reached.</param>
    /// <param name="kept">What is to stay near where it is.</param>
    public double[] Exact(IReadOnlyList<AmountGoal> wanted, IReadOnlyList<AmountGoal> kept)
    {
        int n = lines.Length, m = wanted.Count + kept.Count + n;
        double[] z = new double[n], residual = new double[m], trial = new double[m];
        for (int i = 0; i < n; i++) z[i] = lines[i].Now > 0 ? Within(i, Math.Log(Scale)) : 0.1;
        double cost = Residuals(z, wanted, kept, residual), damping = 1e-3;
        var slope = new double[m, n];
        for (int round = 0; round < MostRounds && n > 0 && !double.IsNaN(cost); round++)
        {
            for (int i = 0; i < n; i++)
            {
                double was = z[i];
                z[i] = was + 1e-5;
                Residuals(z, wanted, kept, trial);
                z[i] = was;
                for (int r = 0; r < m; r++) slope[r, i] = (trial[r] - residual[r]) / 1e-5;
            }

            double[]? step = Step(slope, residual, damping);
            if (step is null) break;
            double[] next = new double[n];
            double moved = 0;
            for (int i = 0; i < n; i++)
            {
                next[i] = Within(i, z[i] - step[i]);
                moved = Math.Max(moved, Math.Abs(next[i] - z[i]));
            }

            double then = Residuals(next, wanted, kept, trial);
            if (then < cost)
            {
                (z, cost, damping) = (next, then, Math.Max(1e-12, damping / 5));
                trial.CopyTo(residual, 0);
                if (moved < 1e-9) break;
            }
            else
            {
                if (moved < 1e-9) break;
                damping *= 4;
            }
        }

        return Amounts(z);
    }

    /// <summary>Amounts on the steps of the tools.</summary>
    /// <param name="wanted">What is to be reached.</param>
    /// <param name="kept">What is to stay near where it is.</param>
    public double[] Solve(IReadOnlyList<AmountGoal> wanted, IReadOnlyList<AmountGoal> kept)
    {
        double[] exact = Exact(wanted, kept), best = Now;
        double least = Cost(best, wanted, kept);
        foreach (double[] start in new[] { Rounded(exact), Now })
        {
            var (found, cost) = Descend(start, wanted, kept);
            if (cost < least || double.IsNaN(least)) (best, least) = (found, cost);
        }

        return best;
    }

    private (double[] Amounts, double Cost) Descend(double[] start, IReadOnlyList<AmountGoal> wanted, IReadOnlyList<AmountGoal> kept)
    {
        double[] at = start, trial = new double[at.Length];
        double cost = Cost(at, wanted, kept);
        for (int round = 0; round < MostRounds; round++)
        {
            double[]? better = null;
            double[][] choices = [.. at.Select((amount, i) => Near(i, amount))];
            for (int i = 0; i < at.Length; i++)
            {
                for (int j = i; j < at.Length; j++)
                {
                    foreach (double one in choices[i])
                    {
                        foreach (double other in i == j ? [0] : choices[j])
                        {
                            at.CopyTo(trial, 0);
                            trial[i] = one;
                            if (j != i) trial[j] = other;
                            double there = Cost(trial, wanted, kept);
                            if (!(there < cost - 1e-9)) continue;
                            (better, cost) = ([.. trial], there);
                        }
                    }
                }
            }

            if (better is null) break;
            at = better;
        }

        return (at, cost);
    }

    /// <summary>Amounts one and two steps away, and the one that is written.</summary>
    private double[] Near(int line, double amount)
    {
        var of = lines[line];
        var near = new List<double>();
        double step = Rounding.Step(Math.Max(amount, 1e-9), of.Like, settings);
        for (int i = -2; i <= 2; i++)
        {
            double next = amount + (i * step);
            double to = next <= step / 2 ? of.Now > 0 ? step : 0 : Clean(Rounding.ToStep(next, of.Like, settings));
            if (IsAllowed(of, to) && Math.Abs(to - amount) > 1e-9 && !near.Contains(to)) near.Add(to);
        }

        if (Math.Abs(of.Now - amount) > 1e-9 && !near.Contains(of.Now)) near.Add(of.Now);
        return [.. near];
    }

    private static bool IsAllowed(AmountLine line, double amount) =>
        line.Now > 0 ? amount <= line.Now * Most && amount >= line.Now / Most : amount >= 0;

    private double[] Rounded(double[] exact)
    {
        double[] rounded = new double[exact.Length];
        for (int i = 0; i < exact.Length; i++)
        {
            double to = Clean(Rounding.ToStep(Math.Max(exact[i], 1e-9), lines[i].Like, settings));
            double steps = exact[i] / Rounding.Step(Math.Max(exact[i], 1e-9), lines[i].Like, settings);
            bool isNothing = !(lines[i].Now > 0) && Math.Round(steps) == 0;
            rounded[i] = isNothing ? 0 : IsAllowed(lines[i], to) ? to : lines[i].Now;
        }

        return rounded;
    }

    /// <summary>A product of steps without the last bits: a step of 0.1 is not a binary number.</summary>
    private static double Clean(double amount) => Math.Round(amount, 6);

    private double Cost(double[] amounts, IReadOnlyList<AmountGoal> wanted, IReadOnlyList<AmountGoal> kept)
    {
        Span<double> grams = stackalloc double[Components.Count];
        Compose(amounts, grams);
        double cost = 0;
        for (int i = 0; i < wanted.Count; i++) cost += Squared(OfWanted(wanted[i], grams));
        for (int i = 0; i < kept.Count; i++) cost += Squared(OfKept * Miss(kept[i], grams));
        for (int i = 0; i < amounts.Length; i++)
        {
            double z = Change(i, amounts[i]);
            cost += z * z * (lines[i].Now > 0 ? OfChange * OfChange : OfAddition * OfAddition);
            if (Math.Abs(amounts[i] - lines[i].Now) > 1e-9) cost += OfTouch;
        }

        return double.IsNaN(cost) ? double.PositiveInfinity : cost;
    }

    private static double Squared(double x) => x * x;

    /// <summary>How far a figure lies outside its goal, in tolerances.</summary>
    private static double Miss(AmountGoal goal, ReadOnlySpan<double> grams) => goal.Gap(goal.Measure(grams)) / goal.Tolerance;

    /// <summary>What a value costs that is to be reached: little within half of its tolerance, much beyond.</summary>
    public static double CostOf(AmountGoal goal, double value) => Squared(OfWanted(goal.Gap(value) / goal.Tolerance));

    private static double OfWanted(AmountGoal goal, ReadOnlySpan<double> grams) => OfWanted(Miss(goal, grams));

    private static double OfWanted(double miss)
    {
        double beyond = Math.Abs(miss) - NearTarget;
        return beyond <= 0 ? OfNearTarget * miss : Math.Sign(miss) * ((OfNearTarget * NearTarget) + (OfTarget * beyond));
    }

    private double Residuals(double[] z, IReadOnlyList<AmountGoal> wanted, IReadOnlyList<AmountGoal> kept, double[] into)
    {
        Span<double> grams = stackalloc double[Components.Count];
        Compose(Amounts(z), grams);
        int at = 0;
        for (int i = 0; i < wanted.Count; i++) into[at++] = OfWanted(wanted[i], grams);
        for (int i = 0; i < kept.Count; i++) into[at++] = OfKept * Miss(kept[i], grams);
        for (int i = 0; i < z.Length; i++) into[at++] = lines[i].Now > 0 ? (z[i] - Math.Log(Scale)) * OfChange : z[i] * OfAddition;
        double cost = 0;
        foreach (double r in into) cost += r * r;
        return cost;
    }

    /// <summary>
    /// How far an amount is from what is written, at the scale of the recipe, as a logarithm; of a line that is not there yet, % of the
    /// mass.
    /// </summary>
    private double Change(int line, double amount) =>
        lines[line].Now > 0 ? Math.Log(Math.Max(amount, 1e-9) / (lines[line].Now * Scale)) : 100 * amount * lines[line].GramsPerUnit / mass;

    private double Within(int line, double z)
    {
        double most = lines[line].Now > 0 ? Math.Log(Most) : 100 * Most;
        double least = lines[line].Now > 0 ? -Math.Log(Most) : 0;
        return Math.Max(least, Math.Min(most, z));
    }

    private double[] Amounts(double[] z)
    {
        double[] amounts = new double[z.Length];
        for (int i = 0; i < z.Length; i++) amounts[i] = lines[i].Now > 0 ? lines[i].Now * Math.Exp(z[i]) : z[i] * mass / 100 / lines[i].GramsPerUnit;
        return amounts;
    }

    private void Compose(double[] amounts, Span<double> grams)
    {
        double now = fixedMass;
        for (int i = 0; i < amounts.Length; i++) now += amounts[i] * lines[i].GramsPerUnit;
        for (int c = 0; c < grams.Length; c++) grams[c] = fixedGrams[c] + (rest[c] * now / mass);
        for (int i = 0; i < amounts.Length; i++)
        {
            double g = amounts[i] * lines[i].GramsPerUnit;
            var per = lines[i].Material.PerGram;
            for (int c = 0; c < grams.Length; c++) grams[c] += per[c] * g;
        }

        for (int c = 0; c < grams.Length; c++) grams[c] = Math.Max(0, grams[c]);
    }

    /// <summary>The step of the damped normal equations; <see langword="null"/> where they have no answer.</summary>
    private static double[]? Step(double[,] slope, double[] residual, double damping)
    {
        int m = slope.GetLength(0), n = slope.GetLength(1);
        var a = new double[n, n + 1];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                for (int r = 0; r < m; r++) a[i, j] += slope[r, i] * slope[r, j];
            }

            for (int r = 0; r < m; r++) a[i, n] += slope[r, i] * residual[r];
            a[i, i] *= 1 + damping;
        }

        // Gauss with pivots: there are as many unknowns as lines that may change.
        for (int k = 0; k < n; k++)
        {
            int pivot = k;
            for (int i = k + 1; i < n; i++) pivot = Math.Abs(a[i, k]) > Math.Abs(a[pivot, k]) ? i : pivot;
            if (!(Math.Abs(a[pivot, k]) > 1e-300)) return null;
            for (int j = k; j <= n; j++) (a[k, j], a[pivot, j]) = (a[pivot, j], a[k, j]);
            for (int i = k + 1; i < n; i++)
            {
                double f = a[i, k] / a[k, k];
                for (int j = k; j <= n; j++) a[i, j] -= f * a[k, j];
            }
        }

        double[] step = new double[n];
        for (int i = n - 1; i >= 0; i--)
        {
            double sum = a[i, n];
            for (int j = i + 1; j < n; j++) sum -= a[i, j] * step[j];
            step[i] = sum / a[i, i];
        }

        return step;
    }
}
