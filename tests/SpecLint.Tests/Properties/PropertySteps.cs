using System.Globalization;
using System.Text.Json.Nodes;

namespace SpecLint.Tests.Properties;

/// <summary>A change of a book, named by what it changes, so that it can be made again on a smaller book.</summary>
/// <param name="Words">What it does.</param>
/// <param name="Apply">Makes it on a copy; false where there is nothing to change.</param>
internal sealed record PropertyStep(string Words, Func<PropertyBook, bool> Apply)
{
    /// <summary>The property that it takes out, with those that hold it; empty where it takes out none.</summary>
    public IReadOnlyList<string> Touches { get; init; } = [];

    /// <summary>The file that it changes; empty where that does not matter.</summary>
    public string Path { get; init; } = "";
}

/// <summary>The changes that the generator makes of a seed, so that cases lie beside the examples and not on them.</summary>
internal static class PropertySteps
{
    private static readonly string[] Times = ["1 d", "2 d", "3 d", "5 d", "7 d", "8 d", "14 d", "30 d", "90 d"];
    private static readonly string[] Temperatures = ["-18 °C", "2 °C", "4 °C", "5 °C", "6 °C", "8 °C", "12 °C", "20 °C", "25 °C"];

    private static readonly string[][] Laws = [["US"], ["GB"], ["AU"], ["CA"], ["US-NY"], ["GB-SCT"], ["IE", "US"]];

    /// <summary>What one recipe can take over from another.</summary>
    private static readonly string[] Grafts = ["ingredients", "ingredients", "method", "garnish", "rim", "keep", "measured", "declares", "family", "yield", "glass"];

    /// <summary>Ids that a file names, with the object that names each.</summary>
    public static IEnumerable<(JsonObject Holder, string Id)> References(JsonObject file)
    {
        foreach (string list in new[] { "ingredients", "garnish", "rim" })
        {
            foreach (var line in (file[list] as JsonArray ?? []).OfType<JsonObject>())
            {
                if (line["item"] is JsonValue item && item.TryGetValue(out string? id)) yield return (line, id);
            }
        }
    }

    /// <summary>A few steps that leave a book a book of its kind.</summary>
    public static IReadOnlyList<PropertyStep> Any(Random random, PropertyBook book)
    {
        var steps = new List<PropertyStep>();
        for (int n = random.Next(4); n > 0; n--)
        {
            string path = Pick(random, [.. book.Paths.Where(p => p.EndsWith(".prep.json", StringComparison.Ordinal) || p.EndsWith(".drink.json", StringComparison.Ordinal))]);
            if (path.Length == 0) continue;
            switch (random.Next(12))
            {
                case 0: steps.Add(Keep(path, "for", Pick(random, Times))); break;
                case 1: steps.Add(Keep(path, "at", Pick(random, Temperatures))); break;
                case 2: steps.Add(Keep(path, "sealed", random.Next(2) == 0)); break;
                case 3: steps.Add(Scale(path, random.Next(8), Pick(random, [0.1, 0.3, 0.6, 1.5, 3, 8]))); break;
                case 4: steps.Add(Drop(path, Pick(random, ["measured", "yield", "target", "method", "family"]))); break;
                case 5: steps.Add(Wrap(path, random.Next(8))); break;
                case 6: steps.Add(Unweighed(path, random.Next(8))); break;
                case 7: steps.Add(Law(Pick(random, Laws))); break;
                case 9 or 10: steps.Add(Near(random, path, book)); break;
                case 11: steps.Add(Aside(path, random.Next(8))); break;
                case 8: steps.Add(Graft(path, Pick(random, PropertySeeds.All), Pick(random, Grafts), random.Next(8))); break;
            }
        }

        return steps;
    }

    /// <summary>One of some values; the default where there is none.</summary>
    public static T Pick<T>(Random random, IReadOnlyList<T> of) => of.Count == 0 ? typeof(T) == typeof(string) ? (T)(object)"" : default! : of[random.Next(of.Count)];

    /// <summary>Sets a property of <c>keep</c>.</summary>
    public static PropertyStep Keep(string path, string name, JsonNodeValue value) => new($"{path}: keep.{name} is {value.Text}", book =>
    {
        if (book[path] is not { } file || !path.EndsWith(".prep.json", StringComparison.Ordinal)) return false;
        if (file["keep"] is not JsonObject keep) file["keep"] = keep = [];
        keep[name] = value.Node();
        return true;
    });

    /// <summary>Sets a figure of a recipe to a value at, just under or just over a limit of the table that has its unit.</summary>
    private static PropertyStep Near(Random random, string path, PropertyBook book)
    {
        var places = new List<(JsonObject Of, string Name, string Unit)>();
        if (book[path] is { } file) Find(file, places);
        if (places.Count == 0) return new($"{path}: no figure", static _ => false);
        int which = random.Next(places.Count);
        var limits = global::SpecLint.Catalogue.Limits.All.Where(l => l.Unit == places[which].Unit).Select(l => l.Value).Distinct().Order().ToList();
        double value = Math.Round(Pick(random, limits) * Pick(random, [0.98, 1, 1.02]), 4);
        string words = value.ToString(CultureInfo.InvariantCulture);
        return new($"{path}: {places[which].Name} {which + 1} is {words} {places[which].Unit}", changed =>
        {
            var there = new List<(JsonObject Of, string Name, string Unit)>();
            if (changed[path] is not { } recipe) return false;
            Find(recipe, there);
            if (which >= there.Count) return false;
            var (of, name, unit) = there[which];
            of[name] = unit is "pH" or "1" ? JsonValue.Create(value) : JsonValue.Create($"{words} {unit}");
            return true;
        });

        static void Find(JsonNode node, List<(JsonObject, string, string)> places)
        {
            if (node is JsonArray list)
            {
                foreach (var item in list.OfType<JsonNode>()) Find(item, places);
            }
            else if (node is JsonObject map)
            {
                foreach (var (name, value) in map)
                {
                    string? unit = name switch { "at" or "to" => "°C", "ph" => "pH", "waterActivity" => "1", "strength" or "abv" => "% v/v", _ => null };
                    if (name == "for" && value is JsonValue time && time.TryGetValue(out string? text)) unit = text.EndsWith('d') ? "d" : "h";
                    if (unit is not null && value is JsonValue) places.Add((map, name, unit));
                    else if (value is JsonObject or JsonArray) Find(value, places);
                }
            }
        }
    }

    /// <summary>Lays a part beside the drink that is in it too: what only lies there is in no sum.</summary>
    private static PropertyStep Aside(string path, int line) => new($"{path}: line {line + 1} beside it too", book =>
    {
        if (!path.EndsWith(".drink.json", StringComparison.Ordinal) || book[path] is not { } file || file["ingredients"] is not JsonArray { Count: > 0 } lines) return false;
        if (lines[line % lines.Count]?["item"] is not JsonValue item) return false;
        if (file["garnish"] is not JsonArray garnish) file["garnish"] = garnish = [];
        garnish.Add(new JsonObject { ["item"] = item.DeepClone() });
        return true;
    });

    /// <summary>Puts the bar under other laws.</summary>
    private static PropertyStep Law(string[] of) => new($"the bar is in {string.Join(" and ", of)}", book =>
    {
        book["bar.json"]!["jurisdictions"] = new JsonArray([.. of.Select(j => (JsonNode)j)]);
        return true;
    });

    /// <summary>Takes a line, a step or a statement over from a recipe of another book, with the files that it names.</summary>
    private static PropertyStep Graft(string path, PropertyBook other, string name, int which)
    {
        string kind = path[path.IndexOf('.', StringComparison.Ordinal)..];
        return new($"{path}: {name} {which + 1} of {other.Name}", book =>
        {
            if (book[path] is not { } file || other.Paths.FirstOrDefault(p => p.EndsWith(kind, StringComparison.Ordinal) && other[p]![name] is not null) is not { } donor) return false;
            var given = other[donor]![name]!;
            if (given is not JsonArray list)
            {
                file[name] = given.DeepClone();
                return true;
            }

            if (list.Count == 0 || list[which % list.Count] is not { } one) return false;
            if (file[name] is not JsonArray own) file[name] = own = [];
            own.Add(one.DeepClone());
            Bring(one as JsonObject, book, other);
            return true;
        });
    }

    private static void Bring(JsonObject? line, PropertyBook book, PropertyBook other)
    {
        if (line?["item"] is not JsonValue item || !item.TryGetValue(out string? id)) return;
        foreach (string path in other.Paths.Where(p => p.StartsWith(id + ".", StringComparison.Ordinal) && book[p] is null))
        {
            book.Put(path, (JsonObject)other[path]!.DeepClone());
            foreach (var (holder, _) in References(other[path]!)) Bring(holder, book, other);
            if (other[path]!["like"] is { } like) Bring(new JsonObject { ["item"] = like.DeepClone() }, book, other);
        }
    }

    /// <summary>Takes a property of the file out.</summary>
    public static PropertyStep Drop(string path, string name) => new($"{path}: no {name}", book => book[path] is { } file && file.Remove(name));

    /// <summary>Multiplies the amount of a line.</summary>
    public static PropertyStep Scale(string path, int line, double factor) => new($"{path}: line {line + 1} times {factor.ToString(CultureInfo.InvariantCulture)}", book =>
        book[path] is { } file && file["ingredients"] is JsonArray lines && lines.Count > 0 && lines[line % lines.Count] is JsonObject one && ScaleLine(one, factor));

    /// <summary>Takes the amount of a line out, where another keeps its own.</summary>
    public static PropertyStep Unweighed(string path, int line) => new($"{path}: line {line + 1} without amount", book =>
        book[path] is { } file && file["ingredients"] is JsonArray { Count: > 1 } lines && lines[line % lines.Count] is JsonObject one && one.Remove("amount"));

    /// <summary>Puts a line into a preparation of its own that holds nothing else.</summary>
    public static PropertyStep Wrap(string path, int line) => new($"{path}: line {line + 1} wrapped in a preparation", book =>
    {
        if (book[path] is not { } file || file["ingredients"] is not JsonArray lines || lines.Count == 0) return false;
        if (lines[line % lines.Count] is not JsonObject one || one["item"] is not JsonValue item || !item.TryGetValue(out string? id)) return false;
        string wrapped = $"only-{id}";
        book.Put($"{wrapped}.prep.json", new JsonObject
        {
            ["name"] = $"Only {id}",
            ["ingredients"] = new JsonArray(new JsonObject { ["item"] = id, ["amount"] = "100 g" }),
            ["method"] = new JsonArray(new JsonObject { ["do"] = "stir" }),
            ["yield"] = "100 g",
            ["keep"] = new JsonObject { ["at"] = "4 °C", ["in"] = "bottle", ["for"] = "1 d" },
        });
        one["item"] = wrapped;
        RenameInSteps(file, id, wrapped);
        return true;
    });

    /// <summary>Lets the steps of a recipe that name an item name it anew, where no other line has it.</summary>
    public static void RenameInSteps(JsonObject recipe, string from, string to)
    {
        if (References(recipe).Any(r => r.Id == from)) return;
        foreach (var items in (recipe["method"] as JsonArray ?? []).OfType<JsonObject>().Select(s => s["items"]).OfType<JsonArray>())
        {
            for (int i = 0; i < items.Count; i++)
            {
                if ((string?)items[i] == from) items[i] = to;
            }
        }
    }

    /// <summary>Multiplies the amount of a line in place; false where it has none that can be.</summary>
    public static bool ScaleLine(JsonObject line, double factor) => ScaleText(line, "amount", factor);

    /// <summary>Multiplies a quantity in place; false where there is none that can be.</summary>
    public static bool ScaleText(JsonObject line, string name, double factor)
    {
        if (line[name] is not JsonValue value || !value.TryGetValue(out string? text)) return false;
        int end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] == '.')) end++;
        if (end == 0 || (end < text.Length && text[end] == '/') || !double.TryParse(text[..end], NumberStyles.Float, CultureInfo.InvariantCulture, out double amount)) return false;
        line[name] = (amount * factor).ToString("0.####", CultureInfo.InvariantCulture) + text[end..];
        return true;
    }
}

/// <summary>A value of JSON that can be put into many trees.</summary>
/// <param name="Text">In words.</param>
/// <param name="Node">Makes it.</param>
internal readonly record struct JsonNodeValue(string Text, Func<JsonNode> Node)
{
    public static implicit operator JsonNodeValue(string text) => new(text, () => JsonValue.Create(text));

    public static implicit operator JsonNodeValue(bool flag) => new(flag ? "true" : "false", () => JsonValue.Create(flag));
}
