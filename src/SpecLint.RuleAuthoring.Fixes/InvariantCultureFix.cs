using System.Collections.Immutable;
using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeActions;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Simplification;

namespace SpecLint.RuleAuthoring;

/// <summary>SLA007: names the invariant culture, or takes the ordinal comparison, where text hangs on the culture.</summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class InvariantCultureFix : CodeFixProvider
{
    private const string Invariant = "global::System.Globalization.CultureInfo.InvariantCulture";

    /// <inheritdoc/>
    public override ImmutableArray<string> FixableDiagnosticIds { get; } = ImmutableArray.Create("SLA007");

    /// <inheritdoc/>
    public override FixAllProvider GetFixAllProvider() => WellKnownFixAllProviders.BatchFixer;

    /// <inheritdoc/>
    public override async Task RegisterCodeFixesAsync(CodeFixContext context)
    {
        if (await context.Document.GetSyntaxRootAsync(context.CancellationToken).ConfigureAwait(false) is not { } root) return;
        if (await context.Document.GetSemanticModelAsync(context.CancellationToken).ConfigureAwait(false) is not { } model) return;
        foreach (var diagnostic in context.Diagnostics)
        {
            if (Better(root.FindNode(diagnostic.Location.SourceSpan, getInnermostNodeForTie: true), model) is not { } change) continue;
            context.RegisterCodeFix(
                CodeAction.Create(
                    change.Title,
                    _ => Task.FromResult(context.Document.WithSyntaxRoot(root.ReplaceNode(
                        change.Old, change.New.WithTriviaFrom(change.Old).WithAdditionalAnnotations(Simplifier.Annotation)))),
                    change.Title),
                diagnostic);
        }
    }

    private static (string Title, SyntaxNode Old, SyntaxNode New)? Better(SyntaxNode node, SemanticModel model) => node switch
    {
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax member } call => Better(call, member),
        MemberAccessExpressionSyntax member => Better(member),
        InterpolationSyntax { Parent: InterpolatedStringExpressionSyntax text } =>
            ("Make the text invariant", text, SyntaxFactory.InvocationExpression(
                SyntaxFactory.ParseExpression("global::System.FormattableString.Invariant")
                    .WithAdditionalAnnotations(Simplifier.Annotation), Arguments(text.WithoutTrivia()))),

        // A number that is joined to a text.
        BinaryExpressionSyntax sum when new[] { sum.Left, sum.Right }.FirstOrDefault(s => IsFraction(s, model)) is { } number =>
            ("Name the invariant culture", number, ToText(number)),
        _ => null,
    };

    private static (string, SyntaxNode, SyntaxNode)? Better(InvocationExpressionSyntax call, MemberAccessExpressionSyntax member)
    {
        switch (member.Name.Identifier.ValueText)
        {
            case "ToLower" or "ToUpper":
                string name = member.Name.Identifier.ValueText + "Invariant";
                return ($"Call {name}", call, call.WithExpression(member.WithName(SyntaxFactory.IdentifierName(name))));
            case "ToString" or "Parse":
                return ("Name the invariant culture", call, call.AddArgumentListArguments(SyntaxFactory.Argument(InvariantCulture())));
            case "Append" when call.ArgumentList.Arguments is [var only]:
                return ("Name the invariant culture", call, call.WithArgumentList(Arguments(ToText(only.Expression))));
            case "Compare" when call.ArgumentList.Arguments.Count == 2:
                return ("Compare ordinally", call, call.WithExpression(member.WithName(SyntaxFactory.IdentifierName("CompareOrdinal"))));
            default:
                return null;
        }
    }

    private static (string, SyntaxNode, SyntaxNode)? Better(MemberAccessExpressionSyntax member) => member.Name.Identifier.ValueText switch
    {
        "CurrentCulture" when member.Expression is IdentifierNameSyntax { Identifier.ValueText: "StringComparison" }
            or MemberAccessExpressionSyntax { Name.Identifier.ValueText: "StringComparison" } =>
            ("Compare ordinally", member, member.WithName(SyntaxFactory.IdentifierName("Ordinal"))),
        "CurrentCulture" when member.Expression is IdentifierNameSyntax { Identifier.ValueText: "StringComparer" }
            or MemberAccessExpressionSyntax { Name.Identifier.ValueText: "StringComparer" } =>
            ("Compare ordinally", member, member.WithName(SyntaxFactory.IdentifierName("Ordinal"))),
        "CurrentCultureIgnoreCase" => ("Compare ordinally", member, member.WithName(SyntaxFactory.IdentifierName("OrdinalIgnoreCase"))),
        "CurrentCulture" or "CurrentUICulture" =>
            ("Name the invariant culture", member, member.WithName(SyntaxFactory.IdentifierName("InvariantCulture"))),
        _ => null,
    };

    private static bool IsFraction(ExpressionSyntax side, SemanticModel model) =>
        model.GetTypeInfo(side).Type?.SpecialType is SpecialType.System_Double or SpecialType.System_Single or SpecialType.System_Decimal;

    private static InvocationExpressionSyntax ToText(ExpressionSyntax number)
    {
        var bare = number.WithoutTrivia();
        if (bare is BinaryExpressionSyntax or ConditionalExpressionSyntax or CastExpressionSyntax or PrefixUnaryExpressionSyntax)
            bare = SyntaxFactory.ParenthesizedExpression(bare);
        return SyntaxFactory.InvocationExpression(
            SyntaxFactory.MemberAccessExpression(SyntaxKind.SimpleMemberAccessExpression, bare, SyntaxFactory.IdentifierName("ToString")),
            Arguments(InvariantCulture()));
    }

    private static ArgumentListSyntax Arguments(ExpressionSyntax only) =>
        SyntaxFactory.ArgumentList(SyntaxFactory.SingletonSeparatedList(SyntaxFactory.Argument(only)));

    private static ExpressionSyntax InvariantCulture() => SyntaxFactory.ParseExpression(Invariant).WithAdditionalAnnotations(Simplifier.Annotation);
}
