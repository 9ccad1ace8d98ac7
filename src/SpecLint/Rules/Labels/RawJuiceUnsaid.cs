using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7027", "raw-juice-unsaid", "Untreated juice is packed for sale without its warning", Level.Error,
    Needs = [Fact.Abv], Safety = true)]
[Limit("alcoholic-beverage-us", "AlcoholicDrink")]
internal sealed partial class RawJuiceUnsaid : PrepRule
{
    private static readonly LabelRule Law = LabellingTable.Of("juice-warning");
    private static readonly string[] Treated = ["bottled", "pasteurised", "pasteurized", "concentrate", "canned", "dehydrated", "powder"];

    public override void Check(RecipeContext context, Prep prep)
    {
        // Bottled in portions is bottled to be sold; juice for the bar's own drinks is not packed in the sense of the law.
        if (!Law.AppliesIn(context.Settings) || !prep.PortionCount.IsGiven || RawJuice(context, prep) is not { } juice) return;
        if (prep.Declares?.Advisory.Any(static t => t.IsGiven && Letters(t.Value).Contains(Letters(Law.Text))) == true) return;
        context.Report(new(Rule)
        {
            AskedLevel = Law.LevelCap,
            Place = prep.Head,
            Path = "declares.advisory",
            Message = $"It is {juice}, bottled in {Say.Number(prep.PortionCount.Value, 0)} portions with no step that treats it, and "
                + $"it does not have the exact warning that the law sets ({Law.Source}).",
            Advice = "Put the exact warning on every bottle, or treat the juice to a 5-log reduction under a HACCP plan.",
            Caution = "Untreated juice has killed people. Follow the local food code, and do not serve it to the people that the warning "
                + "names.",
            Evidence = [Proof.Of("text", Law.Text), Proof.Of("law", Law.Source)],
            Corrections = Correction.Propose("Add the warning.", Additives.SayFirst(prep, Law.Text)),
        });
    }

    /// <summary>
    /// What raw juice a bottle holds, in words; <see langword="null"/> where it holds none, or is heated, or is an alcoholic drink.
    /// </summary>
    private static string? RawJuice(RecipeContext context, Prep prep)
    {
        if (Treats(prep)) return null;
        if (prep.Family.OrNone().IsPressedJuice) return "juice";

        // The words are asked of every beverage that holds juice; alcoholic drinks have labels of their own law.
        var abv = context.Fact(Fact.Abv);
        if (abv.IsKnown && abv.Low > AlcoholicDrink.Value) return null;
        return RecipeTree.First(context.Profile, IsUntreatedJuice, static inner => inner is Prep made && Treats(made)) is { } leaf
            ? $"a drink with `{leaf.Through[leaf.Through.Count - 1]}`"
            : null;
    }

    private static bool IsUntreatedJuice(Ingredient ingredient) =>
        ingredient.IngredientKind.OrNone().IsJuice
        && WordSearch.First(ingredient.Id.Replace('-', ' ') + " " + ingredient.Name.Or(""), Treated) is null;

    private static bool Treats(Prep prep) =>
        prep.Method.Any(static s => (s.Verb.Cooks || s.Verb.KillsGerms) && Profile.WetHeat.IsPossible(s));

    private static string Letters(string text) => new([.. text.Where(char.IsLetter).Select(char.ToLowerInvariant)]);
}
