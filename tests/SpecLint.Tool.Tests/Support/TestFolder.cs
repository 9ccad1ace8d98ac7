using System.Security.Cryptography;
using System.Text;

namespace SpecLint.Tool.Tests.Support;

/// <summary>A folder for one test, gone when it is over.</summary>
internal sealed class TestFolder : IDisposable
{
    public TestFolder() => Path = Directory.CreateTempSubdirectory("speclint-test-").FullName;

    public string Path { get; }

    public string this[string relative] => System.IO.Path.Combine(Path, relative);

    public void Write(string relative, string text) => Write(relative, Encoding.UTF8.GetBytes(text));

    public void Write(string relative, byte[] bytes)
    {
        string full = this[relative];
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(full)!);
        File.WriteAllBytes(full, bytes);
    }

    /// <summary>Every file with a hash of its bytes; pipes and links by name alone.</summary>
    public string Snapshot()
    {
        var lines = new List<string>();
        foreach (var entry in new DirectoryInfo(Path).EnumerateFileSystemInfos(
            "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 }))
        {
            string name = System.IO.Path.GetRelativePath(Path, entry.FullName);
            bool plain = entry is FileInfo { Length: > 0 } && entry.LinkTarget is null;
            lines.Add(plain ? $"{name} {Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(entry.FullName)))}" : name);
        }

        lines.Sort(StringComparer.Ordinal);
        return string.Join('\n', lines);
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
