using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace SpecLint.RuleMutants;

/// <summary>One comparison of the sources, and what takes its place.</summary>
/// <param name="Path">The file, relative to the library.</param>
/// <param name="Line">Its line.</param>
/// <param name="Span">The operator.</param>
/// <param name="From">The operator as written.</param>
/// <param name="To">The operator in its place.</param>
/// <param name="Words">The comparison as it then reads.</param>
internal sealed record Mutation(string Path, int Line, TextSpan Span, string From, string To, string Words)
{
    private static readonly Dictionary<string, string[]> Instead = new(StringComparer.Ordinal)
    {
        // Reversed, and shifted by the case in which both are the same.
        ["<"] = [">=", "<="],
        ["<="] = [">", "<"],
        [">"] = ["<=", ">="],
        [">="] = ["<", ">"],
        ["=="] = ["!="],
        ["!="] = ["=="],
    };

    /// <summary>Every mutation of a file, in its order.</summary>
    public static IEnumerable<Mutation> Of(string path, SyntaxTree tree)
    {
        foreach (var node in tree.GetRoot().DescendantNodes())
        {
            var token = node switch
            {
                BinaryExpressionSyntax binary when !IsNull(binary.Left) && !IsNull(binary.Right) => binary.OperatorToken,
                RelationalPatternSyntax pattern => pattern.OperatorToken,
                _ => default,
            };
            if (!Instead.TryGetValue(token.Text ?? "", out string[]? others) || node.Ancestors().OfType<AttributeSyntax>().Any()) continue;
            int line = tree.GetLineSpan(token.Span).StartLinePosition.Line + 1;
            string text = node.ToString();
            int at = token.SpanStart - node.SpanStart;
            foreach (string other in others)
                yield return new Mutation(path, line, token.Span, token.Text!, other, $"{text[..at]}{other}{text[(at + token.Text!.Length)..]}".ReplaceLineEndings(" "));
        }
    }

    /// <summary>The text of the file with the other operator.</summary>
    public SourceText Apply(SourceText text) => text.WithChanges(new TextChange(Span, To));

    /// <inheritdoc/>
    public override string ToString() => $"{Path}:{Line}: {From} becomes {To}: {(Words.Length > 110 ? Words[..110] + "…" : Words)}";

    private static bool IsNull(ExpressionSyntax expression) => expression.IsKind(SyntaxKind.NullLiteralExpression);
}
