namespace SpecLint.Fuzz;

/// <summary>What must hold for every input does not.</summary>
internal sealed class BrokenException(string what) : Exception(what);

/// <summary>Short ways to say what must hold.</summary>
internal static class Must
{
    public static void Hold(bool holds, string what)
    {
        if (!holds) throw new BrokenException(what);
    }
}
