using System.Globalization;
using CsCheck;

namespace SpecLint.Tests.Messages;

/// <summary>Numbers in messages, held against the formats of .NET.</summary>
public sealed class SayTests
{
    [Fact]
    public void A_number_is_written_as_the_format_of_optional_decimals_writes_it() =>
        Gen.Select(
            Gen.OneOf(Gen.Double[-2000, 2000], Gen.Double[-0.02, 0.02], Gen.Double, Gen.Int[-5000, 5000].Select(i => i / 8.0)),
            Gen.Int[0, 9]).Sample((value, decimals) =>
        {
            double rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;
            string expected = rounded == 0 ? "0" : rounded.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
            Assert.Equal(expected, Say.Number(value, decimals));
        }, iter: 50_000, threads: 1);

    [Theory]
    [InlineData(0, 2, "0")]
    [InlineData(-0.001, 2, "0")]
    [InlineData(-0.5, 1, "-0.5")]
    [InlineData(0.05, 2, "0.05")]
    [InlineData(10, 2, "10")]
    [InlineData(100, 0, "100")]
    [InlineData(1.005, 2, "1")]
    [InlineData(2.5, 0, "3")]
    [InlineData(999.9996, 3, "1000")]
    [InlineData(double.NaN, 2, "unknown")]
    public void Numbers_that_are_easily_written_wrong(double value, int decimals, string expected) =>
        Assert.Equal(expected, Say.Number(value, decimals));
}
