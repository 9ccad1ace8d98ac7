using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6015", "spirit-heated-sealed", "Spirit is heated in a closed vessel, over a flame or to the boil", Level.Error, Safety = true,
    Needs = [Fact.Abv])]
[Limit("sealed-heating-alcohol", "Strength")]
[Limit("spirit-heating-temperature", "Heated")]
[Limit("ethanol-boiling", "Boils")]
[Limit("spirit-heating-open", "Steams")]
[Limit("ethanol-density", "EthanolDensity")]
internal sealed partial class SpiritHeatedSealed : RecipeRule
{
    /// <summary>Words of a remark that tell of a closed vessel; what the step names as its vessel is asked for its traits.</summary>
    private static readonly string[] Closed =
        ["vacuum", "bag", "sealed", "sous-vide", "pressure cooker", "jar, closed", "closed jar", "siphon"];

    /// <summary>Words that tell of a flame under or beside it, also in the languages of the kitchens next door.</summary>
    private static readonly string[] Flame =
    [
        "open flame", "over the flame", "over a flame", "naked flame", "on a flame", "gas", "burner", "bunsen", "camping stove",
        "chafing fuel", "blowtorch", "gasherd",
        "gaskocher", "gasflamme", "offene flamme", "feu nu", "feu vif", "flamme", "fuego", "fornello", "fuoco",
    ];

    /// <summary>Words that tell of heat without a flame or a glowing coil.</summary>
    private static readonly string[] Flameless =
        ["water bath", "waterbath", "bain-marie", "bain marie", "circulator", "induction", "electric"];

    public override void Check(RecipeContext context)
    {
        foreach (var step in context.Recipe.Method)
        {
            if (!step.Do.IsGiven || step.Verb.Freezes || step.Verb.Cools) continue;
            var heat = step.To.IsGiven ? step.To : step.At;
            bool told = heat is { IsGiven: true, Value.Dimension: Dimension.Temperature };
            bool hot = told && heat.Value.BaseHigh >= Heated.Value;
            if (!hot && (told || !step.Verb.Heats)) continue;
            bool closed = (step.Verb.ClosesVessel && step.Verb.Heats)
                || (step.Vessel.IsGiven && IsShut(step.Vessel.Value))
                || (step.Into.IsGiven && IsShut(Vessel.Of(step.Into.Value)))
                || Says(step.Note, Closed);
            bool flame = AnyText(step, Flame);
            bool boils = step.Verb.Boils || (told && heat.Value.BaseLow >= Boils.Value);

            // What is heated until it is cooked, and nothing says how hot, may boil.
            bool mayBoil = step.Verb.Cooks && !heat.IsGiven;

            // Spirit is warmed in a bag as often as in a pan: where nothing says in what, it may be shut in.
            bool mayBeShut = hot
                && step.Verb.Heats
                && context.Recipe is Prep
                && step is { Vessel.IsGiven: false, Into.IsGiven: false, Note.IsGiven: false };

            // An open pan of warm spirit gives off as much vapour as a flame needs, and nothing says that there is none.
            bool steams = told && heat.Value.BaseHigh >= Steams.Value && step.Verb.Heats && !AnyText(step, Flameless);
            bool certain = closed || flame || boils;
            if (!certain && !mayBoil && !mayBeShut && !steams) continue;
            double abv = StrengthOf(context, step);
            if (!(abv > Strength.Value)) continue;
            string to = heat.IsGiven ? $" to {Say.Number(heat.Value.BaseHigh, 0)} °C" : "";
            context.Report(new(Rule)
            {
                Answer = certain ? Answer.Broken : Answer.NotShown,
                AskedLevel = certain ? null : Level.Warning,
                At = context.At(heat.IsGiven ? heat.Span : step.Do.Span, context.PathOf(step)),
                Message = $"Spirit of about {Say.Number(abv, 0)} % vol is heated{to} {How(closed, flame, boils, mayBeShut, mayBoil)}. Do "
                    + $"not do this above {Say.Number(Strength.Value)} % vol ({Strength.Source}).",
                Advice = (!certain && mayBeShut ? "Write the vessel of the step. " : "")
                    + "Infuse it cold, or warm it in a vented vessel in an electric water bath well below 60 °C, away from flames and "
                    + "with extraction.",
                Caution = HazardWords.StaffCaution,
                Evidence = [Proof.Of("strength heated", abv, "%{vol}"), Proof.Of(Strength), Proof.Of(Heated)],
            });
        }
    }

    private static string How(bool closed, bool flame, bool boils, bool mayBeShut, bool mayBoil) => true switch
    {
        _ when closed => "in a closed vessel, which swells and may burst",
        _ when flame => "over a flame, which can ignite its vapour",
        _ when boils => "to the boil, which fills the air with vapour that a spark can ignite and leaves an unknown strength",
        _ when mayBeShut => "and nothing says in what: a closed vessel swells and may burst",
        _ when mayBoil => "to a temperature that is not stated: at the boil it fills the air with vapour that a spark can ignite",
        _ => "in an open vessel, and nothing says over what: a flame or a spark can ignite the vapour that it gives off",
    };

    /// <summary>% vol of the liquid that the step heats: the items that it names, else the whole. Pieces in it thin nothing.</summary>
    private static double StrengthOf(RecipeContext context, Step step)
    {
        double pure = 0, all = 0;
        var pot = Pot.Of(context.Recipe);
        int number = step.Number - 1;
        foreach (var part in context.Profile.Parts)
        {
            if (!part.IsWeighed
                || part.Material is null
                || part.Phase == PartPhase.Beside
                || double.IsNaN(part.Millilitres)
                || !pot.IsInTheVessel(number, part.Line, context.Profile)
                || !IsLiquid(part, context))
                continue;
            pure += part.Grams.Typical * part.Material.Of(Science.Component.Ethanol) / EthanolDensity.Value;
            all += part.Millilitres;
        }

        return all > 0 ? 100 * pure / all : double.NaN;
    }

    /// <summary>Whether a part is a liquid, or made with one.</summary>
    private static bool IsLiquid(Part part, RecipeContext context) => part.Item?.File is not Recipe recipe
        ? part.Material!.State == MaterialState.Liquid
        : context.Profiles.Of(recipe).Leaves.Any(l => context.Profiles.MaterialOf(l.Ingredient.Id) is { State: MaterialState.Liquid });

    private static bool AnyText(Step step, string[] words) =>
        Says(step.Into, words)
            || Says(step.Note, words)
            || Says(step.Until, words)
            || (step.Vessel.IsGiven && Says(new Given<string>(step.Vessel.Value.Id, step.Vessel.Span), words));

    private static bool IsShut(Vessel vessel) => vessel.IsClosed || (vessel.IsBag && !vessel.IsVented);

    private static bool Says(Given<string> text, string[] words)
    {
        foreach (string word in words)
        {
            if (HazardWords.Holds(text, word)) return true;
        }

        return false;
    }
}
