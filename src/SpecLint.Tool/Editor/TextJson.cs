using System.Text.Json.Serialization;

namespace SpecLint.Tool.Editor;

/// <summary>How a text is written as JSON, made at compile time: the native tool has no reflection.</summary>
[JsonSerializable(typeof(string))]
internal sealed partial class TextJson : JsonSerializerContext;
