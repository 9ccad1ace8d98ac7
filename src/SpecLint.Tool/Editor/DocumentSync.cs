using System.Text.Json;
using SpecLint.Binding;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor;

/// <summary>Keeps the books as the editor and the disk have them, and goes on checking what waits.</summary>
internal sealed class DocumentSync(Session session)
{
    private const string WatcherId = "speclint-files";

    private readonly HashSet<string> changed = new(StringComparer.Ordinal);
    private readonly HashSet<OpenBook> toRefresh = [];

    /// <summary>Takes a notification about documents, files or settings.</summary>
    /// <returns>Whether it was one.</returns>
    public bool Takes(string method, JsonElement parameters)
    {
        switch (method)
        {
            case "initialized":
                Begin();
                return true;
            case "textDocument/didOpen":
                var opened = parameters.GetProperty("textDocument");
                int version = opened.At("version") is { ValueKind: JsonValueKind.Number } given && given.TryGetInt32(out int number) ? number : 0;
                session.Books.Open(Lsp.TextOf(opened, "uri"), version, Lsp.TextOf(opened, "text"));
                Note(Lsp.TextOf(opened, "uri"));
                return true;
            case "textDocument/didChange":
                Change(parameters);
                return true;
            case "textDocument/didSave":
                Save();
                return true;
            case "textDocument/didClose":
                session.Books.Close(Lsp.AddressIn(parameters));
                return true;
            case "workspace/didChangeWatchedFiles":
                session.Books.FromDisk([.. parameters.GetProperty("changes")
                    .EnumerateArray()
                    .Select(c => Addresses.PathOf(Lsp.TextOf(c, "uri")))
                    .OfType<string>()
                    .Distinct(StringComparer.Ordinal)]);
                return true;
            case "workspace/didChangeConfiguration":
                session.Client.Take(parameters.At("settings", "speclint"));
                session.Pages.SetWeb(session.Client.RulePages);
                if (session.Client.RefreshesHints) session.Ask("workspace/inlayHint/refresh");
                return true;
            case "workspace/didChangeWorkspaceFolders":
                ChangeFolders(parameters.At("event"));
                return true;
            default:
                return false;
        }
    }

    /// <summary>Checks some of what waits: what was typed in first, then what depends on it, and where it is quiet the book as a whole.</summary>
    /// <param name="most">How many files at most.</param>
    /// <param name="isQuiet">Whether nobody has typed for a moment.</param>
    /// <returns>Whether something was done.</returns>
    public bool GoOn(int most, bool isQuiet)
    {
        foreach (string path in changed.ToList())
        {
            changed.Remove(path);
            if (session.Books.BookAt(path) is not { } book || book.Relative(path) is not { } relative) continue;
            Publish(book, book.CheckNow(relative));
            return true;
        }

        foreach (var book in session.Books.All)
        {
            if (book.IsOfAnotherDay) session.Books.Reread(book);
            if (!book.Live.FilesWait && (!isQuiet || book.Live.IsSettled)) continue;
            Publish(book, book.CheckSome(most));
            return true;
        }

        if (!isQuiet || toRefresh.Count == 0) return false;
        toRefresh.Clear();
        if (session.Client.RefreshesDiagnostics) session.Ask("workspace/diagnostic/refresh");
        return true;
    }

    private void Begin()
    {
        if (session.Client.RegistersWatchers) session.Ask("client/registerCapability", WriteWatchers);
        if (!session.Client.WholeBook) return;
        foreach (string folder in session.Client.Folders) session.Books.OpenFolder(folder);
    }

    /// <summary>Folders came or went. A book that is in none of the folders any more, and has no open document, is let go of.</summary>
    private void ChangeFolders(JsonElement change)
    {
        var (came, went) = session.Client.TakeFolders(change);
        foreach (string folder in came.Where(_ => session.Client.WholeBook)) session.Books.OpenFolder(folder);
        foreach (var book in went.SelectMany(session.Books.Below).Distinct().ToList())
        {
            if (session.Client.Folders.Any(f => Books.IsWithin(book.Root, f)) || !session.Books.LetGo(book)) continue;
            toRefresh.Remove(book);
            session.Publisher.Clear(book);
        }
    }

    private void Change(JsonElement parameters)
    {
        string address = Lsp.AddressIn(parameters);
        if (Addresses.PathOf(address) is not { } path || session.Books.DocumentAt(path) is not { } document) return;
        int? version = parameters.At("textDocument", "version") is { ValueKind: JsonValueKind.Number } given
            && given.TryGetInt32(out int number)
            ? number
            : null;
        document.Apply(version, parameters.GetProperty("contentChanges"));
        session.Books.Put(document);
        Note(address);
    }

    /// <summary>An editor that watches no files for us writes some itself, and other programs may have written others meanwhile.</summary>
    private void Save()
    {
        if (session.Client.RegistersWatchers) return;
        foreach (var book in session.Books.All.ToList()) session.Books.Reread(book);
    }

    private void Note(string address)
    {
        if (Addresses.PathOf(address) is { } path) changed.Add(path);
    }

    private void Publish(OpenBook book, IReadOnlyCollection<string> paths)
    {
        if (paths.Count > 0 && session.Publisher.Publish(book, paths) > 0 && session.Client.PullsDiagnostics) toRefresh.Add(book);
    }

    private static void WriteWatchers(Utf8JsonWriter json)
    {
        json.WriteStartObject("params");
        json.WriteStartArray("registrations");
        json.WriteStartObject();
        json.WriteString("id", WatcherId);
        json.WriteString("method", "workspace/didChangeWatchedFiles");
        json.WriteStartObject("registerOptions");
        json.WriteStartArray("watchers");
        foreach (string pattern in BookFiles.DefaultPatterns.Prepend("**/" + BookFiles.BarFile))
        {
            json.WriteStartObject();
            json.WriteString("globPattern", pattern);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
