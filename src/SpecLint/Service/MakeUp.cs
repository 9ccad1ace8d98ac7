using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Service;

/// <summary>What an item comes to, in the figures by which one thing takes the place of another.</summary>
/// <param name="Strength">Strength, % vol; 0 for a solid; NaN where not known.</param>
/// <param name="Sugar">Sugar, g per 100 mL, or per 100 g of a solid; NaN where not known.</param>
/// <param name="Acid">Acid titratable to pH 8.1 as citric acid, g per 100 mL or 100 g; NaN where not known.</param>
/// <param name="IsSolid">Whether it does not pour.</param>
public readonly record struct MakeUp(double Strength, double Sugar, double Acid, bool IsSolid)
{
    // What counts as one step apart: about what a palate tells in a finished drink; common practice, no source. It only ranks.
    private const double StrengthStep = 5, SugarStep = 5, AcidStep = 1;

    /// <summary>The make-up of an item; of a drink as served, of a preparation as made.</summary>
    public static MakeUp Of(Item item, ProfileSet profiles)
    {
        if (item.ByProduct is null && item.File is Recipe recipe)
        {
            var profile = profiles.Of(recipe);
            return new MakeUp(profile.IsSolid ? 0 : Value(profile, Fact.Abv), Value(profile, Fact.Sugar), Value(profile, Fact.Acid), profile.IsSolid);
        }

        if (profiles.MaterialOf(item.Id) is not { } material) return new MakeUp(double.NaN, double.NaN, double.NaN, false);
        bool solid = material.State != MaterialState.Liquid;
        var grams = material.PerGram;
        return new MakeUp(
            Is(material, Unknowns.Strength) ? solid ? 0 : Solving.Strength(grams) : double.NaN,
            Is(material, Unknowns.Sugar) ? (solid ? Solving.SugarByMass : Solving.SugarPerVolume)(grams) : double.NaN,
            Is(material, Unknowns.Acid) ? (solid ? Solving.AcidByMass : Solving.AcidPerVolume)(grams) : double.NaN,
            solid);
    }

    /// <summary>How many steps another is away; a figure that either lacks counts as two, a solid for a liquid as ten.</summary>
    public double StepsTo(MakeUp other)
    {
        double strength = Steps(Strength, other.Strength, StrengthStep),
            sugar = Steps(Sugar, other.Sugar, SugarStep),
            acid = Steps(Acid, other.Acid, AcidStep);
        return Math.Sqrt((strength * strength) + (sugar * sugar) + (acid * acid)) + (IsSolid == other.IsSolid ? 0 : 10);
    }

    /// <summary>What another has more or less of, where a bar could tell.</summary>
    public IEnumerable<string> Against(MakeUp model)
    {
        if (IsSolid != model.IsSolid)
        {
            yield return IsSolid ? "does not pour" : "pours";
            yield break;
        }

        string unit = IsSolid ? "g/100 g" : "g/100 mL";
        if (Tells(Strength, model.Strength, 0.5)) yield return $"{Signed(Strength - model.Strength)} % vol";
        if (Tells(Sugar, model.Sugar, 0.5)) yield return $"{Signed(Sugar - model.Sugar)} {unit} sugar";
        if (Tells(Acid, model.Acid, 0.1)) yield return $"{Signed(Acid - model.Acid)} {unit} acid";
    }

    private static bool Is(Material material, Unknowns known) => (material.Unknown & (known | Unknowns.Composition)) == 0;

    private static double Value(RecipeProfile profile, Fact fact) => profile.Get(fact) is { IsKnown: true } value ? value.Value : double.NaN;

    private static double Steps(double a, double b, double step) => double.IsNaN(a) || double.IsNaN(b) ? 2 : (a - b) / step;

    private static bool Tells(double a, double b, double least) => Math.Abs(a - b) >= least;

    private static string Signed(double difference) => (difference > 0 ? "+" : "−") + Say.Number(Math.Abs(difference), 1);
}
