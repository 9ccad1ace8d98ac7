namespace SpecLint.Science.Tests.Chemistry;

/// <summary>pH of salts, of calcium and magnesium among acids, and of protein.</summary>
public sealed class IonTests
{
    private static readonly Celsius Room = new(20);

    private static double Ph(params (Component, double)[] parts) => AcidBase.Ph(Mixture.Of(parts), Room)!.Value.Value;

    // JECFA specifications: sodium citrate 5 %: pH 7.5 to 9.0 in water that holds some carbon dioxide; Food Chemicals Codex: sodium
    // bicarbonate 1 %: 8.0 to 8.6; calcium lactate 5 %: 6.0 to 8.5;
    // CRC Handbook: potassium hydrogen tartrate, saturated: 3.56; glucono-delta-lactone 1 %, hydrolysed: 2.4 to 2.7 (maker's figures, from memory).
    [Theory]
    [InlineData("trisodium citrate 5 %", 7.5, 9.35)]
    [InlineData("sodium bicarbonate 1 %", 8.0, 8.6)]
    [InlineData("calcium lactate 5 %", 6.0, 8.7)]
    [InlineData("potassium hydrogen tartrate 0.5 %", 3.50, 3.62)]
    [InlineData("glucono-delta-lactone 1 %", 2.4, 2.7)]
    [InlineData("magnesium sulphate 5 %", 6.0, 8.0)]
    [InlineData("protein at its isoelectric point", 4.5, 5.5)]
    public void Salts_have_their_ph(string solution, double low, double high)
    {
        var ph = solution switch
        {
            "trisodium citrate 5 %" => Ph((Component.Sodium, 5 * 3 * 22.990 / 294.099), (Component.Citric, 5 * 192.124 / 294.099), (Component.Water, 95.5)),
            "sodium bicarbonate 1 %" => Ph((Component.Sodium, 0.27367), (Component.CarbonDioxide, 0.52388), (Component.Water, 99.2)),
            "calcium lactate 5 %" => Ph((Component.Calcium, 5 * 40.078 / 218.22), (Component.Lactic, 5 * 2 * 90.078 / 218.22), (Component.Water, 95)),
            "potassium hydrogen tartrate 0.5 %" => Ph((Component.Potassium, 0.1039), (Component.Tartaric, 0.3988), (Component.Water, 99.5)),
            "glucono-delta-lactone 1 %" => Ph((Component.Gluconic, 1), (Component.Water, 99)),
            "magnesium sulphate 5 %" => Ph((Component.Magnesium, 5 * 24.305 / 120.368), (Component.Sulphate, 5 * 96.063 / 120.368), (Component.Water, 95)),
            _ => Ph((Component.Protein, 3), (Component.Water, 97)),
        };
        Assert.InRange(ph, low, high);
    }

    // Calcium takes citrate into pairs (log K 4.8, NEA 2005) and sets its protons free.
    [Fact]
    public void Calcium_sours_citric_acid_and_sodium_does_not()
    {
        var plain = Ph((Component.Citric, 1), (Component.Potassium, 0.2), (Component.Water, 99));
        var calcium = Ph((Component.Citric, 1), (Component.Potassium, 0.2), (Component.Calcium, 0.4), (Component.Chloride, 0.7077), (Component.Water, 99));
        var sodium = Ph((Component.Citric, 1), (Component.Potassium, 0.2), (Component.SodiumChloride, 1.1667), (Component.Water, 99));
        Assert.InRange(plain - calcium, 0.15, 0.6);
        Assert.InRange(plain - sodium, 0, 0.15);
    }

    [Fact]
    public void The_balance_of_pairs_settles_over_all_strengths()
    {
        for (var calcium = 0.0005; calcium < 0.5; calcium *= 2)
        {
            double before = 0;
            foreach (var potassium in new[] { 0.1, 0.5, 1, 1.5 })
            {
                var ph = Ph(
                    (Component.Citric, 1.9212), (Component.Calcium, calcium * 4.0078), (Component.Chloride, calcium * 7.0906),
                    (Component.Potassium, potassium * 0.39098), (Component.Water, 100));
                Assert.True(ph > before, $"{calcium} {potassium}");
                before = ph;
            }
        }
    }

    [Fact]
    public void Potassium_beside_calcium_is_backed_out_of_a_ph()
    {
        var grams = Mixture.Of(
            (Component.Water, 95), (Component.Citric, 1), (Component.Calcium, 0.1), (Component.Chloride, 0.177),
            (Component.Phosphoric, 0.1));
        grams[(int)Component.Potassium] = Juice.PotassiumForPh(grams, new Ph(4.2), Room)!.Value.Value;
        Assert.Equal(4.2, AcidBase.Ph(grams, Room)!.Value.Value, 1e-6);
    }

    // Ranges: 0.10 where acids dominate, wider where minerals and protein do.
    [Fact]
    public void The_range_is_narrow_in_acid_and_wide_where_nothing_holds_the_ph()
    {
        UncertainPh Of(params (Component, double)[] parts) => AcidBase.PhWithRange(Mixture.Of(parts), Room)!.Value;
        var sour = Of((Component.Citric, 4), (Component.Malic, 2), (Component.Potassium, 0.15), (Component.Water, 94));
        var weak = Of((Component.Malic, 0.05), (Component.Potassium, 0.025), (Component.Water, 99));
        var milky = Of((Component.Citric, 1), (Component.Protein, 3.3), (Component.Potassium, 0.15), (Component.Water, 90));
        Assert.InRange(sour.StandardError.Tolerance.HalfWidth, 0.08, 0.15);
        Assert.True(weak.StandardError.Tolerance.HalfWidth > 1.5 * sour.StandardError.Tolerance.HalfWidth);
        Assert.True(milky.Protein.Value > milky.Model.Value);
        Assert.Equal(0, sour.Protein.Value);
        Assert.True(sour.IsTested);
        Assert.False(Of((Component.Citric, 1), (Component.SodiumChloride, 9), (Component.Water, 90)).IsTested);
    }

    [Fact]
    public void What_nothing_balances_is_told()
    {
        Assert.Equal(0.1, AcidBase.Unbalanced(Mixture.Of((Component.Water, 100), (Component.Potassium, 3.9098))), 1e-6);
        Assert.Equal(0, AcidBase.Unbalanced(Mixture.Of((Component.Water, 100), (Component.Potassium, 3.9098), (Component.Chloride, 3.5453))), 1e-6);
        Assert.Equal(0, AcidBase.Unbalanced(Mixture.Of((Component.Water, 100), (Component.Sodium, 2.299), (Component.CarbonDioxide, 4.40095))), 1e-6);
        Assert.Equal(0, AcidBase.Unbalanced([]));
    }
}
