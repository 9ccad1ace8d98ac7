using System.Text.Json;

namespace SpecLint.Reports;

/// <summary>
/// The JSON reports of all parts of a book as the one report of the whole, byte for byte as a single run writes it. Each part is
/// in total order, so that the whole is written while the parts are read, and memory does not grow with them.
/// </summary>
public static class CombinedReport
{
    /// <summary>Reads the parts and writes the whole.</summary>
    /// <param name="parts">The reports, in any order, each with the name by which to speak of it.</param>
    /// <param name="to">Where to write the whole.</param>
    /// <returns>The highest level among the findings.</returns>
    /// <exception cref="FormatException">
    /// Something is not a report of a part, the parts are not those of one run, or one of them is missing or there twice; the
    /// message says which and why.
    /// </exception>
    public static Level Write(IReadOnlyList<(string Name, Stream Report)> parts, Stream to)
    {
        if (parts.Count == 0) throw new FormatException("there is no report");
        var read = new Named[parts.Count];
        for (int i = 0; i < read.Length; i++)
        {
            var (name, report) = parts[i];
            read[i] = new Named(name, By(name, () => new PartOfReport(report)));
        }

        Hold(read);
        using var json = new Utf8JsonWriter(to, JsonOutput.Options);
        var head = Together(read);
        json.WriteStartObject();
        JsonReport.WriteHead(json, head);
        WriteList(json, to, "findings", read);
        foreach (var part in read) By(part.Name, part.Report.BeginAccepted);
        WriteList(json, to, "accepted", read);
        foreach (var part in read) By(part.Name, part.Report.End);
        json.WriteString("closing", ReportWords.Closing);
        json.WriteEndObject();
        json.Flush();
        JsonReport.WriteLineEnd(to);
        return head.Errors > 0 ? Level.Error : head.Warnings > 0 ? Level.Warning : head.Notes > 0 ? Level.Note : Level.None;
    }

    /// <summary>Holds the parts against each other.</summary>
    private static void Hold(Named[] parts)
    {
        var first = parts[0];
        int count = first.Part.Part.Count;
        var seen = new string?[count];
        foreach (var part in parts)
        {
            if (part.Part.Part.Count != count)
                throw new FormatException($"{first.Name} is one of {count} parts, {part.Name} one of {part.Part.Part.Count}");
            if (part.Part.Book != first.Part.Book
                || part.Report.Head.On != first.Report.Head.On || part.Report.Head.Version != first.Report.Head.Version)
            {
                throw new FormatException($"{first.Name} and {part.Name} are not of one run: "
                    + "the files, the day, the rules or the version differ");
            }

            ref string? known = ref seen[part.Part.Part.Number - 1];
            if (known is not null) throw new FormatException($"{known} and {part.Name} are both part {part.Part.Part}");
            known = part.Name;
        }

        int missing = Array.IndexOf(seen, null);
        if (missing >= 0) throw new FormatException($"part {missing + 1}/{count} is missing");
    }

    private static ReportHead Together(Named[] parts)
    {
        var heads = parts.Select(p => p.Report.Head).ToList();
        return heads[0] with
        {
            Part = null,
            Files = heads.Sum(h => h.Files),
            Recipes = heads.Sum(h => h.Recipes),
            Errors = heads.Sum(h => h.Errors),
            Warnings = heads.Sum(h => h.Warnings),
            Notes = heads.Sum(h => h.Notes),
            Accepted = heads.Sum(h => h.Accepted),
            AcceptedSafety = heads.Sum(h => h.AcceptedSafety),
            Aside = HarmAside.Together([.. heads.Select(h => h.Aside)]),
        };
    }

    /// <summary>Writes the lists as one, in total order; each finding as it stands in its part, where it is as deep as in the whole.</summary>
    private static void WriteList(Utf8JsonWriter json, Stream to, string name, Named[] parts)
    {
        json.WriteStartArray(name);
        json.Flush();
        byte[] between = Utf8(",\n    "), first = Utf8("\n    ");
        bool any = false;
        while (Next(parts) is { } next)
        {
            byte[] lead = any ? between : first, text = next.Report.Current!.Text;
            to.Write(lead, 0, lead.Length);
            to.Write(text, 0, text.Length);
            any = true;
            By(next.Name, next.Report.MoveNext);
        }

        if (any)
        {
            byte[] last = Utf8("\n  ");
            to.Write(last, 0, last.Length);
        }

        json.WriteEndArray();
    }

    /// <summary>The part whose finding is next; <see langword="null"/> where all lists have ended.</summary>
    private static Named? Next(Named[] parts)
    {
        Named? next = null;
        foreach (var part in parts)
        {
            if (part.Report.Current is { } finding && (next is null || finding.CompareTo(next.Report.Current) < 0)) next = part;
        }

        return next;
    }

    private static byte[] Utf8(string text) => System.Text.Encoding.UTF8.GetBytes(text);

    private static void By(string name, Action step) => By(name, () =>
    {
        step();
        return true;
    });

    private static T By<T>(string name, Func<T> step)
    {
        try
        {
            return step();
        }
        catch (FormatException e)
        {
            throw new FormatException($"{name} cannot be combined: {e.Message}", e);
        }
    }

    private sealed record Named(string Name, PartOfReport Report)
    {
        public ReportPart Part => Report.Head.Part!;
    }
}
