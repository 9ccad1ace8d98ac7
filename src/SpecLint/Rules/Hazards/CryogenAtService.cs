using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Hazards;

[Rule("SL6014", "cryogen-at-service", "Liquid nitrogen or dry ice may reach the guest", Level.Error, Safety = true)]
internal sealed partial class CryogenAtService : RecipeRule
{
    private const string DryIce = "dry-ice";

    private static readonly string[] Gone =
    [
        "evaporated", "evaporates", "boiled off", "boils off", "boiled away", "sublimed", "sublimated", "gone", "no liquid", "no piece",
        "no pieces", "cage", "outer vessel", "outer bowl", "outside the glass", "not in the glass", "never in the glass",
        "not touching the drink",
    ];

    /// <summary>Words that put it where the guest drinks.</summary>
    private static readonly string[] InGlass =
    [
        "into the glass", "in the glass", "in the drink", "into the drink", "not gone", "not all gone", "before it is gone",
        "not evaporated",
    ];

    private static readonly string[] NotInGlass =
    [
        "not in the glass", "never in the glass", "no piece in the glass", "no pieces in the glass", "not in the drink",
        "no piece in the drink", "no pieces in the drink",
    ];

    private static readonly string[] Substances =
        ["nitrogen", "LN2", "dry ice", "dry-ice", "liquid", "vapour", "vapor", "fog", "pellet", "pellets"];

    public override void Check(RecipeContext context)
    {
        if (FirstUse(context) is not { } use || IsGone(context, use)) return;
        bool ice = use.IsDryIce;
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = use.At,
            Message = ice
                ? "Dry ice is used, and nothing says that no piece of it reaches the guest's glass. Swallowed, it burns the throat and "
                    + "stomach (FDA alert of August 2018 and Food Code interpretation of October 2018)."
                : "Liquid nitrogen is used, and nothing says that all of it is gone before the drink is served. Swallowed, it has torn "
                    + "stomachs (FDA alert of August 2018; UK Food Standards Agency 2012).",
            Advice = ice
                ? "Keep it in an outer vessel or a cage, never in the glass, and say so in the step."
                : "Say in the step's `until` that all the liquid has evaporated, and that the drink is no colder than intended, before it "
                    + "leaves the bar.",
            Caution = HazardWords.StaffCaution + " Both gases displace the air of a small room.",
            Evidence = [Proof.Of("source", "FDA alert 2018-08-30; FDA Food Code interpretation 2018-10; FSA 2012")],
        });
    }

    /// <summary>The first line, verb or text that brings a cryogen.</summary>
    private static Use? FirstUse(RecipeContext context)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Direct && IsCryogen(load.Hazard)) return new Use(context.ItemOf(load.Part.Line), load.Hazard.Id == DryIce);
        }

        foreach (var text in context.Texts)
        {
            bool? ice = text.Step is { Verb: { } verb } && (verb.UsesDryIce || verb.UsesLiquidNitrogen) ? verb.UsesDryIce
                : context.NamesHazard && HazardNames.InProse(text.Text.Value, IsCryogen) is { } named ? named.Hazard.Id == DryIce
                : null;
            if (ice is { } isIce) return new Use(context.At(text.Text.Span, text.PathIn(context)), isIce);
        }

        return null;
    }

    private static bool IsCryogen(Hazard hazard) => hazard.Id is DryIce or "liquid-nitrogen";

    private readonly record struct Use(Reading.Spot At, bool IsDryIce);

    /// <summary>
    /// Whether some text says that none of it reaches the glass. It has to speak of the cryogen, or stand in a step that uses
    /// it: that the froth is gone says nothing of the ice.
    /// </summary>
    private static bool IsGone(RecipeContext context, Use use)
    {
        string path = use.At.Path;
        foreach (var text in context.Texts)
        {
            if (!HazardWords.HasWords(text.Text, Gone)
                || (HazardWords.HasWords(text.Text, InGlass) && !HazardWords.HasWords(text.Text, NotInGlass)))
                continue;
            if (HazardWords.HasWords(text.Text, Substances)
                || (text.Step is { } step && (Uses(step) || path.StartsWith(context.PathOf(step), StringComparison.Ordinal)))
                || (text.Step is null
                    && !path.StartsWith("method", StringComparison.Ordinal)
                    && path.LastIndexOf('.') is > 0 and var end
                    && text.PathIn(context).StartsWith(path.Substring(0, end), StringComparison.Ordinal)))
                return true;
        }

        return false;
    }

    private static bool Uses(Step step)
    {
        if (step.Verb.UsesDryIce || step.Verb.UsesLiquidNitrogen) return true;
        foreach (var item in step.Items)
        {
            if (item.IsGiven && HazardNames.InName(item.Value, IsCryogen) is not null) return true;
        }

        return false;
    }
}
