using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Amounts;

namespace SpecLint.Rules.Balance;

[Rule("SL3026", "unlike-published-drinks", "Amounts that no published drink of its make-up comes near", Level.Warning, IsConsequence = true)]
[Limit("amount-bitters-per-serve", "Usual")]
[Limit("group-far", "FarFrom")]
[Limit("group-sweetens", "Sweetens")]
internal sealed partial class UnlikePublished : DrinkRule
{
    /// <summary>What a slip explains.</summary>
    private sealed record Explanation(string Advice, Correction? Correction, bool Explains);

    /// <summary>What rounding hides at the end of a band.</summary>
    private const double Edge = 0.01;

    /// <summary>The place of the sugar for each g of acid among the facts of a drink.</summary>
    private const int SugarPerAcid = 5;

    private static readonly string[] Nouns = ["strength", "sugar", "acid", "sugar for each g of alcohol", "acid for each g of alcohol", "sugar for each g of acid"];
    private static readonly string[] Units = ["% vol", "g/100 mL", "g/100 mL", "g", "g", "g"];
    private static readonly string[] UnitIds = ["%{vol}", "g/dL", "g/dL", "g/g", "g/g", "g/g"];

    public override void Check(RecipeContext context, Drink drink)
    {
        if (Find(context, drink) is not { } found) return;
        var slip = found.Slip;
        if (slip.Correction is not null && IsBatched(context, drink)) slip = slip with { Correction = null };
        context.Report(new(Rule)
        {
            // More lemon or syrup than alcohol is more than an edge.
            AskedLevel = found.BeyondAll || BalanceOverSpirit.IsOverAll(context, drink) ? null : Level.Note,
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = $"As poured, its {Say.List(found.Words)}, {(found.BeyondAll ? $"beyond all {Say.Number(found.Group.Count, 0)} published {found.Group.Name}" : $"far from what 96 in 100 of {Say.Number(found.Group.Count, 0)} published {found.Group.Name} have")} ({found.Group.Source}).",
            Advice = slip.Advice.Length > 0 ? slip.Advice : "Look for an amount that slipped, or for two that were exchanged. If it is meant, name its style.",
            Evidence = found.Proofs,
            Corrections = slip.Correction is null ? [] : [slip.Correction],
        });
    }

    /// <summary>Whether this rule speaks of a drink.</summary>
    public static bool Speaks(RecipeContext context, Drink drink) => Find(context, drink) is not null;

    /// <summary>What lies outside the published drinks of its group.</summary>
    private sealed record Outlier(DrinkGroup Group, List<string> Words, List<Evidence> Proofs, bool BeyondAll, Explanation Slip);

    private static Outlier? Find(RecipeContext context, Drink drink)
    {
        // A style has bands of its own.
        if (drink.KnownStyle is not null || PouredDrink.Of(context.Profile) is not { } poured || DrinkGroupTable.Find(poured.Group) is not { } group) return null;

        // A part beyond all bounds, and how much acid is weighed in, are findings of their own.
        foreach (var part in poured.Parts)
        {
            if (Substances.IsAcid(part.Material) || (TenfoldPour.LimitOf(part.Material!) is { } most && part.Millilitres / drink.ServesOrOne > most.Value)) return null;
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
            if (bands[i] is not { } band || double.IsNaN(value) || (value >= band.Low / (1 + room) && value <= band.High * (1 + room))) continue;
            double limit = value > band.High ? band.High : band.Low;

            // What nobody can see in the figures is no difference.
            if (Say.Number(value) == Say.Number(limit)) continue;
            words.Add($"{Nouns[i]} comes to {Say.With(value, Units[i])}, {(value > band.High ? "above" : "below")} {Say.With(limit, Units[i])}");
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
        var measures = context.Settings.Measures;
        for (int rank = 0; rank <= 1; rank++)
        {
            (Part Part, Slip Slip)? only = null;
            int found = 0;
            foreach (var part in poured.Parts)
            {
                if (!part.Line.Amount.IsGiven || !Written.IsPoured(part.Line.Amount.Value.Unit)) continue;
                double now = part.Line.Amount.Value.Base;
                if (Slips.Find(part.Line.Amount.Value, measures, b => IsPour(part, b, drink) && poured.Holds(group, p => ReferenceEquals(p, part) ? b / now : 1)) is not { } slip || slip.Rank != rank) continue;
                only = (part, slip);
                found++;
            }

            if (found > 1) return new("", null, true);
            if (only is not { } one) continue;
            string text = $"Write {one.Slip.Text} of {one.Part.Line.Item.Or("it")}";
            return new($"{text}, if {(rank == 0 ? "the unit slipped" : "a digit slipped")}: it is then like them in all of this.", new Correction(CorrectionGrade.Proposed, text + ".", [new TextEdit(context.At(one.Part.Line.Amount.Span), $"\"{one.Slip.Text}\"")]), true);
        }

        // A line that was left out is a slip too.
        if (group.Usual[SugarPerAcid] is { } balance && poured.Facts[SugarPerAcid] < balance.Low && poured.Parts.All(static p => 100 * Solving.SugarOf(p.Material!.PerGram) < Sweetens.Value))
            return new("Nothing in it sweetens. Add the syrup, cordial or liqueur if one was left out; if it is meant, name its style.", null, true);
        return Exchange(context, drink, poured, group);
    }

    /// <summary>Whether a batch is made in its ratios: then both change, or none.</summary>
    internal static bool IsBatched(RecipeContext context, Drink drink) => context.Book.IsBatched(drink.Id);

    /// <summary>Whether so many millilitres are a pour of one part.</summary>
    private static bool IsPour(Part part, double millilitres, Drink drink) =>
        TenfoldPour.LimitOf(part.Material!) is { } most ? millilitres / drink.ServesOrOne <= most.Value && millilitres / drink.ServesOrOne >= most.Value * TenfoldPour.LeastPour.Value / 100 : millilitres / drink.ServesOrOne <= Usual.Value;

    private static bool IsAtMost(Part part, double millilitres, Drink drink) =>
        millilitres / drink.ServesOrOne <= (TenfoldPour.LimitOf(part.Material!) ?? Usual).Value;

    private static Explanation Exchange(RecipeContext context, Drink drink, PouredDrink poured, DrinkGroup group)
    {
        (Part A, Part B)? only = null;
        for (int i = 0; i < poured.Parts.Count; i++)
        {
            for (int j = i + 1; j < poured.Parts.Count; j++)
            {
                Part a = poured.Parts[i], b = poured.Parts[j];
                if (!a.Line.Amount.IsGiven || !b.Line.Amount.IsGiven) continue;
                Quantity first = a.Line.Amount.Value, second = b.Line.Amount.Value;
                if (first.Dimension != Dimension.Volume || second.Dimension != Dimension.Volume || first.Base == second.Base || a.Material!.State != MaterialState.Liquid || b.Material!.State != MaterialState.Liquid) continue;
                if (!Written.IsPoured(first.Unit) || !Written.IsPoured(second.Unit) || !IsAtMost(a, second.Base, drink) || !IsAtMost(b, first.Base, drink)) continue;
                double ratio = second.Base / first.Base;
                if (!poured.Holds(group, p => ReferenceEquals(p, a) ? ratio : ReferenceEquals(p, b) ? 1 / ratio : 1)) continue;
                if (only is not null) return new("", null, true);
                only = (a, b);
            }
        }

        if (only is not { } pair) return new("", null, false);
        var (x, y) = (pair.A.Line, pair.B.Line);
        string textX = context.File.Source.TextOf(x.Amount.Span), textY = context.File.Source.TextOf(y.Amount.Span);
        string words = $"{textY.Trim('"')} of {x.Item.Or("it")} and {textX.Trim('"')} of {y.Item.Or("it")}";
        return new($"Write {words}, if the two amounts were exchanged: it is then like them in all of this.", new Correction(CorrectionGrade.Proposed, $"Write {words}.", [new TextEdit(context.At(x.Amount.Span), textY), new TextEdit(context.At(y.Amount.Span), textX)]), true);
    }
}
