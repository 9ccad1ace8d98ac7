using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule("SL7042", "serving-measure-off", "A drink is poured in an amount in which the law does not let it be sold", Level.Warning)]
internal sealed partial class ServingMeasureOff : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (!context.Settings.JurisdictionIsStated || context.Profile.Unresolved is not null) return;
        foreach (var law in ServingMeasureTable.All)
        {
            int liquids = Liquids(context.Profile);
            if (law.Jurisdictions.FirstOrDefault(context.Settings.AppliesIn) is not { } place || liquids >= law.NotFromLiquids) continue;
            foreach (var part in context.Profile.Parts)
            {
                double poured = part.Millilitres / drink.ServesOrOne;
                if (part.Phase is PartPhase.Beside or PartPhase.TakenOut || double.IsNaN(poured)) continue;
                if (!IsOf(part, law) || law.Allows(poured)) continue;
                var stated = context.Settings.StatedJurisdictions;
                bool alone = stated.All(s => s == place || s.StartsWith(place + "-", StringComparison.Ordinal));
                string next = Say.List([.. law.NextTo(poured).Select(static s => Say.Number(s))], "or");
                context.Report(new(Rule)
                {
                    AskedLevel = alone ? Level.Warning : Level.Note,
                    At = context.AmountOf(part.Line),
                    Message = $"It pours {Say.Number(Math.Round(poured, 1))} mL of `{part.Line.Item.Or("")}`. In {law.Place} {law.What} "
                        + $"sold by the glass in {Say.List([.. law.Sizes.Select(static s => Say.Number(s))], "or")} mL and multiples of "
                        + $"one of them, unless {law.NotFromLiquids} liquids or more are mixed; this drink holds "
                        + $"{Say.Count(liquids, "liquid")} ({law.Source}).",
                    Advice = $"{(alone ? "Pour" : $"Where it is sold in {law.Place}, pour")} {next} mL, by the measure of the house.",
                    Evidence = [Proof.Of("poured", poured, "mL"), .. law.Sizes.Select(s => Proof.Of("measure", s, "mL", law.Source))],
                });
            }
        }
    }

    private static bool IsOf(Part part, ServingMeasure law)
    {
        if (part.Item is not { File: Ingredient own } item || part.Material is not { } material) return false;
        if (!law.Kinds.Contains(material.Kind)) return false;
        if (law.Named.Count == 0) return true;
        string called = $"{item.Id} {own.Name.Or("")} {own.Like.Or("")} {material.Ingredient?.LikeInTheEnd?.Id}".Replace('-', ' ');
        return WordSearch.First(called, law.Named) is not null;
    }

    /// <summary>How many liquids are mixed, those in its preparations with them.</summary>
    private static int Liquids(RecipeProfile profile) => RecipeTree.Of(profile)
        .Where(static l => l.Part.Phase is not (PartPhase.Beside or PartPhase.TakenOut)).Select(static l => l.Ingredient.Id).Distinct()
        .Count(id => profile.Set.MaterialOf(id) is { State: MaterialState.Liquid });
}
