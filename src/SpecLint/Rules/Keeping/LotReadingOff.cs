using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5040", "lot-reading-off", "A lot is measured at a pH, °Brix or strength that what it is does not have", Level.Warning,
    Safety = true, Needs = [Fact.Ph, Fact.Brix, Fact.Abv])]
[Limit("acidified-ph", "Sour")]
[Limit("lot-ph-apart", "PhApart")]
[Limit("lot-brix-apart", "BrixApart")]
[Limit("lot-abv-apart", "AbvApart")]
internal sealed partial class LotReadingOff : LotRule
{
    /// <summary>What a lot should read.</summary>
    private readonly record struct Expected(double Low, double High, string Of);

    /// <summary>One reading: its name, its property, the number, the half width of the meter and how far batches differ.</summary>
    private readonly record struct OneReading(string Name, string Property, Given<Quantity> Given, double HalfWidth, Limit Apart);

    protected override void Check(FileContext context, Lot lot)
    {
        if (lot.Measured is not { } read || !lot.Item.IsGiven) return;
        var prep = Lots.PrepOf(context, lot);
        var profile = prep is null ? null : context.Profiles.Of(prep);
        if (read.Ph.IsGiven)
            Hold(
                context, lot, prep, new("pH", "ph", read.Ph, Meters.PhHalfWidth(read, context.Book), PhApart),
                profile is null ? OfIngredient(context, lot, "ph") : OfRecipe(profile, Fact.Ph));
        if (read.Brix.IsGiven && profile is not null)
            Hold(
                context, lot, prep, new("°Brix", "brix", read.Brix, Meters.BrixHalfWidth(read, context.Book), BrixApart),
                OfRecipe(profile, Fact.Brix));
        if (read.Abv.IsGiven)
            Hold(
                context, lot, prep, new("strength", "abv", read.Abv, Meters.AbvHalfWidth, AbvApart),
                profile is null ? OfIngredient(context, lot, "strength") : OfRecipe(profile, Fact.Abv));
    }

    private static Expected? OfRecipe(RecipeProfile profile, Fact fact)
    {
        var known = profile.Get(fact);
        if (fact == Fact.Ph && known.IsKnown && !KeepingVerdicts.IsMeasured(known)) known = profile.ComputedPhWithStrayIons();
        return known.IsKnown ? new Expected(known.Low, known.High, "its recipe comes to") : null;
    }

    private static Expected? OfIngredient(FileContext context, Lot lot, string path) =>
        context.Profiles.MaterialOf(lot.Item.Value)?.Ingredient is { } ingredient && ingredient.Values.TryGetValue(path, out var value)
            ? new Expected(value.Low, value.High, "it has")
            : null;

    private static void Hold(FileContext context, Lot lot, Prep? prep, OneReading reading, Expected? expected)
    {
        var (name, property, given, halfWidth, apart) = reading;
        if (expected is not { } usual) return;
        double low = given.Value.BaseLow - halfWidth, high = given.Value.BaseHigh + halfWidth;
        bool over = low > usual.High + apart.Value;
        bool ferments = prep is not null && SpecialCases.IsFerment(prep);

        // A ferment goes on: it grows sourer, drier and stronger in the bottle.
        if ((!over && high >= usual.Low - apart.Value) || (ferments && over != (name == "pH"))) return;
        bool lostItsAcid = name == "pH" && over && low > Sour.Value && usual.High + apart.Value <= Sour.Value;
        string unit = name == "strength" ? " % vol" : "";
        context.Report(new(Rule)
        {
            AskedLevel = lostItsAcid ? Level.Error : null,
            At = context.At(given.Span, Lots.PathOf(lot, "measured") + "." + property),
            Key = Lots.KeyOf(lot),
            Message = $"The lot of `{lot.Item.Value}` is measured at {name} {Say.Number(given.Value.Base)}{unit}, and {usual.Of} "
                + $"{Say.Number(usual.Low)}–{Say.Number(usual.High)}{unit} (differences up to {Say.Number(apart.Value)} are ignored; "
                + $"{apart.Source}).{(lostItsAcid ? $" Above pH {Say.Number(Sour.Value)} acid holds nothing ({Sour.Source})." : "")}",
            Advice = "Measure it again with a calibrated meter. If the reading stands, it is not what its label says, it was made "
                + "otherwise, or it has spoiled: discard it.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("measured", given.Value, context.At(given.Span)), Proof.Of(apart)],
            Related = Lots.RecipeIs(prep),
        });
    }
}
