using System.Text.Json;

namespace SpecLint.Tool.Editor.Protocol;

/// <summary>A request or a notification (JSON-RPC 2.0, 4).</summary>
/// <param name="Method">What is asked; <see langword="null"/> in an answer of the editor, of which nothing is made.</param>
/// <param name="Id">Number or text that an answer repeats; undefined in a notification.</param>
/// <param name="Parameters">What it is asked of; undefined where there are none.</param>
internal readonly record struct Call(string? Method, JsonElement Id, JsonElement Parameters)
{
    /// <summary>Reads a message.</summary>
    /// <exception cref="InvalidDataException">It is none.</exception>
    public static Call Of(JsonElement message)
    {
        if (message.ValueKind != JsonValueKind.Object) throw new InvalidDataException("A message is an object.");
        var id = message.TryGetProperty("id", out var given) ? given : default;
        switch (id.ValueKind)
        {
            case JsonValueKind.Undefined or JsonValueKind.Number or JsonValueKind.Null: break;
            case JsonValueKind.String: TextOf(id, "id"); break;
            default: throw new InvalidDataException("`id` is neither a number nor a text.");
        }

        if (!message.TryGetProperty("method", out var method))
        {
            // An answer of the editor to a request of ours would come here; there are none.
            return id.ValueKind == JsonValueKind.Undefined
                ? throw new InvalidDataException("The message has no method.")
                : new Call(null, id, default);
        }

        return new Call(TextOf(method, "method"), id, message.TryGetProperty("params", out var parameters) ? parameters : default);
    }

    private static string TextOf(JsonElement element, string name)
    {
        try
        {
            return element.GetString() ?? throw new InvalidDataException($"`{name}` is null.");
        }
        catch (InvalidOperationException e)
        {
            // Another type, or half of a surrogate pair, which no text can hold.
            throw new InvalidDataException($"`{name}` is not text.", e);
        }
    }
}
