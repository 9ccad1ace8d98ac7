using SpecLint.Catalogue;

namespace SpecLint.Rules.Labels;

[Rule("SL7016", "dairy-free-claim-false", "Milk is in a drink called dairy-free or lactose-free", Level.Warning, Safety = true)]
[Limit("lactose-free-claim")]
[Limit("lactose-free")]
[Limit("lactose-free-none")]
internal sealed partial class DairyFreeClaim : ClaimRule
{
    protected override string Caution => AllergenWords.Caution;

    protected override bool IsAbout(ClaimKind kind) => kind is ClaimKind.DairyFree or ClaimKind.LactoseFree;
}
