using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1011", "number-out-of-range", "A number out of range", Level.Error, IsCause = true)]
internal sealed partial class NumberOutOfRange : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.NumberOutOfRange;
}
