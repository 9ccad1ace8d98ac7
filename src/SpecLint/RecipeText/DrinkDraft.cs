using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.RecipeText;

/// <summary>
/// Writes a recipe that was read from a text as the file of a drink. What is open stays a comment, and the item as it was written:
/// the check then finds that it is not known.
/// </summary>
public static class DrinkDraft
{
    /// <summary>Id of the file: the name as an id; empty where the name has no letter.</summary>
    public static string IdOf(WrittenRecipe recipe) => Slugs.Of(recipe.Name);

    /// <summary>The text of the file.</summary>
    /// <param name="recipe">The recipe.</param>
    public static string Write(WrittenRecipe recipe)
    {
        var text = new StringBuilder("{\n");
        text.Append("  \"name\": ").Append(Quoted(recipe.Name)).Append(",\n");
        WriteLines(text, "ingredients", [.. recipe.Ingredients.Where(l => l.Role != LineRole.Garnish)]);
        var garnish = recipe.Ingredients.Where(l => l.Role == LineRole.Garnish).ToList();
        WriteMethod(text, recipe, last: garnish.Count == 0);
        if (garnish.Count > 0) WriteLines(text, "garnish", garnish, last: true);
        return text.Append("}\n").ToString();
    }

    private static void WriteLines(StringBuilder text, string name, List<WrittenLine> lines, bool last = false)
    {
        text.Append("  \"").Append(name).Append("\": [\n");
        for (int i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            if (line.Because.Length > 0) text.Append("    // ").Append(Comment($"{line.Written.Trim()}: {line.Because}")).Append('\n');
            string item = line.Item.Answer == NameAnswer.Resolved ? line.Item.Id : Slugs.Of(line.ItemWritten);
            text.Append("    { \"item\": ").Append(Quoted(item));
            if (line.Amount.Length > 0) text.Append(", \"amount\": ").Append(Quoted(line.Amount));
            if (line.Role is LineRole.Top or LineRole.Float) text.Append(", \"role\": \"").Append(line.Role == LineRole.Top ? "top" : "float").Append('"');
            text.Append(i + 1 < lines.Count ? " },\n" : " }\n");
        }

        text.Append(last ? "  ]\n" : "  ],\n");
    }

    private static void WriteMethod(StringBuilder text, WrittenRecipe recipe, bool last)
    {
        text.Append("  \"method\": [\n");
        var steps = new List<string>();
        foreach (var line in recipe.Method)
        {
            text.Append("    // ").Append(Comment(line.Written.Trim())).Append('\n');
            steps.AddRange(Verbs(line.Written));
        }

        for (int i = 0; i < steps.Count; i++) text.Append("    { \"do\": \"").Append(steps[i]).Append(i + 1 < steps.Count ? "\" },\n" : "\" }\n");
        text.Append(last ? "  ]\n" : "  ],\n");
    }

    /// <summary>The verbs of the trade that stand at the head of a clause: <c>Shake and strain</c>.</summary>
    private static IEnumerable<string> Verbs(string sentence)
    {
        string[] clauses = sentence.ToLowerInvariant().Replace(" and ", ",").Replace(" then ", ",").Split(',', '.', ';');
        foreach (string clause in clauses)
        {
            string[] words = Slugs.Of(clause).Split(['-'], StringSplitOptions.RemoveEmptyEntries);
            if (words.Length == 0) continue;
            if ((words.Length > 1 ? VerbTable.Find(words[0] + "-" + words[1]) : null) is { } both) yield return both.Id;
            else if (VerbTable.Find(words[0]) is { } verb) yield return verb.Id;
        }
    }

    /// <summary>A text on one line.</summary>
    private static string Comment(string text) => new([.. text.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c)]);

    private static string Quoted(string text) => "\"" + JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping) + "\"";
}
