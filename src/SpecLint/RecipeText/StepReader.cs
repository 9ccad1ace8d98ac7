using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.RecipeText;

/// <summary>
/// Reads sentences of a method: <c>Shake with ice for 12 s, fine strain into a coupe</c>. Of each clause it takes the verb, the ice,
/// times, temperatures, the end point, the glass and the items; what it does not understand stays as a remark in its own words.
/// </summary>
/// <param name="measures">The units.</param>
/// <param name="glasses">Ids of the bar's own glasses.</param>
internal sealed class StepReader(Measures measures, IReadOnlyCollection<string> glasses)
{
    private const int MostWordsOfGlass = 4;
    private const int MostWordsOfQuantity = 3;

    /// <summary>Words that may stand before the verb of a clause.</summary>
    private static readonly string[] Openers = ["then", "now", "next", "and"];

    /// <summary>Words that say nothing more than the step itself.</summary>
    private static readonly HashSet<string> Plain = new(StringComparer.OrdinalIgnoreCase)
    {
        "a", "an", "the", "all", "with", "of", "in", "into", "over", "on", "and", "for", "about", "well",
        "ingredients", "everything", "it", "them", "up", "to", "at", "glass", "chilled", "cold",
        "together", "plenty", "fresh", "from", "filled", "full",
    };

    private static readonly string[] IceOpeners = ["with", "over", "on", "in", "without", "no"];

    /// <summary>A reader for a book.</summary>
    /// <param name="book">The book; <see langword="null"/> for the built-in words alone.</param>
    public static StepReader For(LinkedBook? book) =>
        new(book is null ? Measures.Default : Measures.For(book.Settings.Bar?.Measures), book?.Settings.Bar is { } bar ? [.. bar.Glasses.Keys] : []);

    /// <summary>The steps of a sentence; empty where it has no verb of the trade and names no glass.</summary>
    /// <param name="sentence">The sentence.</param>
    /// <param name="lines">Lines of the recipe, for the items that a step names.</param>
    public IReadOnlyList<WrittenStep> Read(string sentence, IEnumerable<WrittenLine> lines)
    {
        var items = lines.Where(l => l.Kind == WrittenLineKind.Ingredient && l.ItemId.Length > 0).ToList();
        var steps = new List<WrittenStep>();
        foreach (string clause in Clauses(sentence))
        {
            string[] words = clause.Split([' '], StringSplitOptions.RemoveEmptyEntries);
            if (VerbOf(words, out int used) is not { } verb) continue;
            steps.Add(ReadClause(verb, clause, words, used, items));
            if (words.Take(used).Any(w => Bare(w) == "ice") && steps[steps.Count - 1] is { Ice: "" } plain)
                steps[steps.Count - 1] = plain with { Ice = "cubed" };
        }

        return steps;
    }

    /// <summary>The glass of a name: one of the bar's own, else a built-in type; empty where there is none.</summary>
    /// <param name="name">The name, as people say it.</param>
    public string GlassOf(string name)
    {
        string slug = Slugs.Of(name);
        return OneGlass(slug) is { Length: > 0 } one ? one
            : slug.EndsWith("-glasses", StringComparison.Ordinal) ? OneGlass(slug.Substring(0, slug.Length - "-glasses".Length))
            : slug.EndsWith("s", StringComparison.Ordinal) ? OneGlass(slug.Substring(0, slug.Length - 1))
            : "";
    }

    private string OneGlass(string slug)
    {
        string bare = slug.EndsWith("-glass", StringComparison.Ordinal) ? slug.Substring(0, slug.Length - "-glass".Length) : slug;
        foreach (string own in glasses)
        {
            if (own == slug || own == bare) return own;
        }

        return GlassTable.Find(slug.Replace('-', ' '))?.Id ?? GlassTable.Find(slug)?.Id ?? GlassTable.Find(bare)?.Id ?? "";
    }

    /// <summary>A quantity that begins at a word: the most words that are one.</summary>
    /// <param name="words">The words.</param>
    /// <param name="at">Where it begins.</param>
    /// <param name="quantity">The quantity.</param>
    /// <param name="used">How many words it takes.</param>
    internal bool TryQuantity(string[] words, int at, out Quantity quantity, out int used)
    {
        for (used = Math.Min(MostWordsOfQuantity, words.Length - at); used > 0; used--)
        {
            if (StartsNumber(words[at])
                && QuantityReader.TryRead(string.Join(" ", words, at, used).TrimEnd('.', ','), measures, out quantity, out _))
                return true;
        }

        quantity = default;
        return false;
    }

    private static bool StartsNumber(string word) =>
        char.IsDigit(word[0])
            || word[0] is '-' or '−' && word.Length > 1 && char.IsDigit(word[1])
            || char.GetNumericValue(word[0]) is > 0 and < 1;

    /// <summary>Clauses, each with its verb first: what has none belongs to the one before.</summary>
    private static List<string> Clauses(string sentence)
    {
        var clauses = new List<string>();
        foreach (string part in Cut(sentence))
        {
            string[] words = part.Split([' '], StringSplitOptions.RemoveEmptyEntries);
            if (words.Length == 0) continue;
            if (clauses.Count > 0 && VerbOf(words, out _) is null) clauses[clauses.Count - 1] += " " + part.Trim();
            else clauses.Add(part.Trim());
        }

        return clauses;
    }

    private static IEnumerable<string> Cut(string sentence)
    {
        string text = sentence.Replace('\t', ' ').Replace('\u00A0', ' ');
        int start = 0;
        for (int i = 0; i < text.Length; i++)
        {
            int length = text[i] is ';' or ',' ? 1
                : text[i] == '.' && (i + 1 == text.Length || text[i + 1] == ' ') ? 1
                : Joins(text, i, " and ") ? 5
                : Joins(text, i, " then ") ? 6
                : Joins(text, i, " & ") ? 3
                : 0;
            if (length == 0) continue;
            yield return text.Substring(start, i - start);
            start = i + length;
            i = start - 1;
        }

        yield return text.Substring(start);
    }

    private static bool Joins(string text, int at, string joint) =>
        string.Compare(text, at, joint, 0, joint.Length, StringComparison.OrdinalIgnoreCase) == 0;

    private static Verb? VerbOf(string[] words, out int used)
    {
        int at = 0;
        while (at < words.Length && (IsNumbering(words[at]) || IsOpener(Bare(words[at])))) at++;
        used = at + 2;
        if (at + 1 < words.Length && VerbTable.Find(Bare(words[at]) + "-" + Bare(words[at + 1])) is { } both) return both;
        used = at + 1;
        return at < words.Length ? VerbTable.Find(Bare(words[at])) : null;
    }

    /// <summary>Whether a word only says how or when: <c>then</c>, <c>lightly</c>.</summary>
    private static bool IsOpener(string word) =>
        Openers.Contains(word, StringComparer.Ordinal)
            || (word.Length > 4 && word.EndsWith("ly", StringComparison.Ordinal) && VerbTable.Find(word) is null);

    private static bool IsNumbering(string word) =>
        word.Length is > 1 and <= 3 && word[word.Length - 1] is '.' or ')' && word.TrimEnd('.', ')').All(char.IsDigit);

    private static string Bare(string word) => word.Trim('.', ',', ';', ':', '(', ')').ToLowerInvariant();

    private WrittenStep ReadClause(Verb verb, string clause, string[] words, int at, List<WrittenLine> items)
    {
        var step = new WrittenStep(verb);
        var rest = new List<string>();
        while (at < words.Length)
        {
            string word = Bare(words[at]);
            if (word == "until")
            {
                step = step with { Until = string.Join(" ", words, at + 1, words.Length - at - 1).TrimEnd('.') };
                break;
            }

            if (TryQuantity(words, at, out var quantity, out int used) && quantity.Dimension is Dimension.Duration or Dimension.Temperature)
            {
                string written = string.Join(" ", words, at, used).TrimEnd('.', ',');
                if (quantity.Dimension == Dimension.Duration) step = step with { For = written };
                else if (at > 0 && Bare(words[at - 1]) == "to") step = step with { To = written };
                else step = step with { At = written };
                at += used;
            }
            else if (IceAt(words, at, out string ice, out used))
            {
                step = step with { Ice = ice };
                at += used;
            }
            else if (word is "into" or "in" or "to" && GlassAt(words, at + 1, out string glass, out used))
            {
                step = step with { Glass = glass, Into = "glass" };
                at += 1 + used;
            }
            else if (word == "into" && at + 1 < words.Length)
            {
                step = step with { Into = WithoutArticle(string.Join(" ", words, at + 1, words.Length - at - 1).TrimEnd('.')) };
                break;
            }
            else
            {
                rest.Add(words[at++]);
            }
        }

        string left = "-" + Slugs.Of(string.Join(" ", rest)) + "-";
        var named = items.Where(i => WholeNames(i).Any(n => left.Contains(n))).ToList();
        foreach (string phrase in named.SelectMany(WholeNames).OrderByDescending(p => p.Length)) left = left.Replace(phrase, "-");
        foreach (var item in items.Where(i => !named.Contains(i) && LastName(i, items) is { Length: > 0 } last && left.Contains(last)).ToList())
        {
            named.Add(item);
            left = left.Replace(LastName(item, items), "-");
        }

        bool more = left.Split(['-'], StringSplitOptions.RemoveEmptyEntries).Any(w => !Plain.Contains(w));
        return step with
        {
            Items = FixedList.Of(items.Where(named.Contains).Select(i => i.ItemId).Distinct().ToList()),
            Note = more
            ? clause.TrimEnd('.')
            : ""
        };
    }

    /// <summary>An item as its line calls it, and by its id.</summary>
    private static string[] WholeNames(WrittenLine item) => [$"-{Slugs.Of(item.ItemWritten)}-", $"-{item.ItemId}-"];

    /// <summary>The last word of an item where no other line has it, as in <c>the gin</c> and <c>the syrup</c>; empty where one has.</summary>
    private static string LastName(WrittenLine item, List<WrittenLine> items)
    {
        string written = Slugs.Of(item.ItemWritten), last = written.Substring(written.LastIndexOf('-') + 1);
        if (last.Length < 3 || NameWords.IsPiece(last)) return "";
        return items.Exists(i => i != item
            && ($"-{Slugs.Of(i.ItemWritten)}-".Contains($"-{last}-") || $"-{i.ItemId}-".Contains($"-{last}-")))
            ? ""
            : $"-{last}-";
    }

    private static string WithoutArticle(string text)
    {
        foreach (string article in (string[])["a ", "an ", "the "])
        {
            if (text.StartsWith(article, StringComparison.OrdinalIgnoreCase)) return text.Substring(article.Length);
        }

        return text;
    }

    /// <summary><c>with crushed ice</c>, <c>over one large cube</c>, <c>without ice</c>, <c>on the rocks</c>.</summary>
    private static bool IceAt(string[] words, int at, out string ice, out int used)
    {
        ice = "";
        used = 0;
        string opener = Bare(words[at]);
        if (!IceOpeners.Contains(opener, StringComparer.Ordinal)) return false;
        int end = at + 1;
        bool found = false;
        while (end < words.Length && end - at <= 5 && !found)
        {
            string word = Bare(words[end]);
            if (Array.IndexOf(IceOpeners, word) >= 0 || word is "into" or "for" or "until") break;
            found = word is "ice" or "cube" or "cubes" or "rock" or "rocks" or "block" or "sphere" or "spear";
            end++;
            if (found && end < words.Length && Bare(words[end]) is "ice" or "cube" or "cubes" && word != "ice") end++;
        }

        if (!found) return false;
        used = end - at;
        string said = string.Join(
            " ",
            words.Skip(at + 1)
                .Take(used - 1)
                .Select(Bare)
                .Where(w => w is not ("a" or "an" or "the" or "some" or "plenty" or "of" or "one" or "fresh")));
        ice = opener is "without" or "no" ? "none" : said is "rocks" or "ice" ? "cubed" : Ice.Of(said).Id;
        return true;
    }

    private bool GlassAt(string[] words, int at, out string glass, out int used)
    {
        while (at < words.Length && Bare(words[at]) is "a" or "an" or "the" or "chilled" or "cold" or "frosted" or "iced" or "ice-filled") at++;
        int start = at;
        for (used = Math.Min(MostWordsOfGlass, words.Length - at); used > 0; used--)
        {
            string name = string.Join(" ", words.Skip(start).Take(used).Select(Bare));
            glass = GlassOf(name);
            if (glass.Length == 0) continue;
            used += CountBefore(words, start);
            return true;
        }

        glass = "";
        return false;
    }

    /// <summary>How many words of <c>a chilled …</c> stand before a glass.</summary>
    private static int CountBefore(string[] words, int start)
    {
        int count = 0;
        while (start - count > 0
            && Bare(words[start - count - 1]) is "a" or "an" or "the" or "chilled" or "cold" or "frosted" or "iced"
                or "ice-filled") count++;
        return count;
    }
}
