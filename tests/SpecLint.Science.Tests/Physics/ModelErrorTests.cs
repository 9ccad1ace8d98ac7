using System.Reflection;
using Xunit.Abstractions;

namespace SpecLint.Science.Tests.Physics;

/// <summary>The error that a model publishes is no smaller than what the tables show.</summary>
public sealed class ModelErrorTests(ITestOutputHelper output)
{
    [Fact]
    public void Published_errors_are_those_that_were_measured()
    {
        Check(EthanolWater.DensityError, new EthanolWaterTests(output), "Density of ethanol and water", "CRC");
        Check(EthanolWater.StrengthError, new EthanolWaterTests(output), "Strength from density", "", scale: 0.01);
        Check(SugarWater.DensityError, new SugarWaterTests(output), "Density of sucrose", "to 48 %");
        Check(SugarWater.RefractiveBrixError, new SugarWaterTests(output), "Refractive", "");
        Check(Mixture.DensityError, new MixtureTests(output), "Density of ethanol, sucrose", "Tabarié");
        Check(WaterActivityModel.Error, new WaterActivityTests(output), "Water activity of one solute", "");
        Check(EthanolActivity.Error, new WaterActivityTests(output), "Water activity of spirits", "");
        Check(Freezing.Error, new FreezingTests(output), "Freezing point", "CRC Handbook, 102nd ed. 2021 (Wolf 1966), ethanol");
        Check(Freezing.Error, new FreezingTests(output), "Freezing point", "sucrose");
        Check(Freezing.Error, new FreezingTests(output), "Freezing point", "glycerol");
        Check(Freezing.Error, new FreezingTests(output), "Freezing point", "citric acid");
        Check(HeatCapacity.Error, new HeatCapacityTests(output), "Heat capacity", "Melinder");
        Check(IceDilution.Error, new IceDilutionTests(output), "Dilution, shaken: balance", "");
        Check(Carbonation.WaterError, new CarbonationTests(output), "Carbon dioxide dissolved", "CRC", scale: 0.01);
        Check(Carbonation.DrinkError, new CarbonationTests(output), "Carbon dioxide in beer", "", scale: 0.01);

        // The error against the rms of the first line that fits; the scale brings the unit of the line to that of the error.
        void Check(ModelError error, IScienceTable table, string quantity, string source, double scale = 1)
        {
            var line = table.Lines().First(l => l.Quantity.StartsWith(quantity, StringComparison.Ordinal) && l.Source.Contains(source, StringComparison.Ordinal));
            output.WriteLine($"{line.Quantity}, {line.Source}: rms {ScienceReport.Figure(line.RootMeanSquare * scale)}, published {error.StandardError}");
            // A figure of one digit: half a digit of rounding is allowed.
            Assert.True(line.RootMeanSquare * scale <= error.StandardError * 1.05, $"{line.Quantity}, {line.Source}: rms {line.RootMeanSquare * scale}, published {error.StandardError}");
        }
    }

    [Fact]
    public void Every_published_error_says_how_it_was_measured()
    {
        var errors = typeof(ModelError).Assembly.GetExportedTypes()
            .SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Static).Where(p => p.PropertyType == typeof(ModelError)))
            .Select(p => (Name: $"{p.DeclaringType!.Name}.{p.Name}", Error: (ModelError)p.GetValue(null)!))
            .ToList();
        Assert.True(errors.Count >= 15);
        Assert.All(errors, e =>
        {
            Assert.True(e.Error.StandardError > 0 && double.IsFinite(e.Error.StandardError), e.Name);
            Assert.True(e.Error.Measured.Length > 20 && e.Error.Unit.Length > 0, e.Name);
        });
    }
}
