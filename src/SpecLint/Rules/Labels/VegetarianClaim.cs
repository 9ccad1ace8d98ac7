using SpecLint.Catalogue;

namespace SpecLint.Rules.Labels;

[Rule("SL7014", "vegetarian-claim-false", "A product of a killed animal is in a drink called vegetarian", Level.Error)]
internal sealed partial class VegetarianClaim : ClaimRule
{
    protected override Level UnshownLevel => Level.Warning;

    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.Vegetarian;
}
