using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Book;

/// <summary>SL9001: an item that is in no file of the book and not in the catalogue.</summary>
internal sealed class UnknownReference : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL9001", "unknown-reference", "An item that is in no file of the book and not in the catalogue", Level.Error)
    {
        IsCause = true,
        LeavesHarmUnknown = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Item is not null || !line.Item.IsGiven) continue;
            string id = line.Item.Value;

            // An amount in the item, or two lines in one, has a finding of its own.
            if (Amounts.AmountInName.Reads(context.Book, id, out _, out _) || Amounts.TwoRowsInOne.Reads(context.Book, id, out _, out _, out _)) continue;
            if (UnclearNames.Find(id) is { } unclear)
            {
                context.Report(Unclear(context, line, id, unclear));
                continue;
            }

            var likely = LikelyItem.Of(context.Book, id);
            string meant = Say.List([.. likely.Select(l => $"`{l}`{Brings(context, l)}")], "or");
            var place = context.At(line.Item.Span);
            context.Report(new Finding(Rule)
            {
                Place = place,
                Subject = context.Id,
                Path = RecipeContext.PathOf(line, "item"),
                Message = $"`{id}` is in no file of the book and not in the built-in catalogue, so nothing can be worked out for it.",
                Advice = likely.Count == 0 ? "Write its file, or name an item that exists." : $"Write {meant}, if that is meant, or write a file for `{id}`.",
                Corrections = likely.Count == 1 && Brings(context, likely[0]).Length == 0
                    ? [new Correction(CorrectionGrade.Proposed, $"Name `{likely[0]}` in place of `{id}`.", [new TextEdit(place, $"\"{likely[0]}\"")])]
                    : [],
            });
        }
    }

    /// <summary>
    /// What an item would bring that can hurt a guest, in brackets; empty where nothing is known of. Such an item is named, and
    /// never put in by a correction.
    /// </summary>
    private static string Brings(RecipeContext context, string id)
    {
        var brings = new List<string>();
        switch (context.Book.Resolve(id))
        {
            case { ByProduct: null, File: Prep prep }:
                var profile = context.Profiles.Of(prep);
                brings.AddRange(profile.Allergens.Origins.Select(o => o.Token));
                brings.AddRange(profile.HazardLoads.Where(h => !h.Hazard.IsAdditive).Select(h => h.Hazard.Id));
                if (profile.Allergens.Unknown.Count > 0) brings.Add("allergens not known");
                break;
            case { ByProduct: null, File: Ingredient } item when context.Profiles.MaterialOf(item.Id)?.Ingredient is { Allergens: { } statement } ingredient:
                brings.AddRange(statement.Contains.Concat(statement.MayContain));
                if (ingredient.Hazard.IsGiven && HazardTable.Find(ingredient.Hazard.Value) is not { IsAdditive: true }) brings.Add(ingredient.Hazard.Value);
                break;
            default:
                brings.Add("allergens not known");
                break;
        }

        return brings.Count == 0 ? "" : $" ({string.Join(", ", brings.Distinct())})";
    }

    /// <summary>A name that the trade knows and that leaves open what is meant.</summary>
    private static Finding Unclear(RecipeContext context, Line line, string id, UnclearName unclear)
    {
        var place = context.At(line.Item.Span);
        var corrections = new List<Correction>(unclear.Could.Count);
        var names = new List<string>(unclear.Could.Count);
        foreach (string could in unclear.Could)
        {
            corrections.Add(new Correction(CorrectionGrade.Proposed, $"Name `{could}` in place of `{id}`.", [new TextEdit(place, $"\"{could}\"")]));
            names.Add($"`{could}`");
        }

        return new Finding(Rule)
        {
            Place = place,
            Subject = context.Id,
            Path = RecipeContext.PathOf(line, "item"),
            Message = $"`{id}` is in no file of the book, and {unclear.Because}, so nothing can be worked out for it.",
            Advice = $"Write {Say.List(names, "or")}, or a file for your own.",
            Corrections = corrections,
        };
    }
}
