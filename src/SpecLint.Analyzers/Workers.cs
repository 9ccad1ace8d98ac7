namespace SpecLint;

/// <summary>
/// Parallel loops, in place of the library's own: a plug-in of the compiler does not ask the system how many processors
/// there are, but leaves that to the compiler's thread pool.
/// </summary>
internal static class Workers
{
    /// <summary>Runs a body for 0 … count − 1; results must go to a place of their own for each index.</summary>
    /// <param name="count">Number of rounds.</param>
    /// <param name="threads">Number of threads; 0 leaves it to the pool.</param>
    /// <param name="body">The body.</param>
    public static void For(int count, int threads, Action<int> body)
    {
        if (threads == 1 || count < 2)
        {
            for (int i = 0; i < count; i++) body(i);
            return;
        }

        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = threads == 0 ? -1 : threads }, body);
    }
}
