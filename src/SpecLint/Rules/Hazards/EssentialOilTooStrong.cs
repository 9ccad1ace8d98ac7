using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6009", "essential-oil-too-strong", "Essential oil is used neat on a drink, or too much of it", Level.Warning, Safety = true,
    Needs = [Fact.ServedVolume])]
[Limit("essential-oil-dose", "Most")]
[Limit("wintergreen-serve", "Wintergreen")]
[Limit("essential-oil-serve", "Burns")]
[LimitsOf(typeof(PrepServe), nameof(PrepServe.LimitIds))]
internal sealed partial class EssentialOilTooStrong : RecipeRule
{
    /// <summary>
    /// Whether the part is the oil: by its name, as what is left of making something, or as a preparation that holds nothing else.
    /// </summary>
    private static bool IsItself(HazardLoad load) =>
        load.Direct
            || load.Part.Item?.ByProduct is not null
            || (load.Part.IsWeighed && (float)load.Grams >= (float)load.Part.Grams.Typical);

    /// <summary>Two lines of one oil in the drink are one dose; the one that is least diluted speaks for it.</summary>
    private static IEnumerable<(HazardLoad Load, bool IsItself)> Summed(FixedList<HazardLoad> loads)
    {
        for (int i = 0; i < loads.Count; i++)
        {
            var load = loads[i];
            double grams = 0;
            bool first = true;
            var speaker = load;
            for (int j = 0; j < loads.Count; j++)
            {
                if (loads[j].Id != load.Id
                    || loads[j].Part.Phase == PartPhase.Beside != (load.Part.Phase == PartPhase.Beside)
                    || double.IsNaN(loads[j].Grams) != double.IsNaN(load.Grams))
                    continue;
                grams += loads[j].Grams;
                first &= j >= i;
                if (Nearness(loads[j]) > Nearness(speaker)) speaker = loads[j];
            }

            if (first) yield return (speaker with { Grams = grams }, IsItself(speaker));
        }
    }

    /// <summary>
    /// The serve by which a preparation is judged: of one that is poured and that no drink uses yet. What is dosed by the drop may hold
    /// much.
    /// </summary>
    private static PrepServe? Poured(RecipeContext context) =>
        context.Recipe is Prep prep && !prep.Family.OrNone().Kind.IsDosed ? PrepServe.Of(context, prep) : null;

    /// <summary>
    /// mL of an oil in one serve; of a preparation in the serve that is usual of such, NaN where a drink of the book says how much.
    /// </summary>
    private static double ServeOf(RecipeContext context, double millilitres) => context.Recipe switch
    {
        Prep prep => PrepServe.Of(context, prep) is { } usual ? millilitres * usual.Share : double.NaN,
        var drink => millilitres / drink.ServesOrOne,
    };

    private static int Nearness(HazardLoad load) => !IsItself(load) ? 0 : load.Part.Phase is PartPhase.Beside or PartPhase.Top ? 2 : 1;

    public override void Check(RecipeContext context)
    {
        if (context.Profile.HazardLoads.Count == 0) return;
        var poured = Poured(context);
        foreach (var (load, itself) in Summed(context.Profile.HazardLoads))
        {
            // A preparation may hold an oil that the drink dilutes; one that is a poison by the teaspoon may not.
            bool poison = load.Hazard.Id is "wintergreen-oil" or "camphor" or "pennyroyal";
            if (!(load.Hazard.Id is "essential-oils" || poison) || (context.Recipe is Prep && !poison && poured is null)) continue;
            bool neat = context.Recipe is Drink && itself && load.Part.Phase is PartPhase.Beside or PartPhase.Top;
            double millilitres = context.Recipe is Drink && context.Fact(Fact.ServedVolume) is { IsKnown: true } volume
                ? volume.Value * context.Recipe.ServesOrOne
                : context.Profile.InputVolume;
            double density = context.Profiles.MaterialOf(load.Id)?.Density ?? double.NaN;

            // A drop of what nothing is known of: an oil weighs about as much as water.
            double oil = load.Grams / (double.IsNaN(density) ? 1 : density), perLitre = oil / millilitres * 1000;
            if (double.IsNaN(oil) && itself) oil = PrepServe.RoughMillilitres(load.Part);
            if (poured is { } usual) perLitre *= usual.Dilution;
            bool unknown = double.IsNaN(perLitre), wintergreen = load.Hazard.Id == "wintergreen-oil";
            double serve = wintergreen || poured is not null || context.Recipe is Drink ? ServeOf(context, oil) : double.NaN;
            bool deadly = wintergreen && serve >= Wintergreen.Value;
            bool burns = (context.Recipe is Drink || poured is not null) && serve >= Burns.Value;
            if (!neat && !unknown && !deadly && !(perLitre > Most.Value)) continue;
            string diluted = poured is { } one
                ? $" of a drink that takes a usual {Say.With(one.Millilitres, "mL")} of it (no drink of the book uses it yet)"
                : "";
            string where = neat ? "goes neat on the drink" : context.Recipe is Drink ? "is in the drink" : "is in the preparation";
            string dose = unknown ? ", in an unknown amount" : $" and comes to {Say.Number(perLitre)} mL/L{diluted}";
            string deaths = deadly
                ? $" A serve brings {Say.With(serve, "mL")} of it: a teaspoon has killed, and {Say.Number(Wintergreen.Value)} mL is the "
                    + $"most here ({Wintergreen.Source})."
                : "";
            context.Report(new(Rule)
            {
                Answer = unknown ? Answer.NotShown : Answer.Broken,
                AskedLevel = deadly || burns || (unknown && wintergreen) ? Level.Error : null,
                At = context.AmountOf(load.Part.Line),
                Message = $"{HazardWords.NameOf(load)} {where}{dose}. The limit is {Say.Number(Most.Value)} mL, emulsified, in a litre of "
                    + $"the finished drink ({Most.Source}), and neat oil burns the mouth.{deaths}",
                Advice = "Use food-grade oil, dilute it to 1 to 5 % in strong spirit first, and dose that.",
                Caution = HazardWords.Caution,
                Evidence = [HazardWords.Of(context, load), Proof.Of(Most)],
            });
        }
    }
}
