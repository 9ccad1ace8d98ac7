using System.Collections.Immutable;
using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeActions;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SpecLint.RuleAuthoring;

/// <summary>SLA005: adds the fact that a rule reads to those that it declares.</summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class DeclareFactFix : CodeFixProvider
{
    private const string Needs = "Needs";
    private const string RuleInfo = "RuleInfo";
    private const string RuleAttribute = "RuleAttribute";

    /// <inheritdoc/>
    public override ImmutableArray<string> FixableDiagnosticIds { get; } = ImmutableArray.Create("SLA005");

    /// <inheritdoc/>
    public override FixAllProvider? GetFixAllProvider() => null;

    /// <inheritdoc/>
    public override async Task RegisterCodeFixesAsync(CodeFixContext context)
    {
        var cancel = context.CancellationToken;
        if (await context.Document.GetSyntaxRootAsync(cancel).ConfigureAwait(false) is not { } root) return;
        if (await context.Document.GetSemanticModelAsync(cancel).ConfigureAwait(false) is not { } model) return;
        foreach (var diagnostic in context.Diagnostics)
        {
            var node = root.FindNode(diagnostic.Location.SourceSpan, getInnermostNodeForTie: true);
            if (node.FirstAncestorOrSelf<ClassDeclarationSyntax>() is not { } rule) continue;

            // At the read itself; where a base class reads it, the diagnostic is at the name of the rule and the fact only in its words.
            if (node.FirstAncestorOrSelf<ArgumentSyntax>()?.Expression is not { } fact) continue;
            string title = $"Declare {fact}";
            if (DeclarationOf(rule, model, cancel) is { } declaration)
            {
                if (With(declaration, fact.WithoutTrivia()) is { } declared) Register(declaration, declared);
                continue;
            }

            if (rule.DescendantNodes()
                .OfType<BaseObjectCreationExpressionSyntax>()
                .FirstOrDefault(c => model.GetTypeInfo(c, cancel).Type?.Name == RuleInfo) is not { } creation)
                continue;
            if (With(creation, fact.WithoutTrivia()) is not { } better) continue;
            Register(creation, better);

            void Register(SyntaxNode old, SyntaxNode changed) =>
                context.RegisterCodeFix(
                    CodeAction.Create(title, _ => Task.FromResult(context.Document.WithSyntaxRoot(root.ReplaceNode(old, changed))), title),
                    diagnostic);
        }
    }

    private static AttributeSyntax? DeclarationOf(ClassDeclarationSyntax rule, SemanticModel model, CancellationToken cancel) =>
        rule.AttributeLists.SelectMany(static l => l.Attributes).FirstOrDefault(a => model.GetTypeInfo(a, cancel).Type?.Name == RuleAttribute);

    private static AttributeSyntax? With(AttributeSyntax declaration, ExpressionSyntax fact)
    {
        var arguments = declaration.ArgumentList!.Arguments;
        var set = arguments.FirstOrDefault(static a => a.NameEquals?.Name.Identifier.ValueText == Needs);
        if (set is null)
        {
            var added = SyntaxFactory.ParseAttributeArgumentList($"({Needs} = [{fact}])")!.Arguments[0].WithLeadingTrivia(SyntaxFactory.Space);
            return declaration.WithArgumentList(declaration.ArgumentList.WithArguments(arguments.Add(added)));
        }

        return set.Expression is CollectionExpressionSyntax list ? declaration.ReplaceNode(list, Longer(list, fact)) : null;
    }

    private static ExpressionSyntax Longer(CollectionExpressionSyntax list, ExpressionSyntax fact) =>
        SyntaxFactory.ParseExpression($"[{string.Join(", ", list.Elements.Select(static e => e.ToString()).Append(fact.ToString()))}]")
            .WithTriviaFrom(list);

    private static BaseObjectCreationExpressionSyntax? With(BaseObjectCreationExpressionSyntax creation, ExpressionSyntax fact)
    {
        var set = creation.Initializer?.Expressions
            .OfType<AssignmentExpressionSyntax>()
            .FirstOrDefault(a => a.Left is IdentifierNameSyntax { Identifier.ValueText: Needs });
        if (set is not null)
        {
            return set.Right is CollectionExpressionSyntax list
                ? creation.ReplaceNode(list, Longer(list, fact))
                : null;
        }

        var declared = SyntaxFactory.ParseExpression($"{Needs} = [{fact}]");
        if (creation.Initializer is { } initializer)
        {
            var first = initializer.Expressions.FirstOrDefault();
            var expressions = initializer.Expressions.Insert(
                0, declared.WithLeadingTrivia(first?.GetLeadingTrivia() ?? SyntaxFactory.TriviaList(SyntaxFactory.Space)));
            return creation.WithInitializer(initializer.WithExpressions(expressions));
        }

        // Parsed from text, so that no formatter breaks the line.
        var made = ((ImplicitObjectCreationExpressionSyntax)SyntaxFactory.ParseExpression($"new() {{ {declared} }}")).Initializer!;
        return creation.WithArgumentList(creation.ArgumentList?.WithTrailingTrivia(SyntaxFactory.Space)).WithInitializer(made);
    }
}
