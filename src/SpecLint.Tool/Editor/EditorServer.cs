using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Unicode;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool.Editor;

/// <summary>
/// Findings while typing, for any editor that speaks the Language Server Protocol (Microsoft, version 3.17): diagnostics of the
/// whole book, corrections as code actions, the profile of an item on hovering over it. Documents come whole; nothing is written.
/// </summary>
internal sealed class EditorServer
{
    private const int ParseError = -32700, InvalidRequest = -32600, MethodNotFound = -32601, InvalidParameters = -32602, InternalError = -32603, NotInitialized = -32002;

    /// <summary>Messages that are read ahead; the editor waits with more.</summary>
    private const int MostWaiting = 256;
    private const int SeverityError = 1, SeverityWarning = 2, SeverityInformation = 3;

    private readonly Host host;
    private readonly MessageStream messages;
    private readonly Dictionary<string, string> unsaved = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> addresses = new(StringComparer.Ordinal);
    private readonly Dictionary<string, OpenBook> books = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<string>> published = new(StringComparer.Ordinal);
    private readonly HashSet<string> stale = new(StringComparer.Ordinal);
    private bool isInitialized;
    private bool isShutDown;

    public EditorServer(Host host, Stream input, Stream output)
    {
        this.host = host;
        messages = new MessageStream(input, output);
    }

    /// <summary>Answers until the editor leaves.</summary>
    /// <returns>0 where it said so beforehand, else 2.</returns>
    public int Run()
    {
        // A thread of its own reads ahead, so that a book is checked once for a burst of key strokes.
        using var waiting = new BlockingCollection<byte[]>(MostWaiting);
        string? broken = null;
        var reader = new Thread(() =>
        {
            try
            {
                while (messages.Read() is { } message) waiting.Add(message);
                waiting.CompleteAdding();
            }
            catch (ObjectDisposedException)
            {
                // The editor has said that it leaves, and goes on sending.
            }
            catch (Exception e) when (e is IOException or InvalidDataException)
            {
                broken = e.Message;
                Finish(waiting);
            }
        })
        { IsBackground = true };
        reader.Start();
        foreach (byte[] message in waiting.GetConsumingEnumerable())
        {
            if (!Answer(message)) return isShutDown ? ExitStatus.Clean : ExitStatus.Usage;
            if (waiting.Count == 0) CheckStale();
        }

        if (broken is not null) Shell.Say(host, $"what the editor sends cannot be read: {broken}.");
        return isShutDown ? ExitStatus.Clean : ExitStatus.Usage;
    }

    private static void Finish(BlockingCollection<byte[]> waiting)
    {
        try
        {
            waiting.CompleteAdding();
        }
        catch (ObjectDisposedException)
        {
            // The server has left before.
        }
    }

    /// <summary>Handles one message. Whatever it holds, the work in the editor goes on.</summary>
    /// <returns>Whether to go on.</returns>
    private bool Answer(byte[] message)
    {
        if (!Utf8.IsValid(message))
        {
            Fail(default, ParseError, "The message is not UTF-8.");
            return true;
        }

        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(message);
        }
        catch (JsonException)
        {
            Fail(default, ParseError, "The message is not JSON.");
            return true;
        }

        using (document)
        {
            var id = default(JsonElement);
            try
            {
                var call = Call.Of(document.RootElement);
                id = call.Id;
                return call.Method is null || Serve(call.Method, id, call.Parameters);
            }
#pragma warning disable CA1031 // One message that goes wrong must not end the work in the editor.
            catch (Exception fault)
#pragma warning restore CA1031
            {
                if (fault is InvalidDataException) Fail(default, InvalidRequest, fault.Message);
                else if (id.ValueKind == JsonValueKind.Undefined) Log(SentenceOf(fault));
                else Fail(id, fault is InvalidOperationException or KeyNotFoundException or FormatException or ArgumentException ? InvalidParameters : InternalError, SentenceOf(fault));
            }

            return true;
        }
    }

    /// <summary>Serves a request or notification where it is its turn (Life Cycle of the protocol).</summary>
    private bool Serve(string method, JsonElement id, JsonElement parameters)
    {
        if (method == "exit") return false;
        bool isRequest = id.ValueKind != JsonValueKind.Undefined;
        if (isShutDown)
        {
            if (isRequest) Fail(id, InvalidRequest, "The server is shut down; only `exit` is left.");
        }
        else if (!isInitialized && method != "initialize")
        {
            if (isRequest) Fail(id, NotInitialized, "The first request is `initialize`.");
        }
        else if (isInitialized && method == "initialize")
        {
            if (isRequest) Fail(id, InvalidRequest, "The server is initialized already.");
        }
        else
        {
            Handle(method, id, parameters);
        }

        return true;
    }

    private void Handle(string method, JsonElement id, JsonElement parameters)
    {
        switch (method)
        {
            case "initialize":
                isInitialized = true;
                Reply(id, WriteCapabilities);
                break;
            case "shutdown":
                isShutDown = true;
                Reply(id, static json => json.WriteNull("result"));
                break;
            case "textDocument/didOpen":
                var opened = parameters.GetProperty("textDocument");
                Take(TextOf(opened, "uri"), TextOf(opened, "text"));
                break;
            case "textDocument/didChange":
                var changes = parameters.GetProperty("contentChanges");
                if (changes.GetArrayLength() > 0) Take(AddressIn(parameters), TextOf(changes[changes.GetArrayLength() - 1], "text"));
                break;
            case "textDocument/didSave":
                Touch(PathOf(AddressIn(parameters)));
                break;
            case "textDocument/didClose":
                if (PathOf(AddressIn(parameters)) is { } closed && unsaved.Remove(closed)) Touch(closed);
                break;
            case "workspace/didChangeWatchedFiles":
                stale.UnionWith(books.Keys);
                break;
            case "textDocument/hover":
                CheckStale();
                Reply(id, json => WriteHover(json, AddressIn(parameters), PositionOf(parameters.GetProperty("position"))));
                break;
            case "textDocument/codeAction":
                CheckStale();
                var range = parameters.GetProperty("range");
                Reply(id, json => WriteActions(json, AddressIn(parameters), PositionOf(range.GetProperty("start")), PositionOf(range.GetProperty("end"))));
                break;
            default:
                // Notifications that are not known are passed over, as the protocol asks.
                if (id.ValueKind != JsonValueKind.Undefined) Fail(id, MethodNotFound, $"{method} is not known here.");
                break;
        }
    }

    private static void WriteCapabilities(Utf8JsonWriter json)
    {
        json.WriteStartObject("result");
        json.WriteStartObject("capabilities");
        json.WriteString("positionEncoding", "utf-16");
        json.WriteStartObject("textDocumentSync");
        json.WriteBoolean("openClose", true);
        json.WriteNumber("change", 1);
        json.WriteBoolean("save", true);
        json.WriteEndObject();
        json.WriteBoolean("hoverProvider", true);
        json.WriteStartObject("codeActionProvider");
        json.WriteStartArray("codeActionKinds");
        json.WriteStringValue("quickfix");
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteStartObject("serverInfo");
        json.WriteString("name", "speclint");
        json.WriteString("version", Shell.Version);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private void Take(string address, string text)
    {
        if (PathOf(address) is not { } path) return;
        addresses[path] = address;
        unsaved[path] = text;
        Touch(path);
    }

    /// <summary>Marks the book of a file as not checked since it changed.</summary>
    private void Touch(string? path)
    {
        if (path is null || FileKinds.Of(Path.GetFileName(path)) is null) return;
        string? folder = Path.GetDirectoryName(path);
        while (folder is not null && !Directory.Exists(folder)) folder = Path.GetDirectoryName(folder);
        if (folder is not null) stale.Add(BookFolder.RootAbove(folder) ?? folder);
    }

    private static string SentenceOf(Exception fault) =>
        fault is UsageException or InvalidOperationException or KeyNotFoundException ? fault.Message : $"{fault.GetType().Name}, {fault.Message}";

    private void CheckStale()
    {
        foreach (string root in stale.ToList())
        {
            stale.Remove(root);
            try
            {
                var book = OpenBook.Check(host, root, unsaved, AddressOf);
                books[root] = book;
                Publish(book);
            }
#pragma warning disable CA1031 // A book that cannot be checked must not end the work on the others.
            catch (Exception fault)
#pragma warning restore CA1031
            {
                Log(SentenceOf(fault));
            }
        }
    }

    private void Publish(OpenBook book)
    {
        var byFile = book.Result.Findings.GroupBy(f => book.AddressOf(f.Place.File), StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        var before = published.TryGetValue(book.Root, out var known) ? known : [];
        published[book.Root] = [.. byFile.Keys];

        // A file whose last finding has gone is told so.
        foreach (string address in before.Union(byFile.Keys).Order(StringComparer.Ordinal))
        {
            messages.Write(json =>
            {
                json.WriteString("method", "textDocument/publishDiagnostics");
                json.WriteStartObject("params");
                json.WriteString("uri", address);
                json.WriteStartArray("diagnostics");
                foreach (var finding in byFile.TryGetValue(address, out var found) ? found : []) WriteDiagnostic(json, book, finding);
                json.WriteEndArray();
                json.WriteEndObject();
            });
        }
    }

    private static void WriteDiagnostic(Utf8JsonWriter json, OpenBook book, Finding finding)
    {
        json.WriteStartObject();
        WriteRange(json, "range", finding.Place);
        json.WriteNumber("severity", finding.Level switch { Level.Error => SeverityError, Level.Warning => SeverityWarning, _ => SeverityInformation });
        json.WriteString("code", finding.Rule.Id);
        json.WriteString("source", "speclint");
        string[] sentences = [finding.Message, finding.Advice, finding.Caution ?? ""];
        json.WriteString("message", string.Join('\n', sentences.Where(s => s.Length > 0).Select(DisplayText.Escape)));
        json.WriteStartArray("relatedInformation");
        foreach (var related in finding.Related) WriteRelated(json, book, related.Place, related.Message);
        foreach (var folded in finding.Folded) WriteRelated(json, book, folded.Place, $"{folded.Rule.Id}, which follows from it: {folded.Message}");
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteRelated(Utf8JsonWriter json, OpenBook book, Place place, string message)
    {
        json.WriteStartObject();
        json.WriteStartObject("location");
        json.WriteString("uri", book.AddressOf(place.File));
        WriteRange(json, "range", place);
        json.WriteEndObject();
        json.WriteString("message", DisplayText.Escape(message));
        json.WriteEndObject();
    }

    private void WriteHover(Utf8JsonWriter json, string address, LinePosition at)
    {
        var known = Find(address) is (var book, var file) ? book.Explain(file, at) : null;
        if (known is not { } explained)
        {
            json.WriteNull("result");
            return;
        }

        json.WriteStartObject("result");
        json.WriteStartObject("contents");
        json.WriteString("kind", "plaintext");
        json.WriteString("value", explained.Text);
        json.WriteEndObject();
        WriteRange(json, "range", explained.Place);
        json.WriteEndObject();
    }

    private void WriteActions(Utf8JsonWriter json, string address, LinePosition from, LinePosition to)
    {
        json.WriteStartArray("result");
        if (Find(address) is (var book, var file))
        {
            foreach (var finding in book.Result.Findings.Flat())
            {
                if (finding.Place.File.Path != file.Source.Path || !OpenBook.Meets(finding.Place, from, to)) continue;
                foreach (var correction in finding.Corrections) WriteAction(json, book, finding, correction);
            }
        }

        json.WriteEndArray();
    }

    private static void WriteAction(Utf8JsonWriter json, OpenBook book, Finding finding, Correction correction)
    {
        bool assured = correction.Grade == CorrectionGrade.Assured;
        json.WriteStartObject();
        json.WriteString("title", DisplayText.Escape(assured ? correction.Description : $"Proposed: {correction.Description}"));
        json.WriteString("kind", "quickfix");
        if (assured) json.WriteBoolean("isPreferred", true);
        json.WriteStartArray("diagnostics");
        WriteDiagnostic(json, book, finding);
        json.WriteEndArray();
        json.WriteStartObject("edit");
        json.WriteStartObject("changes");
        foreach (var inFile in correction.Edits.GroupBy(e => book.AddressOf(e.Place.File), StringComparer.Ordinal))
        {
            json.WriteStartArray(inFile.Key);
            foreach (var edit in inFile)
            {
                json.WriteStartObject();
                WriteRange(json, "range", edit.Place);
                json.WriteString("newText", edit.NewText);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteRange(Utf8JsonWriter json, string name, Place place)
    {
        json.WriteStartObject(name);
        WritePosition(json, "start", place.Start);
        WritePosition(json, "end", place.End);
        json.WriteEndObject();
    }

    // The protocol counts from 0.
    private static void WritePosition(Utf8JsonWriter json, string name, LinePosition at)
    {
        json.WriteStartObject(name);
        json.WriteNumber("line", at.Line - 1);
        json.WriteNumber("character", at.Column - 1);
        json.WriteEndObject();
    }

    private static LinePosition PositionOf(JsonElement at) => new(at.GetProperty("line").GetInt32() + 1, at.GetProperty("character").GetInt32() + 1);

    private static string AddressIn(JsonElement parameters) => TextOf(parameters.GetProperty("textDocument"), "uri");

    private static string TextOf(JsonElement holder, string name) =>
        holder.GetProperty(name).GetString() ?? throw new InvalidOperationException($"`{name}` is null.");

    /// <summary>The full path of an address; <see langword="null"/> where it is no file.</summary>
    private static string? PathOf(string address) =>
        Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.IsFile ? Path.GetFullPath(uri.LocalPath) : null;

    private string AddressOf(string path) => addresses.TryGetValue(path, out string? address) ? address : new Uri(path).AbsoluteUri;

    private (OpenBook Book, Book.BookFile File)? Find(string address)
    {
        if (PathOf(address) is not { } path) return null;
        foreach (var book in books.Values)
        {
            if (book.FileAt(path) is { } file) return (book, file);
        }

        return null;
    }

    private void Reply(JsonElement id, Action<Utf8JsonWriter> result)
    {
        if (id.ValueKind == JsonValueKind.Undefined) return;
        messages.Write(json =>
        {
            json.WritePropertyName("id");
            id.WriteTo(json);
            result(json);
        });
    }

    private void Fail(JsonElement id, int code, string sentence) => messages.Write(json =>
    {
        json.WritePropertyName("id");
        if (id.ValueKind == JsonValueKind.Undefined) json.WriteNullValue();
        else id.WriteTo(json);
        json.WriteStartObject("error");
        json.WriteNumber("code", code);
        json.WriteString("message", DisplayText.Escape(sentence));
        json.WriteEndObject();
    });

    private void Log(string sentence) => messages.Write(json =>
    {
        json.WriteString("method", "window/logMessage");
        json.WriteStartObject("params");
        json.WriteNumber("type", SeverityWarning);
        json.WriteString("message", DisplayText.Escape(sentence));
        json.WriteEndObject();
    });
}
