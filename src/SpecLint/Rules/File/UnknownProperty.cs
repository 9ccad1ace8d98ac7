using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1006", "unknown-property", "A property that this kind of file does not have", Level.Error)]
internal sealed partial class UnknownProperty : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.UnknownProperty;
}
