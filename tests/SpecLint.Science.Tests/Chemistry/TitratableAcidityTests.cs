using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Chemistry;

/// <summary>Titratable acidity by end point and as other acids.</summary>
public sealed class TitratableAcidityTests(ITestOutputHelper output) : IScienceTable
{
    private const string Source = "table of equivalents at 20 °C; ratios confirmed by a published conversion page";

    [Fact]
    public void Protons_and_equivalents() => ScienceReport.Check(this, output);

    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("titration-equivalents.csv").Rows;
        foreach (var (column, end) in new[] { ("protons_8_1", 8.1), ("protons_8_2", 8.2), ("protons_7_0", 7.0) })
        {
            yield return new ScienceLine(
                "protons titrated", Source, "%", 0.5,
                [.. rows.Select(r => new CheckPoint(
                    r["acid"], r.Number(column), AcidBase.ProtonsTitrated(Known(r), new Ph(end))))], Relative: true, Note: $"to pH {end:F1}");
        }

        foreach (var (column, basis) in new[] { ("as_citric", TitrationBasis.CitricAnhydrous), ("as_malic", TitrationBasis.Malic), ("as_tartaric", TitrationBasis.Tartaric) })
        {
            yield return new ScienceLine(
                "titratable acidity of a gram of acid", Source, "%", 0.5,
                [.. rows.Where(r => Known(r).Component is not null)
                    .Select(r => new CheckPoint(r["acid"], r.Number(column), Acidity(r, basis)))], Relative: true, Note: $"to pH 8.1, {column.Replace('_', ' ')}");
        }
    }

    [Fact]
    public void Carbon_dioxide_is_driven_off_and_bases_count_against()
    {
        var soda = Mixture.Of((Component.Water, 1000), (Component.CarbonDioxide, 8));
        Assert.Equal(0, AcidBase.TitratableAcidity(soda, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)!.Value.Value);
        var halfNeutral = Mixture.Of((Component.Water, 1000), (Component.Acetic, 6.0052), (Component.Sodium, 22.990 * 0.05));
        Assert.Equal(3.0026, AcidBase.TitratableAcidity(halfNeutral, Titration.JuiceEndPoint, TitrationBasis.Acetic)!.Value.Value, 0.01);
        Assert.Null(AcidBase.TitratableAcidity(halfNeutral, new Ph(5), TitrationBasis.Acetic));
        Assert.Null(AcidBase.ProtonsTitrated(Component.Sucrose, Titration.JuiceEndPoint));
    }

    // A hydrate gives the acid of its own mass less the water: the composition holds the anhydrous acid.
    private static double? Acidity(PublishedTable.Row row, TitrationBasis basis)
    {
        var acid = Known(row);
        var grams = Mixture.Of((Component.Water, 100), (acid.Component!.Value, acid.MolarMass / row.Number("molar_mass")));
        return AcidBase.TitratableAcidity(grams, Titration.JuiceEndPoint, basis)?.Value;
    }

    private static Acid Known(PublishedTable.Row row) => AcidData.All.Single(a => row["acid"].Split(' ')[0] == a.Name);
}
