using CsCheck;
using SpecLint.Profile;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Profile;

/// <summary>What is solved for is reached.</summary>
public sealed class SolvingTests
{
    [Fact]
    public void The_factor_brings_the_number_to_its_target() =>
        Gen.Select(Gen.Int[20, 90], Gen.Int[8, 45], Gen.Int[8, 45], Gen.Double[0.5, 1.8]).Sample((spirit, juice, syrup, change) =>
        {
            var result = Checker.Profile(Books.Input(("sour.drink.json", $$"""
                { "name": "Low Tide", "ingredients": [ { "item": "gin", "amount": "{{spirit}} ml" }, { "item": "lemon-juice", "amount": "{{juice}} ml" }, { "item": "simple-syrup", "amount": "{{syrup}} ml" } ],
                  "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain" } ] }
                """)));
            var profile = result.Profiles.Of(result.Book.Drinks[0]);
            bool IsSyrup(Part p) => p.Line.Item.Value == "simple-syrup";
            double now = Solving.With(profile, IsSyrup, 1, Solving.SugarPerVolume);
            Assert.Equal(profile.Get(Fact.Sugar).Value, now, tolerance: 1e-6);
            double target = Solving.With(profile, IsSyrup, change, Solving.SugarPerVolume);
            double factor = Solving.Factor(profile, IsSyrup, Solving.SugarPerVolume, target);
            Assert.Equal(change, factor, tolerance: 0.0001);
        }, iter: 60, threads: 1);
}
