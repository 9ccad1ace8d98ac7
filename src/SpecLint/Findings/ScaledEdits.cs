using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Findings;

/// <summary>The edits of a recipe that was scaled.</summary>
internal static class ScaledEdits
{
    /// <summary>The edits that write the scaled amounts into the file; an amount that stays as it is has none.</summary>
    public static List<TextEdit> Of(ScaledRecipe scaled, BookFile file)
    {
        var edits = new List<TextEdit>();
        foreach (var line in scaled.Lines)
        {
            var amount = line.Part.Line.Amount;
            if (Math.Abs(line.Rounded - amount.Value.Base) < 1e-9) continue;
            edits.Add(new TextEdit(file.At(amount.Span), $"\"{line.Text}\""));
        }

        return edits;
    }
}
