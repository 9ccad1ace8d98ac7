using System.Globalization;
using System.Text;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Binding;

/// <summary>
/// Writes the JSON Schema (2020-12) of a kind of file from its shape, so that schema and binder cannot part ways. Each
/// schema stands alone.
/// </summary>
internal static class SchemaWriter
{
    private static readonly Dictionary<string, string> Titles = new(StringComparer.Ordinal)
    {
        ["$schema"] = "Schema",
        ["ph"] = "pH",
        ["brix"] = "°Brix",
        ["abv"] = "Strength",
        ["by"] = "Made by",
        ["do"] = "Action",
        ["for"] = "How long",
        ["at"] = "Temperature",
        ["to"] = "Brought to",
        ["in"] = "In",
        ["on"] = "Day",
        ["lot"] = "Code of the lot",
    };

    private const string Comment =
        "Written from the shapes that the program reads files by. A pattern cannot compare numbers: a range that runs downwards, or a "
        + "number in a text beyond the limits of its property, passes here and is a finding of a check. A unit of the house's own "
        + "(measures in bar.json) is known to a check, but not here.";

    /// <summary>The name of a kind's schema: <c>drink.schema.json</c>.</summary>
    public static string FileName(FileKind kind) => FileShapes.KindNames[(int)kind] + ".schema.json";

    /// <summary>The schema of a kind of file, with LF line ends.</summary>
    public static string Write(FileKind kind)
    {
        var shape = FileShapes.Of(kind);
        var writer = new Writer();
        writer.Open("{");
        writer.Member("$schema", "\"https://json-schema.org/draft/2020-12/schema\"");
        writer.Member("$id", Quote("urn:speclint:schema:" + FileShapes.KindNames[(int)kind]));
        writer.Member("title", Quote(TitleOf(kind)));
        writer.Member("description", Quote(DescriptionOf(kind)));
        writer.Member("$comment", Quote(Comment));
        WriteObject(writer, shape);
        // Definitions may use others: go on until none is new.
        writer.OpenMember("$defs", "{");
        for (int i = 0; i < writer.Definitions.Count; i++)
        {
            writer.OpenMember(writer.Definitions[i].Definition!, "{");
            WriteValue(writer, writer.Definitions[i]);
            writer.Close("}");
        }

        writer.Close("}");
        writer.Close("}");
        return writer.Finish();
    }

    private static string TitleOf(FileKind kind) => kind switch
    {
        FileKind.Drink => "Spec of a drink",
        FileKind.Prep => "Recipe of a house preparation",
        FileKind.Ingredient => "Ingredient that the bar buys",
        FileKind.Menu => "Menu",
        FileKind.Stock => "What is in the house",
        FileKind.Prices => "Price list",
        _ => "The bar",
    };

    private static string DescriptionOf(FileKind kind) => kind switch
    {
        FileKind.Drink => "A file *.drink.json: what goes into one drink, how it is made and what the guest is told.",
        FileKind.Prep => "A file *.prep.json: how a preparation is made, what it is made to reach and how it is kept.",
        FileKind.Ingredient => "A file *.ingredient.json: strength, contents, allergens and life of something bought.",
        FileKind.Menu => "A file *.menu.json: the drinks on sale with the words that the guest reads.",
        FileKind.Stock => "A file *.stock.json: the lots in the house on a day, with what was measured.",
        FileKind.Prices => "A file *.prices.json: what the bar pays for what it buys.",
        _ => "The file bar.json at the root of a book: tools, glasses, house measures, limits and levels of rules.",
    };

    private static void WriteObject(Writer writer, ObjectShape shape)
    {
        writer.Member("type", "\"object\"");
        writer.OpenMember("properties", "{");
        foreach (var property in shape.All)
        {
            writer.OpenMember(property.Name, "{");
            writer.Member("title", Quote(TitleOf(property.Name)));
            writer.Member("description", Quote(property.Description));
            writer.Member("examples", "[" + string.Join(", ", property.Examples) + "]");
            WriteUse(writer, property.Value);
            writer.Close("}");
        }

        writer.Close("}");
        var required = shape.All.Where(property => property.Required).Select(property => Quote(property.Name)).ToList();
        if (required.Count > 0) writer.Member("required", "[" + string.Join(", ", required) + "]");
        if (shape.AtLeastOneOf.Count > 0)
            writer.Member("anyOf", "[" + string.Join(", ", shape.AtLeastOneOf.Select(name => $"{{ \"required\": [{Quote(name)}] }}")) + "]");
        writer.Member("additionalProperties", "false");
    }

    /// <summary>A reference where the value has a definition, else the value itself.</summary>
    private static void WriteUse(Writer writer, ValueShape value)
    {
        if (value.Definition is null) WriteValue(writer, value);
        else writer.Member("$ref", Quote("#/$defs/" + writer.Use(value)));
    }

    private static void WriteValue(Writer writer, ValueShape value)
    {
        switch (value.Form)
        {
            case ValueForm.Text:
                writer.Member("type", "\"string\"");
                writer.Member("minLength", "1");
                break;
            case ValueForm.Pattern:
                writer.Member("type", "\"string\"");
                writer.Member("pattern", Quote(value.Pattern!));
                break;
            case ValueForm.Id:
                writer.Member("type", "\"string\"");
                writer.Member("pattern", Quote("^[a-z0-9]+(?:-[a-z0-9]+)*$"));
                break;
            case ValueForm.Word:
                writer.Member("type", "\"string\"");
                writer.Member("enum", "[" + string.Join(", ", value.Words.Select(Quote)) + "]");
                break;
            case ValueForm.Date:
                writer.Member("type", "\"string\"");
                writer.Member("pattern", Quote(DatePattern));
                break;
            case ValueForm.Flag:
                writer.Member("type", "\"boolean\"");
                break;
            case ValueForm.Number:
                writer.Member("type", "\"number\"");
                WriteLimits(writer, value);
                break;
            case ValueForm.TextOrNumber:
                writer.Member("anyOf", "[{ \"type\": \"string\", \"minLength\": 1 }, { \"type\": \"number\" }]");
                break;
            case ValueForm.TextOrTexts:
                writer.Member(
                    "anyOf",
                    $"[{{ \"type\": \"string\", \"minLength\": 1 }}, {{ \"type\": \"array\", \"items\": {{ \"$ref\": "
                        + $"\"#/$defs/{writer.Use(ShapeValues.Text)}\" }} }}]");
                break;
            case ValueForm.Quantity:
                WriteQuantity(writer, value);
                break;
            case ValueForm.List:
                writer.Member("type", "\"array\"");
                if (value.LeastItems > 0) writer.Member("minItems", Plain(value.LeastItems));
                writer.OpenMember("items", "{");
                WriteUse(writer, value.Item!);
                writer.Close("}");
                break;
            case ValueForm.Object:
                WriteObject(writer, value.Object!);
                break;
            case ValueForm.Map:
                WriteMap(writer, value);
                break;
            case ValueForm.Sourced:
            case ValueForm.WordOrObject:
                writer.OpenMember("anyOf", "[");
                writer.OpenItem("{");
                WriteUse(writer, value.Item!);
                writer.Close("}");
                writer.OpenItem("{");
                WriteObject(writer, value.Object!);
                writer.Close("}");
                writer.Close("]");
                break;
            default:
                throw new InvalidOperationException(value.Form.ToString());
        }
    }

    private static void WriteQuantity(Writer writer, ValueShape value)
    {
        string pattern = Quote(QuantityPattern.Of(value.Dimensions, value.BareUnit is not null));
        if (value.BareUnit is null)
        {
            writer.Member("type", "\"string\"");
            writer.Member("pattern", pattern);
            return;
        }

        writer.OpenMember("anyOf", "[");
        writer.OpenItem("{");
        writer.Member("type", "\"number\"");
        WriteLimits(writer, value);
        writer.Close("}");
        writer.OpenItem("{");
        writer.Member("type", "\"string\"");
        writer.Member("pattern", pattern);
        writer.Close("}");
        writer.Close("]");
    }

    private static void WriteMap(Writer writer, ValueShape value)
    {
        writer.Member("type", "\"object\"");
        writer.OpenMember("propertyNames", "{");
        switch (value.Keys)
        {
            case KeyForm.Id:
                writer.Member("pattern", Quote("^[a-z0-9]+(?:-[a-z0-9]+)*$"));
                break;
            case KeyForm.RuleId:
                writer.Member("pattern", Quote("^[A-Z]{2}[0-9]{4}$"));
                break;
            case KeyForm.FileKind:
                writer.Member("enum", "[" + string.Join(", ", FileShapes.KindNames.Select(Quote)) + "]");
                break;
            case KeyForm.UnitWord:
                writer.Member("pattern", Quote("^\\p{L}[\\p{L} .\\-]{0,29}$"));
                writer.Member("not", $"{{ \"pattern\": {Quote(QuantityPattern.FixedWords())} }}");
                break;
            default:
                writer.Member("pattern", Quote("^[a-z][a-zA-Z0-9]*(?:\\.[a-z][a-zA-Z0-9]*)*$"));
                break;
        }

        writer.Close("}");
        writer.OpenMember("additionalProperties", "{");
        WriteUse(writer, value.Item!);
        writer.Close("}");
    }

    private static void WriteLimits(Writer writer, ValueShape value)
    {
        if (!double.IsNegativeInfinity(value.Least)) writer.Member(value.AboveLeast ? "exclusiveMinimum" : "minimum", Plain(value.Least));
        if (!double.IsPositiveInfinity(value.Most)) writer.Member("maximum", Plain(value.Most));
    }

    /// <summary>Days of the Gregorian calendar from 0001-01-01 to 9999-12-31.</summary>
    private const string DatePattern =
        "^(?!0000)(?:[0-9]{4}-(?:(?:0[13578]|1[02])-(?:0[1-9]|[12][0-9]|3[01])|(?:0[469]|11)-(?:0[1-9]|[12][0-9]|30)|02-(?:0[1-9]|1[0-9]|2[0-8]))"
        + "|(?:[0-9]{2}(?:0[48]|[2468][048]|[13579][26])|(?:[02468][048]|[13579][26])00)-02-29)$";

    private static string TitleOf(string name)
    {
        if (Titles.TryGetValue(name, out string? title)) return title;
        var words = new StringBuilder(name.Length + 4);
        foreach (char c in name)
        {
            if (words.Length == 0) words.Append(char.ToUpperInvariant(c));
            else if (c is >= 'A' and <= 'Z') words.Append(' ').Append(char.ToLowerInvariant(c));
            else words.Append(c);
        }

        return words.ToString();
    }

    private static string Quote(string text) => JsonText.Quote(text);

    private static string Plain(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private sealed class Writer
    {
        private readonly StringBuilder text = new();
        private readonly HashSet<string> known = new(StringComparer.Ordinal);
        private int depth;
        private bool first = true;

        public List<ValueShape> Definitions { get; } = [];

        public string Use(ValueShape value)
        {
            if (known.Add(value.Definition!)) Definitions.Add(value);
            return value.Definition!;
        }

        public void Open(string bracket)
        {
            text.Append(bracket);
            depth++;
            first = true;
        }

        public void OpenItem(string bracket)
        {
            NewLine();
            Open(bracket);
        }

        public void OpenMember(string name, string bracket)
        {
            NewLine();
            text.Append(Quote(name)).Append(": ");
            Open(bracket);
        }

        public void Member(string name, string json)
        {
            NewLine();
            text.Append(Quote(name)).Append(": ").Append(json);
        }

        public void Close(string bracket)
        {
            depth--;
            text.Append('\n').Append(' ', depth * 2).Append(bracket);
            first = false;
        }

        public string Finish() => text.Append('\n').ToString();

        private void NewLine()
        {
            if (!first) text.Append(',');
            first = false;
            text.Append('\n').Append(' ', depth * 2);
        }
    }
}
