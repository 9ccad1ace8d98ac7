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
/// <param name="Whole">The expression that holds the comparison, and that can stand in a conditional expression; empty where there is none.</param>
/// <param name="Words">The comparison as it then reads.</param>
internal sealed record Mutation(string Path, int Line, TextSpan Span, string From, string To, TextSpan Whole, string Words)
{
    private static readonly Dictionary<string, string> Reversed = new(StringComparer.Ordinal)
    {
        ["<"] = ">=",
        ["<="] = ">",
        [">"] = "<=",
        [">="] = "<",
        ["=="] = "!=",
        ["!="] = "==",
    };

    private static readonly Dictionary<string, string> Shifted = new(StringComparer.Ordinal) { ["<"] = "<=", ["<="] = "<", [">"] = ">=", [">="] = ">" };

    /// <summary>Every mutation of a file, in its order.</summary>
    /// <param name="path">The file, relative to the library.</param>
    /// <param name="tree">Its syntax.</param>
    /// <param name="shift">Whether comparisons are shifted by the case in which both sides are the same; reversed otherwise.</param>
    public static IEnumerable<Mutation> Of(string path, SyntaxTree tree, bool shift)
    {
        foreach (var node in tree.GetRoot().DescendantNodes())
        {
            var token = node switch
            {
                BinaryExpressionSyntax binary when !IsNull(binary.Left) && !IsNull(binary.Right) => binary.OperatorToken,
                RelationalPatternSyntax pattern => pattern.OperatorToken,
                _ => default,
            };
            if (!(shift ? Shifted : Reversed).TryGetValue(token.Text ?? "", out string? other) || node.Ancestors().OfType<AttributeSyntax>().Any()) continue;
            int line = tree.GetLineSpan(token.Span).StartLinePosition.Line + 1;
            string text = node.ToString();
            int at = token.SpanStart - node.SpanStart;
            yield return new Mutation(
                path, line, token.Span, token.Text!, other, WholeOf(node),
                $"{text[..at]}{other}{text[(at + token.Text!.Length)..]}".ReplaceLineEndings(" "));
        }
    }

    /// <summary>The text of the file with the other operator.</summary>
    public SourceText Apply(SourceText text) => text.WithChanges(new TextChange(Span, To));

    /// <summary>The expression as written and as mutated, of which a switch chooses. Lines stay where they are.</summary>
    public TextChange Switched(SourceText text, int number)
    {
        string whole = text.ToString(Whole);
        int at = Span.Start - Whole.Start;
        string mutated = $"{whole[..at]}{To}{whole[(at + From.Length)..]}".ReplaceLineEndings(" ");
        return new TextChange(Whole, $"(global::SpecLint.MutantSwitch.Is({number}) ? ({mutated}) : ({whole}))");
    }

    /// <inheritdoc/>
    public override string ToString() => $"{Path}:{Line}: {From} becomes {To}: {(Words.Length > 110 ? Words[..110] + "…" : Words)}";

    /// <summary>
    /// The least expression around a comparison that may be written twice: it declares no variable, is no constant, and is no
    /// part of a pattern.
    /// </summary>
    private static TextSpan WholeOf(SyntaxNode node)
    {
        if (node is PatternSyntax)
            node = node.Ancestors()
                .First(n => n is not (PatternSyntax or SubpatternSyntax or PropertyPatternClauseSyntax or PositionalPatternClauseSyntax));
        if (node is not ExpressionSyntax || node is SwitchExpressionSyntax) return default;
        if (node.DescendantNodes().Any(n => n is SingleVariableDesignationSyntax)
            || node.DescendantTrivia().Any(t => t.IsKind(SyntaxKind.SingleLineCommentTrivia)))
            return default;
        bool isConstant = node.Ancestors()
            .Any(a => a is LocalDeclarationStatementSyntax { IsConst: true } or FieldDeclarationSyntax or ParameterSyntax
                or CaseSwitchLabelSyntax);
        return isConstant ? default : node.Span;
    }

    private static bool IsNull(ExpressionSyntax expression) => expression.IsKind(SyntaxKind.NullLiteralExpression);
}
