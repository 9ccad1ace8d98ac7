using System.Text.Json.Nodes;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Files of a bar's own of every kind, with and without what they may say (how sour, how strong, how wet, whether they need cold, what
/// they are of), each bottled at room temperature by itself or in water. What they must have, nobody says here: the properties hold them
/// against themselves under worse conditions and with less said.
/// </summary>
internal static class OwnFiles
{
    private static readonly string[] Kinds =
    [
        "spirit", "liqueur", "vermouth", "fortified-wine", "wine", "beer", "cider", "bitters", "juice", "puree", "fruit", "vegetable", "herb", "spice", "flower", "sugar", "syrup",
        "honey", "acid", "salt", "saline", "dairy", "egg", "plant-milk", "fat", "nut", "seed", "gum", "preservative", "colour", "soda", "tonic", "coffee", "tea",
        "ferment", "vinegar", "garnish", "sauce", "other",
    ];

    private static readonly string[] States = ["liquid", "solid", "powder"];
    private static readonly double?[] Acidities = [null, 3.2, 4.4, 5.8];
    private static readonly int?[] Waters = [null, 20, 55, 88];
    private static readonly int?[] Strengths = [null, null, 12, 28];
    private static readonly bool?[] Colds = [null, true, false];
    private static readonly string?[] Animals = [null, "none", "milk", "egg"];
    private static readonly string?[] Contains = [null, null, "milk", "almond"];

    public static IEnumerable<PropertyBook> Books()
    {
        var random = new Random(5);
        foreach (string kind in Kinds)
        {
            for (int i = 0; i < 2; i++)
            {
                var own = new JsonObject { ["name"] = "House thing", ["kind"] = kind, ["state"] = PropertySteps.Pick(random, States), ["per"] = "100 g" };
                if (PropertySteps.Pick(random, Acidities) is { } ph) own["ph"] = ph;
                if (PropertySteps.Pick(random, Waters) is { } water) own["water"] = $"{water} g";
                if (PropertySteps.Pick(random, Strengths) is { } strength && own["ph"] is null) own["strength"] = $"{strength} % vol";
                if (PropertySteps.Pick(random, Colds) is { } cold) own["keepsCold"] = cold;
                if (PropertySteps.Pick(random, Animals) is { } animal) own["animal"] = animal;
                if (PropertySteps.Pick(random, Contains) is { } token) own["allergens"] = new JsonObject { ["contains"] = new JsonArray(token) };
                var lines = new JsonArray(Line("house-thing", "300 g"));
                if (random.Next(2) == 0) lines.Add(Line("water", "200 g"));
                if (random.Next(4) == 0) lines.Add(Line("white-sugar", "150 g"));
                if (random.Next(4) == 0) lines.Add(Line("citric-acid", "5 g"));
                if (random.Next(4) == 0) lines.Add(Line("vodka", "100 g"));
                var prep = new JsonObject
                {
                    ["name"] = "House bottle",
                    ["ingredients"] = lines,
                    ["method"] = new JsonArray(new JsonObject { ["do"] = PropertySteps.Pick(random, ["stir", "strain", "blend"]) }),
                    ["keep"] = new JsonObject
                    {
                        ["at"] = PropertySteps.Pick(random, ["4 °C", "20 °C"]),
                        ["in"] = "bottle",
                        ["sealed"] = random.Next(2) == 0,
                        ["for"] = PropertySteps.Pick(random, ["2 d", "6 d", "30 d"]),
                    },
                };
                yield return PropertyBook.Of(
                    $"own: {kind} {i + 1}",
                    [("house-thing.ingredient.json", own.ToJsonString()), ("house-bottle.prep.json", prep.ToJsonString())])!;
            }
        }
    }

    private static JsonObject Line(string item, string amount) => new() { ["item"] = item, ["amount"] = amount };
}
