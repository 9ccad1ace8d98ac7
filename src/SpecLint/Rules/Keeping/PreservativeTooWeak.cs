using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5024", "preservative-too-weak", "It holds too little undissociated acid for a preservative to work", Level.Warning, Safety = true,
    Needs = [Fact.Ph])]
[Limit("listeria-ph-ca", "Listeria")]
[Limit("preservative-working-dose")]
internal sealed partial class PreservativeTooWeak : PrepRule
{
    private static readonly string[] Words = ["preservative", "preserved", "benzoate", "sorbate"];

    public override void Check(RecipeContext context, Prep prep)
    {
        if (context.Profile.IsSolid) return;
        var grams = context.Profile.Grams;
        bool dosed = grams[(int)Component.Benzoic] > 0 || grams[(int)Component.Sorbic] > 0;
        if (!dosed && prep.Keep is not { Claim.IsGiven: true } && prep.Notes.Count == 0) return;
        var claim = KeepingWords.Find(prep, Words, out string path, out string word);
        var preservative = dosed ? PreservativeIn(context.Profile) : null;
        if (claim.IsGiven
            ? IsBySpirit(claim.Value) && preservative is null
            : preservative is null || !Storage.MayOutlast(prep, SpecialCases.MarkedFromDays))
            return;
        var said = claim.IsGiven
            ? new Said(context.At(claim.Span, path), $"It is said to be preserved (\"{word}\")")
            : new Said(context.At(preservative!.Line.Item.Span, RecipeContext.PathOf(preservative.Line, "item")), "A preservative is "
                + "added");
        var ph = context.Fact(Fact.Ph);
        if (!ph.IsKnown || (context.Profile.Unknown & (Unknowns.Composition | Unknowns.Mass)) != 0)
        {
            if (!context.Profile.Keeping!.IsStrong) Open(context, said, ph);
            return;
        }

        // What spoils a sour preparation is yeast and mould: there the preservative alone counts, and the acids of the juice do not.
        double working = Preservatives.Undissociated(context.Profile, ph);
        bool yeasts = ph.High < Listeria.Value;
        double dose = working / Preservatives.WorkingDose.Value;

        // At the low end of the pH most acid is undissociated: if even that is too little, it is too little.
        double share = 0;
        foreach (var acid in AcidInhibition.Listeria)
        {
            if (AcidBase.Molality(grams, acid.Acid) is not { Value: > 0 } total) continue;
            if (acid.Undissociated(total.Value * 1000, new Ph(Math.Max(0, ph.Low))) is { } part) share += part / acid.MicMillimolal;
        }

        // Where the range of its pH lies on both sides, it must be enough on either.
        bool stops = share >= 1, isSpoilt = yeasts || (stops && ph.Low < Listeria.Value);
        if (isSpoilt ? dose >= 1 : stops) return;
        string little = isSpoilt
            ? $"it holds {Say.Number(working, 0)} mg/kg of undissociated benzoic and sorbic acid. It takes "
                + $"{Say.Number(Preservatives.WorkingDose.Value)} mg/kg to hold back yeasts and moulds ({Preservatives.WorkingDose.Source})"
            : $"its acids come to {Say.Number(share * 100, 0)} % of what stops Listeria, counting undissociated acid (Mejlholm and "
                + "Dalgaard 2009)";
        context.Report(new(Rule)
        {
            Answer = isSpoilt && !yeasts ? Answer.NotShown : Answer.Broken,
            At = said.At,
            Message = $"{said.Words}, but at pH {Say.Ph(ph)} {little}.",
            Advice = "Rely on cold and the date. A preservative only works in a sour preparation, and it clears nothing here.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.Ph, ph),
                Proof.Of("undissociated acid over what stops Listeria", share, "1", "Mejlholm & Dalgaard, J. Food Prot. 72:2132, 2009")],
        });
    }

    /// <summary>What is preserved, as it is said or added, and has no pH that can be told is not shown to be.</summary>
    private static void Open(RecipeContext context, Said said, FactValue ph) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = said.At,
            Message = $"{said.Words}, and {(ph.IsKnown ? "what is in it is not all known" : $"its pH is not known ({ph.OpenBecause})")}: "
                + "nothing shows that acid or a preservative works in it.",
            Advice = "Keep it by cold and by its date; a preservative works only in a sour preparation, and it clears nothing here.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.Ph, ph)],
        });

    /// <summary>The first part that is a preservative; what a juice holds of one by nature is none.</summary>
    private static Part? PreservativeIn(RecipeProfile profile) => profile.Parts.FirstOrDefault(static p => p.Material is { } m
        && (m.Of(Component.Benzoic) > Guards.PreservativePart || m.Of(Component.Sorbic) > Guards.PreservativePart));

    /// <summary>Whether a claim is about its spirit, which has a rule of its own.</summary>
    private static bool IsBySpirit(string claim) =>
        Storage.Has(claim, "alcohol") || Storage.Has(claim, "strength") || Storage.Has(claim, "spirit");

    /// <summary>Where something is said or done about preserving, and the words for it.</summary>
    private readonly record struct Said(Reading.Spot At, string Words);
}
