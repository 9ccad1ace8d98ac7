using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5004", "reading-against-recipe", "A reading and the amounts of the recipe cannot both be right", Level.Warning, Safety = true,
    IsConsequence = true, Needs = [Fact.Ph, Fact.Brix, Fact.Abv])]
internal sealed partial class ReadingAgainstRecipe : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Measured is not { } measured) return;
        var profile = context.Profile;

        // The wider range costs two more computations: it is asked for only where the plain one is not met.
        if (measured.Ph.IsGiven && Differ(profile.Get(Fact.Ph), profile.ComputedPh()))
            Hold(context, "pH", "measured.ph", measured.Ph, Fact.Ph, profile.ComputedPhWithStrayIons());
        if (measured.Brix.IsGiven) Hold(context, "°Brix", "measured.brix", measured.Brix, Fact.Brix, profile.ComputedBrix());
        if (measured.Abv.IsGiven) Hold(context, "strength", "measured.abv", measured.Abv, Fact.Abv, profile.ComputedAbv());
    }

    private static bool Differ(FactValue measured, FactValue computed) =>
        computed.IsKnown && measured.IsKnown && (measured.Low > computed.High || computed.Low > measured.High);

    private static void Hold(RecipeContext context, string name, string path, Given<Quantity> given, Fact fact, FactValue computed)
    {
        var measured = context.Fact(fact);
        if (!Differ(measured, computed)) return;
        string read = KeepingWords.Said(fact, measured), worked = KeepingWords.Said(fact, computed);
        context.Report(new(Rule)
        {
            At = context.At(given.Span, path),
            Message = $"The {name} is measured as {read}, but the amounts give {worked}: the two ranges do not overlap.",
            Advice = "Calibrate and measure again. If the reading stands, weigh what goes in, or change the amounts in the file to what is "
                + "really made.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(fact, measured),
                new Evidence("computed", computed.Value, computed.Low, computed.High, FactNames.Unit(fact, false))],
        });
    }
}
