using System.Globalization;
using System.Runtime.InteropServices;
using SpecLint.Reading;

namespace SpecLint.Book;

/// <summary>
/// One of several parts of a book that are checked apart, each beside the whole book, so that several machines can share the
/// work. Files of one id are in one part, since their findings meet; every file is in exactly one.
/// </summary>
/// <param name="Number">Which part, from 1 to <paramref name="Count"/>.</param>
/// <param name="Count">How many parts there are, from 1 to <see cref="Most"/>.</param>
public readonly record struct BookPart(int Number, int Count)
{
    /// <summary>The most parts that a book is cut into.</summary>
    public const int Most = 10_000;

    /// <summary>Reads a part as people write it, <c>2/4</c>; <see langword="null"/> where it is none.</summary>
    public static BookPart? Parse(string text)
    {
        int slash = text.IndexOf('/');
        if (slash < 0) return null;
        return Of(text.Substring(0, slash), out int number)
            && Of(text.Substring(slash + 1), out int count)
            && number <= count
            && count <= Most
            ? new BookPart(number, count)
            : null;

        static bool Of(string digits, out int value) =>
            int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out value) && value >= 1;
    }

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Number}/{Count}");

    /// <summary>The paths of the part: ids in the order of their letters are dealt out to the parts one after another.</summary>
    /// <param name="paths">Paths of all files of the book, in any order.</param>
    public HashSet<string> FilesOf(IEnumerable<string> paths)
    {
        var mine = new HashSet<string>(StringComparer.Ordinal);
        int id = -1;
        string last = "";
        foreach (var (its, path) in paths.Select(p => (Id: FileKinds.IdOf(p), Path: p)).OrderBy(p => p.Id, StringComparer.Ordinal))
        {
            if (id < 0 || its != last) id++;
            last = its;
            if (id % Count == Number - 1) mine.Add(path);
        }

        return mine;
    }

    /// <summary>
    /// 32 hexadecimal digits by which parts of one book are known to belong together: of the paths and bytes of all its files
    /// and of what else decides what is found.
    /// </summary>
    /// <param name="files">All files of the book, in any order.</param>
    /// <param name="settings">What else decides: the day, the rules that are shown.</param>
    public static string Mark(IEnumerable<SourceFile> files, string settings)
    {
        var sum = new Lanes();
        sum.Add(MemoryMarshal.AsBytes(settings.AsSpan()));
        foreach (var file in files.OrderBy(f => f.Path, StringComparer.Ordinal))
        {
            sum.Add(MemoryMarshal.AsBytes(file.Path.AsSpan()));
            sum.Add(file.Utf8.Span);
        }

        return sum.ToString();
    }

    /// <summary>Two lanes of FNV-1a over eight bytes at a time; it finds mistakes, not forgeries.</summary>
    private struct Lanes
    {
        private ulong a = 14695981039346656037, b = 0x9E3779B97F4A7C15;

        public Lanes()
        {
        }

        public void Add(ReadOnlySpan<byte> bytes)
        {
            Mix((ulong)bytes.Length);
            foreach (ulong word in MemoryMarshal.Cast<byte, ulong>(bytes)) Mix(word);
            ulong rest = 0;
            foreach (byte last in bytes.Slice(bytes.Length & ~7)) rest = (rest << 8) | last;
            Mix(rest);
        }

        public override readonly string ToString() => FormattableString.Invariant($"{a:x16}{b:x16}");

        private void Mix(ulong word)
        {
            // Without the shift the high bits of a word would only reach the high bits of the sum.
            a = (a ^ word) * 1099511628211;
            a ^= a >> 29;
            b = (b ^ ((word << 32) | (word >> 32))) * 0xD6E8FEB86659FD93;
            b ^= b >> 32;
        }
    }
}
