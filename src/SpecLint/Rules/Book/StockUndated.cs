using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Book;

[Rule("SL9016", "stock-undated", "A lot in stock has no date", Level.Warning, Safety = true)]
internal sealed partial class StockUndated : LotRule
{
    protected override void Check(FileContext context, Lot lot)
    {
        if (!lot.Item.IsGiven || lot.Made.IsGiven || lot.Opened.IsGiven || lot.UseBy.IsGiven) return;
        var file = context.Book.Resolve(lot.Item.Value)?.File;
        bool perishable = file is Prep
            || (file is Ingredient
                && context.Profiles.MaterialOf(lot.Item.Value) is { } material
                && (material.Ingredient is { KeepsCold: { IsGiven: true, Value: true } }
                    || Perishables.Of(material) != Perishable.None));
        if (!perishable) return;
        context.Report(new(Rule)
        {
            At = context.At(lot.Item.Span, $"lots[{lot.Item.Value}]"),
            Key = lot.LotCode.Or(lot.Number.ToString(System.Globalization.CultureInfo.InvariantCulture)),
            Message = $"The lot of `{lot.Item.Value}` has no day made, no day opened and no use-by day, so its age is not known (date "
                + "marking: Food Code 3-501.17).",
            Advice = "Write `made` or `opened` from the label. If the label has none, discard it.",
            Caution = "A lot without a date cannot be shown to be fit. Follow the local food code.",
            Evidence = [Proof.Of("lot", lot.LotCode.Or("no code"), context.At(lot.Span))],
        });
    }
}
