using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1012", "bad-id", "A file name that is not a valid id", Level.Error)]
internal sealed partial class BadId : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.BadId;
}
