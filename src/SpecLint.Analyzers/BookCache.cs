using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Microsoft.CodeAnalysis.Text;
using SpecLint.Reading;
using SpecLint.Vocabulary;

namespace SpecLint.Analyzers;

/// <summary>
/// What the last few books came to, by their content, for as long as the compiler's process lives. A compilation makes
/// new objects of all files, so that only the content can tell that a book is unchanged. The findings hold no text.
/// </summary>
internal static class BookCache
{
    private const int MostBooks = 8;

    private static readonly object Gate = new();
    private static readonly LinkedList<(string Key, ImmutableArray<Reported> Found)> Latest = new();

    /// <summary>A key of everything that the findings hang on.</summary>
    public static string KeyOf(
        string root, List<(string Path, string FullPath, SourceText Text)> texts, CalendarDate on,
        ImmutableSortedDictionary<string, Level> levels)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Add(root);
        Add(on.ToString());
        foreach (var level in levels) Add($"{level.Key}={level.Value}");
        foreach (var (path, fullPath, text) in texts)
        {
            Add(path);
            Add(fullPath);
            Add($"{text.Length} {text.Encoding?.CodePage} {text.Encoding?.GetPreamble().Length}");

            // SHA-1 by default, made while the file was read.
            hash.AppendData([.. text.GetChecksum()]);
        }

        return Convert.ToBase64String(hash.GetHashAndReset());

        void Add(string part)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(part));
            hash.AppendData([0]);
        }
    }

    /// <summary>What a book came to, where it was checked before.</summary>
    public static bool TryGet(string key, out ImmutableArray<Reported> found)
    {
        lock (Gate)
        {
            for (var node = Latest.First; node is not null; node = node.Next)
            {
                if (node.Value.Key != key) continue;
                Latest.Remove(node);
                Latest.AddFirst(node);
                found = node.Value.Found;
                return true;
            }
        }

        found = default;
        return false;
    }

    /// <summary>Remembers what a book came to; the one that was longest unused is forgotten.</summary>
    public static void Put(string key, ImmutableArray<Reported> found)
    {
        lock (Gate)
        {
            Latest.AddFirst((key, found));
            if (Latest.Count > MostBooks) Latest.RemoveLast();
        }
    }
}
