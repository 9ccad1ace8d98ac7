using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Reading;
using SpecLint.RecipeText;
using SpecLint.Reports;
using SpecLint.Tests.Reading;
using SpecLint.Tests.Support;
using SpecLint.Tool;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Fuzz;

/// <summary>All targets. Each says beyond "it does not crash" what must hold.</summary>
internal static class Targets
{
    private static readonly FileKind[] Kinds = Enum.GetValues<FileKind>();
    private static readonly SourceFile Bar = Books.File("bar.json", Samples.Bar);
    private static readonly SourceFile Prep = Books.File("sour-cucumber.prep.json", Samples.Prep);
    private static readonly Lazy<CheckResult> Whole = new(() => Checker.Check(new BookInput([Bar, Prep, Books.File("low-tide.drink.json", Samples.Drink)], Books.On) { Threads = 1 }));

    public static IReadOnlyList<Target> All { get; } =
    [
        new("reader", Reader, () => [.. Files().Select(f => f.Bytes), .. Bytes("[1,/*,*/2,]", "{\"a\":// x\n1}", "\uFEFF[-0.1e+5,true,\"\\ud83c\\udf4b\"]")]),
        new("layout", Layout, () => Files().Select(f => f.Bytes)),
        new("binder", Binder, () => Files().Select(f => f.Bytes.Prepend((byte)f.Kind).ToArray()), 2048),
        new("check", Check, () => Files().Select(f => f.Bytes.Prepend((byte)f.Kind).ToArray()), 2048),
        new("quantities", Quantities, () => Bytes("45 ml", "3/4 oz", "2 drops", "20–25 ml", "1 1/2 oz", "4 °C", "-18 °C", "12 s", "92.6 % w/w", "½ barspoon", "1.2 l", "about 20 g", "2.4", "60 pieces", "1e5 ml", "0,5 ml"), 64),
        new("lines", Lines, () => Bytes("Half Tide\n50 ml gin\n2 oz lemon juice\njuice of 1/2 lime\n3 dashes bitters\nShake 12 s with ice, strain into a coupe.\nGarnish: lime wheel\n", "# Bay syrup\nFamily: syrup\n500 g sugar\n500 g water\nYield: 1 kg\nKeep: 4 °C, bottle, 5 d\nMethod: stir until dissolved\n", "1 ½ oz gin; 20-25 ml lime\ntop with soda\n")),
        new("claims", Claims, () => Bytes("Gin, soured cucumber, honey", "vegan, gluten-free, low in sugar, fresh lime", "alcohol free · dairy-free · house-made", "contains no nuts; rich in vitamin C", "sans gluten"), 128),
        new("tree", Tree, () => Bytes("100644 blob 0123456789abcdef0123456789abcdef01234567\tbook/bar.json\0120000 blob 0123456789abcdef0123456789abcdef01234567\tbook/link\0160000 commit 0123456789abcdef0123456789abcdef01234567\tbook/sub\0")),
        new("frames", Frames, () => Bytes("Content-Length: 2\r\n\r\n{}Content-Length: 58\r\nContent-Type: x\r\n\r\n{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"shutdown\",\"params\":null}", "content-length:4\n\nnull")),
        new("baseline", BaselineText, BaselineSeeds, 4096),
        new("corrections", Corrections, () => Files().Where(f => f.Kind is FileKind.Drink or FileKind.Prep).Select(f => f.Bytes.Prepend((byte)f.Kind).ToArray()), 2048),
        new("difference", Difference, () => Bytes("a\nb\nc\nd\ne\nf\ng\nh\n\0a\nB\nc\nd\ne\nf\ng\nh\ni", "\0one\r\ntwo\r\n", "x\ny")),
        new("csv", Csv, () => Bytes("recipe,item,amount,unit\nHalf Tide,gin,50,ml\n,lemon juice,25,ml\n", "recipe;line\nNeap;\"50 ml \"\"gin\"\"\"\n", "item\tprice\tfor\ngin\t22.5\t700 ml\n")),
        new("patterns", Patterns, () => Bytes("**/*.drink.json\0a/b/c.drink.json", "a/**/b*/\0a/x/y/bc/d", "**/a/**/a/**/b\0a/a/a/a/a/a"), 96),
    ];

    private static void Reader(byte[] bytes)
    {
        if (JsonAgreement.Difference(bytes) is { } difference) throw new BrokenException(difference);
    }

    private static void Layout(byte[] bytes)
    {
        if (JsonLayout.Of(new SourceFile("a.drink.json", bytes)) is not { } laid) return;
        var again = JsonLayout.Of(new SourceFile("a.drink.json", laid));
        Must.Hold(again is not null && again.AsSpan().SequenceEqual(laid), "laid out again it is another text");
        Must.Hold(Tokens(bytes).SequenceEqual(Tokens(laid)), "laid out it has other tokens");
    }

    private static void Binder(byte[] bytes)
    {
        if (bytes.Length == 0) return;
        var kind = Kinds[bytes[0] % Kinds.Length];
        var file = new SourceFile(PathOf(kind), bytes.AsMemory(1).ToArray());
        foreach (var problem in BookReader.Read(file, kind, Measures.Default).Problems)
            Must.Hold(problem.Span.Start >= 0 && problem.Span.Length >= 0 && problem.Span.Start + problem.Span.Length <= Math.Max(1, file.Utf8.Length), "a problem lies outside the file");
    }

    private static void Check(byte[] bytes)
    {
        if (bytes.Length == 0) return;
        var kind = Kinds[bytes[0] % Kinds.Length];
        var result = Checker.Check(Of(kind, bytes.AsMemory(1).ToArray()));
        var content = ReportContent.Of(result);
        using var text = new StringWriter();
        TextReport.Write(text, content, new TextReportOptions());
        Must.Hold(!text.ToString().Any(c => char.IsControl(c) && c != '\n'), "a control character in the report");
        foreach (string word in (ReadOnlySpan<string>)["Infinity", "NaN", "∞"])
            Must.Hold(!text.ToString().Contains(word, StringComparison.Ordinal) || Encoding.UTF8.GetString(bytes).Contains(word, StringComparison.Ordinal), $"{word} in the report");
        SarifReport.Write(Stream.Null, content, new SarifReportOptions { Version = "0" });
        JsonReport.Write(Stream.Null, content, "0");
    }

    private static void Quantities(byte[] bytes)
    {
        string text = Encoding.UTF8.GetString(bytes);
        if (!QuantityReader.TryRead(text, Measures.Default, out var quantity, out var problem))
        {
            Must.Hold(problem.Message.Length > 0, "a fault without a message");
            return;
        }

        Must.Hold(!double.IsNaN(quantity.Value) && !double.IsInfinity(quantity.Value), "no finite quantity");
    }

    private static void Lines(byte[] bytes)
    {
        var recipes = new RecipeTextReader().Read(Encoding.UTF8.GetString(bytes));
        RecipeTextReport.Write(TextWriter.Null, recipes);
        foreach (var recipe in recipes)
        {
            var draft = RecipeDraft.Of(recipe, StepReader.For(null), Books.On);
            var problems = new List<ReadingProblem>();
            var tree = JsonTree.Parse(new SourceFile("a.drink.json", Encoding.UTF8.GetBytes(draft.Text)), problems);
            Must.Hold(tree.IsWhole && problems.Count == 0, "the draft is not JSON: " + draft.Text);
        }
    }

    private static void Claims(byte[] bytes)
    {
        string menu = $$"""{ "name": "Tonight", "drinks": [ { "drink": "low-tide", "words": {{JsonText.Quote(Encoding.UTF8.GetString(bytes))}} } ] }""";
        Checker.Check(new BookInput([Bar, Prep, Books.File("low-tide.drink.json", Samples.Drink), Books.File("tonight.menu.json", menu)], Books.On) { Threads = 1 });
    }

    private static void Tree(byte[] bytes)
    {
        try
        {
            foreach (var (path, entry) in GitBook.ParseTree(bytes, "book/")) Must.Hold(path.Length >= 0 && entry.Id is not null, "an entry without a path");
        }
        catch (UsageException)
        {
            // A sentence for the user.
        }
    }

    private static void Frames(byte[] bytes)
    {
        var messages = new MessageStream(new MemoryStream(bytes), Stream.Null);
        try
        {
            while (messages.Read() is { } message)
            {
                using var incoming = Incoming.Of(message);
                Must.Hold(incoming.Error == 0 || incoming.Why.Length > 0, "an error without a word");
            }
        }
        catch (Exception e) when (e is InvalidDataException or EndOfStreamException)
        {
            // The place of the next message is not known; the server ends.
        }
    }

    private static void BaselineText(byte[] bytes)
    {
        Baseline baseline;
        try
        {
            baseline = Baseline.Read(bytes);
        }
        catch (FormatException)
        {
            return;
        }

        var match = baseline.Match(Whole.Value);
        Must.Hold(match.New.Count + match.Unchanged.Count + match.Held.Count <= Whole.Value.Findings.Count * 2, "more findings than there are");
        using var written = new MemoryStream();
        baseline.Write(written);
        Must.Hold(Baseline.Read(written.ToArray()).Entries.SequenceEqual(baseline.Entries), "written and read it is another baseline");
    }

    private static void Corrections(byte[] bytes)
    {
        if (bytes.Length == 0) return;
        var kind = bytes[0] % 2 == 0 ? FileKind.Drink : FileKind.Prep;
        var result = Corrector.Apply(Of(kind, bytes.AsMemory(1).ToArray()), new CorrectionChoice { All = true, AdmitNew = true });
        foreach (var file in result.Files)
        {
            if (IsWhole(file.Before)) Must.Hold(IsWhole(file.After), "a correction breaks the JSON");
            Must.Hold(Comments(file.After) >= Comments(file.Before), "a correction eats a comment");
            using var text = new StringWriter { NewLine = "\n" };
            UnifiedDiff.Write(text, "a", file.Before, file.After);
        }
    }

    private static void Difference(byte[] bytes)
    {
        int cut = Array.IndexOf(bytes, (byte)0);
        if (cut < 0) cut = bytes.Length / 2;
        byte[] before = bytes[..cut], after = bytes[Math.Min(cut + 1, bytes.Length)..];

        // What is shown as an escape cannot be applied.
        if (!System.Text.Unicode.Utf8.IsValid(before) || !System.Text.Unicode.Utf8.IsValid(after)) return;
        string old = Encoding.UTF8.GetString(before), now = Encoding.UTF8.GetString(after);
        using var text = new StringWriter { NewLine = "\n" };
        UnifiedDiff.Write(text, "a", new SourceFile("a", before), new SourceFile("a", after));
        if ((old + now).All(c => c == '\n' || (c >= ' ' && c < 127))) Must.Hold(Patch.Apply(old, text.ToString()) == now, "the difference does not lead to the new text: " + text);
    }

    private static void Csv(byte[] bytes)
    {
        try
        {
            RecipeRows.ToText(CsvFile.Read(Encoding.UTF8.GetString(bytes), "a.csv"), "a.csv");
        }
        catch (UsageException)
        {
            // A sentence for the user.
        }
    }

    /// <summary>The same pattern as a regular expression, which an engine without backtracking runs.</summary>
    private static void Patterns(byte[] bytes)
    {
        string[] parts = Encoding.UTF8.GetString(bytes).Split('\0', 2);
        if (parts.Length < 2 || parts[0].Contains('\\', StringComparison.Ordinal) || parts[1].Length == 0 || parts[1].Split('/').Any(s => s.Length == 0) || parts[0].StartsWith("./", StringComparison.Ordinal)) return;
        string written = parts[0].EndsWith('/') ? parts[0] + "**" : parts[0];
        string[] segments = [.. written.Split('/').Where(s => s.Length > 0)];
        var regex = new StringBuilder("^");
        for (int i = 0; i < segments.Length; i++)
        {
            bool isLast = i == segments.Length - 1;
            if (segments[i] == "**") regex.Append(isLast ? "[^/]+(?:/[^/]+)*" : "(?:[^/]+/)*");
            else regex.Append(Regex.Escape(segments[i]).Replace("\\*", "[^/]*", StringComparison.Ordinal)).Append(isLast ? "" : "/");
        }

        bool wanted = segments.Length > 0 && Regex.IsMatch(parts[1], regex + "\\z", RegexOptions.NonBacktracking | RegexOptions.Singleline);
        Must.Hold(new PathPattern(parts[0]).Matches(parts[1]) == wanted, string.Create(CultureInfo.InvariantCulture, $"{parts[0]} on {parts[1]}: {wanted} is meant"));
    }

    private static BookInput Of(FileKind kind, byte[] bytes)
    {
        var file = new SourceFile(PathOf(kind), bytes);
        return new BookInput(kind == FileKind.Bar ? [file, Prep] : [Bar, Prep, file], Books.On) { Threads = 1 };
    }

    private static string PathOf(FileKind kind) => kind == FileKind.Bar ? "bar.json" : "x" + FileKinds.EndingOf(kind);

    private static bool IsWhole(SourceFile file)
    {
        var problems = new List<ReadingProblem>();
        return JsonTree.Parse(file, problems).IsWhole && !problems.Exists(p => p.Kind is ReadingProblemKind.Syntax or ReadingProblemKind.Encoding);
    }

    private static int Comments(SourceFile file) => IsWhole(file) ? JsonTree.Parse(file, []).Comments.Count : 0;

    private static List<string> Tokens(byte[] bytes) => JsonTokens.Of(new SourceFile("a", bytes)) is { } tokens ? [.. tokens.Where(t => t.Kind != JsonTokenKind.Comma).Select(t => t.Text.ReplaceLineEndings("\n"))] : [];

    private static IEnumerable<byte[]> Bytes(params string[] texts) => texts.Select(Encoding.UTF8.GetBytes);

    private static byte[][] BaselineSeeds()
    {
        using var written = new MemoryStream();
        new Baseline([]).With(Whole.Value.Findings, "because", null, Books.On, out _).Write(written);
        return [written.ToArray()];
    }

    /// <summary>The sample of each kind, and the examples of the rule pages by what their first line calls them.</summary>
    private static IEnumerable<(FileKind Kind, byte[] Bytes)> Files()
    {
        foreach (var kind in Kinds) yield return (kind, Encoding.UTF8.GetBytes(Samples.Of(kind)));
        foreach (string page in Directory.GetFiles(Repository.At("rules-docs"), "SL*.md").Order(StringComparer.Ordinal))
        {
            foreach (Match example in Regex.Matches(File.ReadAllText(page), "```jsonc?[^\n]*\n(.*?)```", RegexOptions.Singleline))
            {
                string text = example.Groups[1].Value;
                var kind = text.Contains("\"family\"", StringComparison.Ordinal) ? FileKind.Prep : text.Contains("\"lots\"", StringComparison.Ordinal) ? FileKind.Stock
                    : text.Contains("\"drinks\"", StringComparison.Ordinal) ? FileKind.Menu : text.Contains("\"like\"", StringComparison.Ordinal) ? FileKind.Ingredient : FileKind.Drink;
                if (text.Length < 1500) yield return (kind, Encoding.UTF8.GetBytes(text));
            }
        }
    }
}
