using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7033", "packed-label-short", "A bottle filled for sale lacks what its label has to say", Level.Note,
    Needs = [Fact.Abv], IsConsequence = true)]
[Limit("declare-strength-eu")]
[Limit("declare-strength-ca")]
[Limit("declare-strength-anz")]
[Limit("standard-drinks-statement-anz")]
[Limit("alcoholic-beverage-us")]
internal sealed partial class PackedLabelShort : PrepRule
{
    /// <summary>What a law asks for from a strength on: the words that show it, or a declared property.</summary>
    private static readonly (LabelRule Law, Limit From, string[] Words, string Property)[] Duties =
    [
        (LabellingTable.Of("strength-declared"), Limits.Of("declare-strength-eu"), [], "abv"),
        (LabellingTable.Of("strength-declared-ca"), Limits.Of("declare-strength-ca"), [], "abv"),
        (LabellingTable.Of("strength-declared-anz"), Limits.Of("declare-strength-anz"), [], "abv"),
        (LabellingTable.Of("standard-drinks-statement"), Limits.Of("standard-drinks-statement-anz"), ["standard drink"], "alcohol"),
        (LabellingTable.Of("pregnancy-us"), Limits.Of("alcoholic-beverage-us"), ["government warning"], ""),
        (LabellingTable.Of("pregnancy-anz"), Limits.Of("declare-strength-anz"), ["pregnan"], ""),
    ];

    public override void Check(RecipeContext context, Prep prep)
    {
        // Without a stated country every law would ask at once; a batch of a drink is poured at the bar unless a menu sells it as it is.
        if (!prep.PortionCount.IsGiven
            || !context.Settings.JurisdictionIsStated
            || (prep.BatchOf.IsGiven && !Sold.IsOnMenu(context, prep)))
            return;
        var abv = context.Fact(Fact.Abv);
        if (!abv.IsKnown) return;
        foreach (var (law, from, words, property) in Duties)
        {
            if (!law.AppliesIn(context.Settings) || abv.Low <= from.Value || IsShown(prep, words, property)) continue;
            var (what, edit) = property switch
            {
                "abv" => ("its strength", Declares.Edit(prep, "abv", $"\"{Say.Number(abv.Value, 1)} % v/v\"")),
                "alcohol" => ("how many standard drinks it holds", null),
                _ => ($"\"{law.Text}\"", Additives.Say(prep, law.Text)),
            };
            context.Report(new(Rule)
            {
                Place = prep.Head,
                Path = property.Length > 0 ? $"declares.{property}" : "declares.advisory",
                Key = law.Id,
                Message = $"It is filled into {Say.Number(prep.PortionCount.Value, 0)} portions at {Say.Fact(Fact.Abv, abv)}, but the "
                    + $"label does not say {what} ({law.Source}).",
                Advice = property.Length > 0
                    ? $"Declare it under `declares.{property}` and print it."
                    : "Print it on every bottle, and put it under `declares.advisory`.",
                Evidence = [Proof.Of(Fact.Abv, abv), Proof.Of(from), Proof.Of("law", law.Source)],
                Corrections = Correction.Propose($"Say {what}.", edit),
            });
        }
    }

    private static bool IsShown(Prep prep, string[] words, string property) =>
        property switch
        {
            "abv" => prep.Declares is { Abv.IsGiven: true },
            "alcohol" => prep.Declares is { Alcohol.IsGiven: true } || Additives.IsSaid(prep, words),
            _ => Additives.IsSaid(prep, words),
        };
}
