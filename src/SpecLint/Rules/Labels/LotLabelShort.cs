using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

[Rule("SL7030", "lot-label-short", "The label of a prepared bottle cannot be filled in", Level.Warning)]
internal sealed partial class LotLabelShort : StockRule
{
    private static readonly LabelRule Law = LabellingTable.Of("container-label");

    public override void Check(FileContext context, Stock stock)
    {
        foreach (var lot in stock.Lots)
        {
            if (!lot.Item.IsGiven || context.Book.Resolve(lot.Item.Value) is not { ByProduct: null, File: Prep prep }) continue;

            // A lot without any date is a finding of its own.
            if (!lot.Made.IsGiven && !lot.Opened.IsGiven && !lot.UseBy.IsGiven) continue;
            var missing = new List<string>();
            bool halfDated = Keeping.LotHalfDated.Speaks(context, lot, prep);
            if (!lot.Made.IsGiven && !lot.Opened.IsGiven && !halfDated) missing.Add("the day it was made");
            if (!lot.UseBy.IsGiven && prep.Keep is not { For.IsGiven: true } && !halfDated) missing.Add("a use-by day");
            if (!lot.At.IsGiven && prep.Keep is not { At.IsGiven: true }) missing.Add("how it is stored");
            if (missing.Count == 0) continue;
            context.Report(new(Rule)
            {
                AskedLevel = Law.LevelCap,
                At = context.At(lot.Item.Span, $"lots[{lot.Item.Value}]"),
                Key = lot.LotCode.Or(lot.Number.ToString(System.Globalization.CultureInfo.InvariantCulture)),
                Message = $"The label of {prep.Name.Or(prep.Id)} needs its name, the day made, a use-by day, storage and allergens. "
                    + $"Neither this lot nor the recipe gives {Say.List(missing, "or")} ({Law.Source}).",
                Advice = "Give it in the lot, or under `keep` in the recipe.",
                Evidence = [Proof.Of("recipe", prep.Id, prep.Head)],
                Related = [new RelatedPlace(prep.Head, "the recipe")],
            });
        }
    }
}
