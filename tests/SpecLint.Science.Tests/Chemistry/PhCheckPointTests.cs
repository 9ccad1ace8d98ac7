using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Chemistry;

/// <summary>pH of buffers and pure acids against the tables of Bates, McIlvaine, Walpole, Gomori and handbooks.</summary>
public sealed class PhCheckPointTests(ITestOutputHelper output) : IScienceTable
{
    // R. G. Bates, Determination of pH, 2nd ed. 1973, ch. 2: pH on the scale of Sørensen, which McIlvaine's hydrogen electrode was
    // set by, is 0.04 below the activity scale.
    private const string Sorensen = "the same, put on the activity scale: 0.04 above that of Sørensen (Bates, Determination of pH, 2nd ed. 1973, ch. 2)";
    private const double ActivityAboveSorensen = 0.04;

    private static readonly (string Table, string Source, double Tolerance, double From, double To, string Note)[] Plan =
    [
        ("nbs_citrate_0.05m", "Bates, Determination of pH, 2nd ed. 1973, pH(S) of 0.05 m potassium dihydrogen citrate; Staples & Bates 1969", 0.03, 0, 14, ""),
        ("nbs_phosphate_equimolal", "Bates, Determination of pH, 2nd ed. 1973, pH(S) of phosphate 0.025 m + 0.025 m", 0.03, 0, 14, ""),
        ("nbs_phosphate_1:3.5", "Bates, Determination of pH, 2nd ed. 1973, pH(S) of phosphate 1 to 3.5", 0.03, 0, 14, ""),
        ("nbs_carbonate_0.025/0.025m", "Bates, Determination of pH, 2nd ed. 1973, pH(S) of carbonate", 0.03, 0, 14, "0.02 low throughout: what the uncertainty of ε leaves open (NEA: carbonate ± 0.03, bicarbonate ± 0.02 kg/mol) is 0.003 here; the rest is the common ion size of the Debye–Hückel term, on which a doubly charged ion at 0.1 mol/kg depends most"),
        ("nbs_phthalate_0.05m", "Hetzer, Durst, Robinson & Bates, J. Res. NBS 81A, 1977, 0.05 m potassium hydrogen phthalate", 0.03, 0, 14, ""),
        ("nbs_tetroxalate_0.05m", "Bates, Determination of pH, 2nd ed. 1973, pH(S) of tetroxalate", 0.03, 0, 14, ""),
        ("nbs_tartrate_sat25C", "Bates, Determination of pH, 2nd ed. 1973, pH(S) of saturated hydrogen tartrate", 0.03, 0, 14, ""),
        ("nbs_tartrate_0.01m", "Bates, Determination of pH, 2nd ed. 1973, pH(S) of 0.01 m hydrogen tartrate", 0.03, 0, 14, ""),
        ("pure_acid_calculated", "Table of calculated pH of acids of 1, 10 and 100 mmol/L, an independent hydrochemistry code", 0.03, 0, 14, ""),
        ("gomori_phosphate_0.1M", "Gomori, Methods in Enzymology 1:138, 1955, phosphate", 0.04, 0, 14, "the citrate buffers of the same "
            + "paper are 0.25 above every activity-corrected model and are left out"),
        ("walpole_acetate_0.1M", "Acetate buffer table, Walpole 1914", 0.06, 0, 14, ""),
        ("citrate_0.1M_25C", "Citric acid and sodium citrate, 0.1 M buffer table of suppliers", 0.08, 0, 4.61, ""),
        ("citrate_0.1M_25C", "Citric acid and sodium citrate, 0.1 M buffer table of suppliers", 0.20, 4.61, 14, "0.2 above McIlvaine's at the same ionic strength: the two tables cannot both hold, and the constant of citric acid in sodium salts (NEA 2005) stands with McIlvaine"),
        ("mcilvaine_1921", "McIlvaine, J. Biol. Chem. 49:183, 1921", 0.11, 0, 14, ""),
        ("mcilvaine_1921", Sorensen, 0.08, 0, 14, ""),
        ("citrate_phosphate_100mL_25C", "Citric acid and disodium phosphate, buffer table of suppliers after McIlvaine, 25 °C", 0.11, 0, 14, ""),
        ("citrate_phosphate_100mL_25C", Sorensen, 0.08, 0, 14, ""),
    ];

    [Fact]
    public void The_ph_of_published_compositions() => ScienceReport.Check(this, output);

    [Fact]
    public void Every_table_of_the_file_is_compared()
    {
        var planned = Plan.Select(p => p.Table).Append("pure_acid_handbook").ToHashSet();
        Assert.All(PublishedTable.Read("ph-check-points.csv").Rows, row => Assert.Contains(row["table"], planned));
    }

    public IEnumerable<ScienceLine> Lines()
    {
        var rows = PublishedTable.Read("ph-check-points.csv").Rows;
        foreach (var (table, source, tolerance, from, to, note) in Plan)
        {
            var points = rows.Where(r => r["table"] == table && r.Number("ph") >= from && r.Number("ph") < to)
                .Select(r => Point(r, source == Sorensen ? ActivityAboveSorensen : 0))
                .ToList();
            yield return new ScienceLine("pH of a composition", source, "pH", tolerance, points, Note: note);
        }

        // Printed to one decimal: the print alone is 0.05. Two of its rows contradict themselves: 0.1 N phosphoric acid at pH 1.5 has
        // the pH of 0.1 mol/L, and 0.001 % malic acid at pH 3.8 would have given up both its protons.
        var handbook = rows.Where(r => r["table"] == "pure_acid_handbook" && r["point"] is not ("phosphoric 0.1 N" or "malic 0.001 % w/v"));
        yield return new ScienceLine(
            "pH of a composition", "CRC Handbook, Merck Index and Handbook of Pharmaceutical Excipients, pH of pure acids, one decimal", "pH", 0.15,
            handbook.Select(r => Point(r)).ToList(), Note: "two rows that contradict themselves left out");
    }

    [Fact]
    public void The_published_error_is_the_one_measured_here()
    {
        var points = PublishedTable.Read("ph-check-points.csv").Rows
            .Where(r => r["table"] != "pure_acid_handbook").Select(r => Point(r)).ToList();
        var rms = Math.Sqrt(points.Average(p => Math.Pow(p.Model!.Value - p.Published, 2)));
        output.WriteLine($"{points.Count} points, rms {rms}");
        Assert.InRange(AcidBase.PhError.Floor.Value, rms - 0.005, rms + 0.005);
    }

    internal static CheckPoint Point(PublishedTable.Row row, double scale = 0)
    {
        var molal = new double[AcidData.Count];
        foreach (var (acid, amount) in Mixture.Parts(row["acids"]))
            molal[AcidData.All.ToList().FindIndex(a => a.Name == acid)] = amount;
        var ions = new StrongIons(new(row.Number("sodium")), new(row.Number("potassium")), new(0), new(0), new(row.Number("anions")));
        var ph = AcidBase.Ph(molal, ions, new Celsius(row.Number("celsius")));
        return new CheckPoint($"{row["point"]} ({row["table"]})", row.Number("ph") + scale, ph?.Value);
    }
}
