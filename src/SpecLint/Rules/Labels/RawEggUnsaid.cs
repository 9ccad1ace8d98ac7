using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule("SL7026", "raw-egg-unsaid", "Raw egg is served and the guest is not told", Level.Warning, Safety = true)]
internal sealed partial class RawEggUnsaid : DrinkRule
{
    private static readonly LabelRule Law = LabellingTable.Of("raw-egg-general");
    private static readonly LabelRule LawUs = LabellingTable.Of("raw-egg-advisory");

    private const string RawCaution =
        "Raw egg can carry Salmonella: do not serve it to old, very young, pregnant or ill guests. Follow the local food code.";

    private const string LionCaution =
        "Raw egg can carry Salmonella: do not serve it to old, very young, pregnant or ill guests. Since 2017 the Food Standards Agency "
            + "has excepted hens' eggs of the British Lion scheme for old, young and pregnant people (as recalled), but not other hens' "
            + "eggs, and not duck or quail eggs. Follow the local food code.";

    public override void Check(RecipeContext context, Drink drink)
    {
        bool holdsEgg = false;
        foreach (var origin in context.Profile.Allergens.Origins) holdsEgg |= origin.Token == "egg" && origin.Certain;
        if (!holdsEgg || Additives.IsSaid(drink, ["egg"]) || Heats(drink)) return;
        if (RecipeTree.First(context.Profile, IsRawEgg, Heats) is not { } leaf) return;
        var settings = context.Settings;
        var law = LawUs.AppliesIn(settings) && settings.JurisdictionIsStated ? LawUs : Law;
        bool isBritish = settings is { JurisdictionIsStated: true, Jurisdictions.Count: 1 } && settings.AppliesIn("GB");
        context.Report(new(Rule)
        {
            AskedLevel = law.LevelCap,
            At = context.ItemOf(leaf.Part.Line),
            Message = $"`{leaf.Through[leaf.Through.Count - 1]}` is raw egg, not pasteurised and not heated, and guests are not told "
                + $"({law.Source}).",
            Advice = $"Use pasteurised egg, or tell guests under `declares.advisory`: \"{law.Text}\"",
            Caution = isBritish ? LionCaution : RawCaution,
            Evidence =
            [
                Proof.Of("comes in", string.Join(" > ", leaf.Through), context.At(leaf.Part.Line.Span)),
                Proof.Of("law", law.Source),
            ],
            Corrections = Correction.Propose("Tell guests that it contains raw egg.", Additives.SayFirst(drink, law.Text)),
        });
    }

    internal static bool IsRawEgg(Ingredient ingredient)
    {
        if (!ingredient.IngredientKind.OrNone().IsEgg) return false;
        string text = ingredient.Id.Replace('-', ' ') + " " + ingredient.Name.Or("");
        return text.IndexOf("pasteuri", StringComparison.OrdinalIgnoreCase) < 0
            && text.IndexOf("powder", StringComparison.OrdinalIgnoreCase) < 0
            && text.IndexOf("dried", StringComparison.OrdinalIgnoreCase) < 0;
    }

    private static bool Heats(Recipe recipe) => recipe.Method.Any(static s => s.Verb.Cooks && Profile.WetHeat.IsPossible(s));
}
