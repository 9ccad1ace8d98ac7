using System.Collections.Immutable;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Vocabulary;

namespace SpecLint.Analyzers;

/// <summary>The check of all books of one compilation: done when the first file asks, once.</summary>
internal sealed class BookCheck
{
    private static readonly ImmutableArray<Reported> Nothing = ImmutableArray<Reported>.Empty;
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly object gate = new();
    private readonly ImmutableArray<AdditionalText> files;
    private readonly CalendarDate on;
    private readonly string project;
    private readonly ImmutableSortedDictionary<string, Level> levels;
    private readonly bool concurrent;
    private Dictionary<string, ImmutableArray<Reported>>? byPath;

    /// <summary>A check to come.</summary>
    /// <param name="files">Files of the books.</param>
    /// <param name="on">The day to check for.</param>
    /// <param name="project">Folder of the project: root of the files that no bar.json stands above.</param>
    /// <param name="levels">Levels that stand over those of bar.json.</param>
    /// <param name="concurrent">Whether to use several threads.</param>
    public BookCheck(
        ImmutableArray<AdditionalText> files, CalendarDate on, string project,
        ImmutableSortedDictionary<string, Level> levels, bool concurrent)
    {
        this.files = files;
        this.on = on;
        this.project = project;
        this.levels = levels;
        this.concurrent = concurrent;
    }

    /// <summary>What was found in a file, in the order of its text.</summary>
    public ImmutableArray<Reported> FindingsIn(string path, CancellationToken cancel)
    {
        lock (gate)
        {
            // A check that was called off leaves nothing behind: the next one to ask starts anew.
            byPath ??= Check(cancel);
            return byPath.TryGetValue(path, out var found) ? found : Nothing;
        }
    }

    private Dictionary<string, ImmutableArray<Reported>> Check(CancellationToken cancel)
    {
        var all = new Dictionary<string, ImmutableArray<Reported>>(StringComparer.Ordinal);
        foreach (var book in Books.ByRoot(files, f => f.Path, project))
        {
            cancel.ThrowIfCancellationRequested();
            foreach (var inFile in CheckBook(book.Key, book.Value, cancel).GroupBy(r => r.Where.Path, StringComparer.Ordinal))
                all[inFile.Key] = inFile.ToImmutableArray();
        }

        return all;
    }

    private ImmutableArray<Reported> CheckBook(string root, List<AdditionalText> members, CancellationToken cancel)
    {
        var texts = new List<(string Path, string FullPath, SourceText Text)>(members.Count);
        foreach (var member in members)
        {
            // The compiler itself says that a file cannot be read.
            if (member.GetText(cancel) is { } text) texts.Add((Books.Slashed(member.Path).Substring(root.Length), member.Path, text));
        }

        texts.Sort(static (a, b) => string.CompareOrdinal(a.Path, b.Path));
        var key = BookCache.KeyOf(root, texts, on, levels);
        if (BookCache.TryGet(key, out var known)) return known;

        var sources = new List<SourceFile>(texts.Count);
        var originals = new Dictionary<string, (string FullPath, SourceText Text)>(StringComparer.Ordinal);
        foreach (var (path, fullPath, text) in texts)
        {
            cancel.ThrowIfCancellationRequested();
            if (originals.ContainsKey(path)) continue;
            sources.Add(new SourceFile(path, BytesOf(text)));
            originals.Add(path, (fullPath, text));
        }

        var result = Checker.Check(new BookInput(Books.Wanted(sources), on) { Levels = levels, Threads = concurrent ? 0 : 1 });
        var found = ImmutableArray.CreateBuilder<Reported>();
        foreach (var finding in Books.Reportable(result)) Add(finding);
        found.Sort(static (a, b) => a.Where.Span.CompareTo(b.Where.Span));
        var done = found.ToImmutable();
        BookCache.Put(key, done);
        return done;

        void Add(Finding finding)
        {
            if (PlaceOf(finding.Place, originals) is not { } where) return;
            var further = ImmutableArray.CreateBuilder<PlaceInFile>();
            foreach (var related in finding.Related)
            {
                if (PlaceOf(related.Place, originals) is { } place) further.Add(place);
            }

            foreach (var folded in finding.Folded)
            {
                if (PlaceOf(folded.Place, originals) is { } place) further.Add(place);
            }

            found.Add(new Reported(finding.Rule.Id, finding.Level, Books.MessageOf(finding), where, further.ToImmutable(), finding.Fingerprint));
        }
    }

    private static PlaceInFile? PlaceOf(Place place, Dictionary<string, (string FullPath, SourceText Text)> originals)
    {
        // Places in the catalogue have no file that the compiler could show.
        if (!originals.TryGetValue(place.File.Path, out var original)) return null;
        int start = CharactersBefore(place.File, place.Span.Start), end = CharactersBefore(place.File, place.Span.End);
        start = Math.Min(start, original.Text.Length);
        end = Math.Max(start, Math.Min(end, original.Text.Length));
        var lines = new LinePositionSpan(ToCompiler(place.Start), ToCompiler(place.End));
        return new PlaceInFile(original.FullPath, Microsoft.CodeAnalysis.Text.TextSpan.FromBounds(start, end), lines);
    }

    /// <summary>
    /// Lines as the library counts them. For LF, CR LF and CR they are those of <see cref="SourceText.Lines"/>, which also
    /// ends a line at U+0085, U+2028 and U+2029; RFC 8259 allows these within a string.
    /// </summary>
    private static Microsoft.CodeAnalysis.Text.LinePosition ToCompiler(SpecLint.Reading.LinePosition position) =>
        new(position.Line - 1, position.Column - 1);

    /// <summary>Characters (UTF-16 units) in front of a byte; a byte order mark is none.</summary>
    private static int CharactersBefore(SourceFile file, int offset)
    {
        var text = file.Utf8.Span.Slice(0, Math.Min(offset, file.Utf8.Length)).Slice(Math.Min(offset, file.ByteOrderMarkLength));
        int units = 0;
        foreach (byte b in text)
        {
            if ((b & 0xC0) != 0x80) units += b >= 0xF0 ? 2 : 1;
        }

        return units;
    }

    /// <summary>The bytes that a text was read from: the rules about encoding want to see them.</summary>
    private static byte[] BytesOf(SourceText text)
    {
        string characters = text.ToString();
        var encoding = text.Encoding;
        if (encoding is null || encoding.CodePage == Utf8.CodePage)
        {
            int mark = encoding?.GetPreamble().Length ?? 0;
            byte[] bytes = new byte[mark + Utf8.GetByteCount(characters)];
            if (mark > 0) encoding!.GetPreamble().CopyTo(bytes, 0);
            Utf8.GetBytes(characters, 0, characters.Length, bytes, mark);
            return bytes;
        }

        return [.. encoding.GetPreamble(), .. encoding.GetBytes(characters)];
    }
}
