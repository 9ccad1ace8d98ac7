using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Amounts;
using SpecLint.Science;

namespace SpecLint.Rules.Labels;

[Rule("SL7034", "part-only-in-text", "A note adds something with an allergen or a hazard that no line lists", Level.Warning, Safety = true)]
internal sealed partial class PartOnlyInText : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var step in context.Recipe.Method)
        {
            if (step.Note.IsGiven) Read(context, step.Note, context.PathOf(step) + ".note");
            if (step.Until.IsGiven) Read(context, step.Until, context.PathOf(step) + ".until");
        }

        for (int i = 0; i < context.Recipe.Notes.Count; i++)
        {
            if (context.Recipe.Notes[i].IsGiven) Read(context, context.Recipe.Notes[i], context.Recipe.Notes.Count == 1 ? "notes" : $"notes[{i + 1}]");
        }

        foreach (var (text, path) in UnreadTexts.OfMethod(context.Recipe)) Read(context, text, path);

        foreach (var line in LinkedBook.LinesOf(context.Recipe))
        {
            if (line.Note.IsGiven) Read(context, line.Note, RecipeContext.PathOf(line, "note"));
        }
    }

    private static void Read(RecipeContext context, Given<string> text, string path)
    {
        List<string>? told = null, brought = null, had = null;
        var clause = default(Clause);
        foreach (var (from, to, at, spoken) in Places(text.Value))
        {
            clause = clause.Holds(from) ? clause : Clause.At(text.Value, from);
            if (Phrases.IsDenied(text.Value, from, to) || clause.RulesOut(from)) continue;
            string id;
            List<string> brings;
            if (AmountsInText.ItemNamed(context.Book, text.Value, at) is { } item)
            {
                if (item.File == context.Recipe || context.Profile.Parts.Any(p => p.Item?.Id == item.Id) || NamedFoods.IsNoFood(text.Value, at)) continue;
                id = item.Id;
                brings = BringsNew(context, item, spoken, had ??= Had(context));
            }
            else
            {
                // What is no item may be a poison all the same.
                clause = clause.Holds(at) ? clause : Clause.At(text.Value, at);
                if (clause.NamedIn(
                    text.Value,
                    at,
                    static h => h.IsPoison
                        || h.IsDeadly
                        || h.IsNotFood
                        || h.IsNamedInProse
                        || h.Kind is "process" or "botanical") is not { } named
                    || context.Profile.HazardLoads.Any(l => l.Hazard.Id == named.Hazard.Id))
                    continue;
                id = named.Hazard.Id;
                brings = [named.Hazard.Name];
            }

            if (brings.Count == 0 || told?.Contains(id) == true) continue;
            (told ??= []).Add(id);
            (brought ??= []).AddRange(brings);
            Report(context, text, path, id, brings);
        }

        foreach (var (id, tokens) in NamedFoods.In(text.Value, context.Book, context.Profiles))
        {
            if (told?.Contains(id) == true || IsSpiritOf(context, id, tokens)) continue;
            had ??= Had(context);
            var brings = tokens.Where(t => IsListed(context.Settings, t) && !had.Contains(t) && brought?.Contains(t) != true).ToList();
            if (brings.Count == 0) continue;
            (brought ??= []).AddRange(brings);
            (told ??= []).Add(id);
            Report(context, text, path, id, brings);
        }
    }

    private static void Report(RecipeContext context, Given<string> text, string path, string id, List<string> brings) => context.Report(new(Rule)
    {
        Answer = Answer.NotShown,
        At = context.At(text.Span, path),
        Key = id,
        Message = $"The text names `{id}`, which is not among the ingredients. It brings {Say.List(brings, "and")}, and nothing here "
            + $"counts it: not the allergens, the strength, the keeping or the hazards.",
        Advice = $"List `{id}` under `ingredients` or `garnish` with its amount, or take it out of the text.",
        Caution = AllergenWords.Caution,
        Evidence = [Proof.Of("text", text.Value, context.At(text.Span))],
    });

    /// <summary>The grains that a spirit is distilled from and called after.</summary>
    private static readonly HashSet<string> Grains = [.. AllergenTable.TokensOf("gluten")];

    /// <summary>Whether a grain is the first word of a spirit in the recipe: "the rye" of a drink with rye whiskey is no grain. A nut is one, whatever the spirit is called.</summary>
    private static bool IsSpiritOf(RecipeContext context, string food, IReadOnlyList<string> tokens) =>
        tokens.All(Grains.Contains) && context.Profile.Parts.Any(p => p.Material is { Kind.IsSpirit: true } && p.Item is { } item
            && item.Id.StartsWith(food + "-", StringComparison.Ordinal));

    /// <summary>Whether a law in force lists an allergen in whatever amount.</summary>
    private static bool IsListed(Settings settings, string token) =>
        settings.Jurisdictions.Any(j => AllergenTable.Of(j, token) is { } law && double.IsNaN(law.Threshold));

    /// <summary>The allergens that the recipe has, or may have, without the text.</summary>
    private static List<string> Had(RecipeContext context)
    {
        var allergens = context.Profile.Allergens;
        return [.. allergens.Contained(context.Settings), .. allergens.Possible(context.Settings)];
    }

    /// <summary>A clause of a text: what is asked of it is worked out once, however often it says "add".</summary>
    private struct Clause
    {
        private static readonly char[] Ends = ['.', ';', ':', '!', '?', ','];

        private int from;
        private int to;
        private int quietFrom;
        private int quietTo;

        private int ruledOutFrom;
        private int restoredFrom;

        /// <summary>Whether it rules out what it names at a place: "do not finish with cream", "in place of cream", but not "in place of cream add".</summary>
        public readonly bool RulesOut(int at) => ruledOutFrom <= at && restoredFrom > at;

        public static Clause At(string text, int at)
        {
            int from = at == 0 ? 0 : text.LastIndexOfAny(Ends, at - 1) + 1, end = text.IndexOfAny(Ends, at);
            int to = end < 0 ? text.Length : end;
            int ruledOut = Phrases.FirstEnd(text, from, to, TextWords.RulingOut);
            int restored = ruledOut < to ? Phrases.FirstEnd(text, ruledOut, to, TextWords.Restoring) : int.MaxValue;
            if (ruledOut < to && Phrases.FirstEnd(text, from, to, TextWords.Replacing) == ruledOut)
                restored = Math.Min(restored, Phrases.First(text, ruledOut, to, TextWords.Using, out _));
            return new Clause
            {
                from = from,
                to = to,
                ruledOutFrom = ruledOut,
                restoredFrom = restored,
            };
        }

        public readonly bool Holds(int at) => at >= from && at < to;

        /// <summary>The first hazard that is named from a place to the end of the clause, or to a bracket.</summary>
        public NamedHazard? NamedIn(string text, int at, Func<Hazard, bool> isSuch)
        {
            if ((at >= quietFrom && at < quietTo) || at >= to) return null;
            int bracket = text.IndexOf('(', at, to - at), end = bracket < 0 ? to : bracket;
            var named = HazardNames.InName(text, at, end, isSuch);
            if (named is null) (quietFrom, quietTo) = (at, end);
            return named;
        }
    }

    /// <summary>Where in a text something may be named as added: behind an amount, and behind a word of adding.</summary>
    private static IEnumerable<(int From, int To, int At, bool Spoken)> Places(string text)
    {
        for (int from = 0; AmountsInText.Next(text, from, out var spoken); from = spoken.End) yield return (spoken.Start, spoken.End, SkipFillers(text, spoken.End), true);
        for (int i = 0; i < text.Length; i++)
        {
            if (!char.IsLetter(text[i]) || (i > 0 && char.IsLetterOrDigit(text[i - 1]))) continue;
            foreach (string word in TextWords.AddingFrom(text[i]))
            {
                int end = i + word.Length;
                if (string.Compare(text, i, word, 0, word.Length, StringComparison.OrdinalIgnoreCase) != 0
                    || (end < text.Length && char.IsLetterOrDigit(text[end])))
                    continue;
                int at = SkipFillers(text, end);
                if (at < text.Length) yield return (i, end, at, false);
                break;
            }
        }
    }

    private static int SkipFillers(string text, int at)
    {
        while (true)
        {
            while (at < text.Length && text[at] == ' ') at++;
            int end = at;
            while (end < text.Length && (char.IsDigit(text[end]) || (end > at && text[end] is '/' or '.'))) end++;
            if (end > at)
            {
                at = end;
                continue;
            }

            while (end < text.Length && char.IsLetter(text[end])) end++;
            if (end == at || !TextWords.IsFiller(text.Substring(at, end - at))) return at;
            at = end;
        }
    }

    /// <summary>Allergens and hazards of an item that the recipe does not have without it; by an amount, a hazard is more of it.</summary>
    private static List<string> BringsNew(RecipeContext context, Item item, bool spoken, List<string> had)
    {
        var brings = new List<string>();
        var profile = context.Profile;
        var settings = context.Settings;
        IEnumerable<string> tokens = [];
        IEnumerable<Hazard> hazards = [];
        if (item.File is Recipe inner)
        {
            var other = context.Profiles.Of(inner);
            tokens = other.Allergens.Contained(settings).Concat(other.Allergens.Possible(settings));
            hazards = other.HazardTotals.Select(static l => l.Hazard);
        }
        else if (context.Profiles.MaterialOf(item.Id) is { Ingredient: { } ingredient } material)
        {
            tokens = ingredient.Allergens is { } statement ? AllergenProfile.TokensOf(statement, settings) : [];
            hazards = HazardLoad.HazardOf(item, material, context.Profiles) is { } hazard ? [hazard] : [];
        }

        foreach (string token in tokens)
        {
            if (!had.Contains(token) && !brings.Contains(token)) brings.Add(token);
        }

        foreach (var hazard in hazards)
        {
            if ((spoken || !profile.HazardLoads.Any(l => l.Hazard.Id == hazard.Id)) && !brings.Contains(hazard.Id)) brings.Add(hazard.Id);
        }

        // What is dissolved in it: a spirit in a note is in no figure of strength, nor coffee in one of caffeine.
        if (context.Profiles.MaterialOf(item.Id) is { } of)
        {
            if (of.Of(Component.Ethanol) > Guards.TextEthanol && (spoken || !(profile.Grams[(int)Component.Ethanol] > 0))) brings.Add("alcohol");
            if (of.MayHoldCaffeine && (spoken || !profile.Parts.Any(static p => p.Material is { MayHoldCaffeine: true }))) brings.Add("caffeine");
            if (of.Traces.Quinine.High > 0 && !profile.Parts.Any(static p => p.Material is { Traces.Quinine.High: > 0 })) brings.Add("quinine");
            if (of.Of(Component.Benzoic) + of.Of(Component.Sorbic) > 0
                && !(profile.Grams[(int)Component.Benzoic] + profile.Grams[(int)Component.Sorbic] > 0))
                brings.Add("a preservative");
            if (spoken && !of.Kind.IsFood && of.Of(Component.Acetic) + of.Of(Component.Malic) + of.Of(Component.Phosphoric) > 0) brings.Add("acid");
        }

        return brings;
    }
}
