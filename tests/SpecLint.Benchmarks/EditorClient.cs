using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SpecLint.Benchmarks;

/// <summary>A client of the editor server in a process of its own: what an editor sends, and when which answer is read.</summary>
internal sealed class EditorClient : IDisposable
{
    private readonly Process process;
    private readonly string folder;
    private int requests;

    public EditorClient(ProcessStartInfo start, string folder, string options)
    {
        this.folder = folder;
        start.RedirectStandardInput = true;
        start.RedirectStandardOutput = true;
        process = Process.Start(start)!;
        Ask(
            "initialize",
            $"{{\"capabilities\":{{}},\"initializationOptions\":{options},\"workspaceFolders\":[{{\"uri\":{Quote(new Uri(folder).AbsoluteUri)},\"name\":\"b\"}}]}}");
        Tell("initialized", "{}");
    }

    /// <summary>Messages and bytes that came since the last <see cref="Forget"/>.</summary>
    public (int Messages, long Bytes) Received { get; private set; }

    /// <summary>Memory of the server, bytes.</summary>
    public long Memory
    {
        get
        {
            process.Refresh();
            return process.WorkingSet64;
        }
    }

    public void Forget() => Received = default;

    public string Address(string file) => new Uri(Path.Combine(folder, file)).AbsoluteUri;

    public void Open(string file, string text) =>
        Tell("textDocument/didOpen", $"{{\"textDocument\":{{\"uri\":{Quote(Address(file))},\"languageId\":\"json\",\"version\":1,\"text\":{Quote(text)}}}}}");

    /// <summary>Types one change, and waits for the diagnostics of that version.</summary>
    /// <returns>Milliseconds from the message written to the message read.</returns>
    public double Type(string file, int version, int line, int from, int to, string text)
    {
        string message = $"{{\"textDocument\":{{\"uri\":{Quote(Address(file))},\"version\":{version}}},\"contentChanges\":[{{\"range\":{{\"start\":{{\"line\":{line},\"character\":{from}}},\"end\":{{\"line\":{line},\"character\":{to}}}}},\"text\":{Quote(text)}}}]}}";
        long start = Stopwatch.GetTimestamp();
        Tell("textDocument/didChange", message);
        while (true)
        {
            using var read = Read();
            if (!IsDiagnosticsOf(read.RootElement, file, version)) continue;
            return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }
    }

    /// <summary>Waits until everything is checked.</summary>
    public void Settle() => Ask("workspace/diagnostic", "{\"previousResultIds\":[]}");

    public void Dispose()
    {
        Ask("shutdown", "{}");
        Tell("exit", "{}");
        process.WaitForExit();
        process.Dispose();
    }

    private static string Quote(string text) => JsonValue.Create(text).ToJsonString();

    private static bool IsDiagnosticsOf(JsonElement message, string file, int version) =>
        message.TryGetProperty("method", out var method) && method.ValueEquals("textDocument/publishDiagnostics")
        && message.GetProperty("params") is var parameters && parameters.TryGetProperty("version", out var its) && its.GetInt32() == version
        && parameters.GetProperty("uri").GetString()!.EndsWith(file, StringComparison.Ordinal);

    private void Ask(string method, string parameters)
    {
        int id = ++requests;
        Send($"{{\"jsonrpc\":\"2.0\",\"id\":{id},\"method\":\"{method}\",\"params\":{parameters}}}");
        while (true)
        {
            using var read = Read();
            if (!read.RootElement.TryGetProperty("method", out _)
                && read.RootElement.TryGetProperty("id", out var answered)
                && answered.ValueKind == JsonValueKind.Number
                && answered.GetInt32() == id)
                return;
        }
    }

    private void Tell(string method, string parameters) => Send($"{{\"jsonrpc\":\"2.0\",\"method\":\"{method}\",\"params\":{parameters}}}");

    private void Send(string message)
    {
        byte[] body = Encoding.UTF8.GetBytes(message);
        var to = process.StandardInput.BaseStream;
        to.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {body.Length}\r\n\r\n")));
        to.Write(body);
        to.Flush();
    }

    private JsonDocument Read()
    {
        var from = process.StandardOutput.BaseStream;
        var header = new StringBuilder();
        while (!header.ToString().EndsWith("\r\n\r\n", StringComparison.Ordinal))
        {
            int next = from.ReadByte();
            if (next < 0) throw new InvalidOperationException("The server has ended.");
            header.Append((char)next);
        }

        byte[] body = new byte[int.Parse(header.ToString().Split(':')[1], CultureInfo.InvariantCulture)];
        from.ReadExactly(body);
        var message = JsonDocument.Parse(body);

        // What is asked for on the side, to know when all is checked, is not counted.
        if (message.RootElement.TryGetProperty("method", out _)) Received = (Received.Messages + 1, Received.Bytes + body.Length);
        return message;
    }
}
