using System.Text;

namespace SpecLint.Reading;

/// <summary>Paths by names instead of numbers.</summary>
internal static class JsonPath
{
    private const int LongestName = 60;
    private const int MostCompared = 1000;

    public static string Of(JsonNode node)
    {
        if (!node.Exists) return "";
        var parts = new List<string>();
        for (; node.Parent.Exists; node = node.Parent)
            parts.Add(node.HasName ? NameOf(node) : "[" + ItemName(node) + "]");
        if (parts.Count == 0) return "";
        var path = new StringBuilder();
        for (int i = parts.Count - 1; i >= 0; i--)
        {
            if (path.Length > 0 && parts[i][0] != '[') path.Append('.');
            path.Append(parts[i]);
        }

        return path.ToString();
    }

    /// <summary>The text by which people know an item of a list, or <see langword="null"/>.</summary>
    public static string? KeyOf(JsonNode item)
    {
        if (item.Kind == JsonKind.String) return Shorten(item.GetString());
        if (item.Kind != JsonKind.Object) return null;
        // Nearly always the first property: ask for it before the others.
        foreach (var property in item.Properties)
        {
            if (property.Kind == JsonKind.String && property.NameEquals("item"u8)) return Shorten(property.GetString());
        }

        JsonNode found;
        bool any = item.TryGetProperty("drink"u8, out found) || item.TryGetProperty("id"u8, out found)
            || item.TryGetProperty("rule"u8, out found) || item.TryGetProperty("do"u8, out found)
            || item.TryGetProperty("allergen"u8, out found);
        return any && found.Kind == JsonKind.String ? Shorten(found.GetString()) : null;
    }

    private static string ItemName(JsonNode item)
    {
        string? key = KeyOf(item);
        if (string.IsNullOrEmpty(key)) return item.Position.ToString(System.Globalization.CultureInfo.InvariantCulture);
        if (item.Position > MostCompared) return key + "#" + item.Position.ToString(System.Globalization.CultureInfo.InvariantCulture);
        int same = 1;
        for (var before = item.Parent.FirstChild; before.Exists && before.Index != item.Index; before = before.Next)
        {
            if (KeyOf(before) == key) same++;
        }

        return same == 1 ? key! : key + "#" + same.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }

    private static string NameOf(JsonNode property)
    {
        string name = Shorten(property.Name);
        return name.Length == 0 ? "\"\"" : name;
    }

    private static string Shorten(string name) => name.Length <= LongestName ? name : name.Substring(0, LongestName) + "…";
}
