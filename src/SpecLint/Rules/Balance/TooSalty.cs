using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Balance;

[Rule("SL3019", "salt-over-taste", "So much salt that the drink tastes salty", Level.Warning, Needs = [Fact.Salt], IsConsequence = true)]
[Limit("salt-taste", "Taste")]
[Limit("amount-salt-per-serve", "Poured")]
internal sealed partial class TooSalty : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (Builds.First(context.Profile, Substances.IsSalt) is not { } salt || !salt.Line.Amount.IsGiven || !salt.IsWeighed) return;
        var value = context.Fact(Fact.Salt);
        if (Findings.Check.AtMost(value, Taste.Value) != Stand.Broken) return;

        // Tomato, brine and soy are salty by nature: it must be the saline that does it.
        double from = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Mix && part.IsWeighed && Substances.IsSalt(part.Material))
                from += part.Grams.Typical * Solving.SaltOf(part.Material!.PerGram);
        }

        // Beyond what is poured of it the amount itself is a slip of the unit, which the rules of amounts report.
        if (from < Guards.MainSalt * Solving.SaltOf(context.Profile.Grams) || from / drink.ServesOrOne > Poured.Value) return;
        var amount = salt.Line.Amount.Value;
        string? drops = Drops(amount);
        double factor = Solving.Factor(context.Profile, static p => Substances.IsSalt(p.Material), Solving.SaltPerVolume, Taste.Value / 2);
        string less = Say.With(amount.Base * factor, amount.Dimension == Dimension.Mass ? "g" : "mL");
        context.Report(new(Rule)
        {
            At = context.AmountOf(salt.Line),
            Message = $"{salt.Line.Item.Or("The saline")} raises the salt to {Say.Fact(Fact.Salt, value)}, above the "
                + $"{Say.With(Taste.Value, "g/100 mL")} at which a drink tastes salty ({Taste.Source}).",
            Advice = drops is not null ? $"Write {drops}, if drops are meant."
                : double.IsNaN(factor) ? "Take less of it."
                : $"Take about {less} of it, half of what can be tasted.",
            Evidence =
            [
                Proof.Of(Fact.Salt, value), Proof.Of(Taste),
                Proof.Of(salt.Line.Item.Or("saline"), amount, context.At(salt.Line.Amount.Span)),
            ],
            Corrections = context.Write(salt.Line.Amount.Span, drops),
        });
    }

    /// <summary>A few whole millilitres that may be meant as drops.</summary>
    private static string? Drops(Quantity amount)
    {
        if (amount is not { Dimension: Dimension.Volume, Unit.Name: "ml" or "cl", Value: >= 1 and var count }) return null;
        if (count > Guards.MostMillilitresForDrops || Math.Abs(count - Math.Round(count)) >= 1e-9) return null;
        return count == 1 ? "1 drop" : $"{Say.Number(count, 0)} drops";
    }
}
