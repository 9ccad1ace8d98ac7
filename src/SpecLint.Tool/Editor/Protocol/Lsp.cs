using System.Text.Json;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Tool.Editor.Protocol;

/// <summary>Shapes of the protocol, read and written. Positions count from 0, columns in UTF-16 units.</summary>
internal static class Lsp
{
    public static void Range(this Utf8JsonWriter json, string name, Place place)
    {
        json.WriteStartObject(name);
        json.Position("start", place.Start);
        json.Position("end", place.End);
        json.WriteEndObject();
    }

    public static void Position(this Utf8JsonWriter json, string name, LinePosition at)
    {
        json.WriteStartObject(name);
        json.WriteNumber("line", at.Line - 1);
        json.WriteNumber("character", at.Column - 1);
        json.WriteEndObject();
    }

    /// <summary>A place as an object of address and range.</summary>
    public static void Location(this Utf8JsonWriter json, string address, Place place)
    {
        json.WriteStartObject();
        json.WriteString("uri", address);
        json.Range("range", place);
        json.WriteEndObject();
    }

    /// <summary>Text in Markdown, under a name.</summary>
    public static void Markup(this Utf8JsonWriter json, string name, string markdown)
    {
        json.WriteStartObject(name);
        json.WriteString("kind", "markdown");
        json.WriteString("value", markdown);
        json.WriteEndObject();
    }

    public static void Edit(this Utf8JsonWriter json, TextEdit edit)
    {
        json.WriteStartObject();
        json.Range("range", edit.Place);
        json.WriteString("newText", edit.NewText);
        json.WriteEndObject();
    }

    /// <summary>A line and character of a message.</summary>
    /// <exception cref="FormatException">They are no whole numbers.</exception>
    public static LinePosition PositionOf(JsonElement at) => new(at.GetProperty("line").GetInt32() + 1, at.GetProperty("character").GetInt32() + 1);

    /// <summary>Address of the document that a request is about.</summary>
    public static string AddressIn(JsonElement parameters) => TextOf(parameters.GetProperty("textDocument"), "uri");

    /// <exception cref="InvalidOperationException">It is not text.</exception>
    public static string TextOf(JsonElement holder, string name) =>
        holder.GetProperty(name).GetString() ?? throw new InvalidOperationException($"`{name}` is null.");

    /// <summary>A value within objects; undefined where a step of the way is missing.</summary>
    public static JsonElement At(this JsonElement element, params ReadOnlySpan<string> way)
    {
        foreach (string name in way)
        {
            if (element.ValueKind != JsonValueKind.Object || !element.TryGetProperty(name, out element)) return default;
        }

        return element;
    }

    /// <summary>Whether a value within objects is true.</summary>
    public static bool Says(this JsonElement element, params ReadOnlySpan<string> way) => element.At(way).ValueKind == JsonValueKind.True;
}
