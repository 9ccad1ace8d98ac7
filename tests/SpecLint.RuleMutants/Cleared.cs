namespace SpecLint.RuleMutants;

/// <summary>Deletes a file when the program ends.</summary>
internal sealed class Cleared(string path) : IDisposable
{
    public void Dispose() => File.Delete(path);
}
