using System.Text.Json;
using System.Text.Unicode;

namespace SpecLint.Tool.Editor.Protocol;

/// <summary>A message that came, read or refused.</summary>
internal sealed class Incoming : IDisposable
{
    private readonly JsonDocument? document;

    private Incoming(JsonDocument? document, Call call, int error, string why)
    {
        this.document = document;
        Call = call;
        Error = error;
        Why = why;
    }

    /// <summary>The call, where it could be read.</summary>
    public Call Call { get; }

    /// <summary>The error to answer with; 0 where there is none.</summary>
    public int Error { get; }

    /// <summary>The error in a sentence.</summary>
    public string Why { get; }

    /// <summary>Reads a message. Whatever it holds, this does not fail.</summary>
    public static Incoming Of(byte[] message)
    {
        if (!Utf8.IsValid(message)) return new Incoming(null, default, ErrorCodes.ParseError, "The message is not UTF-8.");
        JsonDocument? document = null;
        try
        {
            document = JsonDocument.Parse(message);
            return new Incoming(document, Call.Of(document.RootElement), 0, "");
        }
        catch (JsonException)
        {
            return new Incoming(null, default, ErrorCodes.ParseError, "The message is not JSON.");
        }
        catch (Exception fault) when (fault is InvalidDataException or InvalidOperationException)
        {
            document?.Dispose();
            return new Incoming(null, default, ErrorCodes.InvalidRequest, fault.Message);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => document?.Dispose();
}
