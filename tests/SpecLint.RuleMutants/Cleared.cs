namespace SpecLint.RuleMutants;

/// <summary>Deletes a folder when the program ends.</summary>
internal sealed class Cleared(string path) : IDisposable
{
    public void Dispose() => Directory.Delete(path, recursive: true);
}
