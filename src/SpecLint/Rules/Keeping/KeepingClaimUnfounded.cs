using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5030", "keeping-claim-unfounded", "A keeping claim goes further than its figures", Level.Warning, Safety = true,
    Needs = [Fact.Abv, Fact.Ph, Fact.Life])]
[Limit("alcohol-no-growth-practice", "NoGrowth")]
[Limit("alcohol-kill", "Kill")]
[Limit("acid-kill-ph", "AcidPh")]
[Limit("acid-kill-time", "AcidTime")]
internal sealed partial class KeepingClaimUnfounded : PrepRule
{
    private static readonly string[] Forever =
    [
        "indefinitely", "keeps forever", "keep forever", "never spoils", "never goes off", "does not spoil", "cannot spoil", "no expiry",
        "shelf-stable", "shelf stable", "needs no refrigeration",
    ];

    private static readonly string[] ByAlcohol =
    [
        "sterilised by alcohol", "sterilized by alcohol", "alcohol kills", "alcohol sterilises", "alcohol sterilizes",
        "preserved by alcohol", "preserved by its strength", "alcohol preserves",
        "kept by its strength", "high proof keeps", "alcohol keeps it", "strength keeps it", "spirit keeps it", "spirit preserves",
    ];

    private static readonly string[] ByAcid =
    [
        "acid kills", "sterilised by acid", "sterilized by acid", "acid sterilises", "acid sterilizes", "kills bacteria",
        "kills all bacteria", "lemon juice kills", "citrus kills",
    ];

    public override void Check(RecipeContext context, Prep prep)
    {
        var abv = context.Fact(Fact.Abv);
        var ph = context.Fact(Fact.Ph);
        var claim = KeepingWords.Find(prep, ByAlcohol, out string path, out string word);
        if (claim.IsGiven)
        {
            bool kills = Storage.Has(word, "kill") || Storage.Has(word, "steril");
            var limit = kills ? Kill : NoGrowth;
            if (Findings.Check.AtLeast(abv, limit.Value) == Stand.Holds && !kills) return;
            string strength = abv.IsKnown ? $"its strength as made is {Say.Fact(Fact.Abv, abv)}" : "its strength as made is not known";
            string why = kills
                ? $"even at {Say.Number(limit.Value)} % vol germs take two days to die and spores survive"
                : $"below {Say.Number(limit.Value)} % vol alcohol does not preserve food";
            Report(context, claim, path, limit, $"\"{word}\": {strength}, and {why} ({limit.Source}).",
                "Use the strength after water, juice and syrup are in. Remove the claim, and rely on cold and the date.",
                Findings.Check.AtLeast(abv, limit.Value) == Stand.Broken);
            return;
        }

        claim = KeepingWords.Find(prep, ByAcid, out path, out word);
        if (claim.IsGiven)
        {
            string acidity = ph.IsKnown
                ? $"its pH is {Say.Ph(ph)}{(KeepingVerdicts.IsMeasured(ph) ? "" : ", computed")}"
                : "its pH is not known";
            Report(context, claim, path, AcidPh,
                $"\"{word}\": {acidity}. Germs survive for days in sour juice, and the claim would need a pH of at most "
                    + $"{Say.Number(AcidPh.Value)} for at least {Say.Number(AcidTime.Value)} h ({AcidPh.Source}).",
                "Remove the claim. Acid stops many germs from growing but does not sterilise.",
                true);
            return;
        }

        claim = KeepingWords.Find(prep, Forever, out path, out word);
        if (!claim.IsGiven) return;
        if (Findings.Check.AtLeast(abv, NoGrowth.Value) == Stand.Holds && !context.Profile.Keeping!.HoldsPerishable) return;
        var life = context.Fact(Fact.Life);
        string end = life.IsKnown
            ? $"by the rules of keeping it lasts {KeepingWords.Days(life.Value)} (`{life.From}`)"
            : "no measurement supports that";
        Report(context, claim, path, NoGrowth, $"\"{word}\": {end}.",
            "Remove the claim and give a time and a storage temperature under `keep`.",
            true);
    }

    private static void Report(
        RecipeContext context, Reading.Given<string> claim, string path, Limit limit, string message, string advice, bool broken) =>
        context.Report(new(Rule)
        {
            Answer = broken ? Answer.Broken : Answer.NotShown,
            At = context.At(claim.Span, path),
            Message = message,
            Advice = advice,
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("claim", claim.Value), Proof.Of(Fact.Abv, context.Fact(Fact.Abv)),
                Proof.Of(Fact.Ph, context.Fact(Fact.Ph)), Proof.Of(limit)],
        });
}
