using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Balance;

[Rule("SL3008", "technique-contradicts-style", "A technique that the style does not use", Level.Warning)]
internal sealed partial class TechniqueContradictsStyle : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style || drink.Method.Count == 0) return;
        if (!Builds.Contradicts(context.Profile.Technique, style))
        {
            CheckClear(context, drink, style);
            return;
        }

        string verb = Builds.Verb(context.Profile.Technique)!;
        string? other = Fitting(context)?.Id;
        var step = context.Profile.TechniqueStep;
        context.Report(new(Rule)
        {
            At = context.At(drink.Style.Span, "style"),
            Message = $"The technique of the method is `{verb}`, but a `{style.Id}` is made with "
                + $"{Say.List([.. style.Techniques.Select(t => $"`{t}`")], "or")} (table of styles; {style.UsualInShort}).",
            Advice = other is null
                ? "Change the method, or name the right style."
                : $"Change the method, or name the style that its figures fit: `{other}`.",
            Evidence = [Proof.Of("technique", verb, step is null ? null : context.At(step.Do.Span))],
            Related = step is null ? [] : [context.See(step.Do.Span, $"the step that makes it a drink to {verb}")],
            Corrections = context.Write(drink.Style.Span, other, $"Name the style `{other}`."),
        });
    }

    /// <summary>A style that is stirred first of all and may be shaken: what is clear comes out cloudy.</summary>
    private static void CheckClear(RecipeContext context, Drink drink, Style style)
    {
        if (context.Profile is not { Technique: TechniqueKind.Shaken, TechniqueStep: { } step }) return;
        if (style.Techniques.Count == 0 || style.Techniques[0].Technique != TechniqueKind.Stirred) return;
        if (Builds.First(context.Profile, static m => m is null || !m.Kind.IsClear) is not null) return;
        context.Report(new(Rule)
        {
            AskedLevel = Level.Note,
            At = context.VerbOf(step),
            Message = $"It is {step.Verb.Past}, and all its parts are clear. A `{style.Id}` drink is stirred; shaken, it comes out "
                + $"cloudy and with more water (table of styles; {style.UsualInShort}).",
            Advice = "Stir it, or leave it if it is meant to be shaken.",
            Evidence = [Proof.Of("technique", "shake", context.At(step.Do.Span))],
            Corrections = context.Write(step.Do.Span, "stir", "Stir it."),
        });
    }

    private static readonly Fact[] Compared = [Fact.Abv, Fact.Sugar, Fact.Acid, Fact.MixVolume];

    /// <summary>The first style of the table whose technique, parts and numbers are those of the drink.</summary>
    private static Style? Fitting(RecipeContext context)
    {
        var profile = context.Profile;
        bool topped = Builds.First(profile, Substances.IsSparkling) is not null;
        bool dairy = Builds.First(profile, Substances.IsDairy) is not null;
        var egg = Builds.First(profile, Substances.IsEggWhite) is not null ? EggPart.White
            : Builds.First(profile, Substances.IsYolkyEgg) is not null ? EggPart.Whole
            : EggPart.None;
        foreach (var style in Style.All)
        {
            if (style.IsTopped != topped || style.Egg != egg || style.HasDairy != dairy) continue;
            if (!Builds.Contradicts(profile.Technique, style) && Lies(context, style)) return style;
        }

        return null;
    }

    private static bool Lies(RecipeContext context, Style style)
    {
        foreach (var fact in Compared)
        {
            var value = context.Fact(fact);
            if (!value.IsKnown || style.Seen(fact) is not { } band || value.Value < band.Low || value.Value > band.High) return false;
        }

        return true;
    }
}
