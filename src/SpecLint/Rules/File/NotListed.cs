using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1017", "not-listed", "A step that uses what is not listed", Level.Warning)]
internal sealed partial class NotListed : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        HashSet<string>? listed = null, inTexts = null;
        NameIndex? names = null;
        foreach (var step in context.Recipe.Method)
        {
            if (step is { Verb.Rims: true, Items.Count: 0, Do.IsGiven: true }
                && context.Recipe is Drink { Rim.Count: 0 } drink
                && !HasRim(drink))
                ReportRim(context, step);
            foreach (var item in step.Items)
            {
                if (!item.IsGiven
                    || IsListed(context, item.Value, listed ??= Listed(context))
                    || (inTexts ??= Amounts.AmountInName.NamedBy(context)).Contains(item.Value))
                    continue;
                names ??= new NameIndex(context.Profile.Parts.Where(static p => p.Line.Item.IsGiven).Select(static p => p.Line.Item.Value));
                string? near = names.Slip(item.Value);
                context.Report(new(Rule)
                {
                    At = context.At(item.Span, context.PathOf(step) + ".items"),
                    Key = item.Value,
                    Message = $"The step uses `{item.Value}`, which is on no line. It is missing from every figure and every list of "
                        + "allergens.",
                    Advice = near is null
                        ? "Add a line with its amount, or remove it from the step."
                        : $"Write `{near}` if that is meant. Otherwise add a line with its amount.",
                    Corrections = near is null ? []
                        : [new Correction(
                            CorrectionGrade.Assured, $"Write `{near}`, the line's spelling.", [context.Rewrite(item.Span, near)])],
                });
            }
        }
    }

    private static bool HasRim(Drink drink) => drink.Ingredients.Any(static l => l.Role == LineRole.Rim);

    private static void ReportRim(RecipeContext context, Step step) => context.Report(new(Rule)
    {
        AskedLevel = Level.Note,
        At = context.VerbOf(step),
        Message = "The glass gets a rim, and nothing says of what. It is missing from every list of allergens.",
        Advice = "Write what it is under `rim`, or remove the step.",
    });

    /// <summary>What the lines name: as they write it, and as the id of what that is.</summary>
    private static HashSet<string> Listed(RecipeContext context)
    {
        var listed = new HashSet<string>(StringComparer.Ordinal);
        foreach (var part in context.Profile.Parts)
        {
            if (!part.Line.Item.IsGiven) continue;
            listed.Add(part.Line.Item.Value);
            if (part.Item is not null) listed.Add(part.Item.Id);
        }

        return listed;
    }

    private static bool IsListed(RecipeContext context, string id, HashSet<string> listed)
    {
        // Ice and gas come with the technique; what is left of an earlier step is used in a later one.
        if (id is "ice" or "all" or "rest" or "mix" || listed.Contains(id)) return true;
        var wanted = context.Book.Resolve(id);
        if (wanted is not null && listed.Contains(wanted.Id)) return true;
        if (wanted?.File is Ingredient found && context.Profiles.MaterialOf(found.Id)?.Kind is { IsIce: true } or { IsGas: true })
            return true;
        if (context.Recipe is not Prep prep) return false;
        foreach (var left in prep.ByProducts)
        {
            if (left.Id.IsGiven && left.Id.Value == id) return true;
        }

        return id == prep.Id;
    }
}
