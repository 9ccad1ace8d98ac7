using SpecLint.Catalogue;

namespace SpecLint.Rules.Labels;

[Rule("SL7013", "vegan-claim-false", "An animal product is in a drink called vegan", Level.Error)]
internal sealed partial class VeganClaim : ClaimRule
{
    protected override Level UnshownLevel => Level.Warning;

    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.Vegan;
}
