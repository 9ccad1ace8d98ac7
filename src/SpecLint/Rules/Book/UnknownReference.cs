using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Linking;

namespace SpecLint.Rules.Book;

[Rule(
    "SL9001", "unknown-reference", "An item that is in no file of the book and not in the catalogue", Level.Error, IsCause = true,
    LeavesHarmUnknown = true)]
internal sealed partial class UnknownReference : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Item is not null || !line.Item.IsGiven) continue;
            string id = line.Item.Value;

            // An amount in the item, or two lines in one, has a finding of its own.
            if (Amounts.AmountInName.Reads(context.Book, id, out _, out _)
                || Amounts.TwoRowsInOne.Reads(context.Book, id, out _, out _, out _))
                continue;
            var meaning = context.Book.NameResolver.Resolve(id);
            Finding? open = meaning.Answer switch
            {
                NameAnswer.Unclear => Unclear(context, line, id, meaning),
                NameAnswer.Maker => Makers(context, line, id, meaning),
                _ => null,
            };
            if (open is not null)
            {
                context.Report(open);
                continue;
            }

            var likely = meaning.Answer == NameAnswer.Resolved ? [meaning.Id] : LikelyItem.Of(context.Book, id);

            // What the name says can hurt is not lost for another spelling: rhubarb leaves are not meant as rhubarb.
            if (Hazard(context, line) is { } hazard) likely = [.. likely.Where(l => Brings(context, l).Contains(hazard))];
            context.Report(new(Rule)
            {
                At = context.ItemOf(line),
                Message = $"`{id}` is in no file of the book and not in the built-in catalogue, so nothing can be computed for it.",
                Advice = likely.Count == 0
                    ? "Write its file, or name an item that exists."
                    : $"Write {Listed(context, likely)}, if that is meant, or write a file for `{id}`.",
                Corrections = likely.Count == 1 && Brings(context, likely[0]).Count == 0 ? [Name(context, line, id, likely[0])] : [],
            });
        }
    }

    /// <summary>
    /// What an item would bring that can hurt a guest; empty where nothing is known of. Such an item is named, and never put in by
    /// a correction.
    /// </summary>
    private static HashSet<string> Brings(RecipeContext context, string id)
    {
        var brings = new HashSet<string>(StringComparer.Ordinal);
        switch (context.Book.Resolve(id))
        {
            case { ByProduct: null, File: Prep prep }:
                var profile = context.Profiles.Of(prep);
                brings.UnionWith(profile.Allergens.Origins.Select(o => o.Token));
                brings.UnionWith(profile.HazardLoads.Where(h => !h.Hazard.IsAdditive).Select(h => h.Hazard.Id));
                if (profile.Allergens.Unknown.Count > 0) brings.Add("allergens not known");
                break;
            case { ByProduct: null, File: Ingredient } item
                when context.Profiles.MaterialOf(item.Id)?.Ingredient is { Allergens: { } statement } ingredient:
                brings.UnionWith(statement.Contains.Concat(statement.MayContain));
                if (ingredient.Hazard.IsGiven && HazardTable.Find(ingredient.Hazard.Value) is not { IsAdditive: true })
                    brings.Add(ingredient.Hazard.Value);
                break;
            default:
                brings.Add("allergens not known");
                break;
        }

        return brings;
    }

    /// <summary>Items in words, each with what it would bring.</summary>
    private static string Listed(RecipeContext context, IEnumerable<string> ids)
    {
        return Say.List([.. ids.Select(id => $"`{id}`{Bracketed(Brings(context, id))}")], "or");

        static string Bracketed(HashSet<string> brings) => brings.Count == 0 ? "" : $" ({string.Join(", ", brings)})";
    }

    /// <summary>The hazard that the words of a line name; <see langword="null"/> where they name none.</summary>
    private static string? Hazard(RecipeContext context, Line line) =>
        context.Profile.HazardLoads.FirstOrDefault(l => l.Direct && l.Part.Line == line)?.Hazard.Id;

    /// <summary>A name that leaves open what is meant.</summary>
    private static Finding Unclear(RecipeContext context, Line line, string id, WrittenName name) => new(Rule)
    {
        At = context.ItemOf(line),
        Message = $"`{id}` is in no file of the book, and {name.Because}, so nothing can be computed for it.",
        Advice = $"Write {Listed(context, name.Choices)}, or a file for your own.",
        Corrections =
        [
            .. name.Choices
                .Where(c => Brings(context, c).Count == 0)
                .Select(c => Name(context, line, id, c) with { KeepsTheThing = true }),
        ],
    };

    /// <summary>A maker's name: what is in the bottle is on its label, so that no correction puts its kind in its place.</summary>
    private static Finding Makers(RecipeContext context, Line line, string id, WrittenName name)
    {
        string[] kinds = name.Id.Length > 0 ? [name.Id] : [.. name.Choices];
        string like = kinds.Length == 0 ? "" : $", or name its kind, {Listed(context, kinds)}";
        return new(Rule)
        {
            At = context.ItemOf(line),
            Message = $"`{id}` is a maker's name, which is in no file of the book and never in the built-in catalogue, so nothing can be "
                + "computed for it.",
            Advice = $"Write a file for the bottle from its label{like}.",
        };
    }

    private static Correction Name(RecipeContext context, Line line, string id, string item) =>
        new(CorrectionGrade.Proposed, $"Name `{item}` instead of `{id}`.", [context.Rewrite(line.Item.Span, item)]);
}
