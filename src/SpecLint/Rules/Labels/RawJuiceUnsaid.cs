using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>SL7027: untreated juice packed for sale without the warning that US law words.</summary>
internal sealed class RawJuiceUnsaid : PrepRule
{
    private static readonly LabelRule Law = LabellingTable.Of("juice-warning");

    private static readonly RuleInfo Rule = new("SL7027", "raw-juice-unsaid", "Untreated juice is packed for sale without its warning", Level.Error) { Safety = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        // Bottled in portions is bottled to be sold; juice for the bar's own drinks is not packed in the sense of the law.
        if (!Law.AppliesIn(context.Settings) || !prep.PortionCount.IsGiven || prep.Family.Or("") is not ("juice" or "acid-adjusted-juice")) return;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Cooks || step.Verb.KillsGerms) return;
        }

        foreach (var text in prep.Declares?.Advisory ?? [])
        {
            if (text.IsGiven && text.Value.IndexOf("pasteuri", StringComparison.OrdinalIgnoreCase) >= 0) return;
        }

        string json = $"[\"{Law.Text}\"]";
        var edit = prep.Declares is null
            ? JsonEdits.AddProperty(prep, "", "declares", $"{{ \"advisory\": {json} }}")
            : prep.Declares.Advisory.Count == 0 ? JsonEdits.AddProperty(prep, "declares", "advisory", json) : null;
        context.Report(new Finding(Rule)
        {
            AskedLevel = Law.LevelCap,
            Place = prep.Head,
            Subject = context.Id,
            Path = "declares.advisory",
            Message = $"It is juice bottled in {Say.Number(prep.PortionCount.Value, 0)} portions, with no step that treats it, and it does not bear the warning of the law ({Law.Source}).",
            Advice = "Put the warning on every bottle, to the letter, or treat the juice to a 5 log reduction under a HACCP plan.",
            Caution = "Untreated juice has killed: follow the local food code, and do not serve it to those whom it names.",
            Evidence = [Proof.Of("text", Law.Text), Proof.Of("law", Law.Source)],
            Corrections = edit is null ? [] : [new Correction(CorrectionGrade.Proposed, "Add the warning.", [edit])],
        });
    }
}
