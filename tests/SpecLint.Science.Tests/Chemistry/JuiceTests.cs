using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Chemistry;

/// <summary>Juices by analysis and by pH and titratable acidity; acid adjusting.</summary>
public sealed class JuiceTests(ITestOutputHelper output) : IScienceTable
{
    private static readonly Celsius Room = new(20);

    [Fact]
    public void Juices_against_an_independent_solver() => ScienceReport.Check(this, output);

    public IEnumerable<ScienceLine> Lines()
    {
        var juices = PublishedTable.Read("juice-ph.csv").Rows;
        const string Note = "a litre of juice is taken as a kilogram of water, as that solver does; tomato left out: its cations "
            + "balance its listed acids, so that pH hangs on acids nobody lists";
        var sour = juices.Where(r => r["juice"] != "tomato juice").ToList();
        yield return new ScienceLine(
            "pH of a juice from analysis", "acids of Penniston et al. 2008 and others, minerals of USDA SR, solved independently (Davies 0.3)", "pH", 0.02,
            [.. sour.Select(r => new CheckPoint(r["juice"], r.Number("ph_reference"), AcidBase.Ph(Analysed(r), Room)?.Value))], Note: Note);
        yield return new ScienceLine(
            "titratable acidity of a juice from analysis", "the same, to pH 8.1, solved independently", "meq/L", 2,
            [.. sour.Select(r => new CheckPoint(
                r["juice"], r.Number("ta_meq"), AcidBase.Equivalents(Analysed(r), Titration.JuiceEndPoint) * 1000))], Note: Note);

        var adjusted = PublishedTable.Read("acid-adjusting.csv").Rows;
        var backedOut = adjusted.Where(r => r.Has("ph")).ToList();
        yield return new ScienceLine(
            "acid of a juice backed out of pH and titratable acidity", "worked examples, solved independently (Davies 0.3, 20 °C)", "%", 1,
            [.. backedOut.Select(r => new CheckPoint(
                r["example"], Mixture.Parts(r["acids"]).Sum(a => a.Amount), Start(r) is { } j ? TotalAcid(j) : null))], Relative: true);
        yield return new ScienceLine(
            "strong ions of a juice backed out of pH and titratable acidity", "worked examples, solved independently (Davies 0.3, 20 °C)", "meq/L", 1,
            [.. backedOut.Select(r => new CheckPoint(
                r["example"], r.Number("strong_ions_meq"), Start(r) is { } j ? j[(int)Component.Potassium] / 39.098 * 1000 : null))]);
        yield return new ScienceLine(
            "pH after acid adjusting", "worked examples, solved independently (Davies 0.3, 20 °C)", "pH", 0.02,
            [.. adjusted.Select(r => new CheckPoint(r["example"], r.Number("ph_after"), After(r) is { } j ? AcidBase.Ph(j, Room)?.Value : null))]);
        yield return new ScienceLine(
            "titratable acidity after acid adjusting", "worked examples, solved independently (Davies 0.3, 20 °C)", "%", 1,
            [.. adjusted.Select(r => new CheckPoint(
                r["example"], r.Number("ta_after"),
                After(r) is { } j
                    ? AcidBase.TitratableAcidity(j, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)?.Value / (r.Has("ph") ? r.Number("litres") : 1)
                    : null))], Relative: true, Note: "that solver titrates undiluted; here the sample is diluted, as the methods have it");
    }

    // Common practice, no source: 94 + 4 + 2 parts stand in for lime juice.
    [Theory]
    [InlineData("cucumber", 95.2, 1.7, 147, 2, 16, 13, 0, 0, 24)]
    [InlineData("celery", 95.4, 1.3, 260, 80, 40, 11, 138, 110, 24)] // Chloride and nitrate from memory: USDA SR lists neither.
    [InlineData("water", 100, 0, 0, 0, 0, 0, 0, 0, 0)]
    public void A_low_acid_juice_with_citric_and_malic_acid_stands_in_for_lime(
        string juice, double water, double sugar, double potassium, double sodium, double calcium, double magnesium, double chloride,
        double nitrate, double phosphorus)
    {
        // 94 g of juice (minerals of USDA SR, mg per 100 g), 4 g of citric and 2 g of malic acid.
        var strong = Juice.PotassiumOf(new Minerals(new(potassium), new(sodium), new(calcium), new(magnesium), new(chloride), new(nitrate)))!.Value.Value;
        var grams = Mixture.Of(
            (Component.Water, 0.94 * water), (Component.Fructose, 0.94 * sugar), (Component.Potassium, 0.94 * strong / 1000),
            (Component.Phosphoric, 0.94 * Juice.PhosphoricOf(new(phosphorus / 1000)).Value), (Component.Citric, 4), (Component.Malic, 2));
        var ph = AcidBase.Ph(grams, Room)!.Value.Value;
        var acidity = AcidBase.TitratableAcidity(grams, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)!.Value.Value;
        output.WriteLine($"{juice}: pH {ph:F2}, {acidity:F2} g per 100 g");

        // The acidity of limes: 5.0 to 7.5 g of citric acid per 100 mL (review of acid limes); 1.03 g/mL.
        Assert.InRange(acidity * 1.03, 5.0, 7.5);
        if (juice == "water")
            Assert.InRange(ph, 1.8, 2.0); // Without a juice's cations it is sourer: pH 1.84 by the independent solver.
        else
            Assert.InRange(ph, 2.0, 2.6);
    }

    [Fact]
    public void Backing_out_and_computing_are_inverse()
    {
        foreach (var (ph, acidity) in new[] { (2.3, 60.0), (2.8, 50), (3.3, 10), (3.7, 8), (4.2, 4), (5.5, 2) })
        {
            var juice = Mixture.Of(
                (Component.Water, 900), (Component.Sucrose, 60), (Component.Fructose, 40), (Component.Phosphoric, 0.4),
                (Component.Sodium, 0.02));
            Assert.True(
                Juice.TryBackOut(juice, Mixture.Of((Component.Citric, 8), (Component.Malic, 2)), new Ph(ph), new Grams(acidity), Room),
                $"{ph}, {acidity}");
            Assert.Equal(ph, AcidBase.Ph(juice, Room)!.Value.Value, 1e-6);
            Assert.Equal(acidity, AcidBase.TitratableAcidity(juice, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)!.Value.Value, 1e-6);
            Assert.Equal(0.25, juice[(int)Component.Malic] / juice[(int)Component.Citric], 1e-9);

            var potassium = juice[(int)Component.Potassium];
            juice[(int)Component.Potassium] = 0;
            Assert.Equal(potassium, Juice.PotassiumForPh(juice, new Ph(ph), Room)!.Value.Value, 1e-6);
        }
    }

    [Fact]
    public void No_solution_is_null()
    {
        var juice = Mixture.Of((Component.Water, 950));
        var shares = Mixture.Of((Component.Citric, 1));
        var before = (double[])juice.Clone();

        // pH 1.5 needs more acid than 5 g/L of citric acid could give.
        Assert.False(Juice.TryBackOut(juice, shares, new Ph(1.5), new Grams(5), Room));
        Assert.False(Juice.TryBackOut(juice, shares, new Ph(3.5), new Grams(double.NaN), Room));
        Assert.False(Juice.TryBackOut(juice, new double[Components.Count], new Ph(3.5), new Grams(5), Room));
        Assert.False(Juice.TryBackOut(juice, shares, new Ph(double.NaN), new Grams(5), Room));
        Assert.Equal(before, juice);
        Assert.Null(Juice.PotassiumForPh(Mixture.Of((Component.Water, 1000), (Component.Acetic, 1)), new Ph(2), Room));
        Assert.Null(Juice.PotassiumOf(new Minerals(new(0), new(0), new(0), new(0), new(1), new(0))));
    }

    [Fact]
    public void A_pH_from_analysed_acids_and_minerals_is_within_a_third_of_a_unit()
    {
        var points = PublishedTable.Read("juice-ph.csv").Rows.Where(r => r["juice"] is not ("tomato juice" or "lime juice, trade 4+2"))
            .Select(r => AcidBase.Ph(Analysed(r), Room)!.Value.Value - (r.Number("ph_low") + r.Number("ph_high")) / 2).ToList();
        var rms = Math.Sqrt(points.Average(d => d * d));
        output.WriteLine($"{points.Count} juices, rms {rms}, from {points.Min()} to {points.Max()}");
        Assert.InRange(rms, 0, 0.33);
    }

    private static double[] Analysed(PublishedTable.Row row)
    {
        var grams = Mixture.Acids(1000, Mixture.Parts(row["acids"]));
        grams[(int)Component.Potassium] = row.Number("cations_meq") / 1000 * 39.098;
        grams[(int)Component.Phosphoric] = Juice.PhosphoricOf(new Grams(row.Number("phosphorus_mg_100g") / 100)).Value;
        return grams;
    }

    // A litre of the juice at the start.
    private static double[]? Start(PublishedTable.Row row)
    {
        var juice = Mixture.Of((Component.Water, 1000));
        return Juice.TryBackOut(
            juice, Mixture.Acids(0, Mixture.Parts(row["acids"])), new Ph(row.Number("ph")), new Grams(row.Number("ta")), Room)
            ? juice
            : null;
    }

    private static double[]? After(PublishedTable.Row row)
    {
        var added = Mixture.Parts(row["added"]).ToList();
        var juice = row.Has("ph") ? Start(row) : Mixture.Of((Component.Water, 1000 - added.Sum(a => a.Amount)));
        if (juice is null)
            return null;
        foreach (var (acid, grams) in added)
            juice[(int)Mixture.ComponentOf(acid)] += grams;
        return juice;
    }

    private static double TotalAcid(double[] grams)
    {
        double sum = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++)
            sum += grams[(int)c];
        return sum;
    }
}
