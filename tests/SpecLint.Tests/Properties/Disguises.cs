using System.Text.Json;
using System.Text.Json.Nodes;
using SpecLint.Catalogue;

namespace SpecLint.Tests.Properties;

/// <summary>Ways to write the same thing so that it is harder to see.</summary>
internal static class Disguises
{
    private static readonly ILookup<string, string> Aliases = JsonSerializer.Deserialize<Dictionary<string, string>>(File.ReadAllText(Repository.At("src", "SpecLint", "Catalogue", "aliases.json")))!.ToLookup(a => a.Value, a => a.Key, StringComparer.Ordinal);

    /// <summary>One of them, on a line of a recipe.</summary>
    public static PropertyStep? Any(Random random, PropertyBook book)
    {
        string path = PropertySteps.Pick(
            random,
            [.. book.Paths.Where(p => p.EndsWith(".prep.json", StringComparison.Ordinal)
                || p.EndsWith(".drink.json", StringComparison.Ordinal))]);
        if (path.Length == 0) return null;
        int line = random.Next(8);
        return random.Next(12) switch
        {
            0 => PropertySteps.Wrap(path, line),
            1 => Twice(path, line, PropertySteps.Wrap),
            2 => Like(path, line),
            3 => Twice(path, line, Like),
            4 => Alias(path, line, random.Next(50)),
            5 => Beside(path, line, "garnish"),
            6 => Beside(path, line, "rim"),
            7 => Note(path, line, random.Next(2) == 0, book),
            8 => ByProduct(path, line),
            9 => Split(path, line),
            10 => Copied(path, line),
            _ => Twice(path, line, (p, l) => random.Next(2) == 0 ? Like(p, l) : PropertySteps.Wrap(p, l)),
        };
    }

    /// <summary>One of those that leave the thing itself in its line, and its kind in its file.</summary>
    public static PropertyStep? OfFigures(Random random, PropertyBook book)
    {
        string path = PropertySteps.Pick(
            random,
            [.. book.Paths.Where(p => p.EndsWith(".prep.json", StringComparison.Ordinal)
                || p.EndsWith(".drink.json", StringComparison.Ordinal))]);
        if (path.Length == 0) return null;
        int line = random.Next(8);
        return random.Next(5) switch
        {
            0 => PropertySteps.Wrap(path, line) with { Path = path, Touches = ["wrap"] },
            1 => Like(path, line),
            2 => Alias(path, line, random.Next(50)),
            3 => Copied(path, line),
            _ => Split(path, line),
        };
    }

    /// <summary>The same line twice with half of it each.</summary>
    private static PropertyStep Split(string path, int line) => On(path, line, "in two halves", (_, one, _) =>
    {
        if (!PropertySteps.ScaleLine(one, 0.5)) return false;
        ((JsonArray)one.Parent!).Add(one.DeepClone());
        return true;
    })
    with
    { Touches = ["split"] };

    private static PropertyStep Like(string path, int line) => On(path, line, "by an own file", (book, one, id) =>
    {
        if (book[$"{id}.prep.json"] is not null || (BuiltInCatalogue.FindItem(id) is null && book[$"{id}.ingredient.json"] is null)) return false;

        // A by-product goes before an item of the catalogue of its name, which the file would be like.
        if (book.Paths.Any(p => book[p]?["byProducts"] is JsonArray all && all.Any(b => (string?)b?["id"] == id))) return false;
        string own = $"house-{id}";

        // A file of that name says something else already.
        if (book[$"{own}.ingredient.json"] is not null) return false;
        book.Put($"{own}.ingredient.json", new JsonObject { ["name"] = "House thing", ["like"] = id });
        one["item"] = own;
        return true;
    });

    /// <summary>By a file of the bar's own that says the same as the catalogue.</summary>
    private static PropertyStep Copied(string path, int line) => On(path, line, "by an own file that says the same", (book, one, id) =>
    {
        if (book[$"{id}.prep.json"] is not null || book[$"{id}.ingredient.json"] is not null || BuiltInCatalogue.SourceOf(id) is not { } source) return false;
        if (JsonNode.Parse(
            source.Utf8.Span, null, new JsonDocumentOptions
            {
                CommentHandling = JsonCommentHandling.Skip,
                AllowTrailingCommas = true,
            }) is not JsonObject same)
            return false;
        same.Remove("aliases");

        // A note in a bar's own file says where it comes from.
        same.Remove("notes");
        book.Put($"our-{id}.ingredient.json", same);
        one["item"] = $"our-{id}";
        return true;
    });

    private static PropertyStep Alias(string path, int line, int which) => On(path, line, "by another name", (book, one, id) =>
    {
        string[] names = [.. Aliases[id].Order(StringComparer.Ordinal)];
        if (names.Length == 0 || book[$"{id}.ingredient.json"] is not null || book[$"{id}.prep.json"] is not null) return false;
        one["item"] = names[which % names.Length];
        return true;
    });

    /// <summary>What is left of making another preparation of it alone.</summary>
    private static PropertyStep ByProduct(string path, int line) => On(path, line, "as a by-product", (book, one, id) =>
    {
        if (book[$"pressed-{id}.prep.json"] is not null) return false;
        book.Put($"pressed-{id}.prep.json", new JsonObject
        {
            ["name"] = $"Pressed {id}",
            ["ingredients"] = new JsonArray(new JsonObject { ["item"] = id, ["amount"] = "100 g" }),
            ["method"] = new JsonArray(new JsonObject { ["do"] = "strain" }),
            ["yield"] = "50 g",
            ["keep"] = new JsonObject { ["at"] = "4 °C", ["in"] = "bottle", ["for"] = "1 d" },
            ["byProducts"] = new JsonArray(new JsonObject { ["id"] = $"rest-of-{id}", ["amount"] = "50 g" }),
        });
        one["item"] = $"rest-of-{id}";
        return true;
    })
    with
    { Touches = ["by-product"] };

    /// <summary>On the glass instead of in it.</summary>
    private static PropertyStep Beside(string path, int line, string list) => On(path, line, $"in the {list}", (book, one, _) =>
    {
        if (!path.EndsWith(".drink.json", StringComparison.Ordinal)) return false;
        if (book[path]![list] is not JsonArray there) book[path]![list] = there = [];
        one.Parent!.AsArray().Remove(one);
        foreach (string name in one.Select(p => p.Key).Where(n => n is not ("item" or "amount")).ToList()) one.Remove(name);
        there.Add(one);
        return true;
    })
    with
    { Touches = ["beside"] };

    /// <summary>In words instead of a line: on the recipe, or on its last step.</summary>
    private static PropertyStep? Note(
        string path, int line, bool ofStep, PropertyBook of) =>
            ItemOf(of, path, line) is not { } named ? null : On(path, line, $"in a note{(ofStep ? " of a step" : "")}", (book, one, id) =>
    {
        var recipe = book[path]!;

        // Of a thing in two lines the other stays.
        if (PropertySteps.References(recipe).Count(r => r.Id == id) > 1) return false;
        string text = $"Add {(one["amount"] is JsonValue amount && amount.TryGetValue(out string? much) ? $"{much} of " : "")}{id.Replace('-', ' ')} at the end.";
        if (ofStep)
        {
            if (recipe["method"] is not JsonArray { Count: > 0 } steps || steps[^1] is not JsonObject last) return false;
            last["note"] = text;
        }
        else
        {
            recipe["notes"] = text;
        }

        one.Parent!.AsArray().Remove(one);
        return true;
    })
    with
            { Touches = ["note", named] };

    private static PropertyStep Twice(string path, int line, Func<string, int, PropertyStep> step)
    {
        PropertyStep first = step(path, line), second = step(path, line);
        return new($"{first.Words}, and again", book => first.Apply(book) && second.Apply(book));
    }

    private static string? ItemOf(PropertyBook book, string path, int line) =>
        book[path]?["ingredients"] is JsonArray lines
            && lines.Count > 0
            && lines[line % lines.Count] is JsonObject one
            && one["item"] is JsonValue item
            && item.TryGetValue(out string? id)
            ? id
            : null;

    private static PropertyStep On(
        string path, int line, string words, Func<PropertyBook, JsonObject, string, bool> apply) =>
            new($"{path}: line {line + 1} {words}", book =>
    {
        if (ItemOf(book, path, line) is not { } id || book[path]!["ingredients"] is not JsonArray lines) return false;
        var one = (JsonObject)lines[line % lines.Count]!;
        if (!apply(book, one, id)) return false;
        if ((string?)one["item"] is { } renamed && renamed != id) PropertySteps.RenameInSteps(book[path]!, id, renamed);
        return true;
    })
            { Path = path };
}
