using System.Globalization;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.RecipeText;

/// <summary>
/// Reads lines that say something of a recipe as a whole: <c>style: shaken sour</c>, <c>glass: coupe</c>, <c>makes 475 g</c>,
/// <c>keep at 4 °C in a bottle for 2 d</c>, <c>like lime juice</c>, <c>measured: pH 2.4, 8.9 °Bx</c>, <c>allergens: none</c>.
/// </summary>
/// <param name="names">Understands items.</param>
/// <param name="measures">The units.</param>
/// <param name="steps">Understands glasses and quantities among words.</param>
internal sealed class DetailReader(NameResolver names, Measures measures, StepReader steps)
{
    /// <summary>
    /// Words at the front, and what a line that begins with them is about; with a colon always, without one only where a value of the right
    /// kind follows.
    /// </summary>
    private static readonly (string Word, DetailKind Kind)[] Fronts =
    [
        ("style", DetailKind.Style),
        ("glass", DetailKind.Glass),
        ("served in", DetailKind.Glass),
        ("serve in", DetailKind.Glass),
        ("serves", DetailKind.Serves),
        ("family", DetailKind.Family),
        ("makes", DetailKind.Yield),
        ("yields", DetailKind.Yield),
        ("yield", DetailKind.Yield),
        ("keeps", DetailKind.Keep),
        ("keep", DetailKind.Keep),
        ("store", DetailKind.Keep),
        ("stands in for", DetailKind.StandsInFor),
        ("in place of", DetailKind.StandsInFor),
        ("like", DetailKind.StandsInFor),
        ("batch of", DetailKind.BatchOf),
        ("measured", DetailKind.Measured),
        ("ph", DetailKind.Measured),
        ("allergens", DetailKind.Allergens),
        ("note", DetailKind.Note),
        ("notes", DetailKind.Note),
    ];

    /// <summary>Reads a line; <see langword="null"/> where it is none of these.</summary>
    /// <param name="line">The line.</param>
    public WrittenDetail? Read(string line)
    {
        string text = line.Replace('\u00A0', ' ').Replace('\t', ' ').Trim();
        foreach (var (word, kind) in Fronts)
        {
            if (!text.StartsWith(word, StringComparison.OrdinalIgnoreCase)
                || text.Length == word.Length || text[word.Length] is not (' ' or ':')) continue;
            string rest = text.Substring(word.Length).TrimStart(' ');
            bool said = rest.StartsWith(":", StringComparison.Ordinal);
            rest = rest.TrimStart(':', ' ').TrimEnd('.', ' ');
            if (rest.Length == 0) return null;
            if (kind == DetailKind.Measured && word == "ph") rest = "pH " + rest;
            var detail = Of(kind, rest);
            if (detail.Because.Length == 0 ? said || kind is not (DetailKind.Note or DetailKind.Allergens or DetailKind.BatchOf) : said)
                return detail;
        }

        return null;
    }

    private WrittenDetail Of(DetailKind kind, string text) => kind switch
    {
        DetailKind.Style => OfStyle(text),
        DetailKind.Glass =>
            steps.GlassOf(WithoutArticle(text)) is { Length: > 0 } glass
                ? new WrittenDetail(kind) { Text = glass }
                : Open(kind, text, "it is not a glass of the bar or of the built-in table"),
        DetailKind.Serves => OfServes(text),
        DetailKind.Family =>
            FamilyWords.Find(Slugs.Of(text)) is { } family
                ? new WrittenDetail(kind) { Text = family.Id }
                : Open(kind, text, "it is not a family of preparations"),
        DetailKind.Yield => OfYield(text),
        DetailKind.Keep => OfKeep(text),
        DetailKind.StandsInFor =>
            names.Resolve(text) is { Answer: NameAnswer.Resolved } item
                ? new WrittenDetail(kind) { Text = item.Id }
                : Open(kind, text, "neither the book nor the catalogue knows it"),
        DetailKind.BatchOf => new WrittenDetail(kind) { Text = Slugs.Of(text) },
        DetailKind.Measured => OfReading(text),
        DetailKind.Allergens => OfAllergens(text),
        _ => new WrittenDetail(kind) { Text = text },
    };

    private static WrittenDetail Open(DetailKind kind, string text, string because) => new(kind) { Text = text, Because = because };

    private static WrittenDetail OfStyle(string text)
    {
        var style = Style.Of(Slugs.Of(text));
        if (!style.IsKnown) style = style.Meant ?? StyleTable.FindByAlias(text) ?? style;
        return style.IsKnown
            ? new WrittenDetail(DetailKind.Style) { Text = style.Id }
            : Open(DetailKind.Style, text, "it is not a style of the table");
    }

    private static WrittenDetail OfServes(string text) =>
        double.TryParse(text.Split(' ')[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double count) && count > 0
            ? new WrittenDetail(DetailKind.Serves) { Count = count }
            : Open(DetailKind.Serves, text, "it is not a number of drinks");

    private WrittenDetail OfYield(string text)
    {
        string[] words = text.Split([' '], StringSplitOptions.RemoveEmptyEntries);
        for (int at = 0; at < words.Length && at < 2; at++)
        {
            if (steps.TryQuantity(words, at, out var quantity, out int used) && quantity.Dimension is Dimension.Volume or Dimension.Mass)
                return new WrittenDetail(DetailKind.Yield) { Amount = string.Join(" ", words, at, used) };
        }

        if (words.Length == 2 && words[1] is "drinks" or "drink" or "serves" or "cocktails")
            return OfServes(text) is { Because.Length: 0 } serves ? serves : Open(DetailKind.Yield, text, "it is not an amount");
        return Open(DetailKind.Yield, text, "it is not a volume or a mass");
    }

    private WrittenDetail OfKeep(string text)
    {
        var detail = new WrittenDetail(DetailKind.Keep);
        string[] words = text.Split([' '], StringSplitOptions.RemoveEmptyEntries);
        var vessel = new List<string>();
        bool inside = false;
        for (int at = 0; at < words.Length; at++)
        {
            if (steps.TryQuantity(words, at, out var quantity, out int used) && quantity.Dimension is Dimension.Temperature or Dimension.Duration)
            {
                string written = string.Join(" ", words, at, used).TrimEnd(',', '.');
                detail = quantity.Dimension == Dimension.Temperature ? detail with { At = written } : detail with { For = written };
                at += used - 1;
                inside = false;
            }
            else if (words[at] is "in" && !inside)
            {
                inside = true;
            }
            else if (words[at] is "at" or "for")
            {
                inside = false;
            }
            else if (inside && !(vessel.Count == 0 && words[at] is "a" or "an" or "the"))
            {
                vessel.Add(words[at].TrimEnd(','));
            }
        }

        bool says = detail.At.Length > 0 || detail.For.Length > 0;
        return says ? detail with { Text = string.Join(" ", vessel) } : Open(DetailKind.Keep, text, "it gives neither a temperature nor a time");
    }

    private WrittenDetail OfReading(string text)
    {
        var detail = new WrittenDetail(DetailKind.Measured);
        string[] words = text.Replace(',', ' ').Split([' '], StringSplitOptions.RemoveEmptyEntries);
        for (int at = 0; at < words.Length; at++)
        {
            string next = at + 1 < words.Length ? words[at + 1] : "";
            if (words[at].Equals("ph", StringComparison.OrdinalIgnoreCase) && Number(next, out double ph))
            {
                detail = detail with { Ph = ph };
                at++;
            }
            else if ((words[at].Equals("brix", StringComparison.OrdinalIgnoreCase) && Number(next, out double brix))
                || (Number(words[at], out brix) && IsBrix(next)))
            {
                detail = detail with { Brix = brix };
                at++;
            }
            else if (QuantityReader.TryRead(words[at], measures, out var quantity, out _) && quantity.Dimension == Dimension.Brix)
            {
                detail = detail with { Brix = quantity.Base };
            }
            else if (CalendarDate.Parse(words[at]) is { } on)
            {
                detail = detail with { On = on };
            }
            else if (FingerprintForm.IsOne(words[at]))
            {
                detail = detail with { Of = words[at] };
            }
        }

        return double.IsNaN(detail.Ph) && double.IsNaN(detail.Brix) ? Open(DetailKind.Measured, text, "it gives neither a pH nor a °Brix") : detail;
    }

    private static bool IsBrix(string word) => word.TrimStart('°').ToLowerInvariant() is "bx" or "brix";

    private static bool Number(string word, out double number) =>
        double.TryParse(word, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number);

    private static WrittenDetail OfAllergens(string text)
    {
        if (text.ToLowerInvariant() is "none" or "none known" or "none known of") return new WrittenDetail(DetailKind.Allergens);
        var tokens = new List<string>();
        foreach (string word in text.Split(',', ';'))
        {
            var found = AllergenTable.TokensOf(word.Trim().ToLowerInvariant());
            if (found.Count == 0) return Open(DetailKind.Allergens, text, $"'{word.Trim()}' is not an allergen of the table");
            tokens.AddRange(found);
        }

        return new WrittenDetail(DetailKind.Allergens) { Tokens = FixedList.Of(tokens.Distinct().ToList()) };
    }

    private static string WithoutArticle(string text) =>
        text.StartsWith("a ", StringComparison.OrdinalIgnoreCase)
            ? text.Substring(2)
            : text.StartsWith("the ", StringComparison.OrdinalIgnoreCase) ? text.Substring(4) : text;
}
