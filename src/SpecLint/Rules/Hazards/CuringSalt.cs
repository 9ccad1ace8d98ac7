using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

[Rule("SL6028", "curing-salt", "Curing salt with nitrite or nitrate in or on a drink", Level.Error, Safety = true)]
internal sealed partial class CuringSalt : RecipeRule
{
    private static readonly FixedList<Hazard> Salts = [.. HazardTable.All.Where(static h => h.CuresOnly.Count > 0)];

    public override void Check(RecipeContext context)
    {
        bool onALine = false;
        foreach (var part in context.Profile.Parts)
        {
            if (NamedBy(context, part) is not { } found || Cures(context, found)) continue;
            onALine = true;
            string item = part.Line.Item.Or(part.Line.ItemText.Or("It"));
            Report(context, found, context.ItemOf(part.Line), $"`{item}` is {found.Name.ToLowerInvariant()}");
        }

        if (onALine) return;
        foreach (var text in context.Texts)
        {
            var salt = (context.NamesHazard ? InProse(text.Text) : null) ?? ByCode(text.Text);
            if (salt is not { } named || Cures(context, named)) continue;
            Report(context, named, context.At(text.Text.Span, text.PathIn(context)), $"The text names {named.Name.ToLowerInvariant()}");
            return;
        }
    }

    /// <summary>The curing salt that a line is: by its hazard, by the code in its words, or by the notes of its own file.</summary>
    private static Hazard? NamedBy(RecipeContext context, Part part)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Direct && load.Part.Line == part.Line && Salts.Contains(load.Hazard)) return load.Hazard;
        }

        if (part.Item is null) return ByCode(part.Line.Item) ?? ByCode(part.Line.ItemText);
        return part.Item is { IsBuiltIn: false, File: Ingredient own } ? NamedBy(context, own, 0) : null;
    }

    /// <summary>The curing salt that an own file, or what it is like, says that it is.</summary>
    private static Hazard? NamedBy(RecipeContext context, Ingredient own, int depth)
    {
        if (ByCode(own.Name) is { } byName) return byName;
        foreach (var note in own.Notes)
        {
            if ((InProse(note) ?? ByCode(note)) is { } noted) return noted;
        }

        return depth < HazardLoad.DeepestLike
            && own.Like.IsGiven
            && context.Book.Resolve(own.Like.Value) is { IsBuiltIn: false, File: Ingredient like }
            ? NamedBy(context, like, depth + 1)
            : null;
    }

    private static Hazard? InProse(Given<string> text) =>
        text.IsGiven ? HazardNames.InProse(text.Value, static h => Salts.Contains(h))?.Hazard : null;

    private static Hazard? ByCode(Given<string> text)
    {
        if (!text.IsGiven || text.Value.IndexOf("E 2", StringComparison.Ordinal) < 0) return null;
        foreach (var hazard in Salts)
        {
            if (hazard.Codes.Any(code => HasCode(text.Value, code))) return hazard;
        }

        return null;
    }

    /// <summary>Whether a text holds the code of an additive; a number that goes on is no code: "E 250 ml" may be "and 250 ml".</summary>
    private static bool HasCode(string text, string code)
    {
        int at = text.IndexOf(code, StringComparison.Ordinal), end = at + code.Length;
        if (at < 0 || Phrases.IsDenied(text, at, end)) return false;
        return (at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || text[end] is ')' or ',' or '.' or ';' or ':');
    }

    /// <summary>Whether the recipe cures what the salt is made for: bacon for a wash.</summary>
    private static bool Cures(RecipeContext context, Hazard hazard)
    {
        foreach (var line in context.Recipe.Ingredients)
        {
            if (line.Item.IsGiven && Phrases.HasAny(line.Item.Value.Replace('-', ' '), hazard.CuresOnly)) return true;
        }

        return false;
    }

    private static void Report(RecipeContext context, Hazard hazard, Spot at, string what)
    {
        var rule = hazard.Rules[0];
        context.Report(new(Rule)
        {
            AskedLevel = rule.Level,
            At = at,
            Key = hazard.Id,
            Message = $"{what}: {hazard.Harm}. It is for {rule.About} only, not for a drink, its rim or its syrup ({rule.Source}).",
            Advice = $"Take it out and discard what it touched; {rule.Correction}. Keep curing salt in the kitchen, "
                + "labelled and apart from other salt.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of("hazard", hazard.Id)],
        });
    }
}
