using System.Text.Json.Nodes;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Books of <c>hidden.json</c> in which a hazard is hard to see: behind a file of the bar's own, a kind, a family word, a layer of
/// preparation, a unit, a note, or what nobody wrote. Each says which findings it must have at least, or that it must have no other.
/// </summary>
internal static class HiddenHazards
{
    public static IEnumerable<PropertyBook> Books()
    {
        foreach (var one in JsonNode.Parse(File.ReadAllText(Repository.At("tests", "SpecLint.Tests", "Properties", "hidden.json")))!
            .AsArray()
            .OfType<JsonObject>())
        {
            yield return PropertyBook.Of($"hidden: {one["name"]}", one["files"]!.AsObject().Select(f => (f.Key, f.Value!.ToJsonString())))! with
            {
                Expected = [.. one["expect"]!
                    .AsArray()
                    .Select(e => e!.GetValue<string>().Split(' '))
                    .Select(e => (e[0], Enum.Parse<Level>(e[1], ignoreCase: true)))],
                IsWhole = one["whole"] is not null,
            };
        }
    }
}
