using System.Collections.Concurrent;
using System.Text.Json;
using SpecLint.Reports;
using SpecLint.Tool.Editor.Features;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor;

/// <summary>
/// Serves any editor that speaks the Language Server Protocol (Microsoft, version 3.17): what the findings are while typing, and
/// the features of <see cref="Features"/>. It writes nothing into the book.
/// </summary>
internal sealed class EditorServer
{
    /// <summary>Messages that are read ahead; the editor waits with more.</summary>
    private const int MostWaiting = 256;

    /// <summary>Files that are checked before the next message is looked for: a few milliseconds.</summary>
    private const int FilesAtOnce = 32;

    /// <summary>
    /// Milliseconds without a message after which the rules about the whole book run: between two keys somebody who types fast leaves
    /// as long, and one of those rules takes longer than a key may wait.
    /// </summary>
    private const int Quiet = 120;

    private readonly Host host;
    private readonly MessageStream messages;
    private readonly Session session;
    private readonly DocumentSync documents;
    private readonly List<Feature> features;
    private readonly Dictionary<string, Feature> byMethod = new(StringComparer.Ordinal);
    private readonly Queue<Incoming> pending = new();
    private readonly HashSet<string> cancelled = new(StringComparer.Ordinal);
    private bool isInitialized;
    private bool isShutDown;

    public EditorServer(Host host, Stream input, Stream output)
    {
        this.host = host;
        messages = new MessageStream(input, output);
        session = new Session(host, messages);
        documents = new DocumentSync(session);
        features =
        [
            new DiagnosticsFeature(session),
            new HoverFeature(session),
            new ActionFeature(session),
            new CompletionFeature(session),
            new ReferenceFeature(session),
            new RenameFeature(session),
            new SymbolFeature(session),
            new FoldingFeature(session),
            new LayoutFeature(session),
            new HintFeature(session),
            new LensFeature(session),
            new CommandFeature(session),
        ];
        foreach (var feature in features)
        {
            foreach (string method in feature.Methods) byMethod.Add(method, feature);
        }
    }

    /// <summary>Answers until the editor leaves.</summary>
    /// <returns>0 where it said so beforehand, else 2.</returns>
    public int Run()
    {
        // A thread of its own reads ahead, so that a cancellation is seen before the request that it is about is served.
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
        bool isQuiet = false;
        while (true)
        {
            while (pending.Count < MostWaiting && waiting.TryTake(out byte[]? message)) Receive(message);
            if (pending.TryDequeue(out var next))
            {
                isQuiet = false;
                using (next)
                {
                    if (!Answer(next)) return isShutDown ? ExitStatus.Clean : ExitStatus.Usage;
                }

                continue;
            }

            // Nothing is asked: what waits is checked, a little at a time.
            if (Guarded(() => documents.GoOn(FilesAtOnce, isQuiet))) continue;
            if (!isQuiet)
            {
                isQuiet = !waiting.TryTake(out byte[]? message, Quiet);
                if (message is not null) Receive(message);
                continue;
            }

            try
            {
                Receive(waiting.Take());
            }
            catch (InvalidOperationException)
            {
                break;
            }
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

    private void Receive(byte[] message)
    {
        var incoming = Incoming.Of(message);
        if (incoming.Call.Method != "$/cancelRequest")
        {
            pending.Enqueue(incoming);
            return;
        }

        // Of a request that is answered already there is nothing to cancel.
        string id = incoming.Call.Parameters.At("id") is { ValueKind: not JsonValueKind.Undefined } given ? given.GetRawText() : "";
        if (pending.Any(p => p.Call.Id.ValueKind != JsonValueKind.Undefined && p.Call.Id.GetRawText() == id)) cancelled.Add(id);
        incoming.Dispose();
    }

    /// <summary>Handles one message. Whatever it holds, the work in the editor goes on.</summary>
    /// <returns>Whether to go on.</returns>
    private bool Answer(Incoming message)
    {
        var call = message.Call;
        if (message.Error != 0)
        {
            Fail(default, message.Error, message.Why);
            return true;
        }

        if (call.Method is null) return true;
        try
        {
            return Serve(call.Method, call.Id, call.Parameters);
        }
#pragma warning disable CA1031 // One message that goes wrong must not end the work in the editor.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            if (call.Id.ValueKind == JsonValueKind.Undefined) session.Log(SentenceOf(fault));
            else Fail(call.Id, CodeOf(fault), SentenceOf(fault));
        }

        return true;
    }

    /// <summary>Serves a request or notification where it is its turn (Life Cycle of the protocol).</summary>
    private bool Serve(string method, JsonElement id, JsonElement parameters)
    {
        if (method == "exit") return false;
        bool isRequest = id.ValueKind != JsonValueKind.Undefined;
        if (isRequest && cancelled.Remove(id.GetRawText())) Fail(id, ErrorCodes.RequestCancelled, "The request was cancelled.");
        else if (isShutDown) Refuse(ErrorCodes.InvalidRequest, "The server is shut down; only `exit` is left.");
        else if (!isInitialized && method != "initialize") Refuse(ErrorCodes.NotInitialized, "The first request is `initialize`.");
        else if (isInitialized && method == "initialize") Refuse(ErrorCodes.InvalidRequest, "The server is initialized already.");
        else Handle(method, id, parameters);
        return true;

        void Refuse(int code, string why)
        {
            if (isRequest) Fail(id, code, why);
        }
    }

    private void Handle(string method, JsonElement id, JsonElement parameters)
    {
        switch (method)
        {
            case "initialize":
                isInitialized = true;
                session.Client = new Client(parameters);
                session.Pages.SetWeb(session.Client.RulePages);
                session.Publisher.IsAsked = session.Client.PullsDiagnostics;
                Reply(id, WriteCapabilities);
                break;
            case "shutdown":
                isShutDown = true;
                Reply(id, static json => json.WriteNull("result"));
                break;
            default:
                if (documents.Takes(method, parameters)) break;
                if (byMethod.TryGetValue(method, out var feature)) Reply(id, json => feature.Answer(json, method, parameters));

                // Notifications that are not known are passed over, as the protocol asks.
                else if (id.ValueKind != JsonValueKind.Undefined) Fail(id, ErrorCodes.MethodNotFound, $"{method} is not known here.");
                break;
        }
    }

    private void WriteCapabilities(Utf8JsonWriter json)
    {
        const int Incremental = 2;
        json.WriteStartObject("result");
        json.WriteStartObject("capabilities");
        json.WriteString("positionEncoding", "utf-16");
        json.WriteStartObject("textDocumentSync");
        json.WriteBoolean("openClose", true);
        json.WriteNumber("change", Incremental);
        json.WriteStartObject("save");
        json.WriteBoolean("includeText", false);
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteStartObject("workspace");
        json.WriteStartObject("workspaceFolders");
        json.WriteBoolean("supported", true);
        json.WriteBoolean("changeNotifications", true);
        json.WriteEndObject();
        json.WriteEndObject();
        foreach (var feature in features) feature.WriteCapability(json, session.Client);
        json.WriteEndObject();
        json.WriteStartObject("serverInfo");
        json.WriteString("name", "speclint");
        json.WriteString("version", Shell.Version);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private bool Guarded(Func<bool> work)
    {
        try
        {
            return work();
        }
#pragma warning disable CA1031 // A book that cannot be checked must not end the work on the others.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            session.Log(SentenceOf(fault));
            return false;
        }
    }

    private static int CodeOf(Exception fault) => fault switch
    {
        RequestException or UsageException => ErrorCodes.RequestFailed,
        InvalidOperationException or KeyNotFoundException or FormatException or ArgumentException => ErrorCodes.InvalidParameters,
        _ => ErrorCodes.InternalError,
    };

    private static string SentenceOf(Exception fault) =>
        fault is RequestException or UsageException or InvalidOperationException or KeyNotFoundException
            ? fault.Message
            : $"{fault.GetType().Name}, {fault.Message}";

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
}
