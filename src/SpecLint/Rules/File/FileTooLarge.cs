using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1003", "file-too-large", "The file is too large to be read", Level.Error, IsCause = true)]
internal sealed partial class FileTooLarge : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.TooLarge;
}
