using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1004", "nested-too-deep", "Values are nested too deep to be read", Level.Error, IsCause = true)]
internal sealed partial class NestedTooDeep : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.TooDeep;
}
