using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1009", "wrong-type", "A value of the wrong type", Level.Error)]
internal sealed partial class WrongType : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.WrongType;
}
