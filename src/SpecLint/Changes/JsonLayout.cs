using System.Text;
using SpecLint.Reading;

namespace SpecLint.Changes;

/// <summary>
/// Lays out a file as people of a book write it: two blanks a level, a line for each property and for each item of a list of
/// objects, what is short on one line. Only blanks change: every value, name, comment and comma stays as it is written, in order.
/// </summary>
public static class JsonLayout
{
    /// <summary>The longest line that an object or list is put on, in characters.</summary>
    private const int Longest = 100;

    private const int Step = 2;

    /// <summary>The file laid out; <see langword="null"/> where its text cannot be read to the end, so that nothing may be moved.</summary>
    public static byte[]? Of(SourceFile source)
    {
        var problems = new List<ReadingProblem>();
        var tree = JsonTree.Parse(source, problems);
        if (!tree.IsWhole || tree.Count == 0) return null;
        var tokens = JsonTokens.Of(source);
        if (tokens is null) return null;
        string end = source.Utf8.Span.IndexOf("\r\n"u8) >= 0 ? "\r\n" : "\n";
        var layout = new Writer(tokens, end);
        string text = layout.Write();
        byte[] made = Encoding.UTF8.GetBytes(text);
        if (source.ByteOrderMarkLength == 0) return made;
        byte[] marked = new byte[made.Length + 3];
        source.Utf8.Span.Slice(0, 3).CopyTo(marked);
        made.CopyTo(marked, 3);
        return marked;
    }

    /// <summary>Writes tokens with the blanks that the layout puts between them.</summary>
    private sealed class Writer(IReadOnlyList<JsonToken> tokens, string lineEnd)
    {
        private readonly StringBuilder text = new();
        private readonly int[] close = Closing(tokens);
        private int column;

        public string Write()
        {
            var open = new Stack<bool>();
            for (int i = 0; i < tokens.Count; i++)
            {
                var token = tokens[i];
                if (i > 0) Between(i, open);
                Put(token.Text);
                if (token.Kind == JsonTokenKind.Open) open.Push(IsBroken(i, open));
                if (token.Kind == JsonTokenKind.Close && open.Count > 0) open.Pop();
            }

            text.Append(lineEnd);
            return text.ToString();
        }

        private void Between(int i, Stack<bool> open)
        {
            JsonToken before = tokens[i - 1], token = tokens[i];
            bool inner = open.Count > 0, broken = !inner || open.Peek();

            // A comment that ends its line, or fills it, keeps doing so.
            if (before.Kind == JsonTokenKind.LineComment
                || (token.IsComment && token.LinesBefore > 0)
                || (before.Kind == JsonTokenKind.BlockComment && token.LinesBefore > 0))
            {
                Line(token, open);
                return;
            }

            if (token.IsComment) Put(" ");
            else if (token.Kind is JsonTokenKind.Comma or JsonTokenKind.Colon) return;
            else if (before.Kind == JsonTokenKind.Colon) Put(" ");
            else if (before.Kind == JsonTokenKind.Open && token.Kind == JsonTokenKind.Close) return;
            else if (broken) Line(token, open);
            else Put(" ");
        }

        /// <summary>A new line; one empty line between two things stays.</summary>
        private void Line(JsonToken token, Stack<bool> open)
        {
            text.Append(lineEnd);
            if (token.LinesBefore > 1 && token.Kind != JsonTokenKind.Close
                && tokens[token.Number - 1].Kind != JsonTokenKind.Open) text.Append(lineEnd);
            column = 0;
            int depth = open.Count - (token.Kind == JsonTokenKind.Close ? 1 : 0);
            Put(new string(' ', Math.Max(0, depth) * Step));
        }

        private void Put(string more)
        {
            text.Append(more);
            column += more.Length;
        }

        /// <summary>Whether what begins here goes over several lines.</summary>
        private bool IsBroken(int at, Stack<bool> open)
        {
            if (close[at] < 0 || open.Count == 0) return true;
            int length = column, depth = 0;
            for (int i = at + 1; i <= close[at]; i++)
            {
                var token = tokens[i];
                if (token.Kind == JsonTokenKind.LineComment || (token.IsComment && token.LinesBefore > 0)) return true;

                // What holds an object is read line by line, also where it is short.
                if (depth == 0 && token.Text == "{" && tokens[i + 1].Kind != JsonTokenKind.Close) return true;
                if (token.Kind == JsonTokenKind.Open) depth++;
                if (token.Kind == JsonTokenKind.Close) depth--;
                length += token.Text.Length + 1;
            }

            return length > Longest;
        }

        private static int[] Closing(IReadOnlyList<JsonToken> tokens)
        {
            int[] close = new int[tokens.Count];
            var open = new Stack<int>();
            for (int i = 0; i < close.Length; i++)
            {
                close[i] = -1;
                if (tokens[i].Kind == JsonTokenKind.Open) open.Push(i);
                else if (tokens[i].Kind == JsonTokenKind.Close && open.Count > 0) close[open.Pop()] = i;
            }

            return close;
        }
    }
}
