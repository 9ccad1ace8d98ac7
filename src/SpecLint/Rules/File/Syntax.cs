using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1001", "broken-json", "The text is not JSON", Level.Error, IsCause = true)]
internal sealed partial class Syntax : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.Syntax;
}
