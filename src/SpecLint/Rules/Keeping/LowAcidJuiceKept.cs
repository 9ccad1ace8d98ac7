using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5013", "low-acid-juice-kept", "Food low in acid is sealed or kept long", Level.Error, Safety = true, IsConsequence = true,
    Needs = [Fact.Ph])]
[Limit("low-acid-juice-ph", "Ph")]
[Limit("food-code-date-mark")]
internal sealed partial class LowAcidJuiceKept : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        var state = context.Profile.Keeping!;
        bool told = SpecialCases.IsLowAcidJuiceKept(prep, state, context.Settings);

        // Whether it is sealed, nothing may say: in a closed bottle it would be the food of botulism.
        if (!told && !(Storage.MayBeSealed(prep) && SpecialCases.IsLowAcidJuiceKept(prep, state, context.Settings, true))) return;
        bool isSealed = Storage.IsSealed(prep), shown = told && !state.IsThinned;
        string how = isSealed ? "sealed" : $"kept {KeepingWords.Days(Storage.Days(prep))}";
        context.Report(new(Rule)
        {
            Answer = shown ? Answer.Broken : Answer.NotShown,
            AskedLevel = shown ? null : Level.Warning,
            At = told && isSealed
                ? context.At(Storage.SealedSpan(prep), Storage.SealedPath(prep))
                : new(KeepingWords.At(context, prep), told ? "keep.for" : "keep.sealed"),
            Message = told
                ? $"It is {how} at {KeepingWords.PhOf(state)}, above {Say.Number(Ph.Value)}. Sealed from air, it lets Clostridium "
                    + $"botulinum make its toxin when it gets warm ({Ph.Source})."
                : $"Nothing says whether it is sealed, and it is kept at {KeepingWords.PhOf(state)}, over {Say.Number(Ph.Value)}: sealed "
                    + $"from air, Clostridium botulinum can make its toxin in it when it gets warm ({Ph.Source}).",
            Advice = told
                ? "Keep it cold in a loosely covered vessel and use it within days, or sour it to a measured pH of at most 4.2 before "
                    + $"bottling{KeepingWords.Variance(context.Settings)}. Low-acid food sealed for the shelf must come from a plant with "
                    + "a filed process (Food Code 3-201.12; 21 CFR 113 and 108.35)."
                : "Write `sealed` under `keep`: false where it stands loosely covered.",
            Caution = KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of(Ph)],
        });
    }
}
