using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5014", "acidified-kept-warm", "A soured low-acid food is sealed and kept at room temperature", Level.Warning, Safety = true,
    Needs = [Fact.Ph, Fact.WaterActivity, Fact.Abv])]
[Limit("acidified-ph", "Ph")]
[Limit("low-acid-water-activity", "Activity")]
[Limit("alcoholic-beverage-us", "Strength")]
internal sealed partial class AcidifiedKeptWarm : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        double celsius = Storage.Celsius(prep, context.Settings);
        bool isSealed = Storage.IsSealed(prep), certain = isSealed && !double.IsNaN(celsius) && !double.IsNaN(Storage.Days(prep));
        var state = context.Profile.Keeping!;
        if (!(isSealed || Storage.MayBeSealed(prep))
            || !Storage.MayBeAtRoom(celsius)
            || !Storage.MayOutlast(prep, SpecialCases.MarkedFromDays)
            || state is not { Verdict: KeepingVerdict.NotControlled, HoldsPerishable: true }
            || SpecialCases.IsFerment(prep)
            || (state.WaterActivity.IsKnown && state.WaterActivity.High <= Activity.Value)
            || (state.Abv.IsKnown && state.Abv.Value >= Strength.Value)
            || context.Profile.Parts.FirstOrDefault(IsLowInAcid) is not { } low)
            return;

        // What is not shown to be sour rests on its little water alone, which does not hold what makes toxin in a closed pack.
        bool sour = KeepingWords.IsMeasuredAtMost(state.Ph, Ph.Value);
        string ph = !state.Ph.IsKnown ? "at a pH that is not known" : $"{(sour ? "soured to" : "at")} pH {Say.Ph(state.Ph)}";
        string closed = isSealed ? "sealed" : "not said to be open to the air,";
        string warm = double.IsNaN(celsius) ? "kept at a temperature that is not stated" : "kept at room temperature";
        string food = sour
            ? "an acidified food, which"
            : $"a food low in acid in a closed pack unless its water activity is shown to be at most {Say.Number(Activity.Value)}, and";
        context.Report(new(Rule)
        {
            Answer = certain ? Answer.Broken : Answer.NotShown,
            AskedLevel = Ph.AppliesIn(context.Settings) && certain ? Level.Error : null,
            At = new(KeepingWords.AtTemperature(context, prep), "keep.at"),
            Message = $"It holds {KeepingWords.NameOf(low)}, a food low in acid (pH over {Say.Number(Ph.Value)}), {ph}, {closed} and "
                + $"{warm}. That is {food} needs a process set by a process authority ({Ph.Source}).",
            Advice = "Keep it cold, where that law does not apply, or have the process set by a process authority (in the US also Food "
                + "Code 3-201.12 and 3-502.11).",
            Caution = KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of("pH of the part", low.Material!.Ph.Typical, "[pH]"),
                Proof.Of(Ph)],
        });
    }

    private static bool IsLowInAcid(Part part) =>
        part.Material is { } material
            && part.Phase != PartPhase.Beside
            && material.Ph.Low > Ph.Value
            && Perishables.Of(material) != Perishable.None;
}
