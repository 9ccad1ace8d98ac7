using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1002", "broken-encoding", "The bytes are not UTF-8", Level.Error, IsCause = true)]
internal sealed partial class BadEncoding : ReadingRule
{
    protected override ReadingProblemKind Kind => ReadingProblemKind.Encoding;
}
