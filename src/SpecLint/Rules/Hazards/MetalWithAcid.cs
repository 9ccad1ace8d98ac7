using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

[Rule("SL6012", "metal-with-acid", "An acid drink stands in a metal that it dissolves", Level.Error, Safety = true, Needs = [Fact.Ph, Fact.Acid])]
[Limit("copper-ph", "Copper")]
[Limit("galvanised-ph", "Zinc")]
[Limit("aluminium-ph", "Aluminium")]
[Limit("lead-crystal-hours", "Crystal")]
[Limit("pewter-lead", "Pewter")]
[Limit("lead-leach-mug", "Glaze")]
internal sealed partial class MetalWithAcid : RecipeRule
{
    private static readonly string[] Lined = ["lined", "nickel-lined", "tin-lined", "steel-lined", "tinned"];
    private static readonly string[] OldPots = ["earthenware", "glazed", "vintage mug", "vintage cup", "antique", "hand-thrown", "handmade mug", "handmade cup", "enamel", "enamelled", "terracotta", "vintage tiki"];
    private static readonly string[] NoLead = ["lead-free", "lead free", "tested", "unglazed"];

    public override void Check(RecipeContext context)
    {
        bool told = false;
        if (context.Recipe is Drink { Glass.IsGiven: true } drink)
        {
            // The bar's own glass says what it is made of in its name: "moscow": { "name": "Copper mug, lined" }. It goes before the id.
            bool named = false;
            if (context.Settings.Bar is { } bar && bar.Glasses.TryGetValue(drink.Glass.Value, out var glass) && glass.Name.IsGiven)
            {
                named = IsLined(glass.Name.Value);
                told = Hold(context, drink.Glass, glass.Name.Value, "glass", false);
            }

            if (!told && !named) told = Hold(context, drink.Glass, drink.Glass.Value, "glass", false);
        }

        if (context.Recipe is Prep { Keep: { In.IsGiven: true } keep }) Hold(context, keep.In, keep.In.Value, "keep.in", true);
        foreach (var step in context.Recipe.Method)
        {
            if (step.Vessel.IsGiven) told |= Hold(context, step.Vessel, step.Vessel.Value, context.PathOf(step) + ".vessel", false);
            if (step.Into.IsGiven) told |= Hold(context, step.Into, step.Into.Value, context.PathOf(step) + ".into", false);

            // A remark may be about anything: it counts where no vessel is named.
            if (!told && step.Note.IsGiven && !step.Vessel.IsGiven && !step.Into.IsGiven && NamesVessel(step.Note.Value)) told = Hold(context, step.Note, step.Note.Value, context.PathOf(step) + ".note", false);
        }
    }

    private static bool Hold(RecipeContext context, Given<string> vessel, string text, string path, bool stored)
    {
        var (limit, metal) = MetalOf(text, stored);
        if (limit is null) return false;
        if (limit == Glaze)
        {
            Report(context, vessel, path, limit, Level.Warning, Answer.NotShown,
                $"It stands in {metal}, and nothing says that it was tested. The limit for a mug or cup is {Say.Number(Glaze.Value)} mg/L ({Glaze.Source})",
                "Use new food-grade ware, or write `lead-free` in its name once it is tested.");
            return true;
        }

        if (limit == Crystal || limit == Pewter)
        {
            if (limit == Crystal && context.Recipe is Prep prep && Storage.Days(prep) * 24 <= Crystal.Value) return false;
            Report(context, vessel, path, limit, Level.Warning, Answer.NotShown,
                limit == Crystal
                    ? $"It is kept in {metal}, which releases lead into spirit and acid. The limit is {Say.Number(Crystal.Value)} h ({Crystal.Source})"
                    : $"It stands in {metal}. Pewter that touches a drink must hold at most {Say.Number(Pewter.Value)} % lead ({Pewter.Source})",
                "Keep it in plain glass, and use crystal or old pewter only for display.");
            return true;
        }

        var ph = context.Fact(Fact.Ph);
        bool sour = ph.IsKnown ? ph.Low < limit.Value : context.Fact(Fact.Acid) is not { IsKnown: true, Low: <= 0 };
        if (!sour) return false;
        bool bare = Storage.Has(text, "unlined") || Storage.Has(text, "bare") || Storage.Has(text, "galvani") || Storage.Has(text, "zinc") || Storage.Has(text, "brass");
        bool broken = bare && ph.IsKnown && ph.High < limit.Value;
        bool law = limit.AppliesIn(context.Settings);
        string acidity = ph.IsKnown ? $"pH {Say.Ph(ph)}" : "an acid drink of unknown pH";
        Report(context, vessel, path, limit, broken && law && limit.LevelCap is null ? null : Level.Warning, broken ? Answer.Broken : Answer.NotShown,
            $"{acidity} stands in {metal}{(bare ? "" : ", and nothing says that it is lined")}. Below pH {Say.Number(limit.Value)} the metal dissolves into the drink ({limit.Source}{(law ? "" : ", the yardstick here")})",
            "Use steel, glass, or a vessel lined with steel, nickel or tin, and write `lined` in its name.");
        return true;
    }

    private static bool NamesVessel(string text) =>
        Storage.Has(text, "mug") || Storage.Has(text, "cup") || Storage.Has(text, "tankard") || Storage.Has(text, "bowl") || Storage.Has(text, "pan") || Storage.Has(text, "kettle") || Storage.Has(text, "bucket");

    private static bool IsLined(string text) => Phrases.Affirms(text, Lined);

    private static (Limit? Limit, string Metal) MetalOf(string text, bool stored)
    {
        if (IsLined(text)) return (null, "");
        if (Storage.Has(text, "copper") || Storage.Has(text, "brass")) return (Copper, "copper or brass");
        if (Storage.Has(text, "galvani") || Storage.Has(text, "zinc")) return (Zinc, "galvanised metal");
        if (Storage.Has(text, "pewter")) return (Pewter, "pewter");
        if (Phrases.HasAny(text, OldPots) && !Phrases.Affirms(text, NoLead)) return (Glaze, "pottery whose glaze may hold lead");
        if (!stored) return (null, "");
        if (Storage.Has(text, "crystal") && !Storage.Has(text, "lead-free")) return (Crystal, "lead crystal");
        return Storage.Has(text, "aluminium") || Storage.Has(text, "aluminum") ? (Aluminium, "aluminium") : (null, "");
    }

    private static void Report(RecipeContext context, Given<string> vessel, string path, Limit limit, Level? level, Answer answer, string message, string advice) =>
        context.Report(new(Rule)
        {
            Answer = answer,
            AskedLevel = level,
            At = context.At(vessel.Span, path),
            Message = message + ".",
            Advice = advice,
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of(Fact.Ph, context.Fact(Fact.Ph)), Proof.Of("vessel", vessel.Value), Proof.Of(limit)],
        });
}
