using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.Changes;

/// <summary>Writes readings into the text of a recipe or of a lot, stamped with the fingerprint of the recipe that was measured.</summary>
internal static class ReadingRecorder
{
    /// <summary>
    /// The file of a recipe with new readings. Those of another day, or of the recipe before a change, make way for them; what
    /// else the file says stays as it is, comments and layout included.
    /// </summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="book">Its book.</param>
    /// <param name="values">The readings: properties of <c>measured</c> with their values as JSON.</param>
    /// <param name="on">The day of the measurement.</param>
    /// <returns>The new text; <see langword="null"/> where the file is no whole JSON object.</returns>
    public static SourceFile? Record(Recipe recipe, LinkedBook book, IReadOnlyList<(string Name, string Json)> values, CalendarDate on)
    {
        if (recipe.Tree is not { IsWhole: true } tree) return null;
        bool adds = recipe.StaleBecause is null && IsOf(recipe.AsMeasured, on);
        return Write(recipe.Source, recipe.Kind, tree, t => t.Root, Stamped(values, recipe, book, on), adds);
    }

    /// <summary>The stock file of a lot with new readings of it, stamped with the recipe that the lot was made by.</summary>
    /// <inheritdoc cref="Record(Recipe, LinkedBook, IReadOnlyList{ValueTuple{string, string}}, CalendarDate)"/>
    public static SourceFile? Record(Stock stock, Lot lot, LinkedBook book, IReadOnlyList<(string Name, string Json)> values, CalendarDate on)
    {
        if (stock.Tree is not { IsWhole: true } tree) return null;
        var recipe = lot.Item.IsGiven && book.Resolve(lot.Item.Value) is { ByProduct: null, File: Recipe made } ? made : null;
        return Write(stock.Source, FileKind.Stock, tree, t => LotOf(t, lot.Number), Stamped(values, recipe, book, on), IsOf(lot.Measured, on));
    }

    private static List<(string Name, string Json)> Stamped(
        IReadOnlyList<(string Name, string Json)> values, Recipe? recipe, LinkedBook book, CalendarDate on)
    {
        var all = new List<(string, string)>(values) { ("on", $"\"{on}\"") };
        if (recipe is null) return all;
        all.Add(("of", $"\"{RecipeFingerprint.Of(recipe, book)}\""));
        if (recipe.Revision.IsGiven) all.Add(("revision", JsonText.Quote(recipe.Revision.Value)));
        return all;
    }

    private static JsonNode LotOf(JsonTree tree, int number)
    {
        int at = 0;
        if (tree.Root.TryGetProperty("lots"u8, out var lots))
        {
            foreach (var lot in lots.Items)
            {
                if (++at == number) return lot;
            }
        }

        return default;
    }

    /// <summary>Whether readings are of a day: those of one day are of one go, and older ones are not re-dated by a new one.</summary>
    private static bool IsOf(Measurement? there, CalendarDate on) => there is { On.IsGiven: true } && there.On.Value.Equals(on);

    /// <param name="source">The file.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="tree">Its tree.</param>
    /// <param name="owner">The object in a tree that the readings belong to.</param>
    /// <param name="values">The readings.</param>
    /// <param name="adds">Whether they join those that are there.</param>
    private static SourceFile? Write(
        SourceFile source, FileKind kind, JsonTree tree, Func<JsonTree, JsonNode> owner, List<(string Name, string Json)> values, bool adds)
    {
        string whole = "{ " + string.Join(", ", values.Select(v => $"\"{v.Name}\": {v.Json}")) + " }";
        if (!adds) return Apply(source, kind, owner(tree), "measured", whole);
        foreach (var (name, json) in values)
        {
            var file = BookReader.Read(source, kind, Measures.Default);
            if (file.Tree is null || !owner(file.Tree).TryGetProperty("measured"u8, out var measured)) return null;
            if (Apply(source, kind, measured, name, json) is not { } next) return null;
            source = next;
        }

        return source;
    }

    private static SourceFile? Apply(SourceFile source, FileKind kind, JsonNode target, string property, string json)
    {
        var file = BookReader.Read(source, kind, Measures.Default);
        return target.Exists
            ? new SourceFile(source.Path, TextEdits.Apply(file.Source, [JsonEdits.AddProperty(file, target, property, json)]))
            : null;
    }
}
