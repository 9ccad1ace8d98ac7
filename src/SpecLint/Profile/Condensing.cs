using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// Keeps the uncertain inputs of a composition within a number. A preparation of preparations has all the inputs of those in it,
/// so that a deep book would carry thousands from recipe to recipe. The inputs that move the composition most stay what they
/// are; the others together become as many as there are components at the most, with the same variances and covariances (the
/// Cholesky factor of their covariance matrix; G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed., 4.2). What this
/// gives up is that a small input of one part and the same one of another vary together. No recipe of a bar gets here.
/// </summary>
internal static class Condensing
{
    /// <summary>Inputs that a composition may have.</summary>
    public const int Most = 256;

    /// <summary>Inputs that stay what they are where there are more than <see cref="Most"/>.</summary>
    private const int Kept = 128;

    /// <summary>The same uncertainty with at most <see cref="Kept"/> inputs and one a component.</summary>
    public static Variation[] Of(ReadOnlySpan<Variation> inputs)
    {
        var weights = new double[inputs.Length];
        int[] order = new int[inputs.Length];
        for (int i = 0; i < order.Length; i++)
        {
            order[i] = i;
            double sum = 0;
            foreach (double change in inputs[i].Input.Changes.Values) sum += change * change;
            weights[i] = sum * inputs[i].Scale * inputs[i].Scale * Variance(inputs[i].Input);
        }

        Array.Sort(order, (a, b) => weights[a] != weights[b] ? weights[b].CompareTo(weights[a]) : a.CompareTo(b));
        Array.Sort(order, 0, Kept);
        var covariance = new double[Components.Count, Components.Count];
        for (int k = Kept; k < order.Length; k++) Add(covariance, inputs[order[k]]);
        var condensed = new List<Variation>(Kept + Components.Count);
        for (int k = 0; k < Kept; k++) condensed.Add(inputs[order[k]]);
        foreach (double[] column in Factor(covariance))
            condensed.Add(new Variation(new UncertainInput("many small amounts", SparseMasses.Of(column), 1, 1), 1));
        return [.. condensed];
    }

    /// <summary>Mean square of the change, from the typical value: half of each half normal's.</summary>
    private static double Variance(UncertainInput input) => ((input.Up * input.Up) + (input.Down * input.Down)) / 2;

    private static void Add(double[,] covariance, in Variation variation)
    {
        double[] change = variation.Input.Changes.ToArray();
        double factor = Variance(variation.Input) * variation.Scale * variation.Scale;
        for (int r = 0; r < change.Length; r++)
        {
            if (change[r] == 0) continue;
            for (int c = 0; c <= r; c++) covariance[r, c] += factor * change[r] * change[c];
        }
    }

    /// <summary>Columns L of A = L Lᵀ, lower triangle; those of a matrix that has not the full rank are fewer.</summary>
    private static IEnumerable<double[]> Factor(double[,] a)
    {
        int n = Components.Count;
        double largest = 0;
        for (int i = 0; i < n; i++) largest = Math.Max(largest, a[i, i]);
        for (int j = 0; j < n; j++)
        {
            double pivot = a[j, j];
            if (!(pivot > 1e-14 * largest)) continue;
            double root = Math.Sqrt(pivot);
            double[] column = new double[n];
            for (int i = j; i < n; i++) column[i] = a[i, j] / root;
            for (int r = j; r < n; r++)
            {
                for (int c = j; c <= r; c++) a[r, c] -= column[r] * column[c];
            }

            yield return column;
        }
    }
}
