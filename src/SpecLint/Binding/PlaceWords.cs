using System.Globalization;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Binding;

/// <summary>Names places of a recipe in words.</summary>
internal static class PlaceName
{
    /// <summary>A value, from itself outwards: <c>`amount` of ingredient 3 (lime-juice)</c>.</summary>
    public static string Of(JsonNode node) => PlaceWords.Describe(node);
}

/// <summary>Names places of a recipe in words: <c>`amount` of ingredient 3 (lime-juice)</c>.</summary>
internal static class PlaceWords
{
    private static readonly Lazy<Dictionary<string, List<(FileKind Kind, string Noun)>>> Homes = new(FindHomes);

    /// <summary>A value, from itself outwards.</summary>
    public static string Describe(JsonNode node)
    {
        if (!node.Parent.Exists) return "the file";
        string words = "";
        while (node.Parent.Exists)
        {
            string part = PartOf(node, out bool takesList);
            words = words.Length == 0 ? part : words + " of " + part;
            node = takesList ? node.Parent.Parent : node.Parent;
        }

        return words;
    }

    /// <summary>A property of an object, whether it is there or not.</summary>
    public static string Describe(JsonNode owner, string property) =>
        owner.Parent.Exists ? $"`{property}` of {Describe(owner)}" : $"`{property}`";

    /// <summary>What a value is, with an article.</summary>
    public static string KindOf(JsonNode node) => node.Kind switch
    {
        JsonKind.Object => "an object",
        JsonKind.Array => "a list",
        JsonKind.String => "a text",
        JsonKind.Number => "the number " + ShortText.Of(node.GetString()),
        JsonKind.True => "true",
        JsonKind.False => "false",
        _ => "null",
    };

    /// <summary>What a dimension measures, with an article.</summary>
    public static string Of(Dimension dimension) => dimension switch
    {
        Dimension.Volume => "a volume",
        Dimension.Mass => "a mass",
        Dimension.Count => "a number of pieces",
        Dimension.Temperature => "a temperature",
        Dimension.Duration => "a length of time",
        Dimension.PercentByMass => "a percentage by mass",
        Dimension.PercentMassInVolume => "a mass in a volume",
        Dimension.PercentByVolume => "a percentage by volume",
        Dimension.PercentOfUnknownBasis => "a percentage",
        Dimension.Density => "a density",
        Dimension.Pressure => "a pressure",
        Dimension.Energy => "an energy",
        Dimension.Brix => "a value in °Brix",
        Dimension.Proof => "a strength in proof",
        Dimension.Part => "a number of parts",
        _ => "a bare number",
    };

    /// <summary>Where a property belongs that stands in the wrong place: nouns of objects, those of the same kind of file first.</summary>
    public static IReadOnlyList<string> HomesOf(string property, FileKind kind)
    {
        if (!Homes.Value.TryGetValue(property, out var homes)) return [];
        var own = homes.Where(home => home.Kind == kind).Select(home => home.Noun).Distinct(StringComparer.Ordinal).ToList();
        return own.Count > 0 ? own : homes.Select(home => home.Noun).Distinct(StringComparer.Ordinal).ToList();
    }

    private static string PartOf(JsonNode node, out bool takesList)
    {
        takesList = false;
        if (node.HasName) return $"`{ShortText.Of(node.Name)}`";
        string number = node.Position.ToString(CultureInfo.InvariantCulture);
        string list = node.Parent.Name;
        if (node.Kind != JsonKind.Object
            && list is not ("ingredients" or "garnish" or "rim" or "method" or "drinks" or "lots" or "byProducts"))
            return "item " + number;
        string? noun = list switch
        {
            "ingredients" => "ingredient",
            "garnish" => "garnish",
            "rim" => "rim",
            "method" => "step",
            "byProducts" => "by-product",
            "accept" => "acceptance",
            "drinks" => "drink",
            "lots" => "lot",
            "prices" => "price",
            "frozen" => "time in the freezer",
            "exempt" => "exemption",
            _ => null,
        };
        if (noun is null) return "item " + number;
        takesList = true;
        string? key = node.Kind == JsonKind.Object ? JsonPath.KeyOf(node) : null;
        return string.IsNullOrEmpty(key) ? $"{noun} {number}" : $"{noun} {number} ({ShortText.Of(key!)})";
    }

    private static Dictionary<string, List<(FileKind Kind, string Noun)>> FindHomes()
    {
        var homes = new Dictionary<string, List<(FileKind, string)>>(StringComparer.Ordinal);
        FileKind[] kinds =
            [FileKind.Drink, FileKind.Prep, FileKind.Ingredient, FileKind.Menu, FileKind.Stock, FileKind.Prices, FileKind.Bar];
        foreach (FileKind kind in kinds) Visit(FileShapes.Of(kind), kind, homes);
        return homes;
    }

    private static void Visit(ObjectShape shape, FileKind kind, Dictionary<string, List<(FileKind, string)>> homes)
    {
        foreach (var property in shape.All)
        {
            if (!homes.TryGetValue(property.Name, out var list)) homes.Add(property.Name, list = []);
            list.Add((kind, shape.Noun));
            var inner = property.Value;
            while (inner.Item is not null && inner.Form is ValueForm.List or ValueForm.Map) inner = inner.Item;
            if (inner is { Form: ValueForm.Object or ValueForm.WordOrObject, Object: { } next }) Visit(next, kind, homes);
        }
    }
}
