using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>Edits of what a recipe declares.</summary>
internal static class Declares
{
    /// <summary>The edit that declares something, whether or not the recipe declares anything yet.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="property">What is declared.</param>
    /// <param name="json">Its value, as JSON.</param>
    public static TextEdit? Edit(Recipe recipe, string property, string json) =>
        recipe.Declares is null
            ? JsonEdits.AddProperty(recipe, "", "declares", $"{{ \"{property}\": {json} }}")
            : JsonEdits.AddProperty(recipe, "declares", property, json);

    /// <summary>A list of words as JSON.</summary>
    public static string List(IEnumerable<string> words) => "[" + string.Join(", ", words.Select(static w => $"\"{w}\"")) + "]";
}
