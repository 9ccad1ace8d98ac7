using SpecLint.Findings;

namespace SpecLint.Rules.File;

/// <summary>SL1028: a file does not fit the schema of the house.</summary>
internal sealed class HouseSchema : FileRule
{
    private static readonly RuleInfo Rule = new("SL1028", "house-schema-missed", "A file does not match the schema of the house", Level.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(FileContext context)
    {
        if (context.Book.HouseSchemas is not { } schemas) return;
        foreach (var problem in schemas.Check(context.File))
        {
            context.Report(new Finding(Rule)
            {
                Place = context.At(problem.Span),
                Subject = context.Id,
                Path = problem.Path,
                Key = problem.Message,
                Message = problem.Message,
                Advice = problem.Advice,
            });
        }
    }
}
