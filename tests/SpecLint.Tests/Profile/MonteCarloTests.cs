using SpecLint.Profile;
using SpecLint.Science;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Profile;

/// <summary>
/// Ranges by first-order propagation (JCGM 100:2008, 5.1) against a Monte Carlo of the same inputs (JCGM 101:2008,
/// section 7): the ends of the 95 % range agree within a tenth of its width.
/// </summary>
public sealed class MonteCarloTests
{
    private const int Trials = 40_000;
    private const double Tolerance = 0.10;

    private static readonly string[] Lines =
    [
        """{ "item": "gin", "amount": "60 ml" }, { "item": "lime-juice", "amount": "25 ml" }, { "item": "simple-syrup", "amount": "20 ml" }""",
        """{ "item": "white-rum", "amount": "50 ml" }, { "item": "lemon-juice", "amount": "22.5 ml" }, { "item": "honey-syrup-3-1", "amount": "15 ml" }""",
        """{ "item": "bourbon", "amount": "2 oz" }, { "item": "sweet-vermouth", "amount": "1 oz" }, { "item": "aromatic-bitters", "amount": "2 dashes" }""",
        """{ "item": "tequila-blanco", "amount": "45 ml" }, { "item": "orange-liqueur", "amount": "22.5 ml" }, { "item": "lime-juice", "amount": "22.5 ml" }, { "item": "saline-20", "amount": "3 drops" }""",
        """{ "item": "vodka", "amount": "40 ml" }, { "item": "grapefruit-juice", "amount": "60 ml" }, { "item": "rich-syrup-2-1", "amount": "5 ml" }""",
        """{ "item": "cognac", "amount": "45–50 ml" }, { "item": "orange-liqueur", "amount": "20 ml" }, { "item": "lemon-juice", "amount": "20 ml" }""",
        """{ "item": "gin", "amount": "30 ml" }, { "item": "red-bitter-aperitif", "amount": "30 ml" }, { "item": "sweet-vermouth", "amount": "30 ml" }""",
        """{ "item": "orange-juice", "amount": "90 ml" }, { "item": "lemon-juice", "amount": "20 ml" }, { "item": "grenadine", "amount": "10 ml" }""",
        """{ "item": "mezcal", "amount": "45 ml" }, { "item": "pineapple-juice", "amount": "40 ml" }, { "item": "lime-juice", "amount": "15 ml" }, { "item": "agave-syrup", "amount": "1 barspoon" }""",
        """{ "item": "rye-whiskey", "amount": "60 ml" }, { "item": "sugar", "amount": "5 g" }, { "item": "water", "amount": "5 ml" }, { "item": "aromatic-bitters", "amount": "3 dashes" }""",
    ];

    public static TheoryData<int> Recipes => [.. Enumerable.Range(0, Lines.Length)];

    [Theory]
    [MemberData(nameof(Recipes))]
    public void Ranges_agree_with_Monte_Carlo(int recipe)
    {
        string text = $$"""{ "name": "Trial", "ingredients": [ {{Lines[recipe]}} ], "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain" } ] }""";
        var (book, profiles) = Checker.Profile(Books.Input(("trial.drink.json", text)));
        var profile = profiles.Of(book.Drinks[0]);
        Assert.Equal([], book.Drinks[0].Problems.Select(p => p.Message));

        var samples = new List<double>[3];
        for (int i = 0; i < samples.Length; i++) samples[i] = new List<double>(Trials);
        var random = new Random(20261125 + recipe);
        double[] grams = new double[Components.Count];
        for (int trial = 0; trial < Trials; trial++)
        {
            profile.Mix.Grams.CopyTo(grams);
            foreach (var variation in profile.Mix.Inputs)
            {
                // Two half normals: JCGM 101 draws each input from the distribution that its low, typical and high stand for.
                double z = Normal(random);
                double size = z >= 0 ? z * variation.Input.Up : z * variation.Input.Down;
                variation.Input.Changes.AddTo(grams, variation.Scale * size);
            }

            for (int c = 0; c < grams.Length; c++) grams[c] = Math.Max(0, grams[c]);
            double volume = Mixture.Volume(grams, Celsius.Reference)!.Value.Value;
            double sugar = 0;
            for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) sugar += grams[(int)c];
            samples[0].Add(Mixture.Abv(grams)!.Value.Percent);
            samples[1].Add(100 * sugar / volume);
            samples[2].Add(100 * AcidBase.TitratableAcidity(grams, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)!.Value.Value / volume);
        }

        Agree(profile, Fact.MixAbv, samples[0]);
        Agree(profile, Fact.MixSugar, samples[1]);
        Agree(profile, Fact.MixAcid, samples[2]);
    }

    private static void Agree(RecipeProfile profile, Fact fact, List<double> sample)
    {
        sample.Sort();
        double low = sample[(int)(Trials * 0.025)], high = sample[(int)(Trials * 0.975)];
        var value = profile.Get(fact);
        Assert.True(value.IsKnown, $"{FactNames.Name(fact)} is open: {value.OpenBecause}");
        double width = value.High - value.Low;

        // Less than 0.1 mg/L of an acid is none.
        if (width < 1e-5) return;
        Assert.True(
            Math.Abs(value.Low - low) <= Tolerance * width && Math.Abs(value.High - high) <= Tolerance * width,
            $"{FactNames.Name(fact)}: propagated {value.Low:g4}–{value.High:g4}, Monte Carlo {low:g4}–{high:g4}");
    }

    private static double Normal(Random random)
    {
        double u = 1 - random.NextDouble(), v = random.NextDouble();
        return Math.Sqrt(-2 * Math.Log(u)) * Math.Cos(2 * Math.PI * v);
    }
}
