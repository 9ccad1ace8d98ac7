using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Amounts;

namespace SpecLint.Rules.AcidAndSugar;

[Rule(
    "SL4022", "unlike-its-family", "A preparation far from what its family comes to: a syrup without sugar, a cordial without acid",
    Level.Warning, Needs = [Fact.Sugar, Fact.Brix, Fact.Acid, Fact.Salt, Fact.Abv], IsConsequence = true)]
[Limit("unlike-family-times", "Times")]
internal sealed partial class UnlikeItsFamily : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.Family.IsGiven) return;
        var family = prep.Family.Value;
        foreach (var (fact, usual) in family.Usual)
        {
            // Dissolved solids also count sweeteners that are no sugar.
            if (fact == Fact.Sugar && family.Usual.Any(static u => u.Fact == Fact.Brix)) continue;
            var value = context.Fact(fact);
            if (!value.IsKnown || !IsFar(family, fact, value, usual)) continue;
            Report(context, prep, fact, value, usual);
            return;
        }
    }

    private static void Report(RecipeContext context, Prep prep, Fact fact, FactValue value, Band usual)
    {
        var family = prep.Family.Value;
        bool solid = context.Profile.IsSolid;
        string where = value.High < usual.Low ? "below" : "above", unit = FactNames.Unit(fact, solid);
        var slip = Slip(context, fact, usual);
        string better = slip is { } meant
            ? $"Write {meant.Slip.Text} of {Written.Item(meant.Line)}, if its unit or a digit slipped; or name the family that it is of."
            : "Check the amounts and their units, or name the family that it is of.";
        context.Report(new(Rule)
        {
            At = context.At(prep.Family.Span, "family"),
            Message = $"The {FactNames.Name(fact)} comes to {Say.Fact(fact, value, solid)}, far {where} the "
                + $"{Say.Number(usual.Low)}–{Say.With(usual.High, Say.Unit(fact, solid))} usual for the family `{family.Id}` "
                + $"({family.UsualSource}).",
            Advice = better,
            Evidence =
            [
                Proof.Of(fact, value),
                new Evidence($"usual for {family.Id}", (usual.Low + usual.High) / 2, usual.Low, usual.High, unit, family.UsualSource),
            ],
            Corrections = slip is { } write ? context.Write(write.Line.Amount.Span, write.Slip.Text) : [],
        });
    }

    /// <summary>
    /// Whether the whole range of a fact lies far under what is usual, or the dissolved solids far over: too much of an acid or salt
    /// is held against agents and their solubility, and the acid of a shrub has a rule of its own. What has no spirit at all is no
    /// weak infusion.
    /// </summary>
    private static bool IsFar(Family family, Fact fact, FactValue value, Band usual)
    {
        if (value.High < usual.Low / Times.Value) return !(fact == Fact.Abv && value.High <= 0) && !(fact == Fact.Acid && family.IsShrub);
        return fact == Fact.Brix && value.Low > usual.High * Times.Value;
    }

    /// <summary>The likeliest slip of one amount with which the fact is usual again.</summary>
    private static (Line Line, Slip Slip)? Slip(RecipeContext context, Fact fact, Band usual)
    {
        if (MeasureOf(fact, context.Profile.IsSolid) is not { } measure) return null;
        var measures = context.Book.Measures;
        (Line, Slip)? best = null;
        int rank = int.MaxValue;
        foreach (var part in context.Profile.Parts)
        {
            if (!part.Line.Amount.IsGiven || part.Material is null || part.Line.Amount.Value.Base <= 0) continue;
            var amount = part.Line.Amount.Value;
            if (Slips.Find(amount, measures, Fits) is not { } slip || slip.Rank >= rank) continue;
            (best, rank) = ((part.Line, slip), slip.Rank);

            bool Fits(double to)
            {
                double then = Solving.With(context.Profile, p => p == part, to / amount.Base, measure);
                return then >= usual.Low && then <= usual.High;
            }
        }

        return best;
    }

    private static Solving.Measure? MeasureOf(Fact fact, bool solid) => fact switch
    {
        Fact.Sugar => solid ? Solving.SugarByMass : Solving.SugarPerVolume,
        Fact.Brix => Solving.Brix,
        Fact.Acid => solid ? Solving.AcidByMass : Solving.AcidPerVolume,
        Fact.Salt => solid ? Solving.SaltByMass : Solving.SaltPerVolume,
        Fact.Abv => Solving.Strength,
        _ => null,
    };
}
