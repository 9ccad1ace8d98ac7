using SpecLint.Reading;

namespace SpecLint.Reports;

/// <summary>Two texts as a difference in the unified format (POSIX.1-2024, <c>diff -u</c>), lines with three lines around them.</summary>
internal static class UnifiedDiff
{
    private const int Context = 3;

    /// <summary>Beyond so many pairs of lines the changed part is shown as taken out and put in whole.</summary>
    private const long MostPairs = 4_000_000;

    /// <summary>Writes the difference; nothing where the texts are alike. Control characters but the tab are shown as escapes.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="path">What to call the file.</param>
    /// <param name="before">The text before.</param>
    /// <param name="after">The text after.</param>
    public static void Write(TextWriter to, string path, SourceFile before, SourceFile after)
    {
        var old = Lines(before);
        var now = Lines(after);
        var steps = Steps(old, now);
        if (!steps.Exists(s => s.Kind != ' ')) return;
        string name = DisplayText.Escape(path);
        to.Write($"--- a/{name}\n+++ b/{name}\n");
        int at = 0;
        while (at < steps.Count)
        {
            if (steps[at].Kind == ' ')
            {
                at++;
                continue;
            }

            int start = Math.Max(0, at - Context), end = at;
            for (int i = at, quiet = 0; i < steps.Count && quiet <= 2 * Context; i++)
            {
                quiet = steps[i].Kind == ' ' ? quiet + 1 : 0;
                if (steps[i].Kind != ' ') end = i + 1;
            }

            end = Math.Min(steps.Count, end + Context);
            WriteHunk(to, steps, start, end, old, now);
            at = end;
        }
    }

    private static void WriteHunk(TextWriter to, List<(char Kind, int Old, int New)> steps, int start, int end, List<Line> old, List<Line> now)
    {
        int oldCount = 0, newCount = 0;
        for (int i = start; i < end; i++)
        {
            if (steps[i].Kind != '+') oldCount++;
            if (steps[i].Kind != '-') newCount++;
        }

        to.Write($"@@ -{Range(steps[start].Old, oldCount)} +{Range(steps[start].New, newCount)} @@\n");
        for (int i = start; i < end; i++)
        {
            var (kind, oldAt, newAt) = steps[i];
            var line = kind == '+' ? now[newAt] : old[oldAt];
            to.Write(kind);
            to.Write(string.Join("\t", line.Text.Split('\t').Select(DisplayText.Escape)));
            to.Write('\n');
            if (!line.Ends) to.Write("\\ No newline at end of file\n");
        }
    }

    private static string Range(int start, int count) => count == 1 ? $"{start + 1}" : $"{(count == 0 ? start : start + 1)},{count}";

    /// <summary>The shortest way from one text to the other by the longest common subsequence of their changed middles.</summary>
    private static List<(char Kind, int Old, int New)> Steps(List<Line> old, List<Line> now)
    {
        int head = 0;
        while (head < old.Count && head < now.Count && old[head] == now[head]) head++;
        int tail = 0;
        while (tail < old.Count - head && tail < now.Count - head && old[old.Count - 1 - tail] == now[now.Count - 1 - tail]) tail++;
        int rows = old.Count - head - tail, columns = now.Count - head - tail;
        var steps = new List<(char, int, int)>(old.Count + columns);
        for (int i = 0; i < head; i++) steps.Add((' ', i, i));
        int a = 0, b = 0;
        if ((long)rows * columns <= MostPairs)
        {
            int[,] common = new int[rows + 1, columns + 1];
            for (int i = rows - 1; i >= 0; i--)
            {
                for (int j = columns - 1; j >= 0; j--)
                    common[i, j] = old[head + i] == now[head + j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }

            while (a < rows && b < columns)
            {
                if (old[head + a] == now[head + b]) steps.Add((' ', head + a++, head + b++));
                else if (common[a + 1, b] >= common[a, b + 1]) steps.Add(('-', head + a++, head + b));
                else steps.Add(('+', head + a, head + b++));
            }
        }

        while (a < rows) steps.Add(('-', head + a++, head + b));
        while (b < columns) steps.Add(('+', head + a, head + b++));
        for (int i = 0; i < tail; i++) steps.Add((' ', head + rows + i, head + columns + i));
        return steps;
    }

    private static List<Line> Lines(SourceFile file)
    {
        string text = file.TextOf(new TextSpan(0, file.Utf8.Length));
        var lines = new List<Line>();
        for (int at = 0; at < text.Length;)
        {
            int end = text.IndexOf('\n', at);
            if (end < 0)
            {
                lines.Add(new Line(text.Substring(at), "", false));
                break;
            }

            bool carriageReturn = end > at && text[end - 1] == '\r';
            lines.Add(new Line(text.Substring(at, end - at - (carriageReturn ? 1 : 0)), carriageReturn ? "\r\n" : "\n", true));
            at = end + 1;
        }

        return lines;
    }

    private readonly record struct Line(string Text, string End, bool Ends);
}
