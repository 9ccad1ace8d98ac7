namespace SpecLint;

/// <summary>Parallel loops with a bounded number of threads.</summary>
internal static class Workers
{
    private const int FewRounds = 2;

    /// <summary>Runs a body for 0 … count − 1; results must go to a place of their own for each index.</summary>
    /// <param name="count">Number of rounds.</param>
    /// <param name="threads">Number of threads; 0 takes one a processor.</param>
    /// <param name="body">The body.</param>
    public static void For(int count, int threads, Action<int> body)
    {
#pragma warning disable RS1035 // The number of threads changes no result.
        if (threads == 0) threads = Environment.ProcessorCount;
#pragma warning restore RS1035
        // Starting threads takes longer than the smallest book.
        if (threads == 1 || count <= FewRounds)
        {
            for (int i = 0; i < count; i++) body(i);
            return;
        }

        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = threads }, body);
    }
}
