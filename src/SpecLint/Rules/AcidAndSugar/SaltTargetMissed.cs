using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4005", "salt-target-missed", "A preparation that misses its target of salt", Level.Warning,
    Needs = [Fact.Salt, Fact.Density], IsConsequence = true)]
[Limit("target-tolerance", "Off")]
internal sealed partial class SaltTargetMissed : TargetRule
{
    protected override string Property => "salt";

    protected override string Noun => "salt";

    protected override Given<Quantity> TargetOf(Target target) => target.Salt;

    protected override Came? Comes(RecipeContext context, Quantity target) =>
        Content(context, target, Fact.Salt, Solving.SaltByMass, Solving.SaltPerVolume);

    protected override bool IsMoved(Part part) => part.Material is { Kind.IsDrySalt: true };

    protected override (double Off, Limit Limit) Tolerance(double target) => (target * Off.Value / 100, Off);
}
