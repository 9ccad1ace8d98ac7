using SpecLint.Catalogue;

namespace SpecLint.Tests.BuiltIn;

/// <summary>The doses of one drink are of things that the catalogue has, and say where they are from.</summary>
public sealed class DoseTableTests
{
    [Fact]
    public void Every_item_is_in_the_catalogue_and_every_row_says_how_much()
    {
        Assert.NotEmpty(DoseTable.Items);
        Assert.Equal([], DoseTable.Items.Where(i => BuiltInCatalogue.Find(i) is null));
        foreach (string item in DoseTable.Items)
        {
            var dose = DoseTable.Find(item)!;
            Assert.True(dose.Most > 0 || dose.Least > 0, item);
            Assert.True(!(dose.Least >= dose.Most), item);
            Assert.True(dose.Unit is "mL" or "g", item);
            Assert.Equal("common practice, no source", dose.Source);
            Assert.Equal(Mark.CommonPractice, dose.Mark);
        }
    }

    /// <summary>What pours is measured as it pours; what is weighed in grams is not a liquid of another unit by mistake.</summary>
    [Fact]
    public void What_is_measured_by_volume_pours()
    {
        foreach (string item in DoseTable.Items.Where(i => DoseTable.Find(i)!.Unit == "mL"))
            Assert.True(
                BuiltInCatalogue.Find(item)!.Values.ContainsKey("density")
                    || BuiltInCatalogue.Find(item)!.Values.ContainsKey("water")
                    || BuiltInCatalogue.Find(item)!.Values.ContainsKey("solids")
                    || BuiltInCatalogue.Find(item)!.Values.ContainsKey("strength"),
                item);
    }
}
