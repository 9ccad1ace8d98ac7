using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Rules.Keeping;

namespace SpecLint.Rules.Hazards;

[Rule("SL6027", "lot-in-lead", "A lot stands in something that may hold lead", Level.Warning, Safety = true)]
[Limit("lead-crystal-hours", "Crystal")]
[Limit("pewter-lead", "Pewter")]
[Limit("lead-leach-mug", "Glaze")]
internal sealed partial class LotInLead : LotRule
{
    protected override void Check(FileContext context, Lot lot)
    {
        if (!lot.In.IsGiven || lot.In.Value.IsLined) return;
        var vessel = lot.In.Value;
        var (limit, says) = vessel.IsLeadCrystal
            ? (Crystal, $"lead crystal, which releases lead into spirit and wine. The limit is {Say.Number(Crystal.Value)} h")
            : vessel.IsPewter
            ? (Pewter, $"pewter. Pewter that touches a drink must hold at most {Say.Number(Pewter.Value)} % lead")
            : vessel.MayHaveLeadGlaze
            ? (Glaze, "pottery whose glaze may hold lead, and nothing says that it was tested. The limit for a mug or cup is "
                + $"{Say.Number(Glaze.Value)} mg/L")
            : (null, "");
        if (limit is null) return;
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(lot.In.Span, Lots.PathOf(lot, "in")),
            Key = Lots.KeyOf(lot),
            Message = $"The lot of `{lot.Item.Or("")}` stands in {says} ({limit.Source}).",
            Advice = "Keep it in plain glass and decant it for service, or write `lead-free` in the vessel's words once its maker says so.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of("vessel", vessel.Id), Proof.Of(limit)],
        });
    }
}
