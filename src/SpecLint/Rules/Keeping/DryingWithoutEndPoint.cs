using System.Text.RegularExpressions;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Hazards;

namespace SpecLint.Rules.Keeping;

[Rule("SL5022", "drying-without-end-point", "Drying ends by the clock, not by mass lost or water activity", Level.Warning, Safety = true)]
[Limit("dried-water-activity-mould", "Mould")]
[Limit("dried-water-activity-safety", "Safety")]
[Limit("drying-temperature-least", "Coolest")]
[Limit("food-code-cold-hold", "Cold")]
[Limit("acidified-ph", "LowAcid")]
[Limit("dried-moist-share", "Moist")]
[Limit("bound-dry-matter", "DryMatter")]
internal sealed partial class DryingWithoutEndPoint : PrepRule
{
    private static readonly string[] Measurable =
        ["mass", "weigh", "gram", "%", "lost", "loss", "water activity", "aw ", "a_w"];
    private static readonly string[] Lost = ["lost", "loss", "loses", "lose", "losing", "has lost"];
    private static readonly string[] ByHand = ["brittle", "crisp", "snap", "shatter", "crack"];

    private const string DryingCaution = KeepingWords.Caution + " Drying kills little: what was on the fresh food is still there.";

    private const string WeighOrMeasure =
        "Weigh the tray before and after and give the mass at which it is done, or measure the water activity.";

    private static readonly Regex MassInWords = new(@"\d+(?:[.,]\d+)?\s?(?:kg|g)\b", RegexOptions.CultureInvariant);

    /// <summary>Whether a step of drying ends without a mass or a water activity.</summary>
    internal static bool Speaks(Prep prep) =>
        prep.Target is not { WaterActivity.IsGiven: true }
            && prep.Measured is not { WaterActivity.IsGiven: true }
            && prep.Method.Any(static s => s.Verb.Dries && !s.Amount.IsGiven && !SaysMeasurable(s));

    public override void Check(RecipeContext context, Prep prep)
    {
        bool measured = prep.Measured is { WaterActivity.IsGiven: true };
        foreach (var step in prep.Method)
        {
            if (!step.Verb.Dries) continue;
            HoldTemperature(context, step);
            if (!measured && EndMass(step) is { IsGiven: true } mass) HoldMass(context, step, mass);
            if (measured || prep.Target is { WaterActivity.IsGiven: true } || step.Amount.IsGiven || SaysMeasurable(step)) continue;
            bool byHand = Holds(step, ByHand);
            string how = step.For.IsGiven ? $"for {Say.With(step.For.Value.Value, step.For.Value.Unit.Name)}" : "with no stated end";
            context.Report(new(Rule)
            {
                Answer = Answer.NotShown,
                AskedLevel = byHand ? Level.Note : null,
                At = context.At(byHand ? step.Until.Span : step.For.IsGiven ? step.For.Span : step.Do.Span, context.PathOf(step)),
                Message = byHand
                    ? "The end of drying is judged by hand. Moisture, humidity and load differ from day to day, and only a mass or a water "
                        + $"activity of at most {Say.Number(Mould.Value)} shows that mould will not grow ({Mould.Source})."
                    : $"It is dried {how}, and moisture, humidity and load differ from day to day. Nothing shows that it reaches a "
                        + $"water activity of at most {Say.Number(Mould.Value)}, where mould stops ({Mould.Source}).",
                Advice = Target(context),
                Caution = DryingCaution,
                Evidence = [Proof.Of(Mould), Proof.Of(Safety)],
            });
        }
    }

    /// <summary>Moist food low in acid that dries too cool stands in the warm zone.</summary>
    private static void HoldTemperature(RecipeContext context, Step step)
    {
        var at = KeepingWords.WarmthOf(step);
        bool known = at.IsGiven;
        if (known && (at.Value.BaseHigh >= Coolest.Value || at.Value.BaseHigh <= Cold.Value)) return;
        Part? moist = null;
        var pot = Pot.Of(context.Recipe);
        int number = step.Number - 1;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Beside
                && pot.WorksOn(number, part.Line)
                && RecipeTree.AnyIn(part, context.Profile, IsMoistAndLowInAcid))
                moist ??= part;
        }

        if (moist is null) return;
        context.Report(new(Rule)
        {
            Answer = known ? Answer.Broken : Answer.NotShown,
            AskedLevel = Level.Warning,
            At = context.At(known ? at.Span : step.Do.Span, context.PathOf(step) + ".at"),
            Key = "temperature",
            Message = $"`{moist.Line.Item.Or("")}` is dried at "
                + $"{(known ? KeepingWords.Degrees(at.Value.BaseHigh) : "a temperature that nothing states")}. Below "
                + $"{KeepingWords.Degrees(Coolest.Value)} moist food low in acid spends hours in the range where germs grow "
                + $"({Coolest.Source}).",
            Advice = known ? "Dry it at 57 to 60 °C." : "Dry it at 57 to 60 °C, and write so under `at`.",
            Caution = KeepingWords.Caution,
            Evidence = known ? [Proof.Of("temperature", at.Value.BaseHigh, "Cel"), Proof.Of(Coolest)] : [Proof.Of(Coolest)],
        });
    }

    private static bool IsMoistAndLowInAcid(Material of) =>
        of.Kind is { IsDairy: true } or { IsEgg: true } or { IsPuree: true } or { IsJuice: true } or { HasPlantPh: true }
            && of.Perishable != Perishable.None
            && !(of.Ph.High <= LowAcid.Value);

    /// <summary>
    /// The mass at which a step of drying ends: its amount, else one in the words of its end; not given where it says none.
    /// </summary>
    private static Given<Quantity> EndMass(Step step)
    {
        if (step.Amount is { IsGiven: true, Value.Dimension: Dimension.Mass }) return step.Amount;
        if (!step.Until.IsGiven || HazardWords.HasWords(step.Until, Lost)) return default;
        foreach (Match found in MassInWords.Matches(step.Until.Value))
        {
            if (QuantityReader.TryRead(found.Value, Measures.Default, out var quantity, out _) && quantity.Dimension == Dimension.Mass)
                return new Given<Quantity>(quantity, step.Until.Span);
        }

        return default;
    }

    /// <summary>A mass at which the water is still in it ends no drying.</summary>
    private static void HoldMass(RecipeContext context, Step step, Given<Quantity> mass)
    {
        double dry = 0, all = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix) continue;
            if (!IsKnown(part)) return;
            all += part.Grams.Typical;
            dry += KeepingWords.DryGramsOf(part, part.Material!);
        }

        // A mass over that of the batch is weighed with the tray, one under it may be that of a piece: neither tells.
        double end = mass.Value.BaseHigh;
        if (!(dry > 0) || end > all || end <= dry * (1 + (DryMatter.Value / 100)) / (1 - (Moist.Value / 100))) return;
        context.Report(new(Rule)
        {
            Answer = Answer.Broken,
            At = context.At(mass.Span, context.PathOf(step)),
            Key = "mass",
            Message = $"Drying ends at {Say.Number(end, 0)} g, and only about {Say.Number(dry, 0)} g of what goes in are dry matter: the "
                + "rest of that mass is water, and it does not keep as a dried good.",
            Advice = Target(context),
            Caution = DryingCaution,
            Evidence = [Proof.Of("mass at the end", end, "g"), Proof.Of("dry matter", dry, "g"), Proof.Of(Moist)],
        });
    }

    /// <summary>Whether its mass is known and what of it is water.</summary>
    private static bool IsKnown(Part part) =>
        part is { IsWeighed: true, Material: { } material } && (material.Unknown & (Unknowns.Composition | Unknowns.Water)) == 0;

    private static string Target(RecipeContext context)
    {
        // What the parts must come to, where it can be worked out from them.
        var mix = new double[Science.Components.Count];
        double total = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix) continue;
            if (!IsKnown(part)) return WeighOrMeasure;
            total += part.Grams.Typical;
            for (int c = 0; c < mix.Length; c++) mix[c] += part.Material!.PerGram[c] * part.Grams.Typical;
        }

        // With the error of the model on the dry side.
        double aim = Mould.Value - Science.Drying.Error.At(Mould.Value).Tolerance.HalfWidth;
        if (total > 0 && Science.Drying.ToWaterActivity(mix, new Science.WaterActivity(aim)) is { } dried)
            return $"Weigh the tray: {Say.Number(total, 0)} g should fall to about {Say.Number(dried.Mass.Value, 0)} g (computed from the "
                + "parts). Dry until the mass no longer falls, or measure the water activity.";
        if (total > 0)
            return $"Weigh the tray: of {Say.Number(total, 0)} g about {Say.Number(total - mix[(int)Science.Component.Water], 0)} g is dry "
                + "matter (computed from the parts). Dry until the mass is close to that and no longer falls, or measure the water "
                + "activity.";
        return WeighOrMeasure;
    }

    private static bool SaysMeasurable(Step step) =>
        Holds(step, Measurable) || (step.Until.IsGiven && MassInWords.IsMatch(step.Until.Value));

    private static bool Holds(Step step, string[] words) =>
        step.Until.IsGiven && Array.Exists(words, w => Storage.Has(step.Until.Value, w));
}
