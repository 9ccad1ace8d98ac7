using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

/// <summary>SL7004: what a label of the bar's says it may contain, or what the item is named after, goes unsaid.</summary>
internal sealed class MayContainUnsaid : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL7004", "may-contain-unsaid", "A part may contain an allergen, and nothing says so", Level.Warning) { Safety = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        var list = AllergenWords.Declared(context.Recipe);
        if (!list.IsGiven) return;
        var found = context.Profile.Allergens.Found;
        for (int i = 0; i < found.Count; i++)
        {
            var one = found[i];
            if (one.Presence != Presence.Possible) continue;
            if (Catalogue.AllergenTable.Covers(list.Value, one.Token) || AllergenWords.SaysMay(context.Recipe, one.Token)) continue;
            string leaf = one.Origin.Through[one.Origin.Through.Count - 1];

            // The catalogue's "may" speaks of a type, of which the bar's bottle is one: only a thing named after the
            // allergen, or a label that the bar wrote down itself, is worth a word.
            bool named = leaf.StartsWith(one.Token, StringComparison.Ordinal);
            bool own = context.Book.Resolve(leaf) is { IsBuiltIn: false } && context.Profiles.MaterialOf(leaf)?.Ingredient?.Allergens?.Mark == Mark.House;
            if (!named && !own) continue;
            var may = context.Recipe.Declares!.MayContain;
            var edit = may.Count > 0
                ? JsonEdits.AddToList(context.Recipe, new Reading.Given<FixedList<Reading.Given<string>>>(may, may[0].Span), one.Token)
                : JsonEdits.AddProperty(context.Recipe, "declares", "mayContain", $"[\"{one.Token}\"]");
            context.Report(new Finding(Rule)
            {
                Answer = Answer.NotShown,
                Place = context.At(list.Span),
                Subject = context.Id,
                Path = "declares.mayContain",
                Key = one.Token,
                Message = own
                    ? $"The label of `{leaf}` says that it may contain {one.Token}, which comes in {AllergenWords.Way(one.Origin)} and is not passed on to the guest."
                    : $"`{leaf}` is made with {one.Token} by some makers, comes in {AllergenWords.Way(one.Origin)}, and nothing says so.",
                Advice = $"Read the bottle's specification: declare `{one.Token}` under `allergens` or `mayContain`, or note in the bar's own ingredient file that it holds none.",
                Caution = AllergenWords.Caution,
                Evidence = [Proof.Of("comes in", string.Join(" > ", one.Origin.Through), context.At(one.Origin.Part.Line.Span)), Proof.Of("law", one.Category.Source)],
                Related = [new RelatedPlace(context.At(one.Origin.Part.Line.Span), $"may bring {one.Token}")],
                Corrections = edit is null ? [] : [new Correction(CorrectionGrade.Proposed, $"Declare that it may contain `{one.Token}`.", [edit])],
            });
        }
    }
}
