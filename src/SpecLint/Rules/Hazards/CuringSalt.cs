using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

[Rule("SL6028", "curing-salt", "Curing salt with nitrite or nitrate in or on a drink", Level.Error, Safety = true)]
internal sealed partial class CuringSalt : RecipeRule
{
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
            var salt = (context.NamesHazard ? CuringSalts.InProse(text.Text) : null) ?? CuringSalts.ByCode(text.Text);
            if (salt is not { } named || Cures(context, named)) continue;
            Report(context, named, context.At(text.Text.Span, text.PathIn(context)), $"The text names {named.Name.ToLowerInvariant()}");
            return;
        }
    }

    /// <summary>The curing salt that a line is: by its hazard, or by the code in its words.</summary>
    private static Hazard? NamedBy(RecipeContext context, Part part)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Direct && load.Part.Line == part.Line && load.Hazard.CuresOnly.Count > 0) return load.Hazard;
        }

        return part.Item is null ? CuringSalts.ByCode(part.Line.Item) ?? CuringSalts.ByCode(part.Line.ItemText) : null;
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
