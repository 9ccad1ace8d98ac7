using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5022: drying that ends by the clock alone.</summary>
internal sealed class DryingWithoutEndPoint : PrepRule
{
    private static readonly Limit Mould = Limits.Of("dried-water-activity-mould");
    private static readonly Limit Safety = Limits.Of("dried-water-activity-safety");

    private static readonly string[] Measurable = ["mass", "weigh", "gram", " g", " kg", "%", "lost", "loss", "water activity", "aw ", "a_w"];
    private static readonly string[] ByHand = ["brittle", "crisp", "snap", "shatter", "crack"];

    private static readonly Limit Coolest = Limits.Of("drying-temperature-least");
    private static readonly Limit Cold = Limits.Of("food-code-cold-hold");
    private static readonly Limit LowAcid = Limits.Of("acidified-ph");

    private static readonly RuleInfo Rule = new("SL5022", "drying-without-end-point", "Drying ends by the clock, not by mass lost or water activity", Level.Warning)
    {
        Safety = true,
        Limits = [Mould.Id, Safety.Id, Coolest.Id, Cold.Id, LowAcid.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Target is { WaterActivity.IsGiven: true } || prep.Measured is { WaterActivity.IsGiven: true }) return;
        foreach (var step in prep.Method)
        {
            if (!step.Verb.Dries) continue;
            if (step.Amount.IsGiven || Holds(step, Measurable)) continue;
            bool byHand = Holds(step, ByHand);
            string how = step.For.IsGiven ? $"for {Say.With(step.For.Value.Value, step.For.Value.Unit.Name)}" : "with no stated end";
            context.Report(new Finding(Rule)
            {
                Answer = Answer.NotShown,
                AskedLevel = byHand ? Level.Note : null,
                Place = context.At(byHand ? step.Until.Span : step.For.IsGiven ? step.For.Span : step.Do.Span),
                Subject = context.Id,
                Path = context.PathOf(step),
                Message = byHand
                    ? $"The end of drying is judged by hand. Moisture, humidity and load differ from day to day, and only a mass or a water activity of at most {Say.Number(Mould.Value)} shows that mould will not grow ({Mould.Source})."
                    : $"It is dried {how}, and moisture, humidity and load differ from day to day. Nothing shows that it reaches a water activity of at most {Say.Number(Mould.Value)}, where mould stops ({Mould.Source}).",
                Advice = Target(context),
                Caution = KeepingWords.Caution + " Drying kills little: what was on the fresh food is still there.",
                Evidence = [Proof.Of(Mould), Proof.Of(Safety)],
            });
        }
    }

    /// <summary>Moist food low in acid that dries too cool stands in the warm zone.</summary>
    private static void HoldTemperature(RecipeContext context, Step step)
    {
        var at = step.At.IsGiven ? step.At : step.To;
        if (at is not { IsGiven: true, Value.Dimension: Dimension.Temperature } || at.Value.BaseHigh >= Coolest.Value || at.Value.BaseHigh <= Cold.Value) return;
        Part? moist = null;
        var pot = Pot.Of(context.Recipe);
        int number = step.Number - 1;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is not { } material || part.Phase == PartPhase.Beside || !pot.WorksOn(number, part.Line)) continue;
            if ((material.Kind.IsDairy || material.Kind.IsEgg || material.Kind.IsPuree || material.Kind.IsJuice || material.Kind.HasPlantPh) && material.Perishable != Perishable.None && !(material.Ph.High <= LowAcid.Value)) moist ??= part;
        }

        if (moist is null) return;
        context.Report(new Finding(Rule)
        {
            AskedLevel = Level.Warning,
            Place = context.At(at.Span),
            Subject = context.Id,
            Path = context.PathOf(step) + ".at",
            Key = "temperature",
            Message = $"`{moist.Line.Item.Or("")}` is dried at {KeepingWords.Degrees(at.Value.BaseHigh)}. Below {KeepingWords.Degrees(Coolest.Value)} moist food low in acid spends hours in the range where germs grow ({Coolest.Source}).",
            Advice = "Dry it at 57 to 60 °C.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("temperature", at.Value.BaseHigh, "Cel"), Proof.Of(Coolest)],
        });
    }

    private static string Target(RecipeContext context)
    {
        // What the parts must come to, where it can be worked out from them.
        var mix = new double[Science.Components.Count];
        double total = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix) continue;
            if (!part.IsWeighed || part.Material is null || (part.Material.Unknown & (Unknowns.Composition | Unknowns.Water)) != 0) return "Weigh the tray before and after and give the mass at which it is done, or measure the water activity.";
            total += part.Grams.Typical;
            for (int c = 0; c < mix.Length; c++) mix[c] += part.Material.PerGram[c] * part.Grams.Typical;
        }

        // With the error of the model on the dry side.
        double aim = Mould.Value - Science.Drying.Error.At(Mould.Value).Tolerance.HalfWidth;
        if (total > 0 && Science.Drying.ToWaterActivity(mix, new Science.WaterActivity(aim)) is { } dried)
            return $"Weigh the tray: {Say.Number(total, 0)} g should fall to about {Say.Number(dried.Mass.Value, 0)} g (computed from the parts). Dry until the mass no longer falls, or measure the water activity.";
        if (total > 0)
            return $"Weigh the tray: of {Say.Number(total, 0)} g about {Say.Number(total - mix[(int)Science.Component.Water], 0)} g is dry matter (computed from the parts). Dry until the mass is close to that and no longer falls, or measure the water activity.";
        return "Weigh the tray before and after and give the mass at which it is done, or measure the water activity.";
    }

    private static bool Holds(Step step, string[] words)
    {
        if (!step.Until.IsGiven) return false;
        foreach (string word in words)
        {
            if (Storage.Has(step.Until.Value, word)) return true;
        }

        return false;
    }
}
