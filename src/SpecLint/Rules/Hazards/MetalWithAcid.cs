using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6012", "metal-with-acid", "An acid drink stands in a metal that it dissolves", Level.Error, Safety = true,
    Needs = [Fact.Ph, Fact.Acid])]
[Limit("copper-ph", "Copper")]
[Limit("galvanised-ph", "Zinc")]
[Limit("aluminium-ph", "Aluminium")]
[Limit("lead-crystal-hours", "Crystal")]
[Limit("pewter-lead", "Pewter")]
[Limit("lead-leach-mug", "Glaze")]
internal sealed partial class MetalWithAcid : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        bool told = false;
        if (context.Recipe is Drink { Glass.IsGiven: true } drink)
        {
            // The bar's own glass says what it is made of in its name: "moscow": { "name": "Copper mug, lined" }. It goes before the id.
            bool named = false;
            if (context.Settings.Bar is { } bar && bar.Glasses.TryGetValue(drink.GlassWritten, out var glass) && glass.Name.IsGiven)
            {
                var ware = Vessel.Of(glass.Name.Value);
                named = ware.IsLined;
                told = Hold(context, ware, context.At(drink.Glass.Span, "glass"));
            }

            if (!told && !named) told = Hold(context, Vessel.Of(drink.GlassWritten), context.At(drink.Glass.Span, "glass"));
        }

        if (context.Recipe is Prep { Keep: { In.IsGiven: true } keep })
            Hold(context, keep.In.Value, context.At(keep.In.Span, "keep.in"), stored: true);
        foreach (var step in context.Recipe.Method)
        {
            if (step.Vessel.IsGiven && IsMetal(step.Vessel.Value))
                told |= Hold(context, step.Vessel.Value, context.At(step.Vessel.Span, context.PathOf(step) + ".vessel"));
            if (step.Into.IsGiven && Vessel.Of(step.Into.Value) is var into && IsMetal(into))
                told |= Hold(context, into, context.At(step.Into.Span, context.PathOf(step) + ".into"));

            // A remark may be about anything: it counts where no vessel is named.
            if (told || !step.Note.IsGiven || step.Vessel.IsGiven || step.Into.IsGiven) continue;
            var said = Vessel.Of(step.Note.Value);
            if (said.IsWare) told = Hold(context, said, context.At(step.Note.Span, context.PathOf(step) + ".note"));
        }
    }

    private static bool Hold(RecipeContext context, Vessel vessel, Spot at, bool stored = false)
    {
        var (limit, metal) = MetalOf(vessel, stored);
        if (limit is null) return false;
        if (limit == Glaze)
        {
            Report(context, (vessel, at), limit, (Level.Warning, Answer.NotShown),
                $"It stands in {metal}, and nothing says that it was tested. The limit for a mug or cup is {Say.Number(Glaze.Value)} mg/L "
                    + $"({Glaze.Source})",
                "Use new food-grade ware, or write `lead-free` in its name once it is tested.");
            return true;
        }

        if (limit == Crystal || limit == Pewter)
        {
            if (limit == Crystal && context.Recipe is Prep prep && Storage.Days(prep) * 24 <= Crystal.Value) return false;
            Report(context, (vessel, at), limit, (Level.Warning, Answer.NotShown),
                limit == Crystal
                    ? $"It is kept in {metal}, which releases lead into spirit and acid. The limit is {Say.Number(Crystal.Value)} h "
                        + $"({Crystal.Source})"
                    : $"It stands in {metal}. Pewter that touches a drink must hold at most {Say.Number(Pewter.Value)} % lead "
                        + $"({Pewter.Source})",
                "Keep it in plain glass, and use crystal or old pewter only for display.");
            return true;
        }

        var ph = context.Fact(Fact.Ph);

        // Water that takes up carbon dioxide is acid, whatever is dissolved in it.
        bool carbonic = limit == Copper && IsCarbonated(context.Recipe);
        bool sour = carbonic || (ph.IsKnown ? ph.Low < limit.Value : context.Fact(Fact.Acid) is not { IsKnown: true, Low: <= 0 });
        if (!sour) return false;
        bool bare = vessel.IsBare;
        bool broken = bare && (carbonic || (ph.IsKnown && ph.High < limit.Value));
        bool law = limit.AppliesIn(context.Settings);
        string acidity = carbonic ? "Carbonated liquid, which is acid," : ph.IsKnown ? $"pH {Say.Ph(ph)}" : "an acid drink of unknown pH";
        var level = broken && law && limit.LevelCap is null ? (Level?)null : Level.Warning;
        Report(context, (vessel, at), limit, (level, broken ? Answer.Broken : Answer.NotShown),
            $"{acidity} stands in {metal}{(bare ? "" : ", and nothing says that it is lined")}. Below pH {Say.Number(limit.Value)} the "
                + $"metal dissolves into the drink ({limit.Source}{(law ? "" : ", the yardstick here")})",
            "Use steel, glass, or a vessel lined with steel, nickel or tin, and write `lined` in its name.");
        return true;
    }

    internal static bool IsCarbonated(Recipe recipe)
    {
        if (recipe is Prep { Target.Pressure.IsGiven: true }) return true;
        foreach (var step in recipe.Method)
        {
            if (step.Verb.Carbonates) return true;
        }

        return false;
    }

    /// <summary>Whether there is a limit to hold what it is made of against.</summary>
    private static bool IsMetal(Vessel vessel) => MetalOf(vessel, stored: false).Limit is not null;

    /// <summary>The limit for what a vessel is made of, and its name; none where there is nothing to hold against it.</summary>
    internal static (Limit? Limit, string Metal) MetalOf(Vessel vessel, bool stored)
    {
        if (vessel.IsLined) return (null, "");
        if (vessel.IsCopper) return (Copper, "copper or brass");
        if (vessel.IsZinc) return (Zinc, "galvanised metal");
        if (vessel.IsPewter) return (Pewter, "pewter");
        if (vessel.MayHaveLeadGlaze) return (Glaze, "pottery whose glaze may hold lead");
        if (!stored) return (null, "");
        if (vessel.IsLeadCrystal) return (Crystal, "lead crystal");
        return vessel.IsAluminium ? (Aluminium, "aluminium") : (null, "");
    }

    private static void Report(
        RecipeContext context, (Vessel Vessel, Spot At) stands, Limit limit, (Level? Level, Answer Answer) says, string message,
        string advice) =>
        context.Report(new(Rule)
        {
            Answer = says.Answer,
            AskedLevel = says.Level,
            At = stands.At,
            Message = message + ".",
            Advice = advice,
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of(Fact.Ph, context.Fact(Fact.Ph)), Proof.Of("vessel", stands.Vessel.Id), Proof.Of(limit)],
        });
}
