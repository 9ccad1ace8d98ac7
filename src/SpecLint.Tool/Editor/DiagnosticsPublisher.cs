using System.Buffers;
using System.Security.Cryptography;
using System.Text.Json;
using SpecLint.Findings;
using SpecLint.Reports;
using SpecLint.Tool.Editor.Protocol;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Editor;

/// <summary>Shows the findings of a file as diagnostics, and tells the editor of those that changed and of no others.</summary>
internal sealed class DiagnosticsPublisher(MessageStream messages, Books books, RulePages pages)
{
    private const int SeverityError = 1, SeverityWarning = 2, SeverityInformation = 3;
    private static readonly string Empty = Mark("[]"u8);

    private readonly Dictionary<string, string> sent = new(StringComparer.Ordinal);

    /// <summary>Whether the editor asks for diagnostics itself.</summary>
    public bool IsAsked { get; set; }

    /// <summary>Tells of the files of a book whose diagnostics are other ones than those it was told of.</summary>
    /// <returns>How many there are.</returns>
    public int Publish(OpenBook book, IEnumerable<string> paths)
    {
        int changed = 0;
        foreach (string path in paths.Order(StringComparer.Ordinal))
        {
            string full = book.FullPath(path);
            byte[] diagnostics = Of(book, path);
            string mark = Mark(diagnostics);
            if ((sent.TryGetValue(full, out string? before) ? before : Empty) == mark
                && (before is not null || books.DocumentAt(full) is null)) continue;
            sent[full] = mark;
            changed++;
            if (!IsAsked) Send(full, diagnostics);
        }

        return changed;
    }

    private void Send(string full, byte[] diagnostics) => messages.Write(json =>
    {
        json.WriteString("method", "textDocument/publishDiagnostics");
        json.WriteStartObject("params");
        json.WriteString("uri", books.Addresses.Of(full));
        if (books.DocumentAt(full) is { } document) json.WriteNumber("version", document.Version);
        json.WritePropertyName("diagnostics");
        json.WriteRawValue(diagnostics, skipInputValidation: true);
        json.WriteEndObject();
    });

    /// <summary>Takes back what the editor was told of a book.</summary>
    public void Clear(OpenBook book)
    {
        foreach (string full in sent.Keys.Where(p => book.Relative(p) is not null).Order(StringComparer.Ordinal).ToList())
        {
            bool hadSome = sent[full] != Empty;
            sent.Remove(full);
            if (hadSome && !IsAsked) Send(full, "[]"u8.ToArray());
        }
    }

    /// <summary>Names what the diagnostics of a file are, so that the same need not be sent again.</summary>
    public static string Mark(ReadOnlySpan<byte> diagnostics)
    {
        Span<byte> hash = stackalloc byte[32];
        SHA256.HashData(diagnostics, hash);
        return Convert.ToHexString(hash[..12]);
    }

    /// <summary>The diagnostics of a file, as a list.</summary>
    public byte[] Of(OpenBook book, string path)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { SkipValidation = true }))
        {
            json.WriteStartArray();
            foreach (var finding in book.Live.FindingsIn(path)) Write(json, book, finding);
            json.WriteEndArray();
        }

        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Writes a finding as a diagnostic.</summary>
    public void Write(Utf8JsonWriter json, OpenBook book, Finding finding)
    {
        json.WriteStartObject();
        json.Range("range", finding.Place);
        json.WriteNumber("severity", finding.Level switch
        {
            Level.Error => SeverityError,
            Level.Warning => SeverityWarning,
            _ => SeverityInformation,
        });
        json.WriteString("code", finding.Rule.Id);
        if (pages.Of(finding.Rule.Id) is { } page)
        {
            json.WriteStartObject("codeDescription");
            json.WriteString("href", page);
            json.WriteEndObject();
        }

        json.WriteString("source", "speclint");
        string[] sentences = [finding.Message, finding.Advice, finding.Caution ?? ""];
        json.WriteString("message", string.Join('\n', sentences.Where(s => s.Length > 0).Select(DisplayText.Escape)));
        json.WriteStartArray("relatedInformation");
        foreach (var related in finding.Related) WriteRelated(json, book, related.Place, related.Message);
        foreach (var folded in finding.Folded) WriteRelated(json, book, folded.Place, $"{folded.Rule.Id}, which follows from it: {folded.Message}");
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private void WriteRelated(Utf8JsonWriter json, OpenBook book, Reading.Place place, string message)
    {
        json.WriteStartObject();
        json.WritePropertyName("location");
        json.Location(books.Addresses.Of(book.FullPath(place.File.Path)), place);
        json.WriteString("message", DisplayText.Escape(message));
        json.WriteEndObject();
    }
}
