using System.Globalization;
using System.Text.Json.Nodes;

namespace SpecLint.Mutants;

/// <summary>Slips of the hand and of the copy: another system of units, parts exchanged, what was measured before, names that changed.</summary>
internal static partial class Defects
{
    private static IEnumerable<Defect> SystemsOfUnits() =>
    [
        D(101, "°F typed as °C", "SL2033", d => (d.IsDrink || d.IsPrep) && With(d.Lottery.Pick(Temperatures(d)), t => Do(() =>
            t.Of[t.Name] = Draft.Say(Math.Round((Draft.Amount(t.Of, t.Name).Value * 9 / 5) + 32), "°C")))),
        D(102, "a card in ounces typed as millilitres", "SL2036 SL3006", d => d.IsDrink
            && d.In("ml").Count > 1
            && d.In("ml").Sum(l => Draft.Amount(l).Value) >= 60
            && d.Lines.All(l => Draft.Amount(l).Unit is "ml" or "dash" or "dashes")
            && Do(() =>
        {
            foreach (var line in d.In("ml")) line["amount"] = Ounces(line);
        })),
        D(
            103,
            "one amount in ounces typed as millilitres",
            "SL2037 SL2036 SL3001 SL3002 SL3003 SL3004 SL3006 SL3015 SL3016",
            d => d.IsDrink
                && d.In("ml").Count > 1
                && With(
                    d.Pick(d.In("ml").Where(l => Draft.Amount(l).Value >= 22 && Draft.Amount(l).Value <= 90)),
                    l => Do(() => l["amount"] = Ounces(l)))),
        D(
            104,
            "millilitres typed as ounces",
            "SL2007 SL2036 SL3006",
            d => d.IsDrink
                && With(d.Pick(d.In("ml").Where(l => Draft.Amount(l).Value >= 15)), l => Draft.Set(l, Draft.Amount(l).Value, "oz"))),
        D(
            105,
            "grams typed as kilograms",
            "SL2007 SL2017 SL2018 SL2019 SL2021 SL2022 SL2023 SL4001 SL4002 SL4003 SL4005 SL4008 SL4009 SL4010 SL4011 SL4018 SL5004 "
                + "SL5033 SL8018 SL8021 SL8029",
            d => d.IsPrep && d.In("g").Count > 1 && With(d.Pick(d.In("g")), l => Draft.Set(l, Draft.Amount(l).Value, "kg"))),
    ];

    private static IEnumerable<Defect> Exchanges() =>
    [
        D(
            106,
            "the amounts of two parts exchanged",
            "SL2007 SL2023 SL2005 SL2037 SL3001 SL3002 SL3003 SL3004 SL3006 SL3015 SL3016 SL3026 SL3027",
            d => d.IsDrink
                && d.Lottery.Pick(Pairs(d)) is ({ } a, { } b)
                && Do(() => (a["amount"], b["amount"]) = (Draft.Text(b, "amount"), Draft.Text(a, "amount")))),
        D(107, "the amounts of two parts of a preparation exchanged", "SL2017 SL2018 SL2019 SL2021 SL2022 SL4001 SL4002 SL4003 SL4005 "
            + "SL4008 SL4009 SL4010 SL4011 SL4015 SL4018 SL4021 SL5004 SL5033", d => d.IsPrep
            && Weighed(d)
            && (d.Root["target"] is not null || d.Root["measured"] is not null || d.Lines.Any(l => l["share"] is not null))
            && d.Lottery.Pick(PrepPairs(d)) is ({ } a, { } b) && Do(() => (a["amount"], b["amount"]) = (Draft.Text(b, "amount"), Draft.Text(a, "amount")))),
        D(
            108,
            "readings of an earlier version",
            "SL5033 SL5004 SL4001 SL4002 SL4003",
            d => d.IsPrep
                && d.Root["measured"] is JsonObject m
                && m["of"] is not null
                && With(
                    d.Pick(d.In("g").Where(l => Draft.Amount(l).Value >= 5)),
                    l => Do(() => Draft.Scale(l, d.Lottery.Below(2) == 0 ? d.Lottery.Between(0.5, 0.85) : d.Lottery.Between(1.2, 2))))),
        D(109, "a preparation renamed, and not in what uses it", "SL9001 SL9026", d => (d.IsDrink || d.IsPrep)
            && With(d.Pick(d.Lines.Where(l => House(d, l) is not null)), l => Do(() =>
        {
            // The file gets the new name; what uses it keeps the old one, cut to the words that a catalogue would have.
            var house = House(d, l)!;
            string[] words = house.Id.Split('-');
            if (words.Length > 2 && d.Lottery.Below(2) == 0) d.Rename(l, string.Join('-', words[1..]));
            else d.Rename(l, d.Lottery.Pick(["old-", "house-", "our-"]) + house.Id);
        }))),
        D(110, "a stand-in of other acids", "SL4021", d => d.IsPrep
            && d.Root["target"] is JsonObject t
            && Draft.Text(t, "standsInFor") is { } stands
            && d.Lottery.Pick(OtherAcids(stands)) is { } acid
            && AcidLines(d) is { Count: > 0 } lines
            && Do(() =>
        {
            // The same total, of one acid.
            double grams = lines.Sum(l => Draft.Amount(l).Value);
            foreach (var line in lines.Skip(1)) d.Remove(line);
            d.Rename(lines[0], acid);
            Draft.Set(lines[0], grams, "g");
            foreach (var line in d.Lines) line.Remove("share");
        })),
    ];

    private static IEnumerable<Defect> Makings() =>
    [
        D(111, "a reduction without a yield", "SL4012", d => d.IsPrep
            && d.Root["batchOf"] is null
            && d.In("g").Count + d.In("ml").Count > 0
            && d.Lines.Any(l => d.KindOf(l) is "water" or "juice" or "sugar" or "wine" or "puree" or "vinegar")
            && d.Sort is not ("dried" or "ferment")
            && Do(() =>
        {
            d.Root.Remove("yield");
            d.Root.Remove("portions");
            d.Root.Remove("measured");
            d.Root.Remove("target");
            var step = new JsonObject { ["do"] = d.Lottery.Pick(["reduce", "cook-down", "reduce"]) };
            if (d.Lottery.Below(2) == 0) step["for"] = $"{10 + d.Lottery.Below(40)} min";
            else step["to"] = $"{60 + (5 * d.Lottery.Below(8))} °C";
            (d.Root["method"] as JsonArray)?.Insert(0, step);
            foreach (var other in d.Steps.Where(s => s["until"] is not null)) other.Remove("until");
        })),
        D(112, "a yield that lost a digit", "SL8029 SL5004 SL5033 SL4001 SL4002 SL4003", d => d.IsPrep
            && d.Lines.Count > 0
            && d.Lines.All(l => Draft.Amount(l).Unit is "g" or "ml")
            && Draft.Amount(d.Root, "yield").Unit is "g" or "ml"
            && d.Sort is not ("ferment" or "dried" or "foam" or "flavoured-salt")
            && Do(() =>
        {
            d.Root.Remove("portions");
            Draft.Scale(d.Root, d.Lottery.Pick([0.1, 0.33, 0.4]), "yield");
        })),
        D(113, "minutes for seconds, hours for minutes", "SL2034 SL3022 SL2033 SL5029", d => (d.IsDrink || d.IsPrep)
            && With(d.Lottery.Pick(Times(d)), t => Do(() =>
        {
            var (value, unit) = Draft.Amount(t.Of, t.Name);
            t.Of[t.Name] = Draft.Say(value, unit switch { "s" => "min", "min" => "h", _ => "s" });
        }))),
        D(114, "a digit more in a time or a temperature", "SL2033 SL2034 SL3022", d => (d.IsDrink || d.IsPrep)
            && With(d.Lottery.Pick([.. Temperatures(d), .. Times(d).Where(t => Draft.Amount(t.Of, t.Name).Unit == "s")]), t => Do(() =>
        {
            var (value, unit) = Draft.Amount(t.Of, t.Name);
            t.Of[t.Name] = Draft.Say(value * 10, unit);
        }))),
        D(
            115,
            "ten or a hundred serves over the amounts of one",
            "SL2036",
            d => d.IsDrink
                && d.In("ml").Sum(l => Draft.Amount(l).Value) is >= 40 and < 250
                && d.Lines.All(l => Draft.Amount(l).Unit != "")
                && Do(() => d.Root["serves"] = d.Lottery.Pick([10, 20, 100]))),
        D(116, "psi typed as bar", "SL2035 SL8022", d => d.Sort is "stirred" or "built-short" or "highball"
            && d.AddBatch("carbonated", 10, 1.4) is { } b
            && Do(() =>
        {
            ((JsonArray)b["method"]!).Add(new JsonObject { ["do"] = "carbonate", ["at"] = "3 °C" });
            b["target"] = new JsonObject { ["pressure"] = Draft.Say(15 + d.Lottery.Below(25), "bar") };
            b["keep"] = new JsonObject { ["at"] = "4 °C", ["in"] = "keg", ["for"] = "1 d" };
        })),
    ];

    private sealed record Number(JsonObject Of, string Name);

    /// <summary>Temperatures over freezing of steps and of where it is kept; room temperature, which is the same word in both systems, aside.</summary>
    private static List<Number> Temperatures(Draft d)
    {
        var found = new List<Number>();
        foreach (var step in d.Steps)
        {
            foreach (string name in new[] { "to", "at" })
            {
                // What a step cools down to is any temperature below the one before.
                if (Draft.Text(step, "do") is "cool" or "cool-down" or "rest" or "hold") continue;
                if (Draft.Amount(step, name) is { Unit: "°C", Value: >= 40 or (> 0 and < 10) }) found.Add(new Number(step, name));
            }
        }

        if (d.Root["keep"] is JsonObject keep && Draft.Amount(keep, "at") is { Unit: "°C", Value: > 0 }) found.Add(new Number(keep, "at"));
        return found;
    }

    /// <summary>Times of the steps that make one drink, in seconds, and of boiling, blending and drying.</summary>
    private static List<Number> Times(Draft d) =>
        [.. d.Steps.Where(s => Draft.Amount(s, "for") is { Unit: "s", Value: >= 5 }
            || (Draft.Amount(s, "for") is { Unit: "h", Value: >= 1 } && Draft.Text(s, "do") is "dry" or "ferment" or "sous-vide" or "age"))
            .Select(s => new Number(s, "for"))];

    /// <summary>The figure of an ounce jigger under the unit millilitres: 30 ml an ounce, in quarters.</summary>
    private static string Ounces(JsonObject line) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Max(0.25, Math.Round(Draft.Amount(line).Value / 7.5) / 4):0.##} ml");

    /// <summary>Parts of different kinds whose amounts differ by half and more.</summary>
    private static List<(JsonObject A, JsonObject B)> Pairs(Draft d)
    {
        var found = new List<(JsonObject, JsonObject)>();
        var lines = d.In("ml").Where(l => Role(d, l).Length > 0).ToList();
        foreach (var a in lines)
        {
            foreach (var b in lines.Where(b => Role(d, a) != Role(d, b)
                && Draft.Amount(a).Value >= 1.9 * Draft.Amount(b).Value
                && Draft.Amount(a).Value >= 30))
                found.Add((a, b));
        }

        return found;
    }

    private static string Role(Draft d, JsonObject line) => d.KindOf(line) switch
    {
        "spirit" => "strong",
        "juice" when d.Acid(line) > 0.035 => "sour",
        "syrup" or "cordial" or "sweetener" => "sweet",
        _ => "",
    };

    private static bool Weighed(Draft d) => d.Lines.All(l => Draft.Amount(l).Unit == "g");

    private static List<(JsonObject A, JsonObject B)> PrepPairs(Draft d)
    {
        var found = new List<(JsonObject, JsonObject)>();
        foreach (var a in d.Lines)
        {
            foreach (var b in d.Lines.Where(b => Draft.Amount(a).Value >= 1.5 * Draft.Amount(b).Value && Draft.Amount(b).Value >= 1)) found.Add((a, b));
        }

        return found;
    }

    private static List<JsonObject> AcidLines(Draft d) => [.. d.In("g").Where(l => Draft.Item(l) is "citric-acid" or "malic-acid" or "tartaric-acid")];

    /// <summary>Acids of which the juice holds next to none.</summary>
    private static string[] OtherAcids(string juice) =>
        juice is "lime-juice" or "lemon-juice" or "grapefruit-juice"
            ? ["malic-acid", "tartaric-acid", "lactic-acid-powder"]
            : juice.StartsWith("apple", StringComparison.Ordinal) ? ["citric-acid", "tartaric-acid"] : ["lactic-acid-powder"];

    private static CleanFile? House(Draft d, JsonObject line) =>
        d.File.Book.Find(Draft.Item(line)) is { Path: var p } house && p.EndsWith(".prep.json", StringComparison.Ordinal) ? house : null;
}
