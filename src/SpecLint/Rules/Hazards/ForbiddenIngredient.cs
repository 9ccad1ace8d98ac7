using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6002", "forbidden-ingredient", "An ingredient is forbidden in food where the bar is", Level.Error, Safety = true,
    Needs = [Fact.Abv])]
[Limit("declare-strength-from", "Strength")]
internal sealed partial class ForbiddenIngredient : DirectLoadRule
{
    private const string SpiritsOnly = "alcoholic beverages only";

    private static readonly string[] Harms =
        ["carcinogen", "genotoxic", "liver", "hepat", "opioid", "heart", "seizure", "neurotoxic", "psychoactive"];

    protected override void Check(RecipeContext context, HazardLoad load)
    {
        if (load.Hazard.Kind is not ("botanical" or "additive" or "substance") || HasRuleOfItsOwn(load.Hazard.Id)) return;
        if (HazardWords.Strictest(context, load.Hazard, Applies) is { } found)
            Report(context, load, found);
        else if (!HasDose(context, load.Hazard) && Elsewhere(load.Hazard) is { } elsewhere)
            ReportElsewhere(context, load, elsewhere);
    }

    private static void Report(RecipeContext context, HazardLoad load, HazardRule found)
    {
        bool restricted = found.About == SpiritsOnly;
        bool open = restricted && Findings.Check.AtMost(context.Fact(Fact.Abv), Strength.Value) == Stand.NotShown;
        string strength = context.Fact(Fact.Abv) is { IsKnown: true } abv ? Say.Fact(Fact.Abv, abv) : "not known";
        string harm = load.Hazard.Harm.Length == 0 ? "" : $": {load.Hazard.Harm}";
        context.Report(new(Rule)
        {
            Answer = open ? Answer.NotShown : Answer.Broken,
            AskedLevel = found.Level,
            At = context.ItemOf(load.Part.Line),
            Message = restricted
                ? $"`{load.Id}` is restricted to alcoholic drinks{HazardWords.Where(found)}, and "
                    + $"{(open ? "nothing shows that this is one: its strength is" : "this comes to")} {strength} ({found.Source})."
                : $"`{load.Id}` is not allowed in food{HazardWords.Where(found)}{harm} ({found.Source}).",
            Advice = Advice(found),
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, load), HazardWords.Of(found)],
        });
    }

    private static void ReportElsewhere(RecipeContext context, HazardLoad load, HazardRule elsewhere) => context.Report(new(Rule)
    {
        Answer = Answer.NotShown,
        AskedLevel = Level.Warning,
        At = context.ItemOf(load.Part.Line),
        Message = $"`{load.Id}` is harmful anywhere ({load.Hazard.Harm}) and is not allowed in food{HazardWords.Where(elsewhere)} "
            + $"({elsewhere.Source}). No measurement shows how much of it gets into the drink.",
        Advice = Advice(elsewhere),
        Caution = HazardWords.Caution,
        Evidence = [HazardWords.Of(context, load), HazardWords.Of(elsewhere)],
    });

    private static string Advice(HazardRule rule) => rule.Correction.Length == 0 ? "Take it out." : $"Take it out: {rule.Correction}.";

    private static bool Applies(RecipeContext context, HazardRule rule)
    {
        if (!rule.AppliesIn(context.Settings)) return false;
        if (rule.Control is "prohibited" or "never") return rule.When.Length == 0 && rule.About != "source material";
        return rule.About == SpiritsOnly && Findings.Check.AtMost(context.Fact(Fact.Abv), Strength.Value) != Stand.Broken;
    }

    /// <summary>
    /// What another country forbids outright because it harms liver, heart or nerves, or can cause cancer, is worth a warning everywhere.
    /// </summary>
    private static HazardRule? Elsewhere(Hazard hazard)
    {
        if (hazard.Kind != "botanical" || !Harms.Any(h => Storage.Has(hazard.Harm, h))) return null;
        return hazard.Rules.FirstOrDefault(static r => r.Control == "prohibited" && r.Level >= Level.Warning && r.When.Length == 0);
    }

    /// <summary>Whether the law of the place counts doses of it and does not forbid it.</summary>
    private static bool HasDose(RecipeContext context, Hazard hazard) =>
        hazard.Rules.Any(r => r.Control == "dose" && r.AppliesIn(context.Settings));

    private static bool HasRuleOfItsOwn(string id) => id is "activated-charcoal" or "apricot-kernels-raw" or "bitter-almond"
        or "hydrocyanic-acid" or "liquid-nitrogen" or "dry-ice";
}
