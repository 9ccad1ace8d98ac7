using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Mutants;

/// <summary>A copy of a file to put a mistake into, with the files that the mistake adds.</summary>
internal sealed partial class Draft(CleanFile file, Lottery lottery)
{
    private JsonObject? bar;

    /// <summary>The file it is a copy of.</summary>
    public CleanFile File => file;

    /// <summary>The copy.</summary>
    public JsonObject Root { get; } = (JsonObject)file.Root.DeepClone();

    /// <summary>The bar's file, where the mistake is there; a copy from the first use on.</summary>
    public JsonObject Bar => bar ??= (JsonObject)file.Book.Bar.DeepClone();

    /// <summary>The bar's file if it was changed.</summary>
    public JsonObject? ChangedBar => bar;

    /// <summary>Further files.</summary>
    public Dictionary<string, JsonObject> Added { get; } = new(StringComparer.Ordinal);

    /// <summary>Random numbers.</summary>
    public Lottery Lottery => lottery;

    /// <summary>Kinds of file.</summary>
    public bool IsDrink => file.Path.EndsWith(".drink.json", StringComparison.Ordinal);

    /// <summary>A preparation.</summary>
    public bool IsPrep => file.Path.EndsWith(".prep.json", StringComparison.Ordinal);

    /// <summary>A bar's own ingredient.</summary>
    public bool IsIngredient => file.Path.EndsWith(".ingredient.json", StringComparison.Ordinal);

    /// <summary>A menu.</summary>
    public bool IsMenu => file.Path.EndsWith(".menu.json", StringComparison.Ordinal);

    /// <summary>The stock.</summary>
    public bool IsStock => file.Path.EndsWith(".stock.json", StringComparison.Ordinal);

    /// <summary>Style of a drink, family of a preparation.</summary>
    public string Sort => Text(Root, "style") ?? Text(Root, "family") ?? "";

    /// <summary>The lines.</summary>
    public List<JsonObject> Lines => Objects("ingredients");

    /// <summary>The garnish.</summary>
    public List<JsonObject> Garnish => Objects("garnish");

    /// <summary>The steps.</summary>
    public List<JsonObject> Steps => Objects("method");

    /// <summary>The objects of a list.</summary>
    public List<JsonObject> Objects(string name) => Root[name] is JsonArray list ? [.. list.OfType<JsonObject>()] : [];

    /// <summary>The lines of a kind.</summary>
    public List<JsonObject> Of(params string[] kinds) => [.. Lines.Where(l => kinds.Contains(KindOf(l)))];

    /// <summary>One of some lines; null where there is none.</summary>
    public JsonObject? Pick(IEnumerable<JsonObject> of) => lottery.Pick(of.ToList());

    /// <summary>A text property.</summary>
    public static string? Text(JsonObject of, string name) => of[name] is JsonValue v && v.TryGetValue(out string? text) ? text : null;

    /// <summary>The item of a line.</summary>
    public static string Item(JsonObject line) => Text(line, "item") ?? "";

    /// <summary>What a line is of.</summary>
    public Material? Material(JsonObject line) => file.Book.MaterialOf(Item(line));

    /// <summary>Kind of ingredient or family of preparation.</summary>
    public string KindOf(JsonObject line) => Material(line)?.Kind.Id ?? "";

    /// <summary>Number and unit of an amount; NaN where it is neither.</summary>
    public static (double Value, string Unit) Amount(JsonObject line, string name = "amount")
    {
        var match = AmountPattern().Match(Text(line, name) ?? "");
        return match.Success ? (double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture), match.Groups[2].Value) : (double.NaN, "");
    }

    /// <summary>Lines in a unit.</summary>
    public List<JsonObject> In(string unit) => [.. Lines.Where(l => Amount(l).Unit == unit)];

    /// <summary>Writes an amount.</summary>
    public static string Say(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(value, value < 1 ? 3 : 1):0.###} {unit}");

    /// <summary>Sets an amount.</summary>
    public static bool Set(JsonObject line, double value, string unit, string name = "amount")
    {
        line[name] = Say(value, unit);
        return true;
    }

    /// <summary>Multiplies an amount.</summary>
    public static void Scale(JsonObject line, double factor, string name = "amount")
    {
        var (value, unit) = Amount(line, name);
        if (!double.IsNaN(value)) Set(line, value * factor, unit, name);
    }

    /// <summary>Grams of sugar in a gram.</summary>
    public double Sugar(JsonObject line) => Material(line) is { } m
        ? m.Of(Component.Sucrose) + m.Of(Component.Glucose) + m.Of(Component.Fructose) + m.Of(Component.Maltose) : 0;

    /// <summary>Grams of acid in a gram.</summary>
    public double Acid(JsonObject line) => Material(line) is { } m
        ? m.Of(Component.Citric) + m.Of(Component.Malic) + m.Of(Component.Tartaric) + m.Of(Component.Lactic) : 0;

    /// <summary>Grams of ethanol in a gram.</summary>
    public double Ethanol(JsonObject line) => Material(line)?.Of(Component.Ethanol) ?? 0;

    /// <summary>Powder or piece.</summary>
    public bool IsDry(JsonObject line) => Material(line)?.State is MaterialState.Powder or MaterialState.Solid;

    /// <summary>Something that fizzes.</summary>
    public bool IsSparkling(JsonObject line) => KindOf(line) is "soda" or "sparkling-wine" or "tonic" || Material(line)?.Of(Component.CarbonDioxide) > 0;

    /// <summary>Puts another item in the place of one, also in the method.</summary>
    public bool Rename(JsonObject line, string item)
    {
        string old = Item(line);
        line["item"] = item;
        foreach (var step in Steps)
        {
            if (step["items"] is not JsonArray items) continue;
            for (int i = 0; i < items.Count; i++)
            {
                if ((string?)items[i] == old) items[i] = item;
            }
        }

        return true;
    }

    /// <summary>Takes a line out, also of the method.</summary>
    public void Remove(JsonObject line)
    {
        string old = Item(line);
        ((JsonArray)Root["ingredients"]!).Remove(line);
        foreach (var step in Steps)
        {
            if (step["items"] is not JsonArray items) continue;
            for (int i = items.Count - 1; i >= 0; i--)
            {
                if ((string?)items[i] == old) items.RemoveAt(i);
            }

            if (items.Count == 0) step.Remove("items");
        }
    }

    /// <summary>Adds a line, and to the first step that lists what it uses.</summary>
    public bool AddLine(string item, string amount)
    {
        ((JsonArray)Root["ingredients"]!).Add(new JsonObject { ["item"] = item, ["amount"] = amount });
        if (Steps.Select(s => s["items"]).OfType<JsonArray>().FirstOrDefault() is { } items) items.Add(item);
        return true;
    }

    /// <summary>Adds a file.</summary>
    public JsonObject Add(string path, string json)
    {
        var root = CleanBook.Parse(json);
        Added.Add(path, root);
        return root;
    }

    /// <summary>Adds a preparation of some lines that stands in a drink in the place of a line.</summary>
    public JsonObject AddPrep(JsonObject line, string id, string family, string lines, string yield, string rest)
    {
        Rename(line, id);
        return Add($"{id}.prep.json", $$"""
            {
              "name": "{{char.ToUpperInvariant(id[0])}}{{id[1..].Replace('-', ' ')}}",
              "family": "{{family}}",
              "ingredients": [ {{lines}} ],
              "method": [ { "do": "stir", "until": "dissolved" }, { "do": "fine-strain", "into": "bottle" }, { "do": "chill", "to": "4 °C" } ],
              "yield": "{{yield}}",
              {{rest}}
              "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" },
              "declares": { "allergens": [] },
              "author": "Nora Kinsella", "date": "2026-11-02", "revision": "1", "source": "House recipe"
            }
            """);
    }

    /// <summary>
    /// Adds a batch of the drink: all lines times a number, dashes in millilitres, water where it is wanted. Null where a line has no
    /// number.
    /// </summary>
    public JsonObject? AddBatch(string family, int of, double waterShare)
    {
        if (!IsDrink
            || Lines.Count < 2
            || Lines.Any(l => Amount(l).Unit is not ("ml" or "dash" or "dashes" or "drops" or "drop"))
            || Lines.Any(IsSparkling))
            return null;
        var lines = new JsonArray();
        double sum = 0;
        foreach (var line in Lines)
        {
            var (value, unit) = Amount(line);
            double millilitres = of * value * (unit == "ml" ? 1 : unit.StartsWith("dash", StringComparison.Ordinal) ? 0.8 : 0.05);
            sum += millilitres;
            lines.Add(new JsonObject { ["item"] = Item(line), ["amount"] = Say(millilitres, "ml") });
        }

        if (waterShare > 0) lines.Add(new JsonObject { ["item"] = "water", ["amount"] = Say(sum * waterShare, "ml") });
        var batch = Add($"{file.Id}-house-bottle.prep.json", $$"""
            {
              "name": "{{Text(Root, "name")}}, house bottle",
              "family": "{{family}}",
              "batchOf": "{{file.Id}}",
              "ingredients": [],
              "method": [ { "do": "stir" }, { "do": "funnel", "into": "bottle" } ],
              "yield": "{{Say(sum * (1 + waterShare) * 0.985, "ml")}}",
              "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" },
              "declares": {},
              "author": "Nora Kinsella", "date": "2026-11-02", "revision": "1", "source": "House recipe"
            }
            """);
        batch["ingredients"] = lines;
        batch["declares"] = new JsonObject { ["allergens"] = Root["declares"]?["allergens"]?.DeepClone() ?? new JsonArray() };
        return batch;
    }

    [GeneratedRegex(@"^([0-9.]+) (\S.*)$", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex AmountPattern();
}
