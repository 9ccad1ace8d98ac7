using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5007", "outlives-its-parts", "A preparation is kept longer than the shortest-lived part in it", Level.Error, Safety = true,
    IsConsequence = true, Needs = [Fact.Life])]
[Limit("food-code-date-mark", "Mark")]
internal sealed partial class OutlivesItsParts : PrepRule
{
    private const string Mixture = "(a mixture takes the date of its earliest part, Food Code 3-501.17)";

    public override void Check(RecipeContext context, Prep prep)
    {
        double days = Storage.Days(prep);
        var terms = context.Profile.KeepingTerms!;
        if (double.IsNaN(days))
        {
            // Of a liquid that needs cold, the rule of what is not stated asks how long it is kept.
            bool isAsked = !context.Profile.IsSolid
                && context.Profile.Keeping is { HoldsPerishable: true, IsStrong: false, Verdict: not KeepingVerdict.NotControlled };
            if (!isAsked && terms.Safety is { IsSet: true, Part: { } limiting } && terms.Safety.From != Mark.Id)
                Undated(context, prep, terms.Safety, limiting);
            return;
        }

        bool safety = terms.Safety.From != Mark.Id && days > terms.Safety.Days;
        if (!safety && UndatedPart(context, prep) is { } undated && days > SpecialCases.MarkedFromDays)
        {
            context.Report(new(Rule)
            {
                Answer = Answer.NotShown,
                AskedLevel = Level.Warning,
                At = new(KeepingWords.At(context, prep), "keep.for"),
                Key = "undated",
                Message = $"It is kept {KeepingWords.Days(days)}, and nothing says how long {KeepingWords.NameOf(undated)} in it keeps "
                    + $"{Mixture}.",
                Advice = $"Write how long {KeepingWords.NameOf(undated)} keeps in its own file.",
                Caution = KeepingWords.Caution,
                Evidence = [Proof.Of("keep.for", days, "d"), Proof.Of("part", undated.Line.Item.Value, context.At(undated.Line.Item.Span))],
                Related = RelatedTo(context, undated),
            });
        }

        if (!safety && HasRuleOfItsOwn(context, prep)) return;
        if (safety || days > terms.Parts.Days)
        {
            var end = safety ? terms.Safety : terms.Parts;
            var part = end.Part!;
            context.Report(new(Rule)
            {
                AskedLevel = safety ? null : Level.Warning,
                AllowedDays = end.Days,
                At = new(KeepingWords.At(context, prep), "keep.for"),
                Message = $"It is kept {KeepingWords.Days(days)}, longer than `{end.From}` in it, which keeps "
                    + $"{KeepingWords.Days(end.Days)} {(safety ? Mixture : "(for quality, common practice)")}.",
                Advice = $"Keep it at most {KeepingWords.Days(end.Days)}, or add `{end.From}` at service.",
                Caution = safety ? KeepingWords.Caution : null,
                Evidence = [Proof.Of("keep.for", days, "d"), Proof.Of(end.From, end.Days, "d"),
                    Proof.Of("part", end.From, context.At(part.Line.Item.Span))],
                Related = RelatedTo(context, part),
                Corrections = [new Correction(
                    CorrectionGrade.Proposed, $"Keep it {KeepingWords.AtMost(end.Days)}.",
                    [new TextEdit(KeepingWords.At(context, prep), $"\"{KeepingWords.AtMost(end.Days)}\"")]) { KeepsTheThing = true }],
            });
            return;
        }

        if (days > terms.Family.Days)
        {
            context.Report(new(Rule)
            {
                AskedLevel = Level.Note,
                At = new(KeepingWords.At(context, prep), "keep.for"),
                Message = $"It is kept {KeepingWords.Days(days)}. Bars usually use such a preparation within "
                    + $"{KeepingWords.Days(terms.Family.Days)}, for quality (common practice, no source).",
                Advice = $"Taste it against a fresh batch at {KeepingWords.Days(terms.Family.Days)}, and shorten the time if it has gone "
                    + "off.",
                Evidence = [Proof.Of("keep.for", days, "d"), Proof.Of($"usual of {terms.Family.From}", terms.Family.Days, "d")],
            });
        }
    }

    /// <summary>For how long a dry or strong preparation with a part that needs cold is kept, nothing says.</summary>
    private static void Undated(RecipeContext context, Prep prep, KeepingEnd end, Part part) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = Level.Warning,
            AllowedDays = end.Days,
            At = new(KeepingWords.At(context, prep), "keep"),
            Message = $"Nothing says how long it is kept, and `{end.From}` in it keeps {KeepingWords.Days(end.Days)} {Mixture}.",
            Advice = $"Write how long it is kept: {KeepingWords.Days(end.Days)} or "
                + $"less{(context.Profile.IsSolid ? ", unless it is dried and its water activity is measured" : "")}.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(end.From, end.Days, "d"), Proof.Of("part", end.From, context.At(part.Line.Item.Span))],
            Related = RelatedTo(context, part),
        });

    /// <summary>
    /// A preparation among the parts that needs cold and does not say for how long it is kept; <see langword="null"/> where all say.
    /// </summary>
    private static Part? UndatedPart(RecipeContext context, Prep prep)
    {
        if (context.Profile.Keeping is not { Verdict: not KeepingVerdict.NotControlled, IsDried: false }
            || Storage.IsFrozen(Storage.Celsius(prep, context.Settings)))
            return null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase is PartPhase.Beside or PartPhase.TakenOut
                || part.Item is not { File: Prep inner, ByProduct: null }
                || !double.IsNaN(Storage.Days(inner)))
                continue;
            if (context.Profiles.Of(inner).Keeping is { HoldsPerishable: true, Verdict: not KeepingVerdict.NotControlled }) return part;
        }

        return null;
    }

    private static bool HasRuleOfItsOwn(RecipeContext context, Prep prep) =>
        KeptPastDateMark.Speaks(context, prep)
            || SpecialCases.IsLowAcidJuiceKept(prep, context.Profile.Keeping!, context.Settings)
            || SpecialCases.IsPlantInOil(context.Profile, out _)
            || RawEggKept.EggOf(context, prep) is not null;

    private static IReadOnlyList<RelatedPlace> RelatedTo(RecipeContext context, Part part)
    {
        var line = context.See(part.Line.Span, "the shortest-lived part");
        return part.Item?.File is Prep { Keep: { For.IsGiven: true } keep } inner
            ? [line, new RelatedPlace(inner.At(keep.For.Span), "how long that part is kept")]
            : [line];
    }
}
