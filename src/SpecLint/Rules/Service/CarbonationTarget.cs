using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Science;
using Bar = SpecLint.Science.Bar;

namespace SpecLint.Rules.Service;

[Rule("SL8023", "carbonation-out-of-range", "A pressure that leaves the drink flat, or makes it gush", Level.Warning, Needs = [Fact.Abv, Fact.Sugar])]
[Limit("carbonation-low", "Low")]
[Limit("carbonation-high", "High")]
internal sealed partial class CarbonationTarget : PrepRule
{
    /// <summary>°C of a keg in the refrigerator, where the recipe names none.</summary>
    private const double Fridge = 4;

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Family.OrNone().IsCarbonated) return;
        var (gauge, span) = PressureOverRating.PressureOf(prep);
        if (double.IsNaN(gauge) || gauge <= 0) return;
        var abv = context.Fact(Fact.Abv);
        var sugar = context.Fact(Fact.Sugar);
        if (!abv.IsKnown || !sugar.IsKnown) return;
        double t = Temperature(prep);
        var strength = new AlcoholByVolume(abv.Value / 100);
        var sweet = new GramsPerLitre(sugar.Value * 10);
        if (Carbonation.Volumes(new Bar(gauge + Carbonation.Atmosphere), new Celsius(t), strength, sweet) is not { } volumes) return;
        double off = Carbonation.DrinkError.At(volumes.Value).Tolerance.HalfWidth, low = volumes.Value - off, high = volumes.Value + off;
        if (high >= Low.Value && low <= High.Value) return;
        bool flat = volumes.Value < Low.Value;
        double aim = flat ? 3.2 : 3.8;
        string solved = Carbonation.Pressure(new GasVolumes(aim), new Celsius(t), strength, sweet) is { } need ? $"{Say.Number(need.Value - Carbonation.Atmosphere, 1)} bar" : "";
        context.Report(new(Rule)
        {
            At = context.At(span, prep.Target is { Pressure.IsGiven: true } ? "target.pressure" : "method"),
            Message = $"{Say.With(gauge, "bar")} at {Say.Number(t, 0)} °C dissolves {Say.Range(volumes.Value, low, high, "volumes")} of carbon dioxide, {(volumes.Value < Low.Value ? $"below the {Say.Number(Low.Value)} at which a drink starts to sparkle" : $"above the {Say.Number(High.Value)} at which it starts to gush")} ({Low.Source}).",
            Advice = solved.Length > 0 ? $"Set {solved} at that temperature{(flat ? ", or carbonate it colder" : "")}." : flat ? "Carbonate it colder." : "Lower the pressure.",
            Caution = "Gas under pressure can burst a vessel: stay below its rating and follow the maker and local rules.",
            Evidence = [Proof.Of("pressure", gauge, "bar"), Proof.Of("temperature", t, "Cel"), new Evidence("carbon dioxide", volumes.Value, low, high, "1"), Proof.Of(Low), Proof.Of(High)],
            Corrections = solved.Length == 0 ? [] : [new Correction(CorrectionGrade.Proposed, $"Write {solved}.", [new TextEdit(context.At(span), $"\"{solved}\"")])],
        });
    }

    /// <summary>°C at which it is carbonated.</summary>
    internal static double Temperature(Prep prep)
    {
        foreach (var step in prep.Method)
        {
            if (step.Verb.Carbonates && step.At.IsGiven) return Math.Max(0, step.At.Value.Base);
        }

        return prep.Keep is { At.IsGiven: true } keep ? Math.Max(0, keep.At.Value.Base) : Fridge;
    }
}
