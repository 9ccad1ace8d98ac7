namespace SpecLint.Rules.File;

[Rule("SL1028", "house-schema-missed", "A file does not match the schema of the house", Level.Error)]
internal sealed partial class HouseSchema : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.Book.HouseSchemas is not { } schemas) return;
        foreach (var problem in schemas.Check(context.File))
        {
            context.Report(new(Rule)
            {
                At = context.At(problem.Span, problem.Path),
                Key = problem.Message,
                Message = problem.Message,
                Advice = problem.Advice,
            });
        }
    }
}
