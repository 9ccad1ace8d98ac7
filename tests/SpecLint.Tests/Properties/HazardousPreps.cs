
namespace SpecLint.Tests.Properties;

/// <summary>Preparations that have made people ill, or could: what a bar makes from what the trade tells it, with the finding that each must have.</summary>
internal static class HazardousPreps
{
    private static readonly (string Name, string Family, string Parts, string Method, string Keep, string Rule, Level Level)[] Table =
    [
        ("garlic-oil", "other", "olive-oil 500 g; garlic 60 g", "steep 24 h", "20 °C sealed 30 d", "SL5016", Level.Error),
        ("herb-oil", "other", "olive-oil 500 g; basil 80 g", "blend 0", "4 °C sealed 30 d", "SL5016", Level.Error),
        ("pooled-whites", "other", "egg-white 500 g", "strain 0", "4 °C open 4 d", "SL5018", Level.Error),
        ("custard-base", "other", "egg-yolk 100 g; whole-milk 500 g; white-sugar 100 g", "stir 0", "4 °C open 10 d", "SL5018", Level.Error),
        ("nut-milk", "other", "almond 100 g; water 400 g", "blend 0", "4 °C open 10 d", "SL5001", Level.Warning),
        ("date-nut-milk", "syrup", "almond 100 g; water 400 g; white-sugar 40 g", "blend 0", "4 °C open 30 d", "SL5001", Level.Error),
        ("sealed-celery", "juice", "celery-juice 1000 g", "strain 0", "20 °C sealed 30 d", "SL5013", Level.Error),
        ("carrot-in-two", "juice", "carrot-juice 500 g; cucumber-juice 500 g", "strain 0", "20 °C sealed 30 d", "SL5013", Level.Error),
        ("melon-water", "juice", "watermelon-juice 800 g", "strain 0", "4 °C open 12 d", "SL5013", Level.Error),
        ("milk-syrup", "syrup", "whole-milk 500 g; white-sugar 300 g", "stir 0", "20 °C open 14 d", "SL5005", Level.Error),
        ("cream-shelf", "other", "cream 500 g; vodka 50 g", "stir 0", "20 °C sealed 60 d", "SL5005", Level.Error),
        ("thin-syrup", "syrup", "white-sugar 300 g; water 600 g", "stir 0", "20 °C open 60 d", "SL5025", Level.Error),
        ("weak-cordial", "cordial", "elderflower 50 g; white-sugar 300 g; water 600 g; citric-acid 1 g", "steep 24 h", "20 °C sealed 90 d", "SL5005", Level.Warning),
        ("sealed-ferment", "ferment", "pineapple 500 g; water 1000 g; white-sugar 100 g", "ferment 72 h", "20 °C sealed 30 d", "SL5026", Level.Error),
        ("vacuum-fruit", "other", "strawberry 500 g; white-sugar 20 g", "stir 0", "4 °C sealed 21 d", "SL5002", Level.Warning),
        ("tomato-water", "other", "tomato 800 g", "strain 0", "10 °C open 5 d", "SL5005", Level.Error),
        ("aquafaba-foam", "other", "aquafaba 300 g; white-sugar 30 g", "stir 0", "4 °C open 9 d", "SL5001", Level.Warning),
        ("coconut-base", "other", "coconut-cream 400 g; white-sugar 100 g", "stir 0", "20 °C open 20 d", "SL5005", Level.Error),
        ("mushroom-stock", "other", "shiitake 30 g; water 1000 g", "simmer 30 min", "20 °C sealed 30 d", "SL5005", Level.Error),
        ("rice-water", "other", "rice 200 g; water 1000 g", "boil 20 min", "20 °C sealed 14 d", "SL5005", Level.Error),
        ("oat-milk", "other", "oats 100 g; water 1000 g", "blend 0", "20 °C sealed 30 d", "SL5005", Level.Error),
        ("soy-milk", "other", "soybean 100 g; water 1000 g", "boil 20 min", "20 °C sealed 30 d", "SL5005", Level.Error),
        ("chickpea-broth", "other", "chickpeas 200 g; water 800 g", "boil 60 min", "20 °C sealed 30 d", "SL5005", Level.Error),
        ("boiled-pearls", "other", "tapioca-pearls 200 g; water 800 g", "boil 30 min", "20 °C open 3 d", "SL5005", Level.Error),
        ("kombu-stock", "other", "kombu 20 g; water 1000 g", "steep 12 h", "20 °C sealed 30 d", "SL5005", Level.Error),
        ("cold-brew", "other", "coffee-beans 100 g; water 1000 g", "steep 16 h", "20 °C sealed 365 d", "SL5005", Level.Error),
        ("black-tea", "other", "black-tea-leaves 20 g; water 1000 g", "steep 10 min", "20 °C sealed 30 d", "SL5005", Level.Error),
        ("squeezed-lime", "juice", "lime 1000 g", "press 0", "20 °C open 60 d", "SL5005", Level.Warning),
    ];

    /// <summary>One book each: the preparation, and a drink that holds it.</summary>
    public static IEnumerable<PropertyBook> Books()
    {
        foreach (var (name, family, parts, method, keep, rule, level) in Table)
        {
            var lines = parts.Split("; ").Select(p => p.Split(' ', 2)).Select(p => $$"""{ "item": "{{p[0]}}", "amount": "{{p[1]}}" }""");
            string[] step = method.Split(' ', 2), kept = keep.Split(' ');
            string time = step[1] == "0" ? "" : $", \"for\": \"{step[1]}\"";
            string prep = $$"""
                { "name": "{{name}}", "family": "{{family}}", "ingredients": [ {{string.Join(", ", lines)}} ], "method": [ { "do": "{{step[0]}}"{{time}} } ],
                  "keep": { "at": "{{kept[0]}} {{kept[1]}}", "in": "bottle", "sealed": {{(kept[2] == "sealed" ? "true" : "false")}}, "for": "{{kept[3]}} {{kept[4]}}" } }
                """;
            string drink = $$"""
                { "name": "Sluice", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "{{name}}", "amount": "20 ml" } ],
                  "method": [ { "do": "stir", "ice": "cubed", "for": "25 s" }, { "do": "strain" } ], "serves": 1 }
                """;
            yield return PropertyBook.Of($"hazard: {name}", [($"{name}.prep.json", prep), ("sluice.drink.json", drink)])! with { Expected = [(rule, level)] };
        }
    }
}
