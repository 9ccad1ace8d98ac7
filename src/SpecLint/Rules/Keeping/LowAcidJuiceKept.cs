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
        if (!SpecialCases.IsLowAcidJuiceKept(prep, state, context.Settings))
        {
            if (Storage.MayBeSealed(prep) && SpecialCases.IsLowAcidJuiceKept(prep, state, context.Settings, true)) Open(context, prep, state);
            return;
        }

        bool isSealed = Storage.IsSealed(prep);
        double days = Storage.Days(prep);
        string how = isSealed ? "sealed" : $"kept {KeepingWords.Days(days)}";
        context.Report(new(Rule)
        {
            Answer = state.IsThinned ? Answer.NotShown : Answer.Broken,
            AskedLevel = state.IsThinned ? Level.Warning : null,
            Place = isSealed ? context.At(Storage.SealedSpan(prep)) : KeepingWords.At(context, prep),
            Path = isSealed ? Storage.SealedPath(prep) : "keep.for",
            Message = $"It is {how} at {(KeepingVerdicts.IsMeasured(state.Ph) ? "a measured" : "a computed")} pH of "
                + $"{Say.Ph(state.Ph)}, above {Say.Number(Ph.Value)}. Sealed from air, it lets Clostridium botulinum make its toxin "
                + $"when it gets warm ({Ph.Source}).",
            Advice = "Keep it cold in a loosely covered vessel and use it within days, or sour it to a measured pH of at most 4.2 before "
                + $"bottling{KeepingWords.Variance(context.Settings)}. Low-acid food sealed for the shelf must come from a plant with a "
                + "filed process (Food Code 3-201.12; 21 CFR 113 and 108.35).",
            Caution = KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of(Ph)],
        });
    }

    /// <summary>Whether it is sealed, nothing says: in a closed bottle it would be the food of botulism.</summary>
    private static void Open(RecipeContext context, Prep prep, KeepingState state) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = Level.Warning,
            At = new(KeepingWords.At(context, prep), "keep.sealed"),
            Message = "Nothing says whether it is sealed, and it is kept at "
                + $"{(KeepingVerdicts.IsMeasured(state.Ph) ? "a measured" : "a computed")} pH of {Say.Ph(state.Ph)}, over "
                + $"{Say.Number(Ph.Value)}: sealed from air, Clostridium botulinum can make its toxin in it when it gets warm "
                + $"({Ph.Source}).",
            Advice = "Write `sealed` under `keep`: false where it stands loosely covered.",
            Caution = KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of(Ph)],
        });
}
