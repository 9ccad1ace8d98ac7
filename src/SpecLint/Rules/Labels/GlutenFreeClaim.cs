using SpecLint.Catalogue;

namespace SpecLint.Rules.Labels;

[Rule("SL7015", "gluten-free-claim-false", "A cereal with gluten is in a drink called gluten-free", Level.Error, Safety = true)]
internal sealed partial class GlutenFreeClaim : ClaimRule
{
    protected override string Caution => AllergenWords.Caution;

    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.GlutenFree;
}
