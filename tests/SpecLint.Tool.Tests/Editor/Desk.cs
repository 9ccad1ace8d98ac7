using System.Globalization;
using System.IO.Pipes;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using SpecLint.Reading;
using SpecLint.Tool.Editor;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>A person at an editor: opens documents, types, asks, and sees what the server sends.</summary>
internal sealed class Desk : IDisposable
{
    /// <summary>An editor that can do what the server makes use of, and is sent diagnostics.</summary>
    public const string Able = """
        "textDocument": { "completion": { "completionItem": { "snippetSupport": true } } },
        "workspace": { "workspaceEdit": { "documentChanges": true, "resourceOperations": ["create", "rename"] } }
        """;

    private readonly AnonymousPipeServerStream toServer = new(PipeDirection.Out);
    private readonly AnonymousPipeServerStream fromServer = new(PipeDirection.In);
    private readonly Thread server;
    private readonly List<JsonElement> received = [];
    private readonly Dictionary<string, JsonElement> diagnostics = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> versions = new(StringComparer.Ordinal);
    private int requests;

    public Desk(string folder, string capabilities = Able, string options = "{}", Func<CalendarDate>? today = null)
    {
        Folder = folder;
        Stream input = new AnonymousPipeClientStream(PipeDirection.In, toServer.ClientSafePipeHandle), output = new AnonymousPipeClientStream(
            PipeDirection.Out, fromServer.ClientSafePipeHandle);
        var host = new Host
        {
            Input = input,
            Output = output,
            Error = new StringWriter { NewLine = "\n" },
            CurrentDirectory = folder,
            Today = today ?? (static () => CalendarDate.Parse(ToolRun.Day)!.Value),
        };
        server = new Thread(() =>
        {
            Status = new EditorServer(host, input, output).Run();
            output.Dispose();
        })
        { IsBackground = true };
        server.Start();
        Capabilities = Ask(
            "initialize",
            $"{{\"capabilities\":{{{capabilities}}},\"initializationOptions\":{options},\"workspaceFolders\":[{{\"uri\":{Quote(new Uri(folder).AbsoluteUri)},\"name\":\"book\"}}]}}").GetProperty("capabilities");
        Tell("initialized", "{}");
    }

    public string Folder { get; }

    public JsonElement Capabilities { get; }

    public int Status { get; private set; } = -1;

    /// <summary>All that came but answers.</summary>
    public IReadOnlyList<JsonElement> Received => received;

    public string Address(string file) => new Uri(Path.Combine(Folder, file)).AbsoluteUri;

    public void Open(string file, string text)
    {
        versions[file] = 1;
        Tell("textDocument/didOpen", $"{{\"textDocument\":{{\"uri\":{Quote(Address(file))},\"languageId\":\"json\",\"version\":1,\"text\":{Quote(text)}}}}}");
    }

    /// <summary>Types in the place of what stands in the document, which is looked for in its text as it is.</summary>
    public string Type(string file, string text, string old, string now)
    {
        int at = text.IndexOf(old, StringComparison.Ordinal);
        Assert.True(at >= 0, old);
        versions[file]++;
        Tell(
            "textDocument/didChange",
            $"{{\"textDocument\":{{\"uri\":{Quote(Address(file))},\"version\":{versions[file]}}},\"contentChanges\":[{{\"range\":{{\"start\":{Position(text, at)},\"end\":{Position(text, at + old.Length)}}},\"text\":{Quote(now)}}}]}}");
        return text[..at] + now + text[(at + old.Length)..];
    }

    public void Tell(string method, string parameters) => Send($"{{\"jsonrpc\":\"2.0\",\"method\":\"{method}\",\"params\":{parameters}}}");

    /// <summary>Asks, and waits for the answer.</summary>
    public JsonElement Ask(string method, string parameters)
    {
        var answer = Answer(method, parameters);
        return answer.TryGetProperty("error", out var error)
            ? throw new InvalidOperationException(error.GetProperty("message").GetString())
            : answer.GetProperty("result");
    }

    public JsonElement Answer(string method, string parameters)
    {
        int id = ++requests;
        Send($"{{\"jsonrpc\":\"2.0\",\"id\":{id},\"method\":\"{method}\",\"params\":{parameters}}}");
        return WaitFor(id);
    }

    /// <summary>Asks about a place: that of a text in the document, some characters into it.</summary>
    public JsonElement AskAt(string method, string file, string text, string where, int into = 1, string more = "") =>
        Ask(method, ParametersAt(file, text, where, into, more));

    public string ParametersAt(string file, string text, string where, int into = 1, string more = "")
    {
        int at = text.IndexOf(where, StringComparison.Ordinal);
        Assert.True(at >= 0, where);
        string position = Position(text, at + into);
        return $"{{\"textDocument\":{{\"uri\":{Quote(Address(file))}}},\"position\":{position},\"range\":{{\"start\":{position},\"end\":{position}}}{(more.Length > 0 ? "," + more : "")}}}";
    }

    public JsonElement AskOf(string method, string file, string more = "") =>
        Ask(method, $"{{\"textDocument\":{{\"uri\":{Quote(Address(file))}}}{(more.Length > 0 ? "," + more : "")}}}");

    /// <summary>Waits until everything is checked.</summary>
    public void Settle() => Ask("workspace/diagnostic", "{\"previousResultIds\":[]}");

    /// <summary>The rules of the diagnostics that the editor shows for a file.</summary>
    public IReadOnlyList<string> Shown(string file) =>
        diagnostics.TryGetValue(Address(file), out var shown)
            ? [.. shown.GetProperty("diagnostics").EnumerateArray().Select(d => d.GetProperty("code").GetString()!)]
            : [];

    /// <summary>Files whose diagnostics were sent since the last call.</summary>
    public IReadOnlyList<string> Told()
    {
        var told = received.Where(m => m.TryGetProperty("method", out var method) && method.ValueEquals("textDocument/publishDiagnostics"))
            .Select(m => Path.GetRelativePath(Folder, new Uri(m.GetProperty("params").GetProperty("uri").GetString()!).LocalPath)).ToList();
        received.Clear();
        return told;
    }

    /// <summary>A document with the edits of an answer made in it.</summary>
    public static string Applied(string text, JsonElement edits)
    {
        var source = new SourceFile("x", Encoding.UTF8.GetBytes(text));
        var spans = edits.EnumerateArray()
            .Select(e => (From: Offset(
                source, e.GetProperty("range").GetProperty("start")), To: Offset(source, e.GetProperty("range").GetProperty("end")), New: e.GetProperty("newText").GetString()!))
            .OrderByDescending(e => e.From);
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        foreach (var (from, to, made) in spans) bytes = [.. bytes[..from], .. Encoding.UTF8.GetBytes(made), .. bytes[to..]];
        return Encoding.UTF8.GetString(bytes);
    }

    public static string Quote(string text) => JsonValue.Create(text).ToJsonString();

    public void Dispose()
    {
        if (server.IsAlive)
        {
            Answer("shutdown", "{}");
            Tell("exit", "{}");
            server.Join();
        }

        toServer.Dispose();
        fromServer.Dispose();
    }

    private static int Offset(SourceFile source, JsonElement at) =>
        source.OffsetOf(new LinePosition(at.GetProperty("line").GetInt32() + 1, at.GetProperty("character").GetInt32() + 1));

    private static string Position(string text, int at)
    {
        int line = text.AsSpan(0, at).Count('\n'), start = at == 0 ? 0 : text.LastIndexOf('\n', at - 1) + 1;
        return string.Create(CultureInfo.InvariantCulture, $"{{\"line\":{line},\"character\":{at - start}}}");
    }

    private void Send(string message)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(message);
        toServer.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {bytes.Length}\r\n\r\n")));
        toServer.Write(bytes);
    }

    private JsonElement WaitFor(int id)
    {
        while (true)
        {
            var message = Read();
            if (!message.TryGetProperty("method", out var method)
                && message.GetProperty("id") is { ValueKind: JsonValueKind.Number } answered
                && answered.GetInt32() == id)
                return message;
            received.Add(message);
            if (method.ValueKind == JsonValueKind.String && method.ValueEquals("textDocument/publishDiagnostics"))
                diagnostics[message.GetProperty("params").GetProperty("uri").GetString()!] = message.GetProperty("params");
        }
    }

    private JsonElement Read()
    {
        var header = new StringBuilder();
        while (!header.ToString().EndsWith("\r\n\r\n", StringComparison.Ordinal))
        {
            int next = fromServer.ReadByte();
            Assert.True(next >= 0, "the server has ended");
            header.Append((char)next);
        }

        byte[] body = new byte[int.Parse(header.ToString().Split(':')[1], CultureInfo.InvariantCulture)];
        fromServer.ReadExactly(body);
        return JsonDocument.Parse(body).RootElement;
    }
}
