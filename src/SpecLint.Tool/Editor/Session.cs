using System.Text.Json;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor;

/// <summary>What the features of the server share.</summary>
internal sealed class Session(Host host, MessageStream messages)
{
    private int requests;

    /// <summary>The world.</summary>
    public Host Host { get; } = host;

    /// <summary>The way to the editor.</summary>
    public MessageStream Messages { get; } = messages;

    /// <summary>The editor.</summary>
    public Client Client { get; set; } = Client.Plain;

    /// <summary>The open books.</summary>
    public Books Books { get; } = new(host);

    /// <summary>The pages of the rules.</summary>
    public RulePages Pages { get; } = new(host);

    /// <summary>Shows findings.</summary>
    public DiagnosticsPublisher Publisher => publisher ??= new DiagnosticsPublisher(Messages, Books, Pages);

    private DiagnosticsPublisher? publisher;

    /// <summary>The file of an address, as it stands in the editor; <see langword="null"/> where no book reads it.</summary>
    public (OpenBook Book, BookFile File)? Find(string address) =>
        Addresses.PathOf(address) is { } path && Books.BookAt(path) is { } book && book.FileAt(path) is { } file ? (book, file) : null;

    /// <summary>The file that a request is about, with the place of the cursor in it.</summary>
    public (OpenBook Book, BookFile File, int Offset)? At(JsonElement parameters)
    {
        var at = Lsp.PositionOf(parameters.GetProperty("position"));
        return Find(Lsp.AddressIn(parameters)) is (var book, var file) ? (book, file, file.Source.OffsetOf(at)) : null;
    }

    /// <summary>Checks a file if it waits, and tells of what was found.</summary>
    public void CheckNow(OpenBook book, BookFile file)
    {
        var changed = book.CheckNow(file.Source.Path);
        if (changed.Count > 0) Publisher.Publish(book, changed);
    }

    /// <summary>Address of a file of a book.</summary>
    public string AddressOf(OpenBook book, SourceFile file) => Books.Addresses.Of(book.FullPath(file.Path));

    /// <summary>Asks the editor for something; the answer is not waited for.</summary>
    public void Ask(string method, Action<Utf8JsonWriter>? parameters = null) => Messages.Write(json =>
    {
        json.WriteString("id", $"speclint-{++requests}");
        json.WriteString("method", method);
        parameters?.Invoke(json);
    });

    /// <summary>Writes a line into the editor's log.</summary>
    public void Log(string sentence) => Messages.Write(json =>
    {
        const int Warning = 2;
        json.WriteString("method", "window/logMessage");
        json.WriteStartObject("params");
        json.WriteNumber("type", Warning);
        json.WriteString("message", Reports.DisplayText.Escape(sentence));
        json.WriteEndObject();
    });
}
