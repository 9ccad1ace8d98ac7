namespace SpecLint.Reports;

/// <summary>Rows of label and value that keep to 80 columns.</summary>
internal sealed class TextTable(TextWriter to, bool colour)
{
    /// <summary>A line as it is.</summary>
    public void Line(string text)
    {
        to.Write(text);
        to.Write('\n');
    }

    /// <summary>A heading, bold where colour is wanted.</summary>
    public void Heading(string text)
    {
        foreach (string line in DisplayText.Wrap(DisplayText.Escape(text), "", "  ")) Line(colour ? $"\u001b[1m{line}\u001b[0m" : line);
    }

    /// <summary>A paragraph, escaped and broken at 80 columns.</summary>
    public void Wrapped(string text, string first, string rest)
    {
        foreach (string line in DisplayText.Wrap(DisplayText.Escape(text), first, rest)) Line(line);
    }

    /// <summary>A label and a text that goes on beneath itself.</summary>
    public void Row(string label, int labelColumns, string text)
    {
        Wrapped(text, Label(label, labelColumns), new string(' ', labelColumns));
    }

    /// <summary>A label, a value and a text.</summary>
    public void Row(string label, int labelColumns, string value, int valueColumns, string text)
    {
        string first = Label(label, labelColumns) + Pad(DisplayText.Escape(value), valueColumns);
        if (text.Length == 0) Line(first.TrimEnd());
        else Wrapped(text, first, new string(' ', labelColumns + valueColumns));
    }

    /// <summary>The label in its column; one that is wider stands on a line of its own, so that the columns behind it stay.</summary>
    private string Label(string label, int columns)
    {
        string text = "  " + DisplayText.Escape(label);
        if (DisplayText.Width(text) < columns) return Pad(text, columns);
        foreach (string line in DisplayText.Wrap(text.TrimStart(), text.Substring(0, text.Length - text.TrimStart().Length), "    ")) Line(line);
        return new string(' ', columns);
    }

    private static string Pad(string text, int columns)
    {
        int missing = columns - DisplayText.Width(text);
        return missing > 0 ? text + new string(' ', missing) : text + " ";
    }
}
