using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7039", "stated-allergen-unlisted", "What an ingredient states of itself proves an allergen that its list leaves out", Level.Error,
    Safety = true)]
internal sealed partial class StatedNotListed : IngredientRule
{
    /// <summary>Grams in the basis of 100 g or 100 mL to mg in the kilogram or litre, in which the laws count.</summary>
    private const double MgPerKg = 10_000;

    public override void Check(FileContext context, Ingredient ingredient)
    {
        var flat = context.Profiles.MaterialOf(ingredient.Id)?.Ingredient ?? ingredient;
        var list = flat.Allergens;
        bool says = list is { SaysWhatItContains: true };
        HashSet<string>? told = null;
        foreach (var proof in AllergenProofTable.All)
        {
            if (told?.Overlaps(proof.Tokens) == true || (list is not null && proof.Tokens.Any(t => Lists(list, t, ingredient, proof)))) continue;

            // Without a list the kind alone is asked about by SL7008.
            if (proof.Kind is not null && !says) continue;
            var laws = context.Settings.Jurisdictions.Select(j => AllergenTable.Of(j, proof.Tokens[0]));
            if (laws.FirstOrDefault(static l => l is not null) is not { } law) continue;
            if (Read(context, ingredient, flat, proof, law) is not { } read) continue;
            (told ??= []).UnionWith(proof.Tokens);
            bool may = list is not null && proof.Tokens.Any(list.MayContain.Contains);
            if (may && read.Answer == Answer.NotShown) continue;
            string token = proof.Tokens[0];
            context.Report(new(Rule)
            {
                Answer = read.Answer,
                AskedLevel = may || !says || read.Answer == Answer.NotShown || law.Mark == Mark.Memory ? Level.Warning : null,
                Place = context.At(read.Span),
                Path = "allergens",
                Key = token,
                Message = $"{ingredient.Name.Or(ingredient.Id)} {read.States}. "
                    + (may ? $"Its list of allergens names `{token}` only as what it may contain, "
                        : says ? $"Its list of allergens does not name `{token}`, " : $"No list of what it contains names `{token}`, ")
                    + $"so no recipe made with it is asked to declare it ({law.Source}).",
                Advice = $"Name `{token}` under `contains`, or correct what the file states. {read.Else}".TrimEnd(),
                Caution = AllergenWords.Caution,
                Evidence = read.Evidence,
                Related = ingredient.Allergens is { } own ? [context.See(own.Span, "its list of allergens")] : [],
            });
        }
    }

    /// <summary>
    /// Whether a list names an allergen, or an exemption answers for it. What is in the thing itself, lactose or sulphite, no exemption takes
    /// away: a distillate of whey has none.
    /// </summary>
    private static bool Lists(AllergenStatement list, string token, Ingredient ingredient, AllergenProof proof) =>
        list.Contains.Contains(token)
        || (!ingredient.Values.ContainsKey(proof.Content) && list.Exempt.Any(e => e.Allergen == token));

    private sealed record Reading(Answer Answer, TextSpan Span, string States, string Else, IReadOnlyList<Evidence> Evidence);

    /// <summary>What the file states by a proof, and how sure that is; <see langword="null"/> where it does not state it itself.</summary>
    private static Reading? Read(FileContext context, Ingredient ingredient, Ingredient flat, AllergenProof proof, AllergenCategory law)
    {
        if (ingredient.Values.TryGetValue(proof.Content, out var content))
        {
            if (content.Typical <= 0 || !law.Counts(content.Typical * MgPerKg)) return null;
            string unit = flat.PerHundredMillilitres.Or(false) ? "mg/L" : "mg/kg";
            string least = double.IsNaN(law.Threshold)
                ? ""
                : $", which the law lists {(law.ThresholdCounts ? "from" : "above")} {Say.Number(law.Threshold)} {unit}";
            bool sure = content.Low > 0 && law.Counts(content.Low * MgPerKg) && content.Mark != Mark.Memory;
            return new(
                sure ? Answer.Broken : Answer.NotShown, content.Span,
                $"holds {Say.Number(content.Typical * MgPerKg)} {unit} of {proof.What} by its own file{least}", "",
                [new(proof.Content, content.Typical * MgPerKg, content.Low * MgPerKg, content.High * MgPerKg, unit, content.Source)]);
        }

        var kind = flat.IngredientKind.OrNone();
        if (proof.Animal.Length > 0 && ingredient.Animal.IsGiven && ingredient.Animal.Value == proof.Animal)
        {
            // A fining of wine, and what went through a still, may leave nothing behind; that is for its maker to say.
            bool worked = kind is { GivesStrength: true, IsLiqueur: false, IsBitters: false };
            return new(
                worked ? Answer.NotShown : Answer.Broken, ingredient.Animal.Span, $"comes from {proof.What} by its own file",
                worked ? "Where the law exempts it, say so under `exempt`." : "",
                [Proof.Of("animal", proof.Animal, context.At(ingredient.Animal.Span))]);
        }

        if (proof.Kind is not { } of || !ingredient.IngredientKind.IsGiven || kind != of) return null;
        return context.Profiles.MaterialOf(ingredient.Id) is { TakesAfter.Count: > 0 }
            ? null
            : new(
                Answer.NotShown, ingredient.IngredientKind.Span, $"is of the kind `{of.Id}`, which is made from {proof.What}",
                "If it is made from something else, write that kind, or accept this with the supplier's specification.",
                [Proof.Of("kind", of.Id, context.At(ingredient.IngredientKind.Span))]);
    }
}
