namespace SpecLint.Page;

/// <summary>The page calls <see cref="Exports"/>; nothing runs by itself.</summary>
internal static class Program
{
    private static void Main()
    {
    }
}
