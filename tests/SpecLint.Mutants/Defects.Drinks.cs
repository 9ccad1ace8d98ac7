using System.Text.Json.Nodes;

namespace SpecLint.Mutants;

/// <summary>Strength, balance, batches, glass and service.</summary>
internal static partial class Defects
{
    private static IEnumerable<Defect> Strength() =>
    [
        D(40, "a third to a half more alcohol than the largest limit", "SL3017", d => d.IsDrink
            && d.Of("spirit").Sum(l => Draft.Amount(l).Unit == "ml" ? Draft.Amount(l).Value : 0) >= 40
            && Do(() =>
        {
            // To more than 33 g of ethanol, a tenth over the largest limit in use.
            var spirits = d.Of("spirit").Where(l => Draft.Amount(l).Unit == "ml").ToList();
            double factor = d.Lottery.Between(1.1, 1.5) * 30 / spirits.Sum(l => Draft.Amount(l).Value * d.Material(l)!.Density * d.Ethanol(l));
            foreach (var line in spirits) Draft.Scale(line, factor);
        })),
        D(41, "a declared strength that is not the computed one", "SL7009", d => (d.IsDrink || d.IsPrep)
            && d.Lines.Any(l => d.KindOf(l) is "spirit")
            && d.Root["declares"] is JsonObject declares
            && d.File.Book.Whole.Book.Recipes.FirstOrDefault(r => r.Id == d.File.Id) is { } recipe
            && d.File.Book.Profiles.Of(recipe).Get(Vocabulary.Fact.Abv) is { Value: > 8 } abv
            && Draft.Set(
                declares,
                d.Lottery.Below(2) == 0 ? Math.Round(abv.High + 2 + d.Lottery.Below(4)) : Math.Round(abv.Low - 2 - d.Lottery.Below(3)),
                "% v/v",
                "abv")),
        D(
            44,
            "a drink set alight",
            "SL6016 SL6015",
            d => d.IsDrink
                && d.Of("spirit").Count > 0
                && Do(() => ((JsonArray)d.Root["method"]!).Add(new JsonObject { ["do"] = d.Lottery.Pick(["ignite", "flambe"]) }))),
        D(
            43,
            "spirit simmered",
            "SL6015 SL8024",
            d => d.IsPrep
                && With(
                    d.Pick(d.Of("spirit")),
                    l => Do(() => ((JsonArray)d.Root["method"]!).Insert(
                        0, new JsonObject { ["do"] = "simmer", ["items"] = new JsonArray(Draft.Item(l)), ["for"] = "10 min" })))),
    ];

    private static IEnumerable<Defect> Balance() =>
    [
        D(
            45,
            "a sour without sweetener",
            "SL3015 SL3002 SL3004",
            d => d.IsDrink
                && d.Sort is "shaken-sour" or "egg-white-sour" or "collins" or "fizz"
                && d.Lines.Count(l => d.Sugar(l) > 0.08) == 1
                && With(
                    d.Lines.First(l => d.Sugar(l) > 0.08),
                    l => d.Ethanol(l) < 0.01 && (d.Lottery.Below(2) == 0 ? Draft.Set(l, 2.5, "ml") : Do(() => d.Remove(l))))),
        D(46, "a style that the build is not", "SL3001 SL3002 SL3003 SL3004 SL3008 SL3009 SL3010 SL3012 SL3013 SL3014", d => d.IsDrink
            && d.Sort.Length > 0
            && Do(() => d.Root["style"] = d.Sort switch
        {
            "stirred" or "built-short" or "old-fashioned" => d.Lottery.Pick(["shaken-sour", "collins", "egg-white-sour"]),
            "shaken-sour" or "egg-white-sour" or "shaken-short" => d.Lottery.Pick(["stirred", "collins", "old-fashioned"]),
            _ => d.Lottery.Pick(["stirred", "shaken-sour", "old-fashioned"]),
        })),
        D(
            47,
            "egg white added to a sour as it is",
            "SL3010 SL3011",
            d => d.IsDrink
                && d.Sort is "shaken-sour" or "egg-white-sour"
                && d.Of("egg").Count == 0
                && d.AddLine("egg-white-pasteurised", "30 ml")),
        D(
            48,
            "bitters of a scaled recipe in one drink",
            "SL3020 SL2005",
            d => d.IsDrink
                && With(
                    d.Pick(d.Of("bitters").Where(l => Draft.Amount(l).Unit.StartsWith("dash", StringComparison.Ordinal))),
                    l => Draft.Set(l, 20 + (10 * d.Lottery.Below(3)), "dashes"))),
        D(
            49,
            "orange juice in the place of lime",
            "SL3016 SL3003 SL3004",
            d => d.IsDrink
                && d.Sort is "shaken-sour" or "egg-white-sour" or "collins" or "fizz" or "tiki"
                && d.Lines.Count(l => d.Acid(l) > 0.03) == 1
                && d.Rename(d.Lines.First(l => d.Acid(l) > 0.03), d.Lottery.Pick(["orange-juice", "apple-juice", "pear-juice"])!)),
        D(
            50,
            "soda that does not say which",
            "SL9001",
            d => d.IsDrink
                && With(
                    d.Lines.FirstOrDefault(l => Draft.Item(l) == "soda-water"),
                    l => d.Rename(l, d.Lottery.Pick(["soda", "mixer", "soft-drink"])!))),
        D(
            51,
            "saline in millilitres for drops",
            "SL2023 SL3019",
            d => d.IsDrink && With(d.Pick(d.Of("saline", "salt")), l => Draft.Set(l, 5 + d.Lottery.Below(10), "ml"))),
    ];

    private static IEnumerable<Defect> Batches() =>
    [
        D(34, "a bottle to pour as it is, without water", "SL8011", d => d.IsPrep && d.Sort == "freezer-batch"
            ? With(d.Lines.FirstOrDefault(l => Draft.Item(l) == "water"), l => Do(() => d.Remove(l)))
            : d.Sort is "stirred" or "shaken-short" && d.AddBatch("freezer-batch", 10, 0) is not null),
        D(35, "a bottle with its water that is shaken on ice once more", "SL8012", d => d.Sort is "stirred" or "shaken-sour"
            or "shaken-short"
            && With(d.AddBatch("batch", 10, 0.3), b => Do(() => b["method"] = new JsonArray(
            new JsonObject { ["do"] = d.Sort == "stirred" ? "stir" : "shake", ["ice"] = "cubed" },
            new JsonObject { ["do"] = "strain", ["into"] = "bottle" })))),
        D(
            36,
            "a fifth of water for a shaken drink",
            "SL8013",
            d => d.Sort is "shaken-sour" or "shaken-short" && d.AddBatch("batch", 10, d.Lottery.Between(0.12, 0.2)) is not null),
        D(38, "a freezer bottle that freezes", "SL8009", d => d.Sort == "stirred"
            && d.AddBatch("freezer-batch", 10, d.Lottery.Between(1.2, 2)) is { } b
            && Do(() =>
        {
            b["keep"]!["at"] = "-18 °C";
            ((JsonArray)b["method"]!).Add(new JsonObject { ["do"] = "freeze", ["at"] = "-18 °C", ["for"] = "12 h" });
        })),
        D(
            39,
            "a slush too strong to set",
            "SL8010",
            d => d.Sort is "shaken-sour" or "shaken-short"
                && d.AddBatch("batch", 10, 0.05) is { } b
                && Do(() => ((JsonArray)b["method"]!).Add(new JsonObject
                {
                    ["do"] = d.Lottery.Pick(["slush", "churn"]),
                    ["at"] = "-5 °C",
                }))),
        D(52, "dashes that were not scaled into the batch", "SL8014 SL8016", d => d.IsDrink
            && d.Of("bitters", "saline").Any(l => Draft.Amount(l).Value <= 3)
            && d.AddBatch("batch", 10 + (10 * d.Lottery.Below(3)), 0) is { } b
            && Do(() =>
        {
            var small = d.Of("bitters", "saline").First(l => Draft.Amount(l).Value <= 3);
            foreach (var line in ((JsonArray)b["ingredients"]!).OfType<JsonObject>().Where(l => Draft.Item(l) == Draft.Item(small)))
                line["amount"] = Draft.Text(small, "amount");
        })),
        D(
            53,
            "part of an egg",
            "SL8017",
            d => With(d.Pick(d.Of("egg")), l => d.Rename(l, "egg-white") && Draft.Set(l, 0.3 + (0.1 * d.Lottery.Below(5)), "pieces"))),
        D(
            54,
            "more yield than went in",
            "SL8018",
            d => d.IsPrep
                && Draft.Amount(d.Root, "yield").Unit is "g"
                && !d.Root.ContainsKey("portions")
                && d.Lines.All(l => Draft.Amount(l).Unit == "g")
                && Draft.Set(d.Root, d.Lines.Sum(l => Draft.Amount(l).Value) * d.Lottery.Between(1.15, 1.7), "g", "yield")),
        D(55, "a yield that counts what is strained out", "SL8018 SL8019", d => d.IsPrep
            && Draft.Amount(d.Root, "yield").Unit is "g"
            && d.Lines.All(l => Draft.Amount(l).Unit == "g")
            && d.Steps.Any(s => Draft.Text(s, "do") is "strain" or "fine-strain")
            && d.Lines.Where(l => d.KindOf(l) is "fruit" or "garnish" or "vegetable" or "spice" or "herb" or "tea" or "flower")
                .Sum(l => Draft.Amount(l).Value) > 0.06 * d.Lines.Sum(l => Draft.Amount(l).Value)
            && Draft.Set(d.Root, d.Lines.Sum(l => Draft.Amount(l).Value), "g", "yield")),
        D(
            56,
            "juice by the fruit",
            "SL8025",
            d => d.IsDrink
                && With(
                    d.Pick(d.Lines.Where(l => Draft.Item(l) is "lime-juice" or "lemon-juice" or "orange-juice")),
                    l => Do(() => l["amount"] = d.Lottery.Pick(["1 piece", "0.5 piece", "2 pieces"])))),
        D(57, "portions that do not add up to the yield", "SL8020", d =>
        {
            if (d.IsPrep && d.Root["portions"] is JsonObject p && p["count"] is { } count)
                return Do(() => p["count"] = (int)Math.Ceiling((int)count * d.Lottery.Between(1.3, 2)));
            return d.AddBatch("batch", 10, 0) is { } b
                && Do(() => b["portions"] = new JsonObject
                {
                    ["count"] = 10 + d.Lottery.Pick([4, 6, 10]),
                    ["each"] = Draft.Say(Draft.Amount(b, "yield").Value / 10, "ml"),
                });
        }),
        D(59, "a vessel overfilled", "SL8021", d =>
        {
            if (d.IsPrep)
                return d.Root["keep"] is JsonObject k
                    && Draft.Amount(d.Root, "yield") is var (value, unit)
                    && unit is "ml"
                    && Draft.Set(k, value * d.Lottery.Between(0.6, 0.95), "ml", "capacity");
            return d.AddBatch("batch", 10, 0.2) is { } b
                && Draft.Set((JsonObject)b["keep"]!, Draft.Amount(b, "yield").Value * d.Lottery.Between(0.6, 0.95), "ml", "capacity");
        }),
        D(
            60,
            "one part of a batch scaled by another factor",
            "SL8016",
            d => d.IsDrink
                && d.AddBatch("batch", 10, 0) is { } b
                && Do(() => Draft.Scale(
                    (JsonObject)d.Lottery.Pick(((JsonArray)b["ingredients"]!).Take(2).ToList())!, d.Lottery.Pick([0.5, 0.6, 1.8, 2])))),
    ];

    private static IEnumerable<Defect> Service() =>
    [
        D(61, "more in the glass than it holds", "SL8001 SL8002", d => d.IsDrink && d.Root["glass"] is not null && Served(d) > 95 && Do(() =>
        {
            d.Root["glass"] = "thimble-coupe";
            if (d.Bar["glasses"] is not JsonObject) d.Bar["glasses"] = new JsonObject();
            d.Bar["glasses"]!["thimble-coupe"] = new JsonObject
            {
                ["name"] = "Small coupe",
                ["brim"] = Draft.Say(ServedLeast(d) * d.Lottery.Between(0.6, 0.85), "ml"),
            };
        })),
        D(62, "a stemmed glass hardly filled", "SL8005", d => d.IsDrink
            && d.Sort is "stirred" or "shaken-sour" or "shaken-short"
            && Draft.Text(d.Root, "glass") is "coupe" or "nick-and-nora" or "martini" or "small-coupe"
            && Do(() =>
        {
            d.Root["glass"] = "coupe";
            if (d.Bar["glasses"] is not JsonObject) d.Bar["glasses"] = new JsonObject();
            d.Bar["glasses"]!["coupe"] = new JsonObject { ["name"] = "Wide coupe", ["brim"] = Draft.Say(Served(d) * d.Lottery.Between(2.4, 3.2), "ml") };
        })),
        D(
            63,
            "a glass by its common name alone",
            "SL8003 SL8004",
            d => d.IsDrink
                && d.File.Book.Bar["glasses"] is not null
                && Do(() => d.Root["glass"] = d.Lottery.Pick(["martini", "flute", "hurricane", "coupette"]))),
        D(
            64,
            "no ice in the shaker, or none in the glass",
            "SL8006",
            d => d.IsDrink
                && With(
                    d.Pick(d.Steps.Where(s => Draft.Text(s, "do") is "shake" or "stir" or "build" && s["ice"] is not null)),
                    s => Do(() => s.Remove("ice")))),
        D(
            65,
            "a garnish that is nowhere made or bought",
            "SL9001",
            d => d.IsDrink && With(d.Pick(d.Garnish), l => Do(() => l["item"] = Misspelt(d, Draft.Item(l))))),
        D(66, "fizz in the shaker", "SL8008", d => d.IsDrink
            && d.Steps.FirstOrDefault(s => Draft.Text(s, "do") == "shake") is { } shake
            && With(d.Lines.FirstOrDefault(d.IsSparkling), l => Do(() =>
        {
            if (shake["items"] is JsonArray items) items.Add(Draft.Item(l));
            else shake["items"] = new JsonArray([.. d.Lines.Select(x => JsonValue.Create(Draft.Item(x)))]);
            l.Remove("role");
            if (d.Steps.FirstOrDefault(s => Draft.Text(s, "do") == "top") is { } top) ((JsonArray)d.Root["method"]!).Remove(top);
        }))),
        D(67, "more pressure than the vessel bears", "SL8022", d => d.Sort is "stirred" or "built-short"
            && d.AddBatch("carbonated", 10, 1.4) is { } b
            && Do(() =>
        {
            ((JsonArray)b["method"]!).Add(new JsonObject { ["do"] = "carbonate", ["at"] = "3 °C" });
            b["target"] = new JsonObject { ["pressure"] = Draft.Say(d.Lottery.Between(2, 3.5), "bar") };
            b["keep"] = new JsonObject { ["at"] = "4 °C", ["in"] = "keg", ["for"] = "1 d", ["rating"] = Draft.Say(d.Lottery.Between(0.8, 1.6), "bar") };
        })),
    ];

    private static double Served(Draft d) =>
        d.File.Book.Whole.Book.Recipes.FirstOrDefault(r => r.Id == d.File.Id) is { } recipe
            ? d.File.Book.Profiles.Of(recipe).Get(Vocabulary.Fact.ServedVolume).Value
            : 0;

    private static double ServedLeast(Draft d) =>
        d.File.Book.Whole.Book.Recipes.FirstOrDefault(r => r.Id == d.File.Id) is { } recipe
            ? d.File.Book.Profiles.Of(recipe).Get(Vocabulary.Fact.ServedVolume).Low
            : 0;

    private static string Misspelt(Draft d, string id)
    {
        int at = 1 + d.Lottery.Below(Math.Max(1, id.Length - 2));
        string wrong = id.Remove(at, 1);
        return d.File.Book.MaterialOf(wrong) is null && d.File.Book.Find(wrong) is null ? wrong : id + "x";
    }
}
