using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules;

/// <summary>A rule about one kind of problem that reading or binding a file found.</summary>
internal abstract class ReadingRule : FileRule
{
    /// <summary>The kind of problem.</summary>
    protected abstract ReadingProblemKind Kind { get; }

    /// <summary>Whether a rule of another family says the same better.</summary>
    protected virtual bool IsSpokenFor(FileContext context, ReadingProblem problem) => false;

    /// <inheritdoc/>
    public override void Check(FileContext context)
    {
        var problems = context.File.Problems;
        for (int i = 0; i < problems.Count; i++)
        {
            var problem = problems[i];
            if (problem.Kind != Kind || IsSpokenFor(context, problem)) continue;
            var place = context.At(problem.Span);
            context.Report(new(Info)
            {
                At = new(place, problem.Path),
                Key = problem.Path.Length == 0 ? problem.Message : "",
                Message = problem.Message,
                Advice = problem.Advice,
                Related = problem.Related.Length == 0 ? [] : [context.See(problem.Related, "the first one")],
                Corrections = problem.Replacement is null ? []
                    : [new Correction(CorrectionGrade.Assured, problem.Advice, [new TextEdit(place, problem.Replacement)])],
            });
        }
    }
}
