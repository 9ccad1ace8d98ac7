using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7040", "exemption-unknown-to-law", "An allergen is exempted in a way that the law of the place does not know", Level.Error,
    Safety = true)]
internal sealed partial class ExemptionUnknown : IngredientRule
{
    public override void Check(FileContext context, Ingredient ingredient)
    {
        if (ingredient.Allergens is not { Exempt.Count: > 0 } stated) return;
        var kind = (context.Profiles.MaterialOf(ingredient.Id)?.Ingredient ?? ingredient).IngredientKind.OrNone();
        foreach (var exemption in stated.Exempt)
        {
            // An exemption takes nothing away from a list that names the substance only from an amount on.
            string because = exemption.Because ?? "";
            var faults = exemption.In.Where(context.Settings.AppliesIn).Select(p => AllergenTable.Of(p, exemption.Allergen))
                .Where(static law => law is not null && double.IsNaN(law.Threshold))
                .Select(law => (Law: law!, Fault: FaultOf(ExemptionTable.Of(law!.Jurisdiction, exemption.Allergen), because, kind)))
                .Where(static f => f.Fault is not null).ToList();
            if (faults.Count == 0) continue;
            bool sure = faults.Exists(static f => f.Fault!.IsSure && f.Law.Mark != Mark.Memory);
            var (law, fault) = faults.Find(f => f.Fault!.IsSure == sure) is { Law: not null } first ? first : faults[0];
            context.Report(new(Rule)
            {
                Answer = sure ? Answer.Broken : Answer.NotShown,
                AskedLevel = sure ? null : Level.Warning,
                Place = context.At(stated.Span),
                Path = "allergens.exempt",
                Key = exemption.Allergen,
                Message = $"{ingredient.Name.Or(ingredient.Id)} exempts {exemption.Allergen}"
                    + $"{(because.Length > 0 ? $" as \"{because}\"" : "")} in "
                    + $"{AllergenWords.Places([.. faults.Select(static f => f.Law.Jurisdiction).Distinct()])}, where the law {fault!.Says} "
                    + $"({law.Source}).",
                Advice = $"Name `{exemption.Allergen}` under `contains`, or copy the list from the supplier's specification.",
                Caution = AllergenWords.Caution,
                Evidence = [Proof.Of("because", because, context.At(stated.Span)), Proof.Of("law", law.Source)],
            });
        }
    }

    private sealed record Fault(bool IsSure, string Says);

    /// <summary>What is wrong with a reason under a law that exempts some uses; <see langword="null"/> where it names one.</summary>
    private static Fault? FaultOf(IReadOnlyList<ExemptedUse> uses, string reason, ItemKind kind)
    {
        if (uses.Count == 0) return new(IsSure: true, "lists it without any exemption");
        var named = uses.Where(u => u.IsNamedIn(reason)).ToList();

        // A spirit may leave out the reason that its kind gives; whether what is called distilled was so, SL7038 asks.
        if (named.Count == 0 && kind.IsSpirit && uses.Any(static u => u.OfDistillates)) return null;
        if (named.Count == 0) return new(IsSure: false, $"exempts only {Say.List([.. uses.Select(static u => u.What).Distinct()])}");
        if (named.Exists(u => u.Kinds.Count == 0 || u.Kinds.Contains(kind))) return null;
        string only = Say.List([.. named.Select(static u => u.What)]);
        if (!kind.IsKnown || kind.IsUnspecified) return new(IsSure: false, $"exempts only {only}, and nothing says that this is one");
        return new(IsSure: !kind.GivesStrength, $"exempts only {only}, and this is of the kind `{kind.Id}`");
    }
}
