using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5029", "pasteurisation-not-met", "A step called pasteurising is too cool or too short", Level.Error, Safety = true,
    Needs = [Fact.Ph])]
[Limit("juice-process-ph", "JuicePh")]
internal sealed partial class PasteurisationNotMet : PrepRule
{
    private static readonly ThermalResistance Juice = ThermalResistance.ById("e-coli-juice")!;
    private static readonly ThermalResistance Listeria = ThermalResistance.ById("listeria")!;

    public override void Check(RecipeContext context, Prep prep)
    {
        foreach (var step in prep.Method)
        {
            if (!Claims(step)) continue;
            var heat = step.To.IsGiven ? step.To : step.At;
            if (!WetHeat.IsPossible(step))
            {
                context.Report(new(Rule)
                {
                    Answer = Answer.NotShown,
                    AskedLevel = Level.Warning,
                    At = context.At(heat.Span, context.PathOf(step)),
                    Message = $"The step is called pasteurising at {Say.Number(heat.Value.Base, 0)} °C, which food with water in it does not "
                        + "reach: nothing shows what it was heated to.",
                    Advice = "Write the temperature that the thermometer showed, with its unit.",
                    Caution = KeepingWords.Caution,
                    Evidence = [Proof.Of("written", heat.Value, context.At(heat.Span))],
                });
                continue;
            }

            if (heat is not { IsGiven: true, Value.Dimension: Dimension.Temperature }
                || step.For is not { IsGiven: true, Value.Dimension: Dimension.Duration })
            {
                string lacks = heat.IsGiven ? "no time" : step.For.IsGiven ? "no temperature" : "neither temperature nor time";
                context.Report(new(Rule)
                {
                    Answer = Answer.NotShown,
                    AskedLevel = Level.Warning,
                    At = context.At(step.Do.IsGiven ? step.Do.Span : step.Span, context.PathOf(step)),
                    Message = $"The step is called pasteurising but gives {lacks}. The kill depends on both (US Pasteurized Milk "
                        + "Ordinance; 9 CFR 590.570 as in force to 2022).",
                    Advice = "Give the temperature of the coldest part with `to` and how long it is held with `for`.",
                    Caution = KeepingWords.Caution,
                });
                continue;
            }

            var t = new Celsius(heat.Value.BaseLow);
            double seconds = step.For.Value.BaseLow;
            ReadOnlySpan<TemperatureReading> record = [new(0, t), new(seconds / 60, t)];
            var product = HeatedFood.ProductOf(context.Profile);
            var ph = context.Profile.Keeping!.Ph;
            bool sour = ph.IsKnown && ph.High <= JuicePh.Value;
            string lacking;

            // The table of apple juice is for a pH of 4.0 and under; other validation may be asked above it.
            if (product is { } known && (product != HeatedProduct.AppleJuice || sour))
            {
                if (HeatProcesses.Meets(known, record) == true) continue;
                lacking = Nearest(known, t.Value);
            }
            else
            {
                var organism = sour ? Juice : Listeria;
                if (Lethality.Reduction(organism, record) is not { } reduction || reduction.Least >= organism.TargetLog) continue;
                lacking = $"it takes {Say.Number(reduction.Least, 1)} decimal reductions of {organism.Organism} but "
                    + $"{Say.Number(organism.TargetLog!.Value)} are required ({organism.Source})";
            }

            context.Report(new(Rule)
            {
                At = context.At(heat.Span, context.PathOf(step)),
                Message = $"{Say.Number(t.Value, 1)} °C for {Say.Number(seconds)} s is called pasteurising, but {lacking}.",
                Advice = "Heat the coldest part to a row of the published table for its whole time, with a probe thermometer, or do not "
                    + "call it pasteurised and rely on cold and the date.",
                Caution = KeepingWords.Caution + " A bag is not as hot as its bath.",
                Evidence = [Proof.Of("temperature", t.Value, "Cel"), Proof.Of("time", seconds, "s")],
            });
        }
    }

    private static bool Claims(Step step) =>
        step.Verb.Pasteurises
        || step.Note.IsGiven && Storage.Has(step.Note.Value, "pasteuri") && (step.To.IsGiven || step.At.IsGiven);

    private static string Nearest(HeatedProduct product, double celsius)
    {
        HeatProcess? best = null;
        foreach (var process in HeatProcesses.All)
        {
            if (process.Product != product) continue;
            if (best is null || Math.Abs(process.Temperature.Value - celsius) < Math.Abs(best.Temperature.Value - celsius)) best = process;
        }

        return $"the nearest row of its table asks for {Say.Number(best!.Temperature.Value, 1)} °C for {Say.Number(best.Seconds)} s "
            + $"({best.Source})";
    }
}
