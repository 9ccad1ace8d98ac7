namespace SpecLint.Tests.Properties;

/// <summary>Preparations that have made people ill, or could: what a bar makes from what the trade tells it.</summary>
internal static class HazardousPreps
{
    private static readonly (string Name, string Family, string Parts, string Method, string Keep)[] Table =
    [
        ("garlic-oil", "other", "olive-oil 500 g; garlic 60 g", "steep 24 h", "20 °C sealed 30 d"),
        ("herb-oil", "other", "olive-oil 500 g; basil 80 g", "blend 0", "4 °C sealed 30 d"),
        ("pooled-whites", "other", "egg-white 500 g", "strain 0", "4 °C open 4 d"),
        ("custard-base", "other", "egg-yolk 100 g; whole-milk 500 g; white-sugar 100 g", "stir 0", "4 °C open 10 d"),
        ("nut-milk", "other", "almond 100 g; water 400 g", "blend 0", "4 °C open 10 d"),
        ("date-nut-milk", "syrup", "almond 100 g; water 400 g; white-sugar 40 g", "blend 0", "4 °C open 30 d"),
        ("sealed-celery", "juice", "celery-juice 1000 g", "strain 0", "20 °C sealed 30 d"),
        ("carrot-in-two", "juice", "carrot-juice 500 g; cucumber-juice 500 g", "strain 0", "20 °C sealed 30 d"),
        ("melon-water", "juice", "watermelon-juice 800 g", "strain 0", "4 °C open 12 d"),
        ("milk-syrup", "syrup", "whole-milk 500 g; white-sugar 300 g", "stir 0", "20 °C open 14 d"),
        ("cream-shelf", "other", "cream 500 g; vodka 50 g", "stir 0", "20 °C sealed 60 d"),
        ("thin-syrup", "syrup", "white-sugar 300 g; water 600 g", "stir 0", "20 °C open 60 d"),
        ("weak-cordial", "cordial", "elderflower 50 g; white-sugar 300 g; water 600 g; citric-acid 1 g", "steep 24 h", "20 °C sealed 90 d"),
        ("sealed-ferment", "ferment", "pineapple 500 g; water 1000 g; white-sugar 100 g", "ferment 72 h", "20 °C sealed 30 d"),
        ("vacuum-fruit", "other", "strawberry 500 g; white-sugar 20 g", "stir 0", "4 °C sealed 21 d"),
        ("tomato-water", "other", "tomato 800 g", "strain 0", "10 °C open 5 d"),
        ("aquafaba-foam", "other", "aquafaba 300 g; white-sugar 30 g", "stir 0", "4 °C open 9 d"),
        ("coconut-cream", "other", "coconut-cream 400 g; white-sugar 100 g", "stir 0", "20 °C open 20 d"),
    ];

    /// <summary>One book each: the preparation, and a drink that holds it.</summary>
    public static IEnumerable<PropertyBook> Books()
    {
        foreach (var (name, family, parts, method, keep) in Table)
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
            yield return PropertyBook.Of($"hazard: {name}", [($"{name}.prep.json", prep), ("sluice.drink.json", drink)])!;
        }
    }
}
