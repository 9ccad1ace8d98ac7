using System.Globalization;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Amounts;

[Rule("SL2036", "implausible-serves", "Amounts that cannot make so many serves", Level.Error, IsCause = true)]
[Limit("amount-card-least", "Least")]
[Limit("amount-card-most", "Most")]
[Limit("amount-ounce-quarter", "Quarter")]
internal sealed partial class ImplausibleServes : DrinkRule
{
    private static readonly PlausibleRange Any = PlausibleTable.Of("serve-volume");
    private static readonly PlausibleRange Chilled = PlausibleTable.Of("serve-volume-chilled");
    private static readonly PlausibleRange Topped = PlausibleTable.Of("serve-volume-topped");

    public override void Check(RecipeContext context, Drink drink)
    {
        double all = 0;
        bool topped = false, unweighed = false, batched = false;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            unweighed |= !part.IsWeighed;
            topped |= part.Phase == PartPhase.Top && part.Material is { Kind.Lengthens: true };
            batched |= part.Item?.File is Prep prep && prep.Family.OrNone().IsReadyDrink;
            if (part.Material is { State: MaterialState.Liquid } && !double.IsNaN(part.Millilitres)) all += part.Millilitres;
        }

        if (all <= 0) return;
        double each = all / drink.ServesOrOne;
        var range = topped ? Topped : context.Profile.Technique == TechniqueKind.NoIce ? Any : Chilled;
        bool over = each > range.High;
        if (each < range.Low && drink.ServesOrOne <= 1 && Card(context, drink, all, range)) return;

        // What is not weighed can only add to it; a drink of one serve that is small is an amount too small, not a count too large.
        if (over ? batched : (unweighed || each >= range.Low || drink.ServesOrOne <= 1)) return;
        int fits = over ? 0 : (int)Math.Max(1, Math.Round(drink.ServesOrOne / PowerOf(drink.ServesOrOne)));
        bool right = !over && range.Holds(all / fits);
        var span = drink.Serves.IsGiven ? drink.Serves.Span : drink.IngredientsSpan;
        string serves = Say.Number(drink.ServesOrOne, 1);
        double limit = over ? range.High : range.Low;
        context.Report(new(Rule)
        {
            AskedLevel = over ? Level.Warning : null,
            At = context.At(span, drink.Serves.IsGiven ? "serves" : "ingredients"),
            Message = $"The amounts come to {Say.With(all, "mL")}. For {serves} {(drink.ServesOrOne == 1 ? "serve" : "serves")} that is "
                + $"{Say.With(each, "mL")} each, {(over ? "above the largest" : "below the smallest")} usual serve of "
                + $"{Say.With(limit, "mL")} ({range.Condition}; {range.Source}).",
            Advice = over ? "Say in `serves` how many drinks the amounts make, or correct the amounts."
                : right ? $"Write {fits}, or the amounts of {serves} drinks."
                : $"Write the amounts of {serves} drinks, or correct `serves`.",
            Evidence =
            [
                Proof.Of("liquid", all, "mL"), Proof.Of("each", each, "mL"),
                Proof.Of(over ? "plausible most" : "plausible least", limit, "mL", range.Source),
            ],
            Corrections = Correction.Propose(
                $"Write {fits}.",
                right && drink.Serves.IsGiven ? new TextEdit(context.At(span), fits.ToString(CultureInfo.InvariantCulture)) : null),
        });
    }

    /// <summary>A whole card in ounces under the unit millilitres: too little for any drink as written, one drink as ounces.</summary>
    private static bool Card(RecipeContext context, Drink drink, double all, PlausibleRange range)
    {
        var edits = new List<TextEdit>();
        bool known = context.Settings.Measures.TryFind("oz".AsSpan(), out var word) && word.Unit is not null;
        double meant = 0, ounce = known ? word.Unit!.Factor : double.NaN;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || part.Material is not { State: MaterialState.Liquid } || !part.Line.Amount.IsGiven)
                continue;
            var amount = part.Line.Amount.Value;
            if (amount.Unit.Name != "ml" || amount.Low < amount.High || !Written.IsMultiple(amount.Value, Quarter.Value)) continue;
            meant += amount.Value * ounce;
            if (TenfoldPour.LimitOf(part.Material) is { } most && amount.Value * ounce > most.Value) return false;
            edits.Add(context.Rewrite(part.Line.Amount.Span, $"{Say.Number(amount.Value, 2)} oz"));
        }

        if (edits.Count < 2 || !(meant >= Least.Value && meant <= Most.Value)) return false;
        context.Report(new(Rule)
        {
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = $"The amounts come to {Say.With(all, "mL")}, below the smallest usual serve of {Say.With(range.Low, "mL")} "
                + $"({range.Condition}; {range.Source}). As ounces they come to {Say.With(meant, "mL")}.",
            Advice = "Write `oz` if the card is in ounces.",
            Evidence =
            [
                Proof.Of("liquid", all, "mL"), Proof.Of("as ounces", meant, "mL"),
                Proof.Of("plausible least", range.Low, "mL", range.Source),
            ],
            Corrections = Correction.Propose($"Write oz for ml in {Say.Number(edits.Count, 0)} lines.", edits),
        });
        return true;
    }

    /// <summary>The power of ten by which a count is likely off: 10 and 20 by ten, 100 by a hundred; 4 by itself.</summary>
    private static double PowerOf(double serves) => serves >= 10 ? Math.Pow(10, Math.Floor(Math.Log10(serves))) : serves;
}
