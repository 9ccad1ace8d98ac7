using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

[Rule("SL5024", "preservative-too-weak", "It holds too little undissociated acid for a preservative to work", Level.Warning, Safety = true, Needs = [Fact.Ph])]
[Limit("listeria-ph-ca", "Listeria")]
[Limit("preservative-working-dose")]
internal sealed partial class PreservativeTooWeak : PrepRule
{
    private static readonly string[] Words = ["preservative", "preserved", "benzoate", "sorbate"];

    public override void Check(RecipeContext context, Prep prep)
    {
        if (context.Profile.IsSolid || (context.Profile.Unknown & (Unknowns.Composition | Unknowns.Mass)) != 0) return;
        var grams = context.Profile.Grams;
        bool dosed = grams[(int)Component.Benzoic] > 0 || grams[(int)Component.Sorbic] > 0;
        if (!dosed && prep.Keep is not { Claim.IsGiven: true } && prep.Notes.Count == 0) return;
        var claim = KeepingWords.Find(prep, Words, out string path, out string word);
        if (!claim.IsGiven && !dosed) return;
        var ph = context.Fact(Fact.Ph);
        if (!ph.IsKnown)
        {
            if (claim.IsGiven && !Storage.Has(claim.Value, "alcohol") && !Storage.Has(claim.Value, "strength") && !Storage.Has(claim.Value, "spirit")) Open(context, claim, path, word, ph);
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

        if ((yeasts ? dose >= 1 : share >= 1) || (!claim.IsGiven && !Storage.MayOutlast(prep, SpecialCases.MarkedFromDays))) return;
        Part? preservative = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is { } material && (material.Of(Component.Benzoic) > Guards.PreservativePart || material.Of(Component.Sorbic) > Guards.PreservativePart)) preservative ??= part;
        }

        if (!claim.IsGiven && preservative is null) return;
        context.Report(new(Rule)
        {
            Place = claim.IsGiven ? context.At(claim.Span) : context.At(preservative!.Line.Item.Span),
            Path = claim.IsGiven ? path : RecipeContext.PathOf(preservative!.Line, "item"),
            Message = $"{(claim.IsGiven ? $"It is said to be preserved (\"{word}\")" : "A preservative is added")}, but at pH {Say.Ph(ph)} {(yeasts ? $"it holds {Say.Number(working, 0)} mg/kg of undissociated benzoic and sorbic acid. It takes {Say.Number(Preservatives.WorkingDose.Value)} mg/kg to hold back yeasts and moulds ({Preservatives.WorkingDose.Source})" : $"its acids come to {Say.Number(share * 100, 0)} % of what stops Listeria, counting undissociated acid (Mejlholm and Dalgaard 2009)")}.",
            Advice = "Rely on cold and the date. A preservative only works in a sour preparation, and it clears nothing here.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.Ph, ph), Proof.Of("undissociated acid over what stops Listeria", share, "1", "Mejlholm & Dalgaard, J. Food Prot. 72:2132, 2009")],
        });
    }

    /// <summary>What is said to be preserved and has no pH that can be told is not shown to be.</summary>
    private static void Open(RecipeContext context, Reading.Given<string> claim, string path, string word, FactValue ph) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(claim.Span, path),
            Message = $"It is said to be preserved (\"{word}\"), and its pH is not known ({ph.OpenBecause}): nothing shows that acid or a preservative works in it.",
            Advice = "Keep it by cold and by its date; a preservative works only in a sour preparation, and it clears nothing here.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("claim", claim.Value)],
        });
}
