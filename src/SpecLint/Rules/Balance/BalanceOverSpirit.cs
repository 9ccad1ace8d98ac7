using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Amounts;

namespace SpecLint.Rules.Balance;

[Rule("SL3027", "more-balance-than-spirit",
    "More of what sours or sweetens than of any part with alcohol, or of a liqueur than of the spirit", Level.Note, IsConsequence = true)]
[Limit("liqueur-over-spirit", "Times")]
[Limit("liqueur-base-least", "LeastLiqueur")]
[Limit("order-rounding", "Edge")]
internal sealed partial class BalanceOverSpirit : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (IsSaidByBands(context, drink) || UnlikePublished.Speaks(context, drink)) return;
        if (Find(context, drink) is { } order) Report(context, drink, order);
        else if (LiqueurOver(context, drink) is { } pair) Report(context, drink, pair.Liqueur, pair.Spirit, pair.Strong);
    }

    /// <summary>A liqueur that is a multiple of all spirits beside it. One with the strength of a spirit may be the base.</summary>
    private static (Part Liqueur, Part Spirit, double Strong)? LiqueurOver(RecipeContext context, Drink drink)
    {
        if (drink.Style.IsGiven) return null;
        double strong = 0;
        Part? liqueur = null, spirit = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || part.Material is not { State: MaterialState.Liquid } material) continue;
            if (double.IsNaN(part.Millilitres)) continue;
            if (PartRoles.Of(material) == PartRole.Strong && !material.Kind.IsBitters)
            {
                strong += part.Millilitres;
                spirit = Larger(spirit, part);
            }
            else if (material.Kind.IsLiqueur)
            {
                liqueur = Larger(liqueur, part);
            }
        }

        if (spirit is null || liqueur is null || !(liqueur.Millilitres > strong * Times.Value)) return null;
        return liqueur.Millilitres / drink.ServesOrOne >= LeastLiqueur.Value ? (liqueur, spirit, strong) : null;
    }

    private static void Report(RecipeContext context, Drink drink, Part liqueur, Part spirit, double strong)
    {
        var (advice, corrections) = Exchange(context, drink, liqueur.Line, spirit.Line);
        string over = liqueur.Line.Item.Or("it"), under = spirit.Line.Item.Or("the spirit");
        context.Report(new(Rule)
        {
            // Twice what any published drink has is no edge.
            AskedLevel = liqueur.Millilitres > 2 * Times.Value * strong ? Level.Warning : null,
            At = context.AmountOf(liqueur.Line),
            Message = $"It takes {Say.With(liqueur.Millilitres / drink.ServesOrOne, "mL")} of `{over}`, and only "
                + $"{Say.With(spirit.Millilitres / drink.ServesOrOne, "mL")} of `{under}`. No published drink has more than "
                + $"{Say.Number(Times.Value)} times as much of a liqueur as of the spirit beside it ({Times.Source}).",
            Advice = advice,
            Evidence = [Proof.Of(over, liqueur.Millilitres, "mL"), Proof.Of(under, spirit.Millilitres, "mL"), Proof.Of(Times)],
            Related = [context.See(spirit.Line.Span, "the spirit")],
            Corrections = corrections,
        });
    }

    /// <summary>Two amounts written in each other's place.</summary>
    private static (string Advice, IReadOnlyList<Correction> Corrections) Exchange(
        RecipeContext context, Drink drink, Line over, Line under)
    {
        if (!IsPoured(over) || !IsPoured(under) || UnlikePublished.IsBatched(context, drink)) return ("Check the two amounts.", []);
        string words = $"{Written.Text(context, over.Amount.Span)} of {under.Item.Or("the spirit")} and "
            + $"{Written.Text(context, under.Amount.Span)} of {over.Item.Or("it")}";
        var corrections = Correction.Propose($"Write {words}.", Written.Exchange(context, over, under));
        return ($"Write {words}, if the two amounts were exchanged.", corrections);
    }

    private static bool IsPoured(Line line) => line.Amount.IsGiven && Written.IsPoured(line.Amount.Value.Unit);

    /// <summary>Whether one part that sours or sweetens is more than all parts with alcohol together.</summary>
    public static bool IsOverAll(RecipeContext context, Drink drink) => Find(context, drink) is { OverAll: true };

    private static Order? Find(RecipeContext context, Drink drink)
    {
        double strong = 0, all = 0, serves = drink.ServesOrOne;
        Part? chief = null, sour = null, sweet = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || double.IsNaN(part.Millilitres)) continue;
            if (part.Material is not { State: MaterialState.Liquid } material) continue;

            // A part beyond all bounds is a finding of its own.
            if (TenfoldPour.LimitOf(material) is { } most && part.Millilitres / serves > most.Value) return null;
            var role = PartRoles.Of(material);
            if (role == PartRole.Strong) strong += part.Millilitres;
            if (role is PartRole.Strong or PartRole.WithAlcohol)
            {
                all += part.Millilitres;
                chief = Larger(chief, part);
            }

            if (role == PartRole.Sour) sour = Larger(sour, part);
            if (role == PartRole.Sweet) sweet = Larger(sweet, part);
        }

        // A split base counts together; a drink without a spirit has its alcohol as it has it.
        if (chief is null || !(strong > 0)) return null;
        bool isSweet = sweet is not null && (sour is null || sweet.Millilitres > sour.Millilitres);
        double alcohol = Math.Max(strong, chief.Millilitres), room = 1 + (Edge.Value / 100);
        if ((isSweet ? sweet : sour) is not { } over || !(over.Millilitres > alcohol * room)) return null;
        if (PouredDrink.Of(context.Profile) is null) return null;
        return new Order(over, chief, isSweet, over.Millilitres > all * room);
    }

    private static Part Larger(Part? known, Part part) => known is null || part.Millilitres > known.Millilitres ? part : known;

    /// <summary>What stands in the wrong order.</summary>
    /// <param name="Over">The part that sours or sweetens.</param>
    /// <param name="Chief">The largest part with alcohol.</param>
    /// <param name="IsSweet">Whether it sweetens.</param>
    /// <param name="OverAll">Whether it is more than all parts with alcohol together.</param>
    private sealed record Order(Part Over, Part Chief, bool IsSweet, bool OverAll);

    /// <summary>Whether a band of its style says it with a figure.</summary>
    private static bool IsSaidByBands(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not { } style) return false;
        foreach (var fact in BandSolver.Facts)
        {
            if (Builds.IsOut(context, style, fact)) return true;
        }

        return false;
    }

    private static void Report(RecipeContext context, Drink drink, Order order)
    {
        var (over, chief, isSweet, overAll) = order;
        string item = over.Line.Item.Or("it"), spirit = chief.Line.Item.Or("the spirit");
        var (advice, corrections) = Exchange(context, drink, over.Line, chief.Line);
        string than = overAll
            ? "more than of all its parts with alcohol together"
            : $"and only {Say.With(chief.Millilitres / drink.ServesOrOne, "mL")} of `{spirit}`";
        context.Report(new(Rule)
        {
            AskedLevel = overAll ? Level.Warning : null,
            At = context.AmountOf(over.Line),
            Message = $"It takes {Say.With(over.Millilitres / drink.ServesOrOne, "mL")} of `{item}`, {than}. "
                + $"{(isSweet ? "A syrup" : "Lemon or lime")} is not the largest part of a drink with a spirit in 98 of 100 that were "
                + "published (official list of the trade and public lists, counted).",
            Advice = advice,
            Evidence = [Proof.Of(item, over.Millilitres, "mL"), Proof.Of(spirit, chief.Millilitres, "mL")],
            Related = [context.See(chief.Line.Span, "the largest part with alcohol")],
            Corrections = corrections,
        });
    }
}
