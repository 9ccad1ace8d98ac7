using System.Text.Json.Nodes;
using SpecLint.Science;

namespace SpecLint.Mutants;

/// <summary>Units, amounts and shares.</summary>
internal static partial class Defects
{
    private static IEnumerable<Defect> Amounts() =>
    [
        D(
            1,
            "ounces on sugar, acid or salt",
            "SL2003 SL2004",
            d => d.IsPrep
                && With(
                    d.Pick(d.In("g").Where(l => d.IsDry(l) && d.KindOf(l) is "sugar" or "acid" or "salt")),
                    l => Draft.Set(l, 1 + d.Lottery.Below(8), "oz"))),
        D(
            2,
            "a dense liquid in grams in a poured drink",
            "SL2008",
            d => d.IsDrink
                && With(d.Pick(d.In("ml").Where(l => d.Material(l) is { Density: > 1.1 })), l => Draft.Set(l, Draft.Amount(l).Value, "g"))),
        D(3, "ounces of no stated size", "SL2009", d => d.IsDrink && d.In("ml").Count > 1 && Do(() =>
        {
            (d.Bar["measures"] as JsonObject)?.Remove("oz");
            foreach (var line in d.In("ml")) Draft.Set(line, Math.Max(0.25, Math.Round(Draft.Amount(line).Value / 7.5) / 4), "oz");
        })),
        D(
            4,
            "centilitres for millilitres",
            "SL2007 SL3006",
            d => d.IsDrink
                && With(d.Pick(d.In("ml").Where(l => Draft.Amount(l).Value >= 15)), l => Draft.Set(l, Draft.Amount(l).Value, "cl"))),
        D(
            5,
            "a lost unit filled with ounces: bitters, saline, garnish",
            "SL2003 SL2005 SL2006 SL2007 SL2023",
            d => d.IsDrink
                && With(
                    d.Pick(d.Of("bitters", "saline")
                        .Concat(d.Garnish.Where(l => Draft.Amount(l).Unit.StartsWith("piece", StringComparison.Ordinal)))),
                    l => Draft.Set(l, 1, "oz"))),
        D(6, "no unit", "SL2002", d => With(d.Pick(d.Lines.Where(l => Draft.Amount(l).Unit is "ml" or "g")), l => Do(() =>
        {
            double value = Draft.Amount(l).Value;
            l["amount"] = d.Lottery.Below(2) == 0 ? JsonValue.Create(value) : JsonValue.Create(Draft.Say(value, "").Trim());
        }))),
        D(7, "two rows merged into one", "SL2012", d => d.IsDrink && d.In("ml").Count >= 3 && With(d.Pick(d.In("ml").Skip(1)), l => Do(() =>
        {
            var first = d.In("ml")[0];
            d.Remove(l);
            first["item"] = AsItem(d, $"{Draft.Item(first).Replace('-', ' ')} {Draft.Text(l, "amount")} {Draft.Item(l).Replace('-', ' ')}");
        }))),
        D(8, "the amount in the item", "SL2011", d => (d.IsDrink || d.IsPrep) && With(d.Pick(d.Lines.Where(l => Draft.Amount(l).Unit.Length > 0)), l => Do(() =>
        {
            l["item"] = AsItem(d, $"{Draft.Text(l, "amount")} {Draft.Item(l).Replace('-', ' ')}");
            l.Remove("amount");
        }))),
        D(
            9,
            "a word for an amount",
            "SL2030 SL1010",
            d => d.IsDrink
                && With(
                    d.Pick(d.In("ml").Where(l => !d.IsSparkling(l))),
                    l => Do(() => l["amount"] = d.Lottery.Pick<string>(d.File.Book.Bar["measures"]?["splash"] is null
                        ? ["a splash", "to taste", "few drops", "a little"]
                        : ["to taste", "few drops", "a little"])))),
        D(
            11,
            "a tablespoon of something potent",
            "SL2010",
            d => d.IsDrink
                && With(d.Pick(d.Lines.Where(l => d.KindOf(l) == "bitters" || d.Ethanol(l) > 0.48)), l => Draft.Set(l, 1, "tbsp"))),
        D(
            12,
            "a powder by volume",
            "SL2004 SL4016",
            d => d.IsPrep
                && With(
                    d.Pick(d.In("g").Where(l => d.IsDry(l) && d.KindOf(l) is "sugar" or "acid" or "salt")),
                    l => Draft.Set(l, Draft.Amount(l).Value, "ml"))),
        D(
            13,
            "an amount between the marks of the jigger",
            "SL2014",
            d => d.IsDrink
                && d.File.Book.Bar["tools"] is not null
                && With(
                    d.Pick(d.In("ml").Where(l => !d.IsSparkling(l))),
                    l => Draft.Set(l, Draft.Amount(l).Value + 0.7 + (0.1 * d.Lottery.Below(9)), "ml"))),
        D(14, "a weight too small for the scale", "SL2015", d => d.IsPrep && d.File.Book.Bar["tools"] is not null && d.In("g").Any(d.IsDry) && Do(() =>
        {
            double smallest = d.In("g").Where(d.IsDry).Min(l => Draft.Amount(l).Value);
            double factor = d.Lottery.Between(0.15, 0.6) / smallest;
            foreach (var line in d.Lines) Draft.Scale(line, factor);
            Draft.Scale(d.Root, factor, "yield");
            d.Root.Remove("portions");
        })),
        D(
            15,
            "ounces beside millilitres",
            "SL2013",
            d => d.IsDrink
                && d.In("ml").Count > 1
                && With(
                    d.Pick(d.In("ml").Where(l => Draft.Amount(l).Value >= 7.5)),
                    l => Draft.Set(l, Math.Round(Draft.Amount(l).Value / 7.5) / 4, "oz"))),
    ];

    private static IEnumerable<Defect> Shares() =>
    [
        D(
            16,
            "a percentage without a basis",
            "SL2016",
            d => d.IsPrep
                && With(
                    d.Pick(d.Lines.Where(l => l["share"] is not null)),
                    l => Do(() => l["share"] = Draft.Text(l, "share")!.Split('%')[0] + "%"))),
        D(17, "shares of the water, not of the whole", "SL2017 SL2018 SL2019", d => d.IsPrep && d.Lines.Count(l => l["share"] is not null) > 1 && Do(() =>
        {
            double first = Draft.Amount(d.Lines[0]).Value;
            foreach (var line in d.Lines.Skip(1)) line["share"] = Draft.Say(100 * Draft.Amount(line).Value / first, "% w/w");
            d.Lines[0]["share"] = Draft.Say(100 - d.Lines.Skip(1).Sum(l => 100 * Draft.Amount(l).Value / first), "% w/w");
        })),
        D(
            18,
            "shares that are not 100 together",
            "SL2017 SL2018",
            d => d.IsPrep
                && With(
                    d.Pick(d.Lines.Where(l => l["share"] is not null)),
                    l => Do(() => Draft.Scale(l, d.Lottery.Below(2) == 0 ? 1.1 : 0.9, "share")))),
        D(19, "two salines of one name", "SL9004 SL2020", d => d.IsPrep && d.Lines.Any(l => d.KindOf(l) == "salt") && Do(() =>
        {
            var other = (JsonObject)d.Root.DeepClone();
            foreach (var line in ((JsonArray)other["ingredients"]!).OfType<JsonObject>().Where(l => d.KindOf(l) == "salt"))
            {
                Draft.Scale(line, d.Lottery.Between(0.15, 0.6));
                line.Remove("share");
            }

            other.Remove("target");
            other.Remove("measured");
            d.Added.Add("second-saline.prep.json", other);
        })),
        D(
            20,
            "citric acid of no stated form",
            "SL2024",
            d => d.IsPrep
                && With(
                    d.Pick(d.Lines.Where(l => Draft.Item(l) == "citric-acid")),
                    l => d.Rename(l, "pantry-citric")
                        && d.Add(
                            "pantry-citric.ingredient.json",
                            """{ "name": "Citric acid", "kind": "acid", "state": "powder", "acids": { "citric": "100 g" }, "allergens": { "contains": [] } }""") is not null)),
        D(21, "a gum at ten times its dose", "SL2021", d => d.IsPrep
            && d.In("g").Count > 1
            && d.Lines.Any(l => d.KindOf(l) is "water" or "juice" or "plant-milk")
            && Do(() =>
        {
            double mass = d.In("g").Concat(d.In("ml")).Sum(l => Draft.Amount(l).Value);
            var (gum, dose) = d.Lottery.Pick([("agar", 0.002), ("xanthan-gum", 0.002), ("gellan-gum", 0.002), ("guar-gum", 0.003), ("locust-bean-gum", 0.003)]);
            d.AddLine(gum, Draft.Say(10 * dose * mass, "g"));
        })),
        D(22, "a wrong equivalence: ten per cent citric acid called lime", "SL4008 SL4001", d => d.IsDrink
            && With(d.Pick(d.Lines.Where(l => Draft.Item(l) is "lime-juice" or "lemon-juice")), l => d.AddPrep(
            l,
            "sour-water",
            "acid-solution",
            $$"""{ "item": "water", "amount": "{{1000 - (10 * d.Lottery.Pick([3, 8, 10, 12]))}} g" }, { "item": "citric-acid", "amount": "{{10 * d.Lottery.Pick([3, 8, 10, 12])}} g" }""",
            "1000 g",
            $$""" "target": { "standsInFor": "{{(d.Lottery.Below(2) == 0 ? "lime-juice" : "lemon-juice")}}" }, "measured": { "ph": 1.9, "on": "2026-11-24" }, """) is not null)),
        D(30, "a liquid acid counted as pure", "SL2025", d => d.IsPrep
            && With(d.Pick(d.In("g").Where(l => Draft.Item(l) is "citric-acid" or "malic-acid")), l => d.Lottery.Below(2) == 0
            ? d.Rename(l, "pantry-lactic")
                && d.Add(
                    "pantry-lactic.ingredient.json",
                    """{ "name": "Lactic acid 80 %", "kind": "acid", "state": "liquid", "acids": { "lactic": "100 g" }, "allergens": { "contains": [] } }""") is not null
            : d.Rename(l, "lactic-acid-powder") && Do(() => l["note"] = "liquid, 88 %"))),
        D(32, "proof for per cent by volume", "SL2026 SL7009", d => d.IsIngredient
            ? Draft.Amount(d.Root, "strength").Value >= 38 && Draft.Set(d.Root, 2 * Draft.Amount(d.Root, "strength").Value, "% v/v", "strength")
            : d.Root["declares"] is JsonObject declares
                && Draft.Amount(declares, "abv").Value > 5
                && Draft.Set(declares, 2 * Draft.Amount(declares, "abv").Value, "% v/v", "abv")),
    ];

    private static IEnumerable<Defect> AcidAndSugar() =>
    [
        D(23, "an extended juice whose acid has drifted", "SL4009", d => d.IsDrink
            && With(d.Pick(d.Lines.Where(l => Draft.Item(l) == "lime-juice")), l => Do(() =>
        {
            double factor = d.Lottery.Below(2) == 0 ? d.Lottery.Between(0.3, 0.65) : d.Lottery.Between(1.5, 2.2);
            d.AddPrep(
                l,
                "stretched-lime",
                "juice-extension",
                $$"""{ "item": "lime-peel", "amount": "100 g" }, { "item": "citric-acid", "amount": "{{Draft.Say(44 * factor, "g")}}" }, { "item": "malic-acid", "amount": "{{Draft.Say(20 * factor, "g")}}" }, { "item": "water", "amount": "1000 g" }, { "item": "lime-juice", "amount": "500 g" }""",
                "1500 g",
                """ "measured": { "ph": 2.3, "on": "2026-11-24" }, """);
        }))),
        D(24, "acid weighed in as if the juice had none", "SL4018 SL4001", d => d.IsDrink
            && With(d.Pick(d.Lines.Where(l => Draft.Item(l) is "lime-juice" or "lemon-juice")), l => Do(() =>
        {
            string juice = d.Lottery.Pick(["orange-juice", "grapefruit-juice", "pineapple-juice"])!;
            d.AddPrep(
                l,
                "sour-" + juice[..^6],
                "acid-adjusted-juice",
                $$"""{ "item": "{{juice}}", "amount": "940 g" }, { "item": "citric-acid", "amount": "40 g" }, { "item": "malic-acid", "amount": "20 g" }""",
                "1000 g",
                """ "target": { "acid": "6 % w/w" }, "measured": { "ph": 2.3, "on": "2026-11-24" }, """);
        }))),
        D(25, "water or juice after the target was reached", "SL4001 SL4019", d => d.IsPrep && d.Root["target"]?["acid"] is not null && Do(() =>
        {
            string item = d.Lottery.Pick(["distilled-water", "cucumber-juice", "apple-juice", "pear-juice"])!;
            double grams = d.Lottery.Between(150, 400);
            ((JsonArray)d.Root["ingredients"]!).Add(new JsonObject { ["item"] = item, ["amount"] = Draft.Say(grams, "g") });
            ((JsonArray)d.Root["method"]!).Add(new JsonObject { ["do"] = "stir", ["items"] = new JsonArray(item) });
            Draft.Set(d.Root, Draft.Amount(d.Root, "yield").Value + grams, "g", "yield");
        })),
        D(
            26,
            "a syrup without its ratio",
            "SL9001",
            d => With(
                d.Pick(d.Lines.Where(l => Draft.Item(l) is "simple-syrup" or "rich-syrup-2-1")),
                l => d.Rename(l, d.Lottery.Pick(["syrup", "sugar-syrup", "bar-syrup"])!))),
        D(
            27,
            "a syrup by cups: equal volumes of sugar and water",
            "SL4016 SL2004",
            d => d.IsDrink
                && With(
                    d.Pick(d.Lines.Where(l => Draft.Item(l) == "simple-syrup")),
                    l => d.AddPrep(
                        l,
                        "bar-syrup",
                        "syrup",
                        """{ "item": "white-sugar", "amount": "500 ml" }, { "item": "water", "amount": "500 ml" }""",
                        "900 g",
                        "") is not null)),
        D(28, "sugar boiled down to no stated end", "SL4012", d => d.IsPrep
            && d.Lines.Any(l => d.KindOf(l) == "sugar")
            && With(d.Pick(d.Steps.Where(s => Draft.Text(s, "do") is "heat" or "warm")), s => Do(() =>
        {
            s["do"] = d.Lottery.Pick(["boil", "simmer"]);
            s["for"] = $"{5 + d.Lottery.Below(15)} min";
            s.Remove("to");
            s.Remove("until");
            s.Remove("vessel");
            s["items"] = new JsonArray([.. d.Lines.Select(l => JsonValue.Create(Draft.Item(l)))]);
            d.Root.Remove("target");
            d.Root.Remove("yield");
            (d.Root["measured"] as JsonObject)?.Remove("brix");
        }))),
        D(29, "one acid named for another, or for none", "SL9001 SL4001 SL4008 SL4009", d => d.IsPrep
            && With(d.Pick(d.Lines.Where(l => Draft.Item(l) is "citric-acid" or "malic-acid")), l =>
            d.Rename(
                l,
                d.Root["target"]?["acid"] is not null && d.Lottery.Below(2) == 0
                    ? "lactic-acid-80"
                    : d.Lottery.Pick(["citrus-acid", "acid-powder", "sour-salt"])!))),
        D(
            31,
            "°Brix written as grams in 100 ml",
            "SL4017 SL4002",
            d => d.IsPrep
                && d.Root["target"] is JsonObject t
                && Draft.Amount(t, "brix").Value > 20
                && Draft.Set(t, Draft.Amount(t, "brix").Value, "% w/v", "sugar")),
        D(58, "more sugar or salt than dissolves", "SL4010 SL4011", d => d.IsPrep
            && d.Sort is "syrup" or "saline" or "cordial"
            && With(d.Lines.FirstOrDefault(l => d.KindOf(l) is "sugar" or "salt" && Draft.Amount(l).Value >= 100), l => Do(() =>
        {
            double water = d.Lines.Where(x => x != l).Sum(x => Draft.Amount(x).Value * (d.Material(x)?.Of(Component.Water) ?? 0));
            Draft.Set(l, water * (d.KindOf(l) == "salt" ? d.Lottery.Between(0.45, 0.8) : d.Lottery.Between(2.6, 3.5)), "g");
            Draft.Set(d.Root, d.Lines.Sum(x => Draft.Amount(x).Value), "g", "yield");
            d.Root.Remove("target");
            d.Root.Remove("measured");
            foreach (var line in d.Lines) line.Remove("share");
        }))),
    ];
}
