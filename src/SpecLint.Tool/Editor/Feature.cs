using System.Text.Json;

namespace SpecLint.Tool.Editor;

/// <summary>A thing that the server does for the editor: some requests, and the word about them in <c>initialize</c>.</summary>
internal abstract class Feature(Session session)
{
    /// <summary>What the features share.</summary>
    protected Session Session { get; } = session;

    /// <summary>The requests that it answers.</summary>
    public abstract IReadOnlyList<string> Methods { get; }

    /// <summary>Says that it is there.</summary>
    public abstract void WriteCapability(Utf8JsonWriter json, Client client);

    /// <summary>Answers a request: writes <c>result</c>.</summary>
    /// <exception cref="Protocol.RequestException">It cannot be done, for a reason that people understand.</exception>
    public abstract void Answer(Utf8JsonWriter json, string method, JsonElement parameters);
}
