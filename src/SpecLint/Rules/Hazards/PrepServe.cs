using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Rules.Service;

namespace SpecLint.Rules.Hazards;

/// <summary>What one drink takes of a preparation that no drink of the book uses yet.</summary>
/// <param name="Share">Share of the batch that goes into one drink.</param>
/// <param name="Millilitres">That share, mL.</param>
/// <param name="Dilution">mL of it in one mL of the drink: 1 where it is poured as it is.</param>
internal readonly record struct PrepServe(double Share, double Millilitres, double Dilution)
{
    private static readonly Limit Spirit = Limits.Of("serve-of-spirit");
    private static readonly Limit Dosed = Limits.Of("serve-of-dosed");
    private static readonly Limit Sweet = Limits.Of("serve-of-sweet");
    private static readonly Limit Ready = Limits.Of("serve-of-ready");
    private static readonly Limit Other = Limits.Of("serve-of-other");

    /// <summary>Ids of the limits it reads.</summary>
    public static readonly string[] LimitIds = [Spirit.Id, Dosed.Id, Sweet.Id, Ready.Id, Other.Id];

    /// <summary>
    /// The serve of a preparation; <see langword="null"/> where a recipe uses it, which is then judged by what it takes, or none of its
    /// amounts is known.
    /// </summary>
    public static PrepServe? Of(RecipeContext context, Prep prep)
    {
        if (context.Book.UsersOf(prep.Id).Count > 0) return null;
        double volume = Yields.Volume(context, prep);
        if (!(volume > 0)) volume = context.Profile.InputVolume;
        if (!(volume > 0)) volume = Roughly(context.Profile);
        if (!(volume > 0)) return null;
        var kind = prep.Family.OrNone().Kind;
        bool portions = prep.PortionSize is { IsGiven: true, Value.Dimension: Reading.Dimension.Volume };
        bool asIs = portions || prep.Family.OrNone().IsReadyDrink || prep.BatchOf.IsGiven || (kind.IsStrong && !kind.IsDosed);
        double each = portions ? prep.PortionSize.Value.Base
            : prep.Family.OrNone().IsReadyDrink || prep.BatchOf.IsGiven ? Ready.Value
            : kind.IsDosed ? Dosed.Value
            : kind.IsStrong ? Spirit.Value
            : kind.IsSweetPour ? Sweet.Value
            : Other.Value;
        return new PrepServe(Math.Min(1, each / volume), each, asIs ? 1 : each / Ready.Value);
    }

    /// <summary>
    /// Roughly the volume of a batch of which some part is not known, mL: what is written, a gram as a millilitre. What is not counted
    /// makes the serve a larger share of it, as is meant.
    /// </summary>
    private static double Roughly(RecipeProfile profile)
    {
        double sum = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Mix && RoughMillilitres(part) is > 0 and var millilitres) sum += millilitres;
        }

        return sum;
    }

    /// <summary>The amount of a line in mL, a gram as a millilitre; NaN where it has none.</summary>
    internal static double RoughMillilitres(Part part) =>
        part.Line.Amount is { IsGiven: true, Value: { Dimension: Reading.Dimension.Volume or Reading.Dimension.Mass } amount }
            ? amount.Base
            : double.NaN;
}
