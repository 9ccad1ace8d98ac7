using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1007", "misplaced-property", "A property that belongs to another place", Level.Error)]
internal sealed partial class MisplacedProperty : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.MisplacedProperty;
}
