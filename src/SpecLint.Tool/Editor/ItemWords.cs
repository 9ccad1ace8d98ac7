using SpecLint.Service;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Editor;

/// <summary>What is said beside an item in a list or a line.</summary>
internal static class ItemWords
{
    /// <summary>Least figure that is said, % vol or g per 100 mL.</summary>
    private const double Least = 0.05;

    /// <summary>Strength, sugar and acid, those that there are.</summary>
    public static string MakeUp(MakeUp of)
    {
        var says = new List<string>();
        string per = of.IsSolid ? "g/100 g" : "g/100 mL";
        if (of.Strength >= Least) says.Add($"{Say.Number(of.Strength, 1)} % vol");
        if (of.Sugar >= Least) says.Add($"{Say.Number(of.Sugar, 0)} {per} sugar");
        if (of.Acid >= Least) says.Add($"{Say.Number(of.Acid, 1)} {per} acid");
        return string.Join(" · ", says);
    }
}
