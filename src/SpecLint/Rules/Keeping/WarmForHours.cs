using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Labels;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

[Rule("SL5032", "warm-for-hours", "A step keeps food that needs cold lukewarm for hours", Level.Error, Safety = true, Needs = [Fact.Ph])]
[Limit("food-code-time-control", "Hours")]
[Limit("food-code-cold-hold", "Cold")]
[Limit("food-code-hot-hold", "Hot")]
[Limit("alcohol-no-growth-practice", "Spirited")]
[Limit("guard-spice-in-syrup", "Syrup")]
[Limit("guard-mass-of-volume", "MassOfVolume")]
internal sealed partial class WarmForHours : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (context.Profile.Keeping is { StaysDry: true } or { Verdict: KeepingVerdict.NotControlled }
            || SpecialCases.IsFerment(prep, context.Profile)
            || SpecialCases.IsMilkPunch(prep))
            return;
        var pot = Pot.Of(prep);
        for (int i = 0; i < prep.Method.Count; i++)
        {
            var step = prep.Method[i];
            if (step.Verb.Cools || step.Verb.Freezes || step.Verb.Dries || step.Verb.HeatsDry) continue;
            bool timed = step.For is { IsGiven: true, Value.Dimension: Dimension.Duration };

            // For how long something is steeped or stands, and nothing says: for longer.
            if (timed ? !(step.For.Value.BaseHigh / 3600 > Hours.Value) : !MayStand(step)) continue;
            var at = KeepingWords.WarmthOf(step);
            bool told = at.IsGiven;
            if (told && (at.Value.BaseHigh <= Cold.Value || at.Value.BaseLow >= Hot.Value)) continue;
            if (!told && (step.Verb.Boils || IsInTheCold(step))) continue;
            if (Worst(context, pot, i) is not { } part) continue;
            bool animal = Perishables.In(part, context.Profile)
                is Perishable.Dairy or Perishable.Egg or Perishable.NutOrPulse or Perishable.ListedPlant;
            string stands = timed ? $"stands for {Say.With(step.For.Value.Value, step.For.Value.Unit.Name)}"
                : step.Verb.IsKnown && step.Verb.Heats && !told ? "is heated for a time that nothing states"
                : step.Verb.IsKnown || told ? "stands for a time that nothing states"
                : "may stand for hours in a step that says neither what is done nor how long it takes,";
            string warm = told ? KeepingWords.Degrees(at.Value.BaseHigh) : "an unstated temperature";
            context.Report(new(Rule)
            {
                Answer = told && timed ? Answer.Broken : Answer.NotShown,
                AskedLevel = told && animal && timed ? null : Level.Warning,
                At = context.At(timed ? step.For.Span : step.Do.Span, context.PathOf(step)),
                Message = $"`{part.Line.Item.Or("")}` {stands} at {warm}. Between {Say.Number(Cold.Value)} and {Say.Number(Hot.Value)} °C "
                    + $"the limit for food that needs cold is {Say.Number(Hours.Value)} h (US FDA Food Code 3-501.16, 3-501.19).",
                Advice = told ? "Do it in the refrigerator, or for less than four hours."
                    : step.Verb.Heats
                    ? "Write in the step how hot it gets, with `to`, or at what temperature it is held, with `at` and `for`."
                    : timed || step.Verb.IsKnown ? "Write `at` in the step: 4 °C if it stands in the refrigerator."
                    : "Write with `do` what is done in the step and, where it stands, `for` how long and `at` which temperature.",
                Caution = KeepingWords.Caution,
                Evidence = timed ? [Proof.Of("time", step.For.Value.BaseHigh / 3600, "h"), Proof.Of(Hours)] : [Proof.Of(Hours)],
            });
            return;
        }
    }

    /// <summary>
    /// Whether a step without a time may last for hours: it steeps or stores, it heats and does not say up to what, or nobody knows what
    /// is done in it.
    /// </summary>
    private static bool MayStand(Step step) =>
        !step.Verb.IsKnown || (step.Verb.Heats
            ? step.At.IsGiven || !(step.To.IsGiven || step.Verb.IsBrief)
            : !step.Verb.IsBrief && (step.Verb.Extracts || step.Verb.Keeps));

    private static bool IsInTheCold(Step step) =>
        step.Vessel is { IsGiven: true, Value.IsCold: true } || TellsOfCold(step.Note) || TellsOfCold(step.Into) || TellsOfCold(step.Until);

    private static bool TellsOfCold(Given<string> text) =>
        text.IsGiven && WordSearch.First(text.Value, TextWords.Cold) is not null;

    /// <summary>
    /// The part in the pot at a step that needs cold most; <see langword="null"/> where spirit, sugar or acid in the pot hold it.
    /// </summary>
    private static Part? Worst(RecipeContext context, Pot pot, int step)
    {
        Part? worst = null;
        var most = Perishable.None;
        double all = 0, ethanol = 0, sugar = 0;
        bool sour = context.Profile.Keeping!.IsSour;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside
                || part.Material is not { } material
                || !pot.IsInTheVessel(step, part.Line, context.Profile))
                continue;
            if (part.IsWeighed)
            {
                all += part.Grams.Typical;
                ethanol += part.Grams.Typical * material.Of(Component.Ethanol);
                for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) sugar += part.Grams.Typical * material.Of(c);
            }

            var what = part.Item?.File is Prep inner && context.Profile.Set.TryBefore(inner, context.Profile)?.Keeping is { } state
                ? state.Verdict == KeepingVerdict.NotControlled ? Perishable.None : state.What
                : Perishables.In(part, context.Profile);
            if (what <= most) continue;
            most = what;
            worst = part;
        }

        if (all > 0 && 100 * ethanol >= Spirited.Value * MassOfVolume.Value * all) return null;
        bool plant = most is Perishable.Plant or Perishable.Juice;
        return plant && (sour || (all > 0 && 100 * sugar >= Syrup.Value * all)) ? null : worst;
    }
}
