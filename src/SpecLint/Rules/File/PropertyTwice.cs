using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1005", "property-twice", "A property appears twice in one object", Level.Error)]
internal sealed partial class PropertyTwice : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.DuplicateProperty;
}
