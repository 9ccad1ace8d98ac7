using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>An amount as it was likely meant.</summary>
/// <param name="Text">The amount as it is to be written, without quotes.</param>
/// <param name="Base">That amount in the base unit.</param>
/// <param name="Rank">How likely such a slip is: 0 the unit, 1 a factor of ten, 2 of a hundred.</param>
internal readonly record struct Slip(string Text, double Base, int Rank);

/// <summary>
/// What an amount was likely meant to be, tried in the order in which slips are made: the number in another unit, a factor of
/// ten, a factor of a hundred. Only what satisfies the limit is an answer; where none does, the amount has to be solved for.
/// </summary>
internal static class Slips
{
    private static readonly string[] Volumes = ["ml", "cl", "oz", "l", "dl", "tsp", "tbsp"];
    private static readonly string[] Masses = ["g", "kg", "oz av", "lb"];
    /// <summary>Nobody writes more spoons than this of one thing.</summary>
    private const double MostSpoons = 4;

    private static readonly double[] Factors = [0.1, 10, 0.01, 100];

    /// <summary>The first reading that fits; <see langword="null"/> where none does.</summary>
    /// <param name="amount">The amount.</param>
    /// <param name="measures">Units of the file, with the values of the house.</param>
    /// <param name="fits">Whether an amount in the base unit satisfies the limit.</param>
    public static Slip? Find(Quantity amount, Measures measures, Func<double, bool> fits)
    {
        if (amount.Low < amount.High) return null;
        foreach (string name in amount.Dimension == Dimension.Volume ? Volumes : amount.Dimension == Dimension.Mass ? Masses : [])
        {
            if (name == amount.Unit.Name
                || (amount.Value > MostSpoons && name is "tsp" or "tbsp")
                || !measures.TryFind(name.AsSpan(), out var word)
                || word.Unit is not { } unit
                || unit.Dimension != amount.Dimension)
                continue;
            double other = (amount.Value * unit.Factor) + unit.Offset;
            if (fits(other)) return new Slip($"{Say.Number(amount.Value, 3)} {name}", other, 0);
        }

        for (int i = 0; i < Factors.Length; i++)
        {
            double other = amount.Value * Factors[i];
            double inBase = (other * amount.Unit.Factor) + amount.Unit.Offset;
            if (fits(inBase)) return new Slip($"{Written.Number(other)} {amount.Unit.Name}", inBase, 1 + (i / 2));
        }

        return null;
    }
}
