using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using SpecLint.Binding;
using SpecLint.Reading;
using JsonNode = System.Text.Json.Nodes.JsonNode;

namespace SpecLint.Tests.Reading;

/// <summary>Makes random documents that fit a shape, and breaks them.</summary>
/// <remarks>
/// Quantities come from a grammar written out here once more, from its description; the reader and the patterns of the
/// schemas are both measured against each other with them.
/// </remarks>
internal sealed class DocumentMaker
{
    // No line feed: "$" of the oracle's patterns (.NET) also matches before one at the end, that of ECMA-262 does not.
    private const string Letters = " 0123456789.,/½⅓⁄–-−toTO%mlMLgozsdhcCF°wv()\u00A0\u2009abepinchradBxkJ³²\"\\é🍋";

    private static readonly string[] Texts = ["Low Tide", "é", "🍋 lemon", "a \"quoted\" word", "tab\there", "line\nbreak", "x"];
    private static readonly string[] Ids = ["gin", "lime-juice", "honey-syrup-3-1", "saline-20", "a", "7"];
    private static readonly string[] Amounts = ["1", "45", "0.75", ".5", "1/2", "3/4", "1 1/2", "½", "1½", "2 ¼", "12/5", "0", "1234567.12345678", "007"];
    private static readonly string[] Junk = ["", " ", "45", "ml", "45 mll", "0,5 ml", "1,250 g", "20 – ml", "1/0 oz", "-5 ml", "-0 ml", "5 ml ml", "to 5 ml", "2026-02-29", "2024-02-29", "2100-02-29", "2026-13-01", "0000-01-01", "26-1-1", "Lime Juice", "lime_juice", "-a", "a-", "a--b", "SL12345", "SL1a34", "SL0001", "top", "dash", "C", "%", "15%", "15 %w/v", "1-1/2 oz", "2026-11-25", "gin", "error", "milk", "GB", "pH 3"];

    private readonly Random random;

    public DocumentMaker(int seed) => random = new Random(seed);

    public JsonObject Make(ObjectShape shape, int depth = 0)
    {
        var made = new JsonObject();
        int choice = shape.AtLeastOneOf.Count > 0 ? random.Next(shape.AtLeastOneOf.Count) : -1;
        foreach (var property in shape.Properties)
        {
            bool chosen = choice >= 0 && shape.AtLeastOneOf[choice] == property.Name;
            if (!property.Required && !chosen && random.NextDouble() > (depth == 0 ? 0.4 : 0.5)) continue;
            made[property.Name] = Make(property.Value, depth + 1);
        }

        return made;
    }

    /// <summary>Breaks a document in one to three places; now and then the change leaves it whole.</summary>
    public void Break(JsonObject document)
    {
        for (int i = random.Next(1, 4); i > 0; i--)
        {
            var all = new List<JsonNode>();
            Collect(document, all);
            BreakOne(all[random.Next(all.Count)]);
        }
    }

    private static void Collect(JsonNode node, List<JsonNode> into)
    {
        into.Add(node);
        if (node is JsonObject o)
        {
            foreach (var (_, value) in o) if (value is not null) Collect(value, into);
        }
        else if (node is JsonArray a)
        {
            foreach (var value in a) if (value is not null) Collect(value, into);
        }
    }

    private void BreakOne(JsonNode node)
    {
        if (node is JsonObject o)
        {
            var names = o.Select(p => p.Key).ToList();
            switch (random.Next(5))
            {
                case 0 when names.Count > 0:
                    o.Remove(Pick(names));
                    return;
                case 1 when names.Count > 0:
                    string name = Pick(names);
                    var value = o[name]?.DeepClone();
                    o.Remove(name);
                    o[Mutate(name)] = value;
                    return;
                case 2:
                    o[Pick(["name", "amount", "glass", "drink", "item", "ph", "note", "notes", "mark", "unknown", "Item", ""])] = AnyValue();
                    return;
                case 3 when names.Count > 0:
                    o[Pick(names)] = AnyValue();
                    return;
            }
        }
        else if (node is JsonArray a)
        {
            switch (random.Next(3))
            {
                case 0:
                    a.Clear();
                    return;
                case 1:
                    a.Add(AnyValue());
                    return;
            }
        }
        else if (node is JsonValue v && v.TryGetValue(out string? text) && random.Next(4) > 0)
        {
            node.ReplaceWith(JsonValue.Create(Mutate(text)));
            return;
        }

        if (node.Parent is not null) node.ReplaceWith(AnyValue());
    }

    private JsonNode? AnyValue() => random.Next(9) switch
    {
        0 => null,
        1 => JsonValue.Create(true),
        2 => JsonValue.Create(random.Next(-3, 20)),
        3 => JsonValue.Create(random.Next(0, 300) / 8.0),
        4 => new JsonObject(),
        5 => new JsonArray(),
        6 => new JsonArray(JsonValue.Create(Pick(Junk))),
        _ => JsonValue.Create(Pick(Junk)),
    };

    private string Mutate(string text)
    {
        var changed = new StringBuilder(text);
        for (int i = random.Next(1, 3); i > 0; i--)
        {
            int at = random.Next(changed.Length + 1);
            var runes = Letters.EnumerateRunes().ToArray();
            string letter = Pick(runes).ToString();
            switch (random.Next(3))
            {
                case 0:
                    changed.Insert(at, letter);
                    break;
                case 1 when at < changed.Length && !char.IsSurrogate(changed[at]):
                    changed.Remove(at, 1);
                    break;
                case 2 when at < changed.Length && !char.IsSurrogate(changed[at]):
                    changed.Remove(at, 1).Insert(at, letter);
                    break;
            }
        }

        // A mutation in the middle of a surrogate pair leaves no text at all.
        string result = changed.ToString();
        return result.Any(char.IsSurrogate) && !IsWellFormed(result) ? text : result;
    }

    private static bool IsWellFormed(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]))
            {
                if (i + 1 >= text.Length || !char.IsLowSurrogate(text[i + 1])) return false;
                i++;
            }
            else if (char.IsLowSurrogate(text[i]))
            {
                return false;
            }
        }

        return true;
    }

    private JsonNode Make(ValueShape shape, int depth) => shape.Form switch
    {
        ValueForm.Text => JsonValue.Create(Pick(Texts)),
        ValueForm.Pattern when shape.Definition == "readingOf" => JsonValue.Create($"r1-{random.NextInt64():x16}"),
        ValueForm.Pattern when shape.Definition == "currency" => JsonValue.Create(new string([(char)random.Next('A', 'Z' + 1), (char)random.Next('A', 'Z' + 1), (char)random.Next('A', 'Z' + 1)])),
        ValueForm.Pattern => JsonValue.Create("SL" + random.Next(1000, 9999).ToString(CultureInfo.InvariantCulture)),
        ValueForm.Id => JsonValue.Create(Pick(Ids)),
        ValueForm.Word => JsonValue.Create(shape.Words[random.Next(shape.Words.Count)]),
        ValueForm.Date => JsonValue.Create($"{random.Next(1, 9999):0000}-{random.Next(1, 13):00}-{random.Next(1, 29):00}"),
        ValueForm.Flag => JsonValue.Create(random.Next(2) == 0),
        ValueForm.Number => JsonValue.Create(Between(shape)),
        ValueForm.TextOrNumber => random.Next(2) == 0 ? JsonValue.Create(random.Next(100)) : JsonValue.Create(Pick(Texts)),
        ValueForm.TextOrTexts => random.Next(2) == 0 ? JsonValue.Create(Pick(Texts)) : new JsonArray(JsonValue.Create(Pick(Texts)), JsonValue.Create(Pick(Texts))),
        ValueForm.Quantity => Quantity(shape),
        ValueForm.List => List(shape, depth),
        ValueForm.Object => Make(shape.Object!, depth),
        ValueForm.Map => Map(shape, depth),
        ValueForm.Sourced => random.Next(2) == 0 ? Quantity(shape.Item!) : Make(shape.Object!, depth),
        ValueForm.WordOrObject => random.Next(2) == 0 ? JsonValue.Create(shape.Item!.Words[random.Next(shape.Item.Words.Count)]) : Make(shape.Object!, depth),
        _ => throw new InvalidOperationException(shape.Form.ToString()),
    };

    private double Between(ValueShape shape)
    {
        double least = double.IsInfinity(shape.Least) ? 0 : shape.Least, most = double.IsInfinity(shape.Most) ? 50 : shape.Most;
        return Math.Round(least + ((most - least) * (0.01 + (0.98 * random.NextDouble()))), 3);
    }

    private JsonArray List(ValueShape shape, int depth)
    {
        var list = new JsonArray();
        for (int i = Math.Max(shape.LeastItems, random.Next(4)); i > 0; i--) list.Add(Make(shape.Item!, depth + 1));
        return list;
    }

    private JsonObject Map(ValueShape shape, int depth)
    {
        var map = new JsonObject();
        string[] keys = shape.Keys switch
        {
            KeyForm.Id => Ids,
            KeyForm.RuleId => ["SL1001", "SL3004", "HR3001"],
            KeyForm.FileKind => ["drink", "prep"],
            KeyForm.UnitWord => ["dash", "oz", "Ladle", "bar spoon", "cuillère"],
            _ => ["ph", "acids.citric", "alcoholPerServe"],
        };
        foreach (string key in keys)
        {
            if (random.Next(2) == 0) map[key] = Make(shape.Item!, depth + 1);
        }

        return map;
    }

    private JsonNode Quantity(ValueShape shape)
    {
        if (shape.BareUnit is not null && random.Next(3) > 0) return JsonValue.Create(Between(shape));
        if (shape.Dimensions.Count == 0) return JsonValue.Create(Between(shape).ToString(CultureInfo.InvariantCulture));
        var dimension = shape.Dimensions[random.Next(shape.Dimensions.Count)];
        var words = Measures.Default.Words.Where(w => w.Unit.Dimension == dimension).ToList();
        var word = words[random.Next(words.Count)];
        if (word.StandsAlone && random.Next(8) == 0) return JsonValue.Create(Case(word.Text));
        string sign = dimension == Dimension.Temperature && random.Next(3) == 0 ? Pick(["-", "−"]) : "";
        if (!double.IsInfinity(shape.Most)) return JsonValue.Create(Between(shape).ToString(CultureInfo.InvariantCulture) + " " + Case(word.Text));
        string number = random.Next(5) > 0 ? sign + Pick(Amounts) : sign.Length > 0 ? sign + "18" + Pick(["–", " to ", "-"]) + sign + "15" : "20" + Pick(["–", "-", " to ", " - ", " TO "]) + "25.5";
        return JsonValue.Create(Pick(["", "", "", " "]) + number + Pick([" ", " ", "", "\u00A0", "\u2009", "  "]) + Case(word.Text) + Pick(["", "", "", " "]));
    }

    private string Case(string word) => random.Next(6) switch
    {
        0 => string.Concat(word.Select(c => char.IsAsciiLetter(c) ? char.ToUpperInvariant(c) : c)),
        1 => word.Replace(" ", "", StringComparison.Ordinal),
        _ => word,
    };

    private T Pick<T>(IReadOnlyList<T> from) => from[random.Next(from.Count)];
}
