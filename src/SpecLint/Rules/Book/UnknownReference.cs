using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Reading;

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
            if (Amounts.AmountInName.Reads(context.Book, id, out _, out _) || Amounts.TwoRowsInOne.Reads(context.Book, id, out _, out _, out _)) continue;
            var meaning = context.Book.NameResolver.Resolve(id);
            if (meaning.Answer is NameAnswer.Unclear or NameAnswer.Maker)
            {
                context.Report(meaning.Answer == NameAnswer.Unclear ? Unclear(context, line, id, meaning) : Makers(context, line, id, meaning));
                continue;
            }

            var likely = meaning.Answer == NameAnswer.Resolved ? [meaning.Id] : LikelyItem.Of(context.Book, id);

            // What the name says can hurt is not lost for another spelling: rhubarb leaves are not meant as rhubarb.
            if (Hazard(context, line) is { } hazard) likely = [.. likely.Where(l => Brings(context, l).Contains(hazard))];
            string meant = Say.List([.. likely.Select(l => $"`{l}`{Bracketed(context, l)}")], "or");
            var place = context.At(line.Item.Span);
            context.Report(new(Rule)
            {
                At = new(place, RecipeContext.PathOf(line, "item")),
                Message = $"`{id}` is in no file of the book and not in the built-in catalogue, so nothing can be computed for it.",
                Advice = likely.Count == 0 ? "Write its file, or name an item that exists." : $"Write {meant}, if that is meant, or write a file for `{id}`.",
                Corrections = likely.Count == 1 && Brings(context, likely[0]).Count == 0
                    ? [new Correction(CorrectionGrade.Proposed, $"Name `{likely[0]}` instead of `{id}`.", [new TextEdit(place, $"\"{likely[0]}\"")])]
                    : [],
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
            case { ByProduct: null, File: Ingredient } item when context.Profiles.MaterialOf(item.Id)?.Ingredient is { Allergens: { } statement } ingredient:
                brings.UnionWith(statement.Contains.Concat(statement.MayContain));
                if (ingredient.Hazard.IsGiven && HazardTable.Find(ingredient.Hazard.Value) is not { IsAdditive: true }) brings.Add(ingredient.Hazard.Value);
                break;
            default:
                brings.Add("allergens not known");
                break;
        }

        return brings;
    }

    private static string Bracketed(RecipeContext context, string id) => Brings(context, id) is { Count: > 0 } brings ? $" ({string.Join(", ", brings)})" : "";

    /// <summary>The hazard that the words of a line name; <see langword="null"/> where they name none.</summary>
    private static string? Hazard(RecipeContext context, Line line)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Direct && load.Part.Line == line) return load.Hazard.Id;
        }

        return null;
    }

    /// <summary>A name that leaves open what is meant.</summary>
    private static Finding Unclear(RecipeContext context, Line line, string id, WrittenName name)
    {
        var place = context.At(line.Item.Span);
        return new(Rule)
        {
            At = new(place, RecipeContext.PathOf(line, "item")),
            Message = $"`{id}` is in no file of the book, and {name.Because}, so nothing can be computed for it.",
            Advice = $"Write {Say.List([.. name.Choices.Select(c => $"`{c}`{Bracketed(context, c)}")], "or")}, or a file for your own.",
            Corrections = [.. name.Choices.Where(c => Brings(context, c).Count == 0).Select(c => Name(place, id, c) with { KeepsTheThing = true })],
        };
    }

    /// <summary>A maker's name: what is in the bottle is on its label, so that no correction puts its kind in its place.</summary>
    private static Finding Makers(RecipeContext context, Line line, string id, WrittenName name)
    {
        var place = context.At(line.Item.Span);
        string[] kinds = name.Id.Length > 0 ? [name.Id] : [.. name.Choices];
        string like = kinds.Length == 0 ? "" : $", or name its kind, {Say.List([.. kinds.Select(c => $"`{c}`{Bracketed(context, c)}")], "or")}";
        return new(Rule)
        {
            At = new(place, RecipeContext.PathOf(line, "item")),
            Message = $"`{id}` is a maker's name, which is in no file of the book and never in the built-in catalogue, so nothing can be "
                + "computed for it.",
            Advice = $"Write a file for the bottle from its label{like}.",
        };
    }

    private static Correction Name(Place place, string id, string item) =>
        new(CorrectionGrade.Proposed, $"Name `{item}` instead of `{id}`.", [new TextEdit(place, $"\"{item}\"")]);
}
