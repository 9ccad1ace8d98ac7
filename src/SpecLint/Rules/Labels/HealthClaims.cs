using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

/// <summary>Holds words that promise health or nutrition against the strength of the drink that they are about.</summary>
internal static class HealthClaims
{
    private static readonly LabelRule European = LabellingTable.Of("health-claim");

    private static readonly (LabelRule Law, Limit Strength)[] Laws =
    [
        (European, Limits.Of("claims-strength")),
        (LabellingTable.Of("health-claim-anz"), Limits.Of("claims-strength-anz")),
        (LabellingTable.Of("health-claim-us"), Limits.Of("alcoholic-beverage-us")),
    ];

    private static readonly (LabelRule Law, Limit Strength)[] OfNotes =
        [(LabellingTable.Of("health-claim-notes"), Limits.Of("claims-strength"))];

    private static readonly WordFilter Beginnings = WordFilter.OfFirstWords(Laws.Concat(OfNotes).SelectMany(static l => l.Law.Words));

    private static readonly LabelRule Register = LabellingTable.Of("health-claim-register");

    /// <summary>Reports a claim of health in a text about a recipe.</summary>
    /// <param name="context">What is checked.</param>
    /// <param name="rule">The rule that reports it.</param>
    /// <param name="recipe">What the text is about.</param>
    /// <param name="text">The text.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="isNote">Whether the staff read it and answer by it, so that only what is told as a fact counts.</param>
    public static void Judge(FileContext context, RuleInfo rule, Recipe recipe, Given<string> text, string path, bool isNote = false)
    {
        if (!text.IsGiven || (!Beginnings.MayHold(text.Value) && text.Value.IndexOf('-') < 0)) return;
        foreach (var (law, limit) in isNote ? OfNotes : Laws)
        {
            if (!law.AppliesIn(context.Settings) || Word(text.Value, law, isNote) is not { } word) continue;
            var abv = context.Profiles.Of(recipe).Get(Fact.Abv);
            var stand = Check.AtMost(abv, limit.Value);
            var related = recipe == context.File ? [] : new[] { new RelatedPlace(recipe.Head, "the drink") };
            if (stand != Stand.Broken)
            {
                // Without alcohol they may be said, in the wording and on the conditions of a register that nothing here is held against.
                if (law != European && !(isNote && stand == Stand.NotShown)) continue;
                context.Report(new(rule)
                {
                    Answer = Answer.NotShown,
                    AskedLevel = stand == Stand.Holds ? Level.Note : Level.Warning,
                    At = context.At(text.Span, path),
                    Message = stand == Stand.Holds
                        ? $"\"{word}\" is a health or nutrition claim. Only those of the register may be made, in its words and on "
                            + $"its conditions, and nothing shows that this is one ({Register.Source})."
                        : $"\"{word}\" is a health or nutrition claim. Above {Say.Number(limit.Value)} % vol such words are not allowed, "
                            + $"and {recipe.Name.Or(recipe.Id)} "
                            + $"{(abv.IsKnown ? $"may be above that: {Say.Fact(Fact.Abv, abv)}" : "has no known strength")} "
                            + $"({law.Source}).",
                    Advice = $"Take \"{word}\" out, or look the claim up and meet its conditions.",
                    Evidence = [Proof.Of("word", word, context.At(text.Span))],
                    Related = related,
                });
                return;
            }

            context.Report(new(rule)
            {
                AskedLevel = law.LevelCap,
                At = context.At(text.Span, path),
                Message = $"\"{word}\" is a health or nutrition claim, and {recipe.Name.Or(recipe.Id)} comes to "
                    + $"{Say.Fact(Fact.Abv, abv)}. Above {Say.Number(limit.Value)} % vol such words are not allowed ({law.Source}).",
                Advice = $"Take \"{word}\" out.",
                Evidence = [Proof.Of(Fact.Abv, abv), Proof.Of(limit), Proof.Of("word", word, context.At(text.Span))],
                Related = related,
            });
            return;
        }
    }

    /// <summary>The first of a law's words in a text; of a note one that is not denied ("never say that it aids digestion").</summary>
    private static string? Word(string text, LabelRule law, bool isNote)
    {
        foreach (string word in law.Words)
        {
            if (WordSearch.Find(text, word) is not (>= 0 and var at)) continue;
            if (!isNote || !(MenuWords.IsDenied(text, at) || Phrases.IsDenied(text, at, at + word.Length))) return word;
        }

        return null;
    }
}
