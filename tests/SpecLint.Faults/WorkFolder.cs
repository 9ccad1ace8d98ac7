using System.Text;

namespace SpecLint.Faults;

/// <summary>The folder in which a write path runs; filled anew before each run.</summary>
internal sealed class WorkFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("speclint-faults-").FullName + "/";

    /// <summary>Empties the folder and writes the files.</summary>
    /// <returns>What it holds.</returns>
    public SortedDictionary<string, string> Fill(IReadOnlyDictionary<string, string> files)
    {
        foreach (string folder in Directory.GetDirectories(Path)) Directory.Delete(folder, recursive: true);
        foreach (string file in Directory.GetFiles(Path)) File.Delete(file);
        foreach (var (name, text) in files)
        {
            string full = System.IO.Path.Combine(Path, name);
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(full)!);
            File.WriteAllText(full, text);
        }

        return Read();
    }

    /// <summary>The files and what they hold, byte for byte, by path.</summary>
    public SortedDictionary<string, string> Read()
    {
        var files = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (string file in Directory.GetFiles(Path, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 }))
            files.Add(System.IO.Path.GetRelativePath(Path, file), Encoding.Latin1.GetString(File.ReadAllBytes(file)));
        return files;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
