using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5031", "yeasts-not-held", "A sweet preparation is kept warm with nothing against yeasts and moulds", Level.Warning,
    IsConsequence = true, Needs = [Fact.WaterActivity, Fact.Ph, Fact.Abv, Fact.Sugar])]
[Limit("syrup-water-activity", "Activity")]
[Limit("alcohol-no-growth-practice", "Strength")]
[Limit("yeast-sugar", "Sugar")]
[Limit("yeast-days", "Start")]
[Limit("yeast-acetic", "Vinegar")]
[Limit("preservative-working-dose")]
internal sealed partial class YeastsNotHeld : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        double celsius = Storage.Celsius(prep, context.Settings), days = Storage.Days(prep);
        if (!Storage.IsAtRoom(celsius) || !(days > Start.Value) || context.Profile.IsSolid) return;

        // What is not cleared of the date mark, a thin syrup and a ferment have rules of their own.
        var state = context.Profile.Keeping!;
        var sugar = context.Fact(Fact.Sugar);
        if (state is not { Verdict: KeepingVerdict.NotControlled, Table: not "A", IsStrong: false, WaterActivity.IsKnown: true }
            || SpecialCases.IsFerment(prep)
            || state.WaterActivity.High <= Activity.Value
            || !sugar.IsKnown
            || sugar.Value < Sugar.Value
            || HoldsHurdle(context.Profile, state.Ph))
            return;
        string strength = state.Abv is { IsKnown: true, Value: > 0.5 }
            ? $", its strength {Say.Fact(Fact.Abv, state.Abv)} is below the {Say.Number(Strength.Value)} % vol that stops them"
            : "";
        context.Report(new(Rule)
        {
            Answer = state.WaterActivity.Low > Activity.Value ? Answer.Broken : Answer.NotShown,
            At = KeepingWords.WarmthIn(context, prep),
            Message = $"It is kept {KeepingWords.Days(days)} at {KeepingWords.Degrees(celsius)} with {Say.Fact(Fact.Sugar, sugar)} of "
                + "sugar. The measured figures answer the date mark, but not yeasts and moulds. They grow within weeks at any pH found in "
                + $"a bar when the water activity is above {Say.Number(Activity.Value)} ({Activity.Source}). Here it is "
                + $"{Say.Range(state.WaterActivity.Value, state.WaterActivity.Low, state.WaterActivity.High, "")}{strength}.",
            Advice = "Keep it cold, raise its sugar or strength, or heat it and close it hot by a recorded process.",
            Caution = "A ferment in a closed bottle can burst it. " + KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of(Fact.Sugar, sugar), Proof.Of(Activity)],
        });
    }

    /// <summary>A working dose of preservative, or as much acetic acid as slows yeasts.</summary>
    private static bool HoldsHurdle(RecipeProfile profile, FactValue ph)
    {
        if (Preservatives.Undissociated(profile, ph) >= Preservatives.WorkingDose.Value) return true;
        double mass = profile.InputMass;
        return mass > 0 && 100 * profile.Grams[(int)Component.Acetic] / mass >= Vinegar.Value;
    }
}
