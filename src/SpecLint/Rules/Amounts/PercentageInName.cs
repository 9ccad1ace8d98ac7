using System.Globalization;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Amounts;

[Rule("SL2020", "percentage-in-name", "A preparation named for a percentage that it does not have", Level.Warning)]
[Limit("amount-share-in-name", "Apart")]
internal sealed partial class PercentageInName : PrepRule
{
    /// <summary>Times the water that is written, beyond which another amount is wrong.</summary>
    private const double MostTimes = 3;

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Name.IsGiven || prep.Family.OrNone() is { IsSaline: false, IsAcidSolution: false }) return;
        if (!TryPercent(prep.Name.Value, out double named)) return;
        var profile = context.Profile;
        if ((profile.Unknown & (Unknowns.Mass | Unknowns.Composition)) != 0 || !(profile.Mass > 0)) return;
        bool salt = prep.Family.OrNone().IsSaline;
        double grams = salt ? profile.Grams[(int)Component.SodiumChloride] : Acids(profile);
        if (!(grams > 0)) return;
        double byMass = grams / profile.Mass * 100;
        double inVolume = Mixture.Volume(profile.Grams, Celsius.Reference) is { } volume ? grams / volume.Value * 100 : double.NaN;
        if (IsNear(named, byMass) || IsNear(named, inVolume)) return;
        bool ofWater = Math.Abs((grams / profile.Grams[(int)Component.Water] * 100) - named) < Guards.NamedPercentage * named;

        // Solve for the water that makes the name true by mass; what dissolves stays. Where another has the name by right, it is this
        // one that is misnamed.
        double change = (grams / (named / 100)) - profile.Mass;
        var filler = Filler(profile);
        double filled = filler is null || IsNameOfAnother(context, prep, named) ? double.NaN : filler.Grams.Typical + change;
        string what = salt ? "salt" : "acid", number = Say.Number(named), water = $"{Written.Number(filled)} g";
        string orInVolume = double.IsNaN(inVolume) ? "" : $" or {Say.Number(inVolume)} % w/v";
        context.Report(new(Rule)
        {
            At = context.At(prep.Name.Span, "name"),
            Message = $"The name says {number} %, but the recipe comes to {Say.Number(byMass)} % w/w {what}{orInVolume}"
                + $"{(ofWater ? $": {number} is per cent of the water" : "")} "
                + $"(differences up to {Say.Number(Apart.Value)} % are ignored; {Apart.Source}).",
            Advice = filled > 0
                ? $"Take {water} of water for {number} % w/w, or rename it: drops and dashes are counted by the name."
                : "Rename it: drops and dashes are counted by the name.",
            Evidence = [Proof.Of($"{what} by mass", byMass, "%"), Proof.Of(Apart)],
            Corrections = filled > 0 && filled <= MostTimes * filler!.Grams.Typical
                ? context.Write(filler.Line.Amount.Span, water, $"Take {water} of water, for {number} % w/w.")
                : [],
        });
    }

    private static bool IsNear(double a, double b) => Math.Abs(a - b) <= (a * Apart.Value / 100) + Guards.PercentageRounding;

    /// <summary>The water that makes up the whole.</summary>
    private static Part? Filler(RecipeProfile profile)
    {
        Part? filler = null;
        foreach (var part in profile.Parts)
        {
            if (part is { Material.Kind.IsWater: true, IsWeighed: true, Line.Amount.IsGiven: true }
                && part.Line.Amount.Value.Dimension is Dimension.Mass or Dimension.Volume)
                filler = part;
        }

        return filler;
    }

    private static bool IsNameOfAnother(RecipeContext context, Prep prep, double named)
    {
        foreach (var other in context.Book.Preps)
        {
            if (other.Id != prep.Id
                && other.Family.OrNone() == prep.Family.OrNone()
                && other.Name.IsGiven
                && TryPercent(other.Name.Value, out double percent)
                && percent == named)
                return true;
        }

        return false;
    }

    private static double Acids(RecipeProfile profile)
    {
        double sum = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) sum += profile.Grams[(int)c];
        return sum;
    }

    /// <summary>The number before the one sign for per cent in a name.</summary>
    private static bool TryPercent(string name, out double percent)
    {
        percent = double.NaN;
        int sign = name.IndexOf('%');
        if (sign <= 0 || name.IndexOf('%', sign + 1) >= 0) return false;
        int end = sign;
        while (end > 0 && name[end - 1] == ' ') end--;
        int start = end;
        while (start > 0 && name[start - 1] is (>= '0' and <= '9') or '.') start--;
        string number = name.Substring(start, end - start);
        return start < end && double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out percent) && percent > 0;
    }
}
