using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Science;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8023", "carbonation-out-of-range", "A pressure that leaves the drink flat, or makes it gush", Level.Warning,
    Needs = [Fact.Abv, Fact.Sugar])]
[Limit("carbonation-low", "Low")]
[Limit("carbonation-high", "High")]
internal sealed partial class CarbonationTarget : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Family.OrNone().IsCarbonated) return;
        var (gauge, span) = Pressures.Asked(prep);
        if (double.IsNaN(gauge) || gauge <= 0 || Pressures.Of(context, prep, gauge) is not { } gas) return;
        double t = Pressures.Temperature(prep), volumes = gas.Volumes.Value;
        double off = Carbonation.DrinkError.At(volumes).Tolerance.HalfWidth, low = volumes - off, high = volumes + off;
        if (high >= Low.Value && low <= High.Value) return;
        bool flat = volumes < Low.Value;
        double need = gas.Gauge(new GasVolumes(flat ? 3.2 : 3.8), t);
        string? solved = double.IsNaN(need) ? null : $"{Say.Number(need, 1)} bar";
        context.Report(new(Rule)
        {
            At = Pressures.At(context, prep, span),
            Message = $"{Say.With(gauge, "bar")} at {Say.Number(t, 0)} °C dissolves {Say.Range(volumes, low, high, "volumes")} of carbon "
                + "dioxide, "
                + (flat
                    ? $"below the {Say.Number(Low.Value)} at which a drink starts to sparkle"
                    : $"above the {Say.Number(High.Value)} at which it starts to gush")
                + $" ({Low.Source}).",
            Advice = solved is not null ? $"Set {solved} at that temperature{(flat ? ", or carbonate it colder" : "")}."
                : flat ? "Carbonate it colder."
                : "Lower the pressure.",
            Caution = "Gas under pressure can burst a vessel: stay below its rating and follow the maker and local rules.",
            Evidence =
            [
                Proof.Of("pressure", gauge, "bar"), Proof.Of("temperature", t, "Cel"),
                new Evidence("carbon dioxide", volumes, low, high, "1"), Proof.Of(Low), Proof.Of(High),
            ],
            Corrections = context.Write(span, solved),
        });
    }
}
