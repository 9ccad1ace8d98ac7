using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9020", "jurisdiction-unstated", "The bar does not say whose law applies", Level.Note)]
internal sealed partial class JurisdictionUnstated : BookRule
{
    public override void Check(BookContext context)
    {
        if (context.Settings.JurisdictionIsStated || context.Book.Files.Count == 0) return;
        var file = context.Settings.Bar ?? context.Book.Files[0];
        var edit = context.Settings.Bar is { } bar ? JsonEdits.AddProperty(bar, "", "jurisdictions", "[\"EU\"]") : null;
        context.Report(new(Rule)
        {
            At = new(file.Head, "jurisdictions"),
            Message = $"No country is stated, so the strictest limit of {Say.List(context.Settings.Jurisdictions)} applies everywhere, and "
                + "the allergens of every list have to be declared.",
            Advice = "State the bar's country in bar.json, e.g. `\"jurisdictions\": [\"IE\"]`.",
            Evidence = [Proof.Of("used", string.Join(" ", context.Settings.Jurisdictions))],
            Corrections = Correction.Propose("State the EU; replace it with the country.", edit),
        });
    }
}
