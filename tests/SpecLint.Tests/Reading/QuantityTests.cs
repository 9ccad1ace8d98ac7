using CsCheck;
using SpecLint.Reading;

namespace SpecLint.Tests.Reading;

public class QuantityTests
{
    [Theory]
    [InlineData("45 ml", 45, "ml")]
    [InlineData("45ml", 45, "ml")]
    [InlineData("45\u00A0ml", 45, "ml")]
    [InlineData("45\u2009mL", 45, "ml")]
    [InlineData(" 45  ML ", 45, "ml")]
    [InlineData("0.75 oz", 0.75, "oz")]
    [InlineData(".75 oz.", 0.75, "oz")]
    [InlineData("3/4 oz", 0.75, "oz")]
    [InlineData("1 1/2 ounces", 1.5, "oz")]
    [InlineData("1½ fl oz", 1.5, "oz")]
    [InlineData("½ fl. oz.", 0.5, "oz")]
    [InlineData("1⁄3 cup", 1.0 / 3, "cup")]
    [InlineData("2 dashes", 2, "dash")]
    [InlineData("1 bar spoon", 1, "barspoon")]
    [InlineData("2 drops", 2, "drop")]
    [InlineData("1 oz US", 1, "oz US")]
    [InlineData("1 oz UK", 1, "oz UK")]
    [InlineData("1 oz av", 1, "oz av")]
    [InlineData("1 [foz_us]", 1, "oz US")]
    [InlineData("3 leaves", 3, "leaf")]
    [InlineData("1 sprig", 1, "sprig")]
    [InlineData("½ wheel", 0.5, "wheel")]
    [InlineData("2 Parts", 2, "part")]
    [InlineData("4 °C", 4, "°C")]
    [InlineData("4C", 4, "°C")]
    [InlineData("4 º C", 4, "°C")]
    [InlineData("-18 °C", -18, "°C")]
    [InlineData("−18 °C", -18, "°C")]
    [InlineData("39 °F", 39, "°F")]
    [InlineData("12 s", 12, "s")]
    [InlineData("9 h", 9, "h")]
    [InlineData("2 d", 2, "d")]
    [InlineData("3 weeks", 3, "week")]
    [InlineData("1 month", 1, "month")]
    [InlineData("15 % v/v", 15, "% v/v")]
    [InlineData("15% v/v", 15, "% v/v")]
    [InlineData("40 % ABV", 40, "% v/v")]
    [InlineData("40 % vol", 40, "% v/v")]
    [InlineData("7 %w/w", 7, "% w/w")]
    [InlineData("7 % (w/v)", 7, "% w/v")]
    [InlineData("15 %", 15, "%")]
    [InlineData("50 °Bx", 50, "°Bx")]
    [InlineData("50 brix", 50, "°Bx")]
    [InlineData("80 proof", 80, "proof")]
    [InlineData("1.035 g/ml", 1.035, "g/ml")]
    [InlineData("2.5 bar", 2.5, "bar")]
    [InlineData("30 psi", 30, "psi")]
    [InlineData("180 kcal", 180, "kcal")]
    [InlineData("750 kJ", 750, "kJ")]
    [InlineData("20 µl", 20, "µl")]
    [InlineData("20 μl", 20, "µl")]
    [InlineData("350 ppm", 350, "ppm")]
    [InlineData("1-1/2 oz", 1.5, "oz")]
    [InlineData("2-¾ oz", 2.75, "oz")]
    [InlineData("2 tblsp", 2, "tbsp")]
    [InlineData("1 teaspoonful", 1, "tsp")]
    [InlineData("1 half wheel", 1, "half wheel")]
    [InlineData("a dash", 1, "dash")]
    [InlineData("A splash of", 1, "splash")]
    [InlineData("twist of", 1, "twist")]
    [InlineData("to fill", 1, "top")]
    [InlineData("top up with", 1, "top")]
    public void A_quantity_is_read(string text, double value, string unit)
    {
        Assert.True(QuantityReader.TryRead(text, Measures.Default, out var quantity, out var problem), problem.Message);
        Assert.Equal(value, quantity.Value);
        Assert.Equal((quantity.Value, quantity.Value), (quantity.Low, quantity.High));
        Assert.Equal(unit, quantity.Unit.Name);
    }

    [Theory]
    [InlineData("20–25 ml", 20, 25)]
    [InlineData("20-25 ml", 20, 25)]
    [InlineData("20 - 25 ml", 20, 25)]
    [InlineData("20 to 25 ml", 20, 25)]
    [InlineData("1/2–3/4 oz", 0.5, 0.75)]
    [InlineData("1 1/2 to 2 oz", 1.5, 2)]
    [InlineData("-20–-18 °C", -20, -18)]
    [InlineData("−20 to −18 °C", -20, -18)]
    [InlineData("2–2 g", 2, 2)]
    public void A_range_is_read(string text, double low, double high)
    {
        Assert.True(QuantityReader.TryRead(text, Measures.Default, out var quantity, out var problem), problem.Message);
        Assert.Equal((low, (low + high) / 2, high), (quantity.Low, quantity.Value, quantity.High));
        Assert.True(quantity.Form.HasFlag(QuantityForm.Range));
    }

    [Theory]
    [InlineData("top")]
    [InlineData("Top up")]
    [InlineData("splash")]
    [InlineData("rinse")]
    [InlineData("float")]
    [InlineData("pinch")]
    [InlineData("dash")]
    [InlineData("sprig")]
    public void A_measure_that_stands_alone_means_one(string text)
    {
        Assert.True(QuantityReader.TryRead(text, Measures.Default, out var quantity, out _));
        Assert.Equal((1, QuantityForm.NumberLeftOut), (quantity.Value, quantity.Form));
    }

    [Theory]
    [InlineData("0,5 oz", 0.5)]
    [InlineData("22,5 ml", 22.5)]
    [InlineData("0,125 l", 0.125)]
    [InlineData("1,5–2,5 g", 2)]
    public void A_decimal_comma_is_read_and_marked(string text, double value)
    {
        Assert.True(QuantityReader.TryRead(text, Measures.Default, out var quantity, out _));
        Assert.Equal(value, quantity.Value);
        Assert.True(quantity.Form.HasFlag(QuantityForm.DecimalComma));
        Assert.True(QuantityReader.TryRead(QuantityReader.WithPoints(text), Measures.Default, out var again, out _));
        Assert.Equal((quantity.Low, quantity.High, quantity.Form & ~QuantityForm.DecimalComma), (again.Low, again.High, again.Form));
    }

    [Theory]
    [InlineData("", QuantityFault.Empty, null)]
    [InlineData("  ", QuantityFault.Empty, null)]
    [InlineData("45", QuantityFault.UnitMissing, null)]
    [InlineData("1 1/2", QuantityFault.UnitMissing, null)]
    [InlineData("ml", QuantityFault.NumberMissing, null)]
    [InlineData("oz", QuantityFault.NumberMissing, null)]
    [InlineData("45 mll", QuantityFault.UnknownUnit, "ml")]
    [InlineData("2 dahses", QuantityFault.UnknownUnit, "dashes")]
    [InlineData("45 furlongs", QuantityFault.UnknownUnit, null)]
    [InlineData("few drops", QuantityFault.BadNumber, null)]
    [InlineData("1/0 oz", QuantityFault.BadNumber, null)]
    [InlineData("1 2 ml", QuantityFault.BadNumber, null)]
    [InlineData("1.2.3 ml", QuantityFault.BadNumber, null)]
    [InlineData("12345678 ml", QuantityFault.TooManyDigits, null)]
    [InlineData("1.123456789 ml", QuantityFault.TooManyDigits, null)]
    [InlineData("1,250 g", QuantityFault.CommaAmbiguous, null)]
    [InlineData("1,250,000 g", QuantityFault.CommaAmbiguous, null)]
    [InlineData("1,250.5 g", QuantityFault.CommaAmbiguous, null)]
    [InlineData("25–20 ml", QuantityFault.RangeDownwards, null)]
    [InlineData("2-3/2 oz", QuantityFault.RangeDownwards, null)]
    [InlineData("-5 ml", QuantityFault.Negative, null)]
    [InlineData("-0 ml", QuantityFault.Negative, null)]
    public void What_is_no_quantity_says_why(string text, QuantityFault fault, string? suggestion)
    {
        Assert.False(QuantityReader.TryRead(text, Measures.Default, out _, out var problem));
        Assert.Equal(fault, problem.Fault);
        if (suggestion is not null) Assert.Equal(suggestion, problem.Suggestion);
        Assert.NotEmpty(problem.Message);
    }

    /// <summary>
    /// Factors as published: NIST Special Publication 811 (2008), appendix B.8, with its seven digits, as recalled; the exact
    /// volumes and masses also in NIST Handbook 44, appendix C, and in the Weights and Measures Act 1985 (UK).
    /// </summary>
    [Theory]
    [InlineData("1 oz US", 29.57353)]
    [InlineData("1 oz UK", 28.41306)]
    [InlineData("1 tsp US", 4.928922)]
    [InlineData("1 tbsp US", 14.78676)]
    [InlineData("1 cup US", 236.5882)]
    [InlineData("1 pint US", 473.1765)]
    [InlineData("1 quart US", 946.3529)]
    [InlineData("1 gallon US", 3785.412)]
    [InlineData("1 gallon UK", 4546.09)]
    [InlineData("8 pint UK", 4546.09)]
    [InlineData("1 oz av", 28.34952)]
    [InlineData("1 lb", 453.5924)]
    [InlineData("1 psi", 0.06894757)]
    [InlineData("1 atm", 1.01325)]
    [InlineData("100 kPa", 1)]
    [InlineData("4.184 kJ", 1)]
    [InlineData("212 °F", 100)]
    [InlineData("32 °F", 0)]
    [InlineData("-40 °F", -40)]
    [InlineData("273.15 K", 0)]
    [InlineData("100 proof", 50)]
    [InlineData("1 d", 86400)]
    [InlineData("2 weeks", 1209600)]
    [InlineData("1 l", 1000)]
    [InlineData("4 cl", 40)]
    [InlineData("1035 kg/m³", 1.035)]
    [InlineData("50 g/l", 5)]
    [InlineData("10 g/kg", 1)]
    [InlineData("10000 ppm", 1)]
    public void Units_convert_by_the_published_factors(string text, double expected)
    {
        Assert.True(QuantityReader.TryRead(text, Measures.Default, out var quantity, out var problem), problem.Message);
        Assert.InRange(quantity.Base, expected - (Math.Abs(expected) * 5e-7) - 1e-9, expected + (Math.Abs(expected) * 5e-7) + 1e-9);
    }

    [Fact]
    public void A_trade_measure_carries_its_range()
    {
        Assert.True(QuantityReader.TryRead("2 dashes", Measures.Default, out var dashes, out _));
        Assert.Equal(UnitSystem.Trade, dashes.Unit.System);
        Assert.True(dashes.BaseLow < dashes.Base && dashes.Base < dashes.BaseHigh, $"{dashes.BaseLow} {dashes.Base} {dashes.BaseHigh}");
    }

    [Fact]
    public void Every_word_is_found_with_and_without_its_blanks_in_any_case()
    {
        foreach (var word in Measures.Default.Words)
        {
            Assert.True(Measures.Default.TryFind(word.Text, out var found), word.Text);
            Assert.Same(word.Unit, found.Unit);
            Assert.True(
                Measures.Default.TryFind(
                    word.Text.Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant().Replace('Μ', 'µ'), out found),
                word.Text);
            Assert.Same(word.Unit, found.Unit);
        }
    }

    [Fact]
    public void Any_number_written_out_is_read_back()
    {
        Gen.Int[0, 9_999_999].Select(Gen.Int[0, 99_999_999]).Sample((whole, part) =>
        {
            string text = FormattableString.Invariant($"{whole}.{part:00000000} g");
            Assert.True(QuantityReader.TryRead(text, Measures.Default, out var quantity, out _));
            Assert.Equal(double.Parse(text.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture), quantity.Value);
        });
    }

    [Fact]
    public void Any_text_is_answered()
    {
        Gen.String.Sample(text =>
        {
            bool read = QuantityReader.TryRead(text, Measures.Default, out _, out var problem);
            Assert.Equal(read, problem.Fault == QuantityFault.None);
        });
        Gen.Char["0123456789 .,/-–½toml%°C"].Array[0, 12].Select(c => new string(c)).Sample(text =>
        {
            bool read = QuantityReader.TryRead(text, Measures.Default, out var quantity, out var problem);
            Assert.Equal(read, problem.Fault == QuantityFault.None);
            if (read) Assert.True(double.IsFinite(quantity.Base) && quantity.Low <= quantity.Value && quantity.Value <= quantity.High);
        });
    }
}

public class NearestNameTests
{
    [Theory]
    [InlineData("amonut", "amount")]
    [InlineData("Amount", "amount")]
    [InlineData("amount_", "amount")]
    [InlineData("ingredient", "ingredients")]
    [InlineData("garnsih", "garnish")]
    [InlineData("zebra", null)]
    public void The_nearest_name_is_found(string name, string? nearest) =>
        Assert.Equal(nearest, NearestName.Of(name, ["name", "amount", "ingredients", "garnish", "glass"]));

    [Fact]
    public void Distances_agree_with_the_plain_recursion()
    {
        Gen.Char["abc"].Array[0, 6].Select(c => new string(c)).Select(Gen.Char["abc"].Array[0, 6].Select(c => new string(c))).Sample((a, b) =>
        {
            int expected = Plain(a, b);
            Assert.Equal(expected, NearestName.Distance(a, b, 10));
            Assert.Equal(Math.Min(expected, 3), NearestName.Distance(a, b, 2));
        });

        // Optimal string alignment, by its definition.
        static int Plain(string a, string b)
        {
            if (a.Length == 0 || b.Length == 0) return a.Length + b.Length;
            int best = Math.Min(Plain(a[..^1], b), Plain(a, b[..^1])) + 1;
            best = Math.Min(best, Plain(a[..^1], b[..^1]) + (a[^1] == b[^1] ? 0 : 1));
            if (a.Length > 1 && b.Length > 1 && a[^1] == b[^2] && a[^2] == b[^1]) best = Math.Min(best, Plain(a[..^2], b[..^2]) + 1);
            return best;
        }
    }
}
