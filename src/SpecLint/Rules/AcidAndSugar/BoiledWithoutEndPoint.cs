using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4012", "boiled-without-end-point", "Boiled down with nothing that says how far", Level.Warning)]
[Limit("boiled-sugar-least", "SugarLeast")]
internal sealed partial class BoiledWithoutEndPoint : PrepRule
{
    /// <summary>°C; sugar raises the boiling point from here.</summary>
    private const double Boiling = 100;

    private static readonly string[] Shares = ["half", "third", "quarter", "halve"];

    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Yield.IsGiven
            || prep.Target is { Brix.IsGiven: true } or { Sugar.IsGiven: true }
            || prep.Measured is { Brix.IsGiven: true } or { Mass.IsGiven: true } or { Volume.IsGiven: true })
            return;
        Step? boils = null;
        foreach (var step in prep.Method)
        {
            if (!step.Verb.BoilsDown) continue;

            // A temperature tells the sugar only above the boiling point of water.
            bool ends = step.Amount.IsGiven || step.To is { IsGiven: true, Value.BaseLow: > Boiling };
            if (ends || SaysHowFar(step.Until) || SaysHowFar(step.Note)) return;
            if (boils is null || (step.Verb.Reduces && !boils.Verb.Reduces)) boils = step;
        }

        if (boils is null) return;
        var mix = context.Profile.MixGrams;
        double sugar = Solving.SugarOf(mix), water = mix[(int)Component.Water], all = Solving.MassOf(mix);
        if (all <= 0 || water <= 0) return;
        if (sugar >= SugarLeast.Value / 100 * all) Syrup(context, boils, sugar, water, all);
        else if (boils.Verb.Reduces) Reduction(context, boils);
    }

    /// <summary>A syrup: what a tenth and a third of its water come to.</summary>
    private static void Syrup(RecipeContext context, Step boils, double sugar, double water, double all)
    {
        double start = 100 * sugar / all, less = 100 * sugar / (all - (0.1 * water)), third = 100 * sugar / (all - (0.33 * water));
        string time = boils.For.IsGiven ? "; a time alone does not, since pans and flames differ" : "";
        context.Report(new(Rule)
        {
            At = context.VerbOf(boils),
            Message = $"It starts at {Say.Number(start, 0)} % sugar by mass. With a tenth of its water boiled off it is at "
                + $"{Say.Number(less, 0)} %, with a third at {Say.Number(third, 0)} %. No yield, °Brix or temperature says where it "
                + $"ends{time}.",
            Advice = "Write the yield by mass, or `target.brix`, and check it with a refractometer or on the scale.",
            Evidence =
            [
                Proof.Of("sugar at the start", start, "%"),
                Proof.Of("sugar with a tenth of the water gone", less, "%"),
                Proof.Of("sugar with a third of the water gone", third, "%"),
            ],
        });
    }

    /// <summary>What is little but water until it is reduced: no sugar tells how far it has come.</summary>
    private static void Reduction(RecipeContext context, Step boils)
    {
        string instead = boils.To.IsGiven || boils.At.IsGiven ? ": up to 100 °C the temperature does not tell"
            : boils.For.IsGiven ? ": a time alone does not, since pan and flame differ"
            : "";
        context.Report(new(Rule)
        {
            At = context.VerbOf(boils),
            Message = $"It is reduced, and no yield, amount or °Brix says how far{instead}. None of its figures can be computed.",
            Advice = "Write the yield by mass or volume, or say in the step how much is left (`until`: \"reduced by half\").",
        });
    }

    /// <summary>Whether an end point in words is that something is boiled down, perhaps to a share.</summary>
    public static bool SaysReduced(string text) => text.IndexOf("reduc", StringComparison.OrdinalIgnoreCase) >= 0 || NamesShare(text);

    private static bool NamesShare(string text)
    {
        foreach (string share in Shares)
        {
            if (text.IndexOf(share, StringComparison.OrdinalIgnoreCase) >= 0) return true;
        }

        return false;
    }

    /// <summary>Whether an end point in words is one that can be measured: a number, or a share of what was there.</summary>
    private static bool SaysHowFar(Given<string> text) =>
        text.IsGiven && (Amounts.ItemWords.HasDigit(text.Value) || NamesShare(text.Value));
}
