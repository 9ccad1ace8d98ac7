using System.Text;
using SpecLint.Binding;
using SpecLint.Book;

namespace SpecLint.Tool.Editor;

/// <summary>Texts with places to fill in, made from the shapes of the files.</summary>
internal static class Templates
{
    /// <summary>A file of a kind with what it must have, and what its kind is nothing without.</summary>
    public static Choice File(FileKind kind, bool snippets)
    {
        var shape = FileShapes.Of(kind);
        var text = new Filling(snippets);
        text.Add("{\n");
        var properties = shape.Properties.Where(p => p.Required
            || p.Name is "kind" or "method" or "style" or "glass" or "declares" or "keep" or "jurisdictions")
            .ToList();
        for (int i = 0; i < properties.Count; i++)
        {
            text.Add($"  \"{properties[i].Name}\": ");
            text.AddValue(properties[i].Value, properties[i], "  ");
            text.Add(i + 1 < properties.Count ? ",\n" : "\n");
        }

        text.Add("}\n");
        return new Choice(
            $"new {FileShapes.KindNames[(int)kind]}", text.ToString(), ChoiceKind.Template, $"{shape.Noun}, to be filled in",
            IsSnippet: snippets);
    }

    /// <summary>The properties that an object does not have yet.</summary>
    public static List<Choice> Properties(Cursor cursor, bool snippets)
    {
        if (cursor.Object is not { } shape) return [];
        var choices = new List<Choice>();
        foreach (var property in shape.Properties)
        {
            if (cursor.Names.Contains(property.Name)) continue;
            var text = new Filling(snippets && !cursor.ValueFollows);
            text.Add($"\"{property.Name}\"");
            if (!cursor.ValueFollows)
            {
                text.Add(": ");
                text.AddValue(property.Value, property, "  ");
            }

            choices.Add(new Choice(
                property.Name,
                text.ToString(),
                ChoiceKind.Property,
                property.Required ? "required" : "",
                $"{Reports.ItemMarkdown.Escape(property.Description)}"
                    + $"{(property.Examples.Count > 0 ? $"\n```json\n\"{property.Name}\": {property.Examples[0]}\n```" : "")}",
                snippets && !cursor.ValueFollows));
        }

        return choices;
    }

    /// <summary>An object with its required properties; <see langword="null"/> where none is expected.</summary>
    public static Choice? Object(ValueShape value, bool snippets)
    {
        if (value is not { Form: ValueForm.Object, Object: { } shape }) return null;
        var text = new Filling(snippets);
        text.AddValue(value, null, "");
        return new Choice(
            $"{{ {string.Join(", ", Needed(shape).Select(p => p.Name))} }}", text.ToString(), ChoiceKind.Template, shape.Noun,
            IsSnippet: snippets);
    }

    private static IEnumerable<PropertyShape> Needed(ObjectShape shape)
    {
        var required = shape.Properties.Where(p => p.Required).ToList();

        // Of an object that must have nothing, what people write first.
        return required.Count > 0 ? required : shape.Properties.Where(p => p.Name != "$schema").Take(2);
    }

    /// <summary>A text that is being made, its places numbered.</summary>
    private sealed class Filling(bool snippets)
    {
        private readonly StringBuilder text = new();
        private int places;

        public void Add(string more) =>
            text.Append(snippets
                ? more.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("$", "\\$", StringComparison.Ordinal)
                : more);

        public void AddValue(ValueShape value, PropertyShape? property, string indent)
        {
            switch (value.Form)
            {
                case ValueForm.List when value.Item is { Form: ValueForm.Object } item:
                    text.Append("[\n").Append(indent).Append("  ");
                    AddValue(item, null, indent + "  ");
                    text.Append('\n').Append(indent).Append(']');
                    break;
                case ValueForm.List: Place("[", "", "]"); break;
                case ValueForm.Map: Place("{ ", "", " }"); break;
                case ValueForm.Object:
                    text.Append("{ ");
                    string comma = "";
                    foreach (var inner in Needed(value.Object!))
                    {
                        text.Append(comma);
                        Add($"\"{inner.Name}\": ");
                        AddValue(inner.Value, inner, indent);
                        comma = ", ";
                    }

                    text.Append(" }");
                    break;
                default:
                    string example = property is { Examples: [var first, ..] } ? first : "\"\"";
                    bool quoted = example.Length >= 2 && example[0] == '"';
                    Place(quoted ? "\"" : "", quoted ? example[1..^1] : example, quoted ? "\"" : "");
                    break;
            }
        }

        public override string ToString() => text.ToString();

        private void Place(string before, string example, string behind)
        {
            if (!snippets)
            {
                text.Append(before).Append(example).Append(behind);
                return;
            }

            string inside = example.Replace("\\", "\\\\", StringComparison.Ordinal)
                .Replace("}", "\\}", StringComparison.Ordinal)
                .Replace("$", "\\$", StringComparison.Ordinal);
            text.Append(before).Append("${").Append(++places).Append(':').Append(inside).Append('}').Append(behind);
        }
    }
}
