using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Amounts;

namespace SpecLint.Rules.Balance;

[Rule("SL3026", "unlike-published-drinks", "Amounts that no published drink of its make-up comes near", Level.Warning,
    IsConsequence = true)]
[Limit("amount-bitters-per-serve", "Usual")]
[Limit("group-far", "FarFrom")]
[Limit("group-sweetens", "Sweetens")]
internal sealed partial class UnlikePublished : DrinkRule
{
    /// <summary>What a slip explains.</summary>
    private sealed record Explanation(string Advice, IReadOnlyList<Correction> Corrections, bool Explains);

    private const string NothingSweetens =
        "Nothing in it sweetens. Add the syrup, cordial or liqueur if one was left out; if it is meant, name its style.";

    private static readonly Explanation Undecided = new("", [], true);

    /// <summary>What rounding hides at the end of a band.</summary>
    private const double Edge = 0.01;

    /// <summary>The place of the sugar for each g of acid among the facts of a drink.</summary>
    private const int SugarPerAcid = 5;

    private static readonly string[] Nouns =
        ["strength", "sugar", "acid", "sugar for each g of alcohol", "acid for each g of alcohol", "sugar for each g of acid"];

    private static readonly string[] Units = ["% vol", "g/100 mL", "g/100 mL", "g", "g", "g"];
    private static readonly string[] UnitIds = ["%{vol}", "g/dL", "g/dL", "g/g", "g/g", "g/g"];

    public override void Check(RecipeContext context, Drink drink)
    {
        if (Find(context, drink) is not { } found) return;
        var slip = found.Slip;
        string published = $"{Say.Number(found.Group.Count, 0)} published {found.Group.Name}";
        string where = found.BeyondAll ? $"beyond all {published}" : $"far from what 96 in 100 of {published} have";
        context.Report(new(Rule)
        {
            // More lemon or syrup than alcohol is more than an edge.
            AskedLevel = found.BeyondAll || BalanceOverSpirit.IsOverAll(context, drink) ? null : Level.Note,
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = $"As poured, its {Say.List(found.Words)}, {where} ({found.Group.Source}).",
            Advice = slip.Advice.Length > 0
                ? slip.Advice
                : "Look for an amount that slipped, or for two that were exchanged. If it is meant, name its style.",
            Evidence = found.Proofs,
            Corrections = IsBatched(context, drink) ? [] : slip.Corrections,
        });
    }

    /// <summary>Whether this rule speaks of a drink.</summary>
    public static bool Speaks(RecipeContext context, Drink drink) => Find(context, drink) is not null;

    /// <summary>What lies outside the published drinks of its group.</summary>
    private sealed record Outlier(DrinkGroup Group, List<string> Words, List<Evidence> Proofs, bool BeyondAll, Explanation Slip);

    private static Outlier? Find(RecipeContext context, Drink drink)
    {
        // A style has bands of its own.
        if (drink.KnownStyle is not null || PouredDrink.Of(context.Profile) is not { } poured) return null;
        if (DrinkGroupTable.Find(poured.Group) is not { } group) return null;

        // A part beyond all bounds, and how much acid is weighed in, are findings of their own.
        foreach (var part in poured.Parts)
        {
            if (Substances.IsAcid(part.Material)) return null;
            if (TenfoldPour.LimitOf(part.Material!) is { } most && part.Millilitres / drink.ServesOrOne > most.Value) return null;
        }

        var (words, proofs) = Outside(poured, group, group.Seen, Edge);
        bool beyondAll = words.Count > 0;
        if (!beyondAll) (words, proofs) = Outside(poured, group, group.Usual, FarFrom.Value / 100);
        if (words.Count == 0) return null;

        // A drink at the edge of the published ones is worth a word where one slip explains it.
        var slip = Slip(context, drink, poured, group);
        return beyondAll || slip.Explains ? new Outlier(group, words, proofs, beyondAll, slip) : null;
    }

    private static (List<string> Words, List<Evidence> Proofs) Outside(PouredDrink poured, DrinkGroup group, Band?[] bands, double room)
    {
        var words = new List<string>();
        var proofs = new List<Evidence>();
        for (int i = 0; i < poured.Facts.Length; i++)
        {
            double value = poured.Facts[i];
            if (bands[i] is not { } band || double.IsNaN(value) || (value >= band.Low / (1 + room) && value <= band.High * (1 + room)))
                continue;
            double limit = value > band.High ? band.High : band.Low;

            // What nobody can see in the figures is no difference.
            if (Say.Number(value) == Say.Number(limit)) continue;
            string against = $"{(value > band.High ? "above" : "below")} {Say.With(limit, Units[i])}";
            words.Add($"{Nouns[i]} comes to {Say.With(value, Units[i])}, {against}");
            proofs.Add(Proof.Of(Nouns[i] + " as poured", value, UnitIds[i]));
            proofs.Add(Proof.Of(Nouns[i] + " of published drinks", limit, UnitIds[i], group.Source));
        }

        return (words, proofs);
    }

    /// <summary>
    /// The one slip that brings all of it back among the published drinks: another unit, then a factor of ten, then two amounts
    /// exchanged. Where two slips of a kind would, nobody can say which it was.
    /// </summary>
    private static Explanation Slip(RecipeContext context, Drink drink, PouredDrink poured, DrinkGroup group)
    {
        for (int rank = 0; rank <= 1; rank++)
        {
            (Part Part, Slip Slip)? only = null;
            int found = 0;
            foreach (var part in poured.Parts)
            {
                if (!part.Line.Amount.IsGiven || !Written.IsPoured(part.Line.Amount.Value.Unit)) continue;
                if (SlipOf(part, context, drink, poured, group) is not { } slip || slip.Rank != rank) continue;
                only = (part, slip);
                found++;
            }

            if (found > 1) return Undecided;
            if (only is not var (line, right)) continue;
            string text = $"Write {right.Text} of {line.Line.Item.Or("it")}", what = rank == 0 ? "the unit slipped" : "a digit slipped";
            return new(
                $"{text}, if {what}: it is then like them in all of this.",
                context.Write(line.Line.Amount.Span, right.Text, $"{text}."),
                true);
        }

        // A line that was left out is a slip too.
        bool sour = group.Usual[SugarPerAcid] is { } balance && poured.Facts[SugarPerAcid] < balance.Low;
        if (sour && poured.Parts.All(static p => 100 * Solving.SugarOf(p.Material!.PerGram) < Sweetens.Value))
            return new(NothingSweetens, [], true);
        return Exchange(context, drink, poured, group);
    }

    /// <summary>The slip of one amount that brings the drink back.</summary>
    private static Slip? SlipOf(Part part, RecipeContext context, Drink drink, PouredDrink poured, DrinkGroup group)
    {
        double now = part.Line.Amount.Value.Base;
        return Slips.Find(part.Line.Amount.Value, context.Settings.Measures, Fits);

        bool Fits(double then) => IsPour(part, then, drink) && poured.Holds(group, p => ReferenceEquals(p, part) ? then / now : 1);
    }

    /// <summary>Whether a batch is made in its ratios: then both change, or none.</summary>
    internal static bool IsBatched(RecipeContext context, Drink drink) => context.Book.IsBatched(drink.Id);

    /// <summary>Whether so many millilitres are a pour of one part.</summary>
    private static bool IsPour(Part part, double millilitres, Drink drink)
    {
        double each = millilitres / drink.ServesOrOne;
        if (TenfoldPour.LimitOf(part.Material!) is not { } most) return each <= Usual.Value;
        return each <= most.Value && each >= most.Value * TenfoldPour.LeastPour.Value / 100;
    }

    private static bool IsAtMost(Part part, double millilitres, Drink drink) =>
        millilitres / drink.ServesOrOne <= (TenfoldPour.LimitOf(part.Material!) ?? Usual).Value;

    private static Explanation Exchange(RecipeContext context, Drink drink, PouredDrink poured, DrinkGroup group)
    {
        (Line A, Line B)? only = null;
        for (int i = 0; i < poured.Parts.Count; i++)
        {
            for (int j = i + 1; j < poured.Parts.Count; j++)
            {
                Part a = poured.Parts[i], b = poured.Parts[j];
                if (!IsPoured(a) || !IsPoured(b)) continue;
                double first = a.Line.Amount.Value.Base, second = b.Line.Amount.Value.Base, ratio = second / first;
                if (first == second || !IsAtMost(a, second, drink) || !IsAtMost(b, first, drink)) continue;
                if (!poured.Holds(group, p => ReferenceEquals(p, a) ? ratio : ReferenceEquals(p, b) ? 1 / ratio : 1)) continue;
                if (only is not null) return Undecided;
                only = (a.Line, b.Line);
            }
        }

        if (only is not var (x, y)) return new("", [], false);
        string words = $"{Written.Text(context, y.Amount.Span)} of {x.Item.Or("it")} and "
            + $"{Written.Text(context, x.Amount.Span)} of {y.Item.Or("it")}";
        return new(
            $"Write {words}, if the two amounts were exchanged: it is then like them in all of this.",
            Correction.Propose($"Write {words}.", Written.Exchange(context, x, y)),
            true);
    }

    private static bool IsPoured(Part part) =>
        part.Line.Amount is { IsGiven: true, Value: { Dimension: Dimension.Volume } amount }
        && part.Material is { State: MaterialState.Liquid }
        && Written.IsPoured(amount.Unit);
}
