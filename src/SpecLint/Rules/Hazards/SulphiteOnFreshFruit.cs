using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6025", "sulphite-on-fresh-fruit", "Sulphite is put on fresh fruit or vegetable that is served raw", Level.Warning, Safety = true,
    Needs = [Fact.Abv])]
[Limit("guard-wine-strength", "Strong")]
internal sealed partial class SulphiteOnFreshFruit : RecipeRule
{
    private const string Source = "US FDA Food Code 3-302.14(B)";

    public override void Check(RecipeContext context)
    {
        if (context.Profile.HazardLoads.FirstOrDefault(static l => l.Hazard.Id == "sulphur-dioxide") is not { Part: var sulphite }
            || FreshIn(context.Profile) is not { } fresh
            || context.Fact(Fact.Abv) is { IsKnown: true } abv && abv.Low >= Strong.Value)
            return;
        bool law = context.Settings.AppliesIn("US");
        context.Report(new(Rule)
        {
            AskedLevel = law ? Level.Error : Level.Note,
            At = context.ItemOf(sulphite.Line),
            Message = $"`{sulphite.Line.Item.Or("")}` goes on `{fresh.Line.Item.Or("")}`, which is served raw: sulphiting agents may "
                + $"not be put on fresh fruit or vegetables that are eaten raw{(law ? "" : " in the US, the yardstick here")} ({Source}).",
            Advice = "Leave it out, and keep the fruit cold and in acid. People with asthma react to very little sulphite.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of("sulphite", sulphite.Line.Item.Or("")), Proof.Of("fresh", fresh.Line.Item.Or(""))],
        });
    }

    private static Part? FreshIn(RecipeProfile profile)
    {
        var pot = Pot.Of(profile.Recipe);
        foreach (var part in profile.Parts)
        {
            if (part.Material is { } material && IsFresh(part, material, profile) && !pot.Any(part.Line, static s => s.Verb.Cooks))
                return part;
        }

        return null;
    }

    /// <summary>Whether a part is fresh fruit, vegetable, herb or juice, or a preparation that holds some uncooked.</summary>
    private static bool IsFresh(Part part, Material material, RecipeProfile whole)
    {
        if (part.Item?.File is not Prep inner)
            return (material.Kind.IsPerishablePlant || material.Kind.IsJuice || material.Kind.IsPuree)
                && material.Perishable != Perishable.None;
        return whole.Set.TryBefore(inner, whole) is { } below && below.Once(Rule.Id, static of => FreshIn(of)) is not null;
    }
}
