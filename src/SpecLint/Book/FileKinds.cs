namespace SpecLint.Book;

/// <summary>Kinds of file by their names.</summary>
public static class FileKinds
{
    private const string BarFile = "bar.json";

    private static readonly (string Ending, FileKind Kind)[] Endings =
    [
        (".drink.json", FileKind.Drink),
        (".prep.json", FileKind.Prep),
        (".ingredient.json", FileKind.Ingredient),
        (".menu.json", FileKind.Menu),
        (".stock.json", FileKind.Stock),
        (".prices.json", FileKind.Prices),
    ];

    /// <summary>The kind of a file by its path, with <c>/</c> or <c>\</c>; <see langword="null"/> for any other file.</summary>
    public static FileKind? Of(string path)
    {
        if (NameOf(path).Equals(BarFile.AsSpan(), StringComparison.Ordinal)) return FileKind.Bar;
        foreach (var (ending, kind) in Endings)
        {
            if (path.EndsWith(ending, StringComparison.Ordinal)) return kind;
        }

        return null;
    }

    /// <summary>The id that a file's name makes: the name without its ending. It may be no valid id; <see cref="IsId(string)"/> tells.</summary>
    public static string IdOf(string path)
    {
        var name = NameOf(path);
        foreach (var (ending, _) in Endings)
        {
            if (name.EndsWith(ending.AsSpan(), StringComparison.Ordinal)) return name.Slice(0, name.Length - ending.Length).ToString();
        }

        return (name.EndsWith(".json".AsSpan(), StringComparison.Ordinal) ? name.Slice(0, name.Length - 5) : name).ToString();
    }

    /// <summary>The ending of a kind, its leading point included; of a bar its whole name.</summary>
    public static string EndingOf(FileKind kind)
    {
        foreach (var (ending, of) in Endings)
        {
            if (of == kind) return ending;
        }

        return BarFile;
    }

    /// <summary>Whether a text is an id: lower-case letters and digits, parts joined by single hyphens.</summary>
    public static bool IsId(string text)
    {
        bool part = false;
        foreach (char c in text)
        {
            bool sign = c is (>= 'a' and <= 'z') or (>= '0' and <= '9');
            if (!sign && (c != '-' || !part)) return false;
            part = sign;
        }

        return part;
    }

    /// <summary>Whether bytes are an id.</summary>
    internal static bool IsId(ReadOnlySpan<byte> text)
    {
        bool part = false;
        foreach (byte c in text)
        {
            bool sign = c is (>= (byte)'a' and <= (byte)'z') or (>= (byte)'0' and <= (byte)'9');
            if (!sign && (c != (byte)'-' || !part)) return false;
            part = sign;
        }

        return part;
    }

    /// <summary>The id that a text would make, or <see langword="null"/> where it holds no letter or digit.</summary>
    public static string? MakeId(string text)
    {
        var id = new System.Text.StringBuilder(text.Length);
        foreach (char c in text)
        {
            char lower = char.ToLowerInvariant(c);
            if (lower is (>= 'a' and <= 'z') or (>= '0' and <= '9')) id.Append(lower);
            else if (id.Length > 0 && id[id.Length - 1] != '-') id.Append('-');
        }

        while (id.Length > 0 && id[id.Length - 1] == '-') id.Length--;
        return id.Length == 0 ? null : id.ToString();
    }

    private static ReadOnlySpan<char> NameOf(string path) => path.AsSpan(path.LastIndexOfAny(Separators) + 1);

    private static readonly char[] Separators = ['/', '\\'];
}
