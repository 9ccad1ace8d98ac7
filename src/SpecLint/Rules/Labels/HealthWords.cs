using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule("SL7018", "health-words-with-alcohol", "The menu makes a health claim for a drink with alcohol", Level.Error, Needs = [Fact.Abv])]
[Limit("claims-strength")]
[Limit("claims-strength-anz")]
[Limit("alcoholic-beverage-us")]
internal sealed partial class HealthWords : MenuRule
{
    private static readonly LabelRule European = LabellingTable.Of("health-claim");

    private static readonly (LabelRule Law, Limit Strength)[] Laws =
    [
        (European, Limits.Of("claims-strength")),
        (LabellingTable.Of("health-claim-anz"), Limits.Of("claims-strength-anz")),
        (LabellingTable.Of("health-claim-us"), Limits.Of("alcoholic-beverage-us")),
    ];

    private static readonly LabelRule Register = LabellingTable.Of("health-claim-register");

    public override void Check(FileContext context, Menu menu)
    {
        foreach (var entry in menu.Drinks)
        {
            if (!entry.Drink.IsGiven) continue;
            Look(context, entry, entry.Words, "words");
            Look(context, entry, entry.Name, "name");
            foreach (var claim in entry.Claims) Look(context, entry, claim, $"claims[{claim.Or("")}]");
        }
    }

    private static void Look(FileContext context, MenuEntry entry, Given<string> text, string path)
    {
        if (!text.IsGiven) return;
        foreach (var (law, limit) in Laws)
        {
            if (!law.AppliesIn(context.Settings) || WordSearch.First(text.Value, law.Words) is not { } word) continue;
            if (context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) return;
            var abv = context.Profiles.Of(recipe).Get(Fact.Abv);
            bool strong = abv.IsKnown && Findings.Check.AtMost(abv, limit.Value) == Stand.Broken;

            // Without alcohol such words may be said, in the wording and on the conditions of a register that nothing here is held against.
            if (!strong && law != European) continue;
            var spoken = Proof.Of("word", word, context.At(text.Span));
            context.Report(new(Rule)
            {
                Answer = strong ? Answer.Broken : Answer.NotShown,
                AskedLevel = strong ? law.LevelCap : Level.Note,
                At = context.At(text.Span, $"drinks[{entry.Drink.Value}].{path}"),
                Message = strong
                    ? $"\"{word}\" is a health or nutrition claim, and {recipe.Name.Or(recipe.Id)} comes to "
                        + $"{Say.Fact(Fact.Abv, abv)}. Above {Say.Number(limit.Value)} % vol such words are not allowed ({law.Source})."
                    : $"\"{word}\" is a health or nutrition claim. Only those of the register may be made, in its words and on "
                        + $"its conditions, and nothing shows that this is one ({Register.Source}).",
                Advice = $"Take \"{word}\" out" + (strong ? "." : ", or look the claim up and meet its conditions."),
                Evidence = strong ? [Proof.Of(Fact.Abv, abv), Proof.Of(limit), spoken] : [spoken],
                Related = [new RelatedPlace(recipe.Head, "the drink")],
            });
            return;
        }
    }
}
