using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Amounts;

[Rule("SL2005", "bitters-poured", "Bitters poured where dashes are meant", Level.Error, IsCause = true)]
[Limit("amount-bitters-per-serve", "Most")]
[Limit("amount-bitters-undrinkable", "Undrinkable")]
[Limit("amount-bitters-base", "MostBase")]
internal sealed partial class BittersByTheOunce : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        // All bitters of the drink season it together.
        double serves = drink.ServesOrOne, sum = 0;
        Part? most = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is not { Kind.IsBitters: true } || double.IsNaN(part.Millilitres) || part.Phase == PartPhase.Beside) continue;
            if (part.Line.Amount.Value.Unit.Name is "dash" or "drop") continue;
            sum += part.Millilitres;
            if (most is null || part.Millilitres > most.Millilitres) most = part;
        }

        if (most is null || sum / serves <= Most.Value || IsBase(context.Profile, most, serves)) return;
        var line = most.Line;
        bool undrinkable = sum / serves > Undrinkable.Value;
        double dashes = line.Amount.Value.Value is >= 2 and <= 6 ? Math.Round(line.Amount.Value.Value) : 2;
        string written = dashes * serves == 1 ? "1 dash" : $"{Written.Number(dashes * serves)} dashes";
        context.Report(new(Rule)
        {
            AskedLevel = undrinkable ? null : Level.Warning,
            At = context.AmountOf(line),
            Message = $"{(sum > most.Millilitres ? "All bitters come" : $"{Written.Item(line)} comes")} to "
                + $"{Say.With(sum / serves, "mL")} a drink. As a seasoning the maximum is {Say.With(Most.Value, "mL")} ({Most.Source}).",
            Advice = "Write dashes or drops if they are meant: 1 to 3 dashes season most drinks.",
            Evidence = [Written.Given(context, line), Proof.Of(undrinkable ? Undrinkable : Most)],
            Corrections = context.Write(line.Amount.Span, written),
        });
    }

    /// <summary>
    /// A sour on a base of bitters is a drink of its own: they are more than all other strong parts together (as much, where no ounce may
    /// have been a dash), and no more than a base.
    /// </summary>
    private static bool IsBase(RecipeProfile profile, Part bitters, double serves)
    {
        if (bitters.Millilitres / serves > MostBase.Value) return false;
        bool byOunce = Written.IsOunce(bitters.Line.Amount.Value.Unit);
        double strong = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || double.IsNaN(part.Millilitres)) continue;
            if (part.Material is not { Kind: { IsBitters: false } kind }) continue;
            if (kind.IsStrong || kind.GivesStrength) strong += part.Millilitres;
            if (kind.IsSpirit
                && part.Millilitres * Guards.BittersBesideSpirit >= bitters.Millilitres
                && byOunce && !Written.IsOunce(part.Line.Amount.Value.Unit))
                return false;
        }

        return bitters.Millilitres > strong || (bitters.Millilitres >= strong && !byOunce);
    }
}
