using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>What is wrong with the shares of a recipe.</summary>
internal enum ShareFault
{
    /// <summary>Nothing, or it cannot be told.</summary>
    None,

    /// <summary>They are shares of one part (the water), not of the whole.</summary>
    OfOnePart,

    /// <summary>They do not add up to 100.</summary>
    NotWhole,

    /// <summary>One or more differ from the amounts.</summary>
    NotTheAmounts,
}

/// <summary>The shares of a recipe, held against its amounts. One fault at most, so that one slip makes one finding.</summary>
/// <param name="Fault">What is wrong.</param>
/// <param name="Sum">What the shares add up to.</param>
/// <param name="Base">The part that they are shares of, where they are.</param>
/// <param name="Computed">The share of each line of the recipe by its amounts, %; NaN where it cannot be had.</param>
/// <param name="Wrong">Lines whose share differs from the amounts.</param>
internal sealed record ShareReading(ShareFault Fault, double Sum, Part? Base, double[] Computed, IReadOnlyList<Part> Wrong)
{
    private static readonly Limit WholeApart = Limits.Of("amount-shares-apart");
    private static readonly Limit AmountApart = Limits.Of("amount-share-of-amount");
    private static readonly ShareReading Nothing = new(ShareFault.None, double.NaN, null, [], []);

    /// <summary>Reads the shares of a recipe; nothing where it has none.</summary>
    public static ShareReading Of(RecipeContext context)
    {
        var parts = context.Profile.Parts;
        int given = 0, lines = 0;
        var basis = Dimension.Number;
        bool oneBasis = true;
        for (int i = 0; i < parts.Count; i++)
        {
            if (parts[i].Phase == PartPhase.Beside) continue;
            lines++;
            var share = parts[i].Line.Share;
            if (!share.IsGiven) continue;
            given++;
            if (given == 1) basis = share.Value.Dimension;
            else oneBasis &= basis == share.Value.Dimension;
        }

        if (given == 0 || !oneBasis) return Nothing;
        double sum = 0, slack = 0;
        foreach (var part in parts)
        {
            if (part.Phase == PartPhase.Beside || !part.Line.Share.IsGiven) continue;
            sum += part.Line.Share.Value.Value;
            slack += HalfDigit(context, part.Line.Share);
        }

        double[] computed = ByAmounts(context, basis, out double[] sizes);
        var wrong = new List<Part>();
        for (int i = 0; i < parts.Count; i++)
        {
            var share = parts[i].Line.Share;
            if (parts[i].Phase != PartPhase.Beside && share.IsGiven && IsApart(context, share, computed[i])) wrong.Add(parts[i]);
        }

        if (wrong.Count > 0 && OnePart(context, sizes) is { } one) return new ShareReading(ShareFault.OfOnePart, sum, one, computed, wrong);
        bool whole = given == lines && basis != Dimension.PercentMassInVolume;
        if (whole && Math.Abs(sum - 100) > Math.Max(WholeApart.Value, Math.Min(slack, 2)))
            return new ShareReading(ShareFault.NotWhole, sum, null, computed, wrong);
        return wrong.Count > 0 ? new ShareReading(ShareFault.NotTheAmounts, sum, null, computed, wrong) : Nothing;
    }

    /// <summary>The correction that writes every share from its amount; none where the amounts do not give one.</summary>
    public IReadOnlyList<Correction> Write(RecipeContext context, string description) =>
        Edits(context) is { Count: > 0 } edits ? [new Correction(CorrectionGrade.Assured, description, edits)] : [];

    private List<TextEdit> Edits(RecipeContext context)
    {
        var edits = new List<TextEdit>();
        var parts = context.Profile.Parts;
        for (int i = 0; i < parts.Count; i++)
        {
            var share = parts[i].Line.Share;
            if (parts[i].Phase == PartPhase.Beside || !share.IsGiven) continue;
            if (double.IsNaN(Computed[i])) return [];
            string basis = share.Value.Dimension switch
            {
                Dimension.PercentByVolume => "% v/v",
                Dimension.PercentMassInVolume => "% w/v",
                _ => "% w/w",
            };
            edits.Add(context.Rewrite(share.Span, $"{Say.Number(Computed[i], Computed[i] < 1 ? 2 : 1)} {basis}"));
        }

        return edits;
    }

    /// <summary>Half of the last digit that a share is written with: what rounding may have taken.</summary>
    private static double HalfDigit(RecipeContext context, Given<Quantity> share)
    {
        string text = Written.Text(context, share.Span);
        int point = text.IndexOf('.');
        if (point < 0) return 0.5;
        int digits = 0;
        while (point + 1 + digits < text.Length && text[point + 1 + digits] is >= '0' and <= '9') digits++;
        return 0.5 * Math.Pow(10, -digits);
    }

    private static bool IsApart(RecipeContext context, Given<Quantity> share, double computed) =>
        !double.IsNaN(computed)
        && Math.Abs(share.Value.Value - computed) > (HalfDigit(context, share) * 1.01) + (computed * AmountApart.Value / 100);

    /// <summary>The part that all shares are shares of: the largest, with the others as per cent of it.</summary>
    private static Part? OnePart(RecipeContext context, double[] sizes)
    {
        var parts = context.Profile.Parts;
        int largest = -1;
        for (int i = 0; i < parts.Count; i++)
        {
            if (!double.IsNaN(sizes[i]) && (largest < 0 || sizes[i] > sizes[largest])) largest = i;
        }

        if (largest < 0) return null;
        bool any = false;
        for (int i = 0; i < parts.Count; i++)
        {
            var share = parts[i].Line.Share;
            if (parts[i].Phase == PartPhase.Beside || !share.IsGiven) continue;
            double ofOne = sizes[i] / sizes[largest] * 100;
            if (double.IsNaN(ofOne)) return null;
            if (Math.Abs(share.Value.Value - ofOne) <= (HalfDigit(context, share) * 1.01) + (ofOne * 0.001)) any |= i != largest;
            else return null;
        }

        return any ? parts[largest] : null;
    }

    private static double[] ByAmounts(RecipeContext context, Dimension basis, out double[] sizes)
    {
        var parts = context.Profile.Parts;
        var computed = new double[parts.Count];
        sizes = new double[parts.Count];
        double sum = 0;
        bool all = true;
        for (int i = 0; i < parts.Count; i++)
        {
            sizes[i] = computed[i] = double.NaN;
            var part = parts[i];
            if (part.Phase == PartPhase.Beside || !part.Line.Amount.IsGiven) continue;

            // Shares by mass rest on weighed lines, shares by volume on poured ones: a density would bring its own error.
            var dimension = part.Line.Amount.Value.Dimension;
            if (basis == Dimension.PercentByVolume) sizes[i] = dimension == Dimension.Volume ? part.Millilitres : double.NaN;
            else sizes[i] = dimension == Dimension.Mass ? part.Grams.Typical : double.NaN;
            if (double.IsNaN(sizes[i])) all = false;
            else sum += sizes[i];
        }

        double whole = sum;
        if (basis == Dimension.PercentMassInVolume)
        {
            whole = context.Recipe is Prep { Yield: { IsGiven: true, Value: { Dimension: Dimension.Volume } yield } }
                ? yield.Base
                : double.NaN;
            all = true;
        }

        if (!all || !(whole > 0)) return computed;
        for (int i = 0; i < parts.Count; i++) computed[i] = sizes[i] / whole * 100;
        return computed;
    }
}
