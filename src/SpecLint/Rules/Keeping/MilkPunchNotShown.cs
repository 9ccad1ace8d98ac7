using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5020", "milk-punch-not-shown", "A milk punch is kept without a measured pH", Level.Warning, Safety = true, IsConsequence = true,
    Needs = [Fact.Ph, Fact.Abv])]
[Limit("milk-wash-strength", "Strength")]
[Limit("table-b-ph", "TablePh")]
internal sealed partial class MilkPunchNotShown : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!SpecialCases.IsMilkPunch(prep)) return;
        double days = Storage.Days(prep);
        if (!Storage.MayOutlast(prep, SpecialCases.MarkedFromDays) || Storage.IsFrozen(Storage.Celsius(prep, context.Settings))) return;
        var state = context.Profile.Keeping!;
        if (state.Verdict == KeepingVerdict.NotControlled || KeepingVerdicts.IsMeasured(state.Ph)) return;
        bool strong = state.Abv.IsKnown && state.Abv.Low >= Strength.Value;
        string figures = state.Ph.IsKnown ? $"its pH is only computed, {Say.Ph(state.Ph)}" : "its pH is not known";
        string strength = state.Abv.IsKnown ? $", its strength {Say.Fact(Fact.Abv, state.Abv)}" : ", its strength not known";
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = strong && state.IsSour ? Level.Note : null,
            At = new(KeepingWords.At(context, prep), "measured.ph"),
            Message = $"The milk punch is kept {KeepingWords.ForDays(days)} and {figures}{strength}. Keeping one for months rests on a "
                + $"pH below {Say.Number(TablePh.Value)} and at least {Say.Number(Strength.Value)} % vol, both measured "
                + $"({TablePh.Source}; strength: {Strength.Source}).",
            Advice = "Measure the pH and the strength of the clarified punch, write both under `measured`, and keep it cold.",
            Caution = KeepingWords.Caution + " The clarified punch still counts as containing milk.",
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of(TablePh), Proof.Of(Strength)],
        });
    }
}
