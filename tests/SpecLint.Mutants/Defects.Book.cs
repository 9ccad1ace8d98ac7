using System.Text.Json.Nodes;

namespace SpecLint.Mutants;

/// <summary>Keeping, hazards, labels and the book.</summary>
internal static partial class Defects
{
    private static IEnumerable<Defect> Keeping() =>
    [
        D(68, "nothing says how long it keeps", "SL5006 SL1013", d => d.IsPrep && d.Root["keep"] is JsonObject k && IsCold(k) && Do(() =>
        {
            if (d.Lottery.Below(2) == 0) d.Root.Remove("keep");
            else k.Remove("for");
        })),
        D(69, "half a year at room temperature", "SL5001 SL5002 SL5005 SL5007 SL5013 SL5014 SL5016 SL5018 SL5019 SL5020 SL5025 SL5026 SL5027 SL5030 SL5031", d => d.IsPrep && d.Root["keep"] is JsonObject k && IsCold(k) && !IsStrong(d) && Do(() =>
        {
            k["at"] = "20 °C";
            k["for"] = $"{120 + d.Lottery.Below(90)} d";
        })),
        D(70, "fresh citrus juice days old", "SL5007 SL5008 SL5010 SL9015", d => d.IsStock && With(d.Pick(d.Objects("lots").Where(l => Draft.Item(l) is "lime-juice" or "lemon-juice")), l => Do(() =>
        {
            l["made"] = $"2026-11-{18 + d.Lottery.Below(4)}";
            l["useBy"] = $"2026-11-{26 + d.Lottery.Below(4)}";
        }))),
        D(71, "kept longer than its shortest-lived part", "SL5007 SL5001 SL5019", d => d.IsPrep && d.Root["keep"] is JsonObject k && !IsStrong(d) && d.Lines.Any(l => d.KindOf(l) is "juice" or "egg" or "dairy" or "acid-adjusted-juice" || (d.File.Book.Find(Draft.Item(l)) is { IsRecipe: true })) && Do(() => k["for"] = $"{40 + d.Lottery.Below(60)} d")),
        D(72, "raw egg in a bottle", "SL5018", d => d.IsPrep && With(d.Pick(d.Of("egg")), l => d.Rename(l, "egg-white") && Do(() => d.Root["keep"]!["for"] = $"{3 + d.Lottery.Below(5)} d"))),
        D(73, "a milk punch that keeps for ever", "SL5020 SL5030 SL5001", d => d.IsPrep && d.Sort == "milk-wash" && Do(() =>
        {
            d.Root.Remove("measured");
            d.Root["keep"]!["for"] = $"{90 + d.Lottery.Below(200)} d";
            d.Root["notes"] = "Keeps indefinitely.";
        })),
        D(74, "garlic or herbs in oil on the shelf", "SL5016", d => d.IsDrink && d.Garnish.Count > 0 && Do(() =>
        {
            string plant = d.Lottery.Pick(["garlic", "basil", "dill", "red-chilli", "rosemary"])!;
            ((JsonArray)d.Root["garnish"]!).Add(new JsonObject { ["item"] = plant + "-in-oil", ["amount"] = "3 drops" });
            d.Add(plant + "-in-oil.prep.json", $$"""{ "name": "{{char.ToUpperInvariant(plant[0])}}{{plant[1..].Replace('-', ' ')}} in oil", "family": "infusion", "ingredients": [ { "item": "{{d.Lottery.Pick(["olive-oil", "neutral-oil"])}}", "amount": "300 g" }, { "item": "{{plant}}", "amount": "30 g" } ], "method": [ { "do": "crush" } ], "yield": "330 g", "keep": { "at": "20 °C", "in": "bottle", "for": "{{10 + d.Lottery.Below(40)}} d" }, "declares": { "allergens": [] }, "author": "Nora Kinsella", "date": "2026-11-02", "revision": "1", "source": "House recipe" }""");
        })),
        D(75, "drying by the clock alone", "SL5022", d => d.IsPrep && d.Steps.Any(s => Draft.Text(s, "do") == "dry") && Do(() =>
        {
            foreach (var step in d.Steps.Where(s => Draft.Text(s, "do") == "dry"))
            {
                step.Remove("until");
                step["for"] = $"{3 + d.Lottery.Below(6)} h";
                step["at"] = $"{45 + (5 * d.Lottery.Below(4))} °C";
            }

            d.Root.Remove("target");
            d.Root.Remove("measured");
        })),
        D(76, "a ferment without pH or end", "SL5026 SL5015", d => d.IsPrep && d.Sort == "ferment" && Do(() =>
        {
            d.Root.Remove("measured");
            if (d.Lottery.Below(2) == 0) d.Root.Remove("target");
            foreach (var step in d.Steps.Where(s => Draft.Text(s, "do") == "ferment")) step.Remove("until");
        })),
        D(77, "a restricted or toxic plant", "SL6001 SL6002 SL6003 SL6004 SL6005 SL6006 SL6007 SL6008 SL6009 SL6010 SL6011", d => d.IsDrink && Do(() =>
        {
            var (item, amount) = d.Lottery.Pick([("tonka-bean", "0.5 g"), ("calamus", "1 g"), ("activated-charcoal", "1 g"), ("cinchona-bark", "2 g"), ("sassafras", "1 g"), ("foxglove", "1 piece"), ("oleander", "1 piece"), ("lily-of-the-valley", "1 piece"), ("tobacco-leaf", "0.5 g"), ("bitter-almond", "3 g"), ("apricot-kernel", "5 g"), ("wintergreen-oil", "3 drops"), ("pennyroyal", "2 g"), ("comfrey", "2 g"), ("nutmeg", "6 g")]);
            if (amount.EndsWith("piece", StringComparison.Ordinal))
            {
                if (d.Root["garnish"] is not JsonArray garnish) d.Root["garnish"] = garnish = [];
                garnish.Add(new JsonObject { ["item"] = item, ["amount"] = amount });
            }
            else
            {
                d.AddLine(item, amount);
            }
        })),
        D(78, "a large pan of milk and sugar left to cool on the bench", "SL5021", d => d.IsDrink && With(d.Pick(d.Lines.Where(l => Draft.Item(l) is "simple-syrup" or "rich-syrup-2-1" or "agave-syrup-1-1")), l => Do(() =>
        {
            string milk = d.Lottery.Pick(["whole-milk", "oat-milk", "almond-milk", "coconut-milk"])!;
            var prep = d.AddPrep(l, "sweet-milk", "syrup", $$"""{ "item": "{{milk}}", "amount": "{{5 + d.Lottery.Below(8)}} l" }, { "item": "white-sugar", "amount": "500 g" }""", "5 l", "");
            prep["method"] = new JsonArray(new JsonObject { ["do"] = d.Lottery.Pick(["heat", "simmer"]), ["to"] = "90 °C", ["for"] = "10 min" }, new JsonObject { ["do"] = "funnel", ["into"] = "bottle" });
        }))),
        D(79, "a lot past its day", "SL9015", d => d.IsStock && With(d.Pick(d.Objects("lots").Where(l => l["made"] is not null && l["useBy"] is not null)), l => Do(() =>
        {
            l["made"] = $"2026-10-{10 + d.Lottery.Below(15)}";
            l["useBy"] = $"2026-11-{10 + d.Lottery.Below(14)}";
        }))),
        D(80, "dairy, egg or fat on the shelf", "SL5005 SL5001 SL5012 SL5018 SL5019 SL5020 SL5031", d => d.IsPrep
            ? d.Lines.Any(l => d.KindOf(l) is "dairy" or "egg" or "plant-milk" or "gel") && d.Root["keep"] is JsonObject k && IsCold(k) && Do(() => k["at"] = "20 °C")
            : d.IsStock && With(d.Pick(d.Objects("lots").Where(l => d.KindOf(l) is "dairy" or "egg" or "foam" or "juice")), l => Do(() => l["at"] = "20 °C"))),
    ];

    private static IEnumerable<Defect> Labels() =>
    [
        D(81, "an allergen missing from the list", "SL7001 SL7002", d => d.Root["declares"]?["allergens"] is JsonArray { Count: > 0 } a && Do(() => a.RemoveAt(d.Lottery.Below(a.Count)))),
        // Left out (LeftOut): an ingredient whose allergen the drink declares already hides nothing.
        D(82, "an ingredient with a hidden allergen", "SL7001 SL7004 SL7008", d => d.IsDrink && With(d.Lottery.Pick(Hidden.Where(h => !Declares(d, h.Allergen)).ToList()), h => d.AddLine(h.Item, "5 ml"))),
        D(83, "milk forgotten after clarifying or washing", "SL7001 SL7016", d => (d.IsDrink || d.IsPrep) && d.Root["declares"] is JsonObject declares && declares["allergens"] is JsonArray a && a.Any(x => (string?)x == "milk") && d.Lines.All(l => d.KindOf(l) != "dairy" || d.IsPrep) && (d.Lottery.Below(2) == 0
            ? Do(() => a.RemoveAt(a.ToList().FindIndex(x => (string?)x == "milk")))
            : Do(() => declares["claims"] = new JsonArray("dairy-free")))),
        D(84, "called fresh, and is not", "SL7024 SL9011 SL9012", d => d.IsMenu
            ? With(d.Pick(d.Objects("drinks").Where(e => d.File.Book.Find(Draft.Text(e, "drink") ?? "") is { } drink && !drink.Root.ToJsonString().Contains("lime", StringComparison.Ordinal))), e => Do(() => e["words"] = Draft.Text(e, "words") + ", fresh lime"))
            : d.IsDrink && d.Root["declares"] is JsonObject declares && With(d.Pick(d.Lines.Where(l => Draft.Item(l) is "lime-juice" or "lemon-juice")), l => d.Rename(l, Draft.Item(l) + "-bottled") && Do(() => declares["claims"] = new JsonArray("fresh")))),
        D(85, "called house-made, and is bought", "SL7025", d => d.IsMenu && With(d.Pick(d.Objects("drinks").Where(e => Bought(d, e) is not null)), e => Do(() => e["words"] = $"{Draft.Text(e, "words")}, {d.Lottery.Pick(["house-made", "homemade"])} {Bought(d, e)}"))),
        D(86, "a claim that the parts belie", "SL7012 SL7013 SL7014 SL7015 SL7016 SL7017 SL9012", d => d.IsDrink && d.Root["declares"] is JsonObject declares && With(Claim(d), c => Do(() => declares["claims"] = new JsonArray(c)))),
    ];

    private static IEnumerable<Defect> Book() =>
    [
        D(87, "one preparation under two names", "SL9003", d => d.IsPrep && Do(() =>
        {
            var other = (JsonObject)d.Root.DeepClone();
            other["name"] = d.Lottery.Pick(["Quay ", "Old ", "Pier "]) + Draft.Text(d.Root, "name");
            other.Remove("byProducts");
            d.Added.Add($"second-{d.File.Id}.prep.json", other);
        })),
        D(88, "two formulas under one name", "SL9004", d => d.IsPrep && d.Lines.Count > 1 && Do(() =>
        {
            var other = (JsonObject)d.Root.DeepClone();
            other.Remove("byProducts");
            foreach (string name in new[] { "target", "measured", "portions" }) other.Remove(name);
            var line = (JsonObject)d.Lottery.Pick(((JsonArray)other["ingredients"]!).ToList())!;
            Draft.Scale(line, d.Lottery.Below(2) == 0 ? 0.6 : 1.5);
            foreach (var each in ((JsonArray)other["ingredients"]!).OfType<JsonObject>()) each.Remove("share");
            d.Added.Add($"second-{d.File.Id}.prep.json", other);
        })),
        D(89, "a reference that leads nowhere", "SL9001", d => (d.IsDrink || d.IsPrep) && With(d.Pick(d.Lines), l => d.Rename(l, Misspelt(d, Draft.Item(l))))),
        D(90, "preparations made of each other", "SL9002 SL1027", d => d.IsPrep && With(d.Pick(d.Lines.Where(l => d.File.Book.Find(Draft.Item(l)) is { Path: var p } && p.EndsWith(".prep.json", StringComparison.Ordinal))), l => Do(() =>
        {
            var below = d.File.Book.Find(Draft.Item(l))!;
            var changed = (JsonObject)below.Root.DeepClone();
            ((JsonArray)changed["ingredients"]!).Add(new JsonObject { ["item"] = d.File.Id, ["amount"] = "10 g" });
            d.Added.Add(below.Path, changed);
        }))),
        D(91, "a preparation that another has superseded", "SL9006", d => d.IsDrink && With(d.Pick(d.Lines.Where(l => d.File.Book.Find(Draft.Item(l)) is { Path: var p } && p.EndsWith(".prep.json", StringComparison.Ordinal))), l => Do(() =>
        {
            var newer = (JsonObject)d.File.Book.Find(Draft.Item(l))!.Root.DeepClone();
            newer["name"] = Draft.Text(newer, "name") + ", second version";
            newer["supersedes"] = Draft.Item(l);
            Draft.Scale((JsonObject)newer["ingredients"]![0]!, 1.03);
            newer.Remove("byProducts");
            d.Added.Add($"{Draft.Item(l)}-second.prep.json", newer);
        }))),
        D(92, "no author, date or revision", "SL1013", d => (d.IsDrink || d.IsPrep) && d.File.Book.Bar["asks"] is not null && d.Root.Remove(d.Lottery.Pick(["author", "date", "revision"])!)),
        // Left out (LeftOut): a batch of a drink on the menu is used by serving it: a second one is a bottle of another size, not forgotten.
        D(93, "a preparation that nothing uses", "SL9008", d => d.IsPrep && d.Root["batchOf"] is null && d.Lines.Count > 1 && d.File.Book.Find("evening") is not null && Do(() =>
        {
            var other = (JsonObject)d.Root.DeepClone();
            other["name"] = "Forgotten " + Draft.Text(d.Root, "name");
            foreach (string name in new[] { "target", "measured", "portions", "byProducts" }) other.Remove(name);
            Draft.Scale((JsonObject)((JsonArray)other["ingredients"]!)[0]!, 1.3);
            d.Added.Add($"forgotten-{d.File.Id}.prep.json", other);
            d.Added.Add("evening.menu.json", (JsonObject)d.File.Book.Find("evening")!.Root.DeepClone());
        })),
        D(95, "one drink under two names", "SL3018", d => d.IsDrink && d.In("ml").Count > 1 && Do(() =>
        {
            var other = (JsonObject)d.Root.DeepClone();
            other["name"] = "Second " + Draft.Text(d.Root, "name");
            foreach (var line in ((JsonArray)other["ingredients"]!).OfType<JsonObject>().Where(l => Draft.Amount(l).Unit == "ml")) Draft.Scale(line, 1.05);
            d.Added.Add($"second-{d.File.Id}.drink.json", other);
        })),
        D(97, "a text with another amount than the line", "SL1014", d => (d.IsDrink || d.IsPrep) && With(d.Pick(d.Lines.Where(l => Draft.Amount(l).Unit is "ml" or "g")), l => Do(() =>
        {
            string text = $"{Draft.Say(Draft.Amount(l).Value * d.Lottery.Pick([0.5, 0.8, 1.25, 2]), Draft.Amount(l).Unit)} {Draft.Item(l).Replace('-', ' ')}";
            if (d.Lottery.Below(2) == 0) d.Root["notes"] = $"Measure {text}.";
            else d.Steps[0]["note"] = $"with {text}";
        }))),
        D(98, "an ingredient that the method never uses", "SL1016", d => (d.IsDrink || d.IsPrep) && d.Steps.Count(s => s["items"] is JsonArray { Count: > 1 }) == 1 && d.Steps.Where(s => s["items"] is JsonArray).Sum(s => ((JsonArray)s["items"]!).Count) == d.Lines.Count && With(d.Pick(d.Steps.Where(s => s["items"] is JsonArray { Count: > 1 })), s => Do(() => ((JsonArray)s["items"]!).RemoveAt(d.Lottery.Below(((JsonArray)s["items"]!).Count))))),
        D(99, "steps in an order in which they cannot be done", "SL1018", d => d.IsDrink && d.Steps.Count >= 2 && Draft.Text(d.Steps[0], "do") is "shake" or "stir" && Do(() =>
        {
            var method = (JsonArray)d.Root["method"]!;
            var first = method[0];
            method.RemoveAt(0);
            method.Add(first);
        })),
    ];

    private static readonly Hiding[] Hidden =
    [
        new("orgeat", "almond"), new("falernum-syrup", "almond"), new("almond-bitters", "almond"), new("worcestershire-sauce", "fish"), new("black-walnut-bitters", "walnut"), new("egg-white-powder", "egg"),
        new("hazelnut-liqueur", "hazelnut"), new("celery-bitters", "celery"), new("cream-liqueur", "milk"), new("soy-lecithin", "soybean"), new("macadamia-syrup", "macadamia"),
    ];

    private sealed record Hiding(string Item, string Allergen);

    private static bool Declares(Draft d, string allergen) => d.Root["declares"]?["allergens"] is JsonArray list && list.Any(x => (string?)x == allergen);

    /// <summary>Whether its alcohol keeps what is in it: from 20 % vol nothing spoils it.</summary>
    private static bool IsStrong(Draft d) => d.File.Book.Whole.Book.Recipes.FirstOrDefault(r => r.Id == d.File.Id) is { } recipe && d.File.Book.Profiles.Of(recipe).Get(Vocabulary.Fact.Abv) is { IsKnown: true, Value: > 20 };

    private static bool IsCold(JsonObject keep) => Draft.Amount(keep, "at").Value <= 8 && Draft.Amount(keep, "at").Value > -5;

    private static string? Bought(Draft d, JsonObject entry)
    {
        if (d.File.Book.Find(Draft.Text(entry, "drink") ?? "") is not { } drink) return null;
        foreach (var line in ((JsonArray)drink.Root["ingredients"]!).OfType<JsonObject>())
        {
            if (d.File.Book.Find(Draft.Item(line))?.IsRecipe != true && d.KindOf(line) is "vermouth" or "liqueur" or "bitters" or "tonic" or "soda" && d.File.Book.Find(Draft.Item(line)) is null) return Draft.Item(line).Replace('-', ' ');
        }

        return null;
    }

    private static string? Claim(Draft d)
    {
        var claims = new List<string>();
        if (d.Lines.Any(l => d.Ethanol(l) > 0.2 && Draft.Amount(l).Value >= 20)) claims.Add("alcohol-free");
        if (d.Of("egg", "dairy", "honey").Count > 0) claims.Add("vegan");
        if (d.Of("dairy").Count > 0) claims.Add("dairy-free");
        if (d.Lines.Any(l => d.Sugar(l) > 0.3 && Draft.Amount(l).Value >= 10)) claims.Add("sugar-free");
        return d.Lottery.Pick(claims);
    }
}
