namespace SpecLint.Tool.Tests.Support;

/// <summary>A book of a drink or two, to which a test adds what it is about.</summary>
internal static class SmallBook
{
    public const string Bar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"] }""";

    /// <summary>A drink that names an item which is nowhere: rule SL9001, an error, on line 4.</summary>
    public const string Broken = """
        {
          "name": "Mudflat",
          "ingredients": [
            { "item": "no-such-thing", "amount": "45 ml" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ],
          "glass": "coupe"
        }
        """;

    public static TestFolder WithBroken()
    {
        var folder = new TestFolder();
        folder.Write("bar.json", Bar);
        folder.Write("mudflat.drink.json", Broken);
        return folder;
    }
}
