using System.Text;
using System.Text.RegularExpressions;
using SpecLint.Book;
using SpecLint.Live;
using SpecLint.Reading;

namespace SpecLint.Tests.Live;

/// <summary>
/// Edits a book at random, as people and programs do: amounts and words change, text is cut, typed and pasted, files come, go and
/// take names of others. Every so often a file becomes again what it was, so that the book stays one.
/// </summary>
internal sealed partial class RandomEdits
{
    private readonly Random random;
    private readonly SortedDictionary<string, string> original;
    private readonly SortedDictionary<string, string> texts;
    private readonly string[] words;

    public RandomEdits(int seed, IEnumerable<SourceFile> files)
    {
        random = new Random(seed);
        original = new SortedDictionary<string, string>(files.ToDictionary(f => f.Path, f => Encoding.UTF8.GetString(f.Utf8.Span)), StringComparer.Ordinal);
        texts = new SortedDictionary<string, string>(original, StringComparer.Ordinal);

        // What a value may become: anything that stands anywhere, the ids of all files among it.
        words = [.. original.Values.SelectMany(t => Text().Matches(t).Select(m => m.Value))
            .Concat(original.Keys.Select(k => $"\"{FileKinds.IdOf(k)}\""))
            .Distinct(StringComparer.Ordinal)];
    }

    /// <summary>The files as they are now.</summary>
    public IEnumerable<SourceFile> Files => texts.Select(t => Source(t.Key, t.Value));

    /// <summary>What the last edit did, in words.</summary>
    public string Last { get; private set; } = "";

    /// <summary>The next edit: one file, now and then several.</summary>
    public IReadOnlyList<FileState> Next()
    {
        Last = "";
        var changed = new Dictionary<string, FileState>(StringComparer.Ordinal);
        for (int n = random.Next(8) == 0 ? 1 + random.Next(4) : 1; n > 0; n--)
        {
            string path = Pick([.. texts.Keys]);

            // The bar's file concerns everything, which is easy to get right and slow.
            if (path == "bar.json" && random.Next(3) > 0) path = Pick([.. texts.Keys]);
            string? text = texts[path];
            switch (random.Next(14))
            {
                case < 3: text = InPlaceOf(text, Number(), m => NumberNear(m.Value)); break;
                case < 7: text = InPlaceOf(text, Text(), _ => Pick(words)); break;
                case 7: text = Cut(text); break;
                case 8: text = text.Insert(random.Next(text.Length + 1), Pick([",", "\"", "{", "}", " ", "x", "é", "1", "// ", "[", Pick(words)])); break;
                case 9 when path != "bar.json" || random.Next(4) == 0: text = null; break;
                case 10: path = Elsewhere(path); break;
                case 11: text = InPlaceOf(text, Text(), m => Escaped(m.Value)); break;
                default:
                    path = Pick([.. original.Keys]);
                    text = original[path];
                    break;
            }

            // A file that is no longer like one is put right soon, and a book of which all has gone would say nothing.
            if (text is null) texts.Remove(path);
            else texts[path] = text;
            changed[path] = new FileState(path, text is null ? null : Source(path, text));
            Last += $"{path}: {(text is null ? "gone" : "changed")}; ";
        }

        return [.. changed.Values];
    }

    private static SourceFile Source(string path, string text) => new(path, Encoding.UTF8.GetBytes(text));

    private string Elsewhere(string path)
    {
        string name = path[(path.LastIndexOf('/') + 1)..], id = FileKinds.IdOf(path);
        string[] endings = [".drink.json", ".prep.json", ".ingredient.json", ".menu.json", ".stock.json", ".prices.json"];
        return random.Next(4) switch
        {
            0 => "below/" + name,
            1 => id + Pick(endings),
            2 => Pick(words).Trim('"').Replace('/', '-') + Pick(endings),
            _ => $"new-{random.Next(5)}" + Pick(endings),
        };
    }

    private string InPlaceOf(string text, Regex what, Func<Match, string> by)
    {
        var places = what.Matches(text);
        if (places.Count == 0) return text;
        var place = places[random.Next(places.Count)];
        return text[..place.Index] + by(place) + text[(place.Index + place.Length)..];
    }

    private string NumberNear(string number) => random.Next(4) switch
    {
        0 => number + "0",
        1 => "0",
        2 => number.Replace('.', ','),
        _ => random.Next(400).ToString(System.Globalization.CultureInfo.InvariantCulture),
    };

    private string Cut(string text)
    {
        if (text.Length == 0) return text;
        int from = random.Next(text.Length);
        return text.Remove(from, Math.Min(1 + random.Next(30), text.Length - from));
    }

    private static string Escaped(string quoted) => quoted.Length < 3 ? quoted : $"\"\\u{(int)quoted[1]:x4}{quoted[2..]}";

    private string Pick(string[] from) => from[random.Next(from.Length)];

    [GeneratedRegex(@"(?<!\d)\d+(\.\d+)?", RegexOptions.ExplicitCapture)]
    private static partial Regex Number();

    [GeneratedRegex(@"""[^""\\\n]*""")]
    private static partial Regex Text();
}
