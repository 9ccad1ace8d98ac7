using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>A ratio between two parts that a text says.</summary>
/// <param name="Said">The first over the second, as the text says.</param>
/// <param name="Firsts">The parts that its first name means.</param>
/// <param name="Seconds">The parts that its second name means.</param>
/// <param name="Words">The words.</param>
internal sealed record SpokenRatio(double Said, List<Part> Firsts, List<Part> Seconds, string Words)
{
    /// <summary>The first over the second, by the lines; NaN where they cannot be compared.</summary>
    public double Written { get; } =
        Sum(Firsts, Firsts[0].Line.Amount.Value.Dimension) / Sum(Seconds, Firsts[0].Line.Amount.Value.Dimension);

    /// <summary>The first part.</summary>
    public Part First => Firsts[0];

    /// <summary>The second.</summary>
    public Part Second => Seconds[0];

    /// <summary>Whether the lines have the ratio, or cannot be compared.</summary>
    public bool IsMet(double percent) => double.IsNaN(Written) || Fits(Written, percent);

    /// <summary>Whether the lines have it the other way round.</summary>
    public bool IsExchanged(double percent) => Firsts.Count == 1 && Seconds.Count == 1 && Fits(1 / Written, percent);

    /// <summary>The amounts in words.</summary>
    public string AmountsOf(RecipeContext context) =>
        Say.List([.. Firsts.Concat(Seconds).Select(p => $"{Amounts.Written.Text(context, p.Line.Amount.Span)} of `{p.Line.Item.Value}`")]);

    /// <summary>The correction that exchanges the two amounts, where that gives the ratio.</summary>
    public IReadOnlyList<Correction> Exchange(RecipeContext context, double percent) =>
        !IsExchanged(percent) ? [] : Correction.Propose(
            "Exchange the two amounts.",
            new TextEdit(context.At(First.Line.Amount.Span), context.File.Source.TextOf(Second.Line.Amount.Span)),
            new TextEdit(context.At(Second.Line.Amount.Span), context.File.Source.TextOf(First.Line.Amount.Span)));

    private bool Fits(double ratio, double percent) => ratio <= Said * (1 + (percent / 100)) && ratio >= Said / (1 + (percent / 100));

    private static double Sum(List<Part> parts, Dimension dimension)
    {
        double sum = 0;
        foreach (var part in parts) sum += part.Line.Amount.Value.Dimension == dimension ? part.Line.Amount.Value.Base : double.NaN;
        return sum;
    }
}

/// <summary>Finds ratios between two parts in running text: <c>six parts of gin to one of vermouth</c>, <c>6:1 gin to vermouth</c>.</summary>
internal static class RatiosInText
{
    /// <summary>Words between what belongs together that say nothing.</summary>
    private const int MostBetween = 3;

    private const double MostToOne = 20, MostOfTwo = 9;

    private static readonly char[] ClauseEnds = ['.', ';', '!', '?', '\n'];

    private enum Element
    {
        Number,
        Ratio,
        Part,
        Multiple,
        Name,
    }

    /// <summary>What a word or phrase is to a ratio, and where it stands.</summary>
    private readonly record struct Piece(Element Is, double Number, List<Part> Parts, int Word, int Start, int End);

    /// <summary>The ratios that a text says of the parts of a recipe.</summary>
    public static IEnumerable<SpokenRatio> Of(RecipeContext context, string text)
    {
        // The ratio of a syrup has a rule of its own.
        if (context.Recipe is Prep { Family: var family } && family.OrNone().IsSyrup) yield break;
        for (int from = 0; from < text.Length;)
        {
            int end = text.IndexOfAny(ClauseEnds, from);
            while (end > 0 && end + 1 < text.Length && char.IsDigit(text[end - 1]) && char.IsDigit(text[end + 1]))
                end = text.IndexOfAny(ClauseEnds, end + 1);
            string clause = text.Substring(from, (end < 0 ? text.Length : end) - from);
            if (InClause(context, clause) is { } ratio) yield return ratio;
            from = end < 0 ? text.Length : end + 1;
        }
    }

    private static SpokenRatio? InClause(RecipeContext context, string clause)
    {
        var words = SpokenWords.Of(clause);
        if (words.Count < 4) return null;
        for (int i = 0; i < words.Count; i++)
        {
            if (SpokenWords.PhraseAt(words, i, AmountWords.IsOfAnother) > 0) return null;
        }

        var pieces = PiecesOf(context, clause, words);
        for (int i = 0; i + 2 < pieces.Count; i++)
        {
            if (Counted(pieces, i, clause) is { } counted) return counted;
            if (Together(pieces, i, clause) is { } together) return together;
        }

        return null;
    }

    /// <summary>Six parts of gin to one of vermouth.</summary>
    private static SpokenRatio? Counted(List<Piece> pieces, int at, string clause)
    {
        int i = at;
        if (!Group(pieces, ref i, out double first, out var firsts, out bool firstInParts)) return null;
        if (!Group(pieces, ref i, out double second, out var seconds, out bool secondInParts)) return null;
        return firstInParts || secondInParts ? Make(first / second, firsts, seconds, clause, pieces[at], pieces[i - 1]) : null;
    }

    private static bool Group(List<Piece> pieces, ref int at, out double number, out Piece name, out bool inParts)
    {
        (number, name, inParts) = (double.NaN, default, false);
        if (at >= pieces.Count || pieces[at].Is != Element.Number) return false;
        number = pieces[at++].Number;
        if (at < pieces.Count && pieces[at].Is == Element.Part)
        {
            inParts = true;
            at++;
        }

        if (at >= pieces.Count || pieces[at].Is != Element.Name || !IsNear(pieces[at - 1], pieces[at])) return false;
        name = pieces[at++];
        return true;
    }

    /// <summary>6:1 gin to vermouth; gin and vermouth 6:1; twice as much gin as vermouth; gin twice as much as vermouth.</summary>
    private static SpokenRatio? Together(List<Piece> pieces, int at, string clause)
    {
        Piece ratio = default;
        List<Piece> names = [];
        for (int i = at; i < at + 3; i++)
        {
            if (pieces[i].Is is Element.Ratio or Element.Multiple) ratio = pieces[i];
            else if (pieces[i].Is == Element.Name) names.Add(pieces[i]);
            if (i > at && !IsNear(pieces[i - 1], pieces[i])) return null;
        }

        // Behind both names a multiple is of something else.
        if (names.Count != 2 || (ratio.Is == Element.Multiple && ratio.Word > names[1].Word)) return null;
        return Make(ratio.Number, names[0], names[1], clause, pieces[at], pieces[at + 2]);
    }

    private static bool IsNear(Piece a, Piece b) => b.Word - a.Word <= MostBetween + 1;

    private static SpokenRatio? Make(double ratio, Piece first, Piece second, string clause, Piece from, Piece to) =>
        first.Parts.Count == 0 || second.Parts.Count == 0 || first.Parts.Any(second.Parts.Contains) || !(ratio > 0)
            ? null
            : new SpokenRatio(ratio, first.Parts, second.Parts, clause.Substring(from.Start, to.End - from.Start));

    private static List<Piece> PiecesOf(RecipeContext context, string clause, List<SpokenWord> words)
    {
        var pieces = new List<Piece>();
        for (int i = 0; i < words.Count;)
        {
            int length = PieceAt(context, clause, words, i, out var piece);
            if (piece is { } found)
            {
                // "In parts 6:1".
                int last = pieces.Count - 1;
                if (found.Is == Element.Ratio && last >= 0 && pieces[last].Is == Element.Part) pieces.RemoveAt(last);
                pieces.Add(found);
            }

            i += Math.Max(1, length);
        }

        return pieces;
    }

    private static int PieceAt(RecipeContext context, string clause, List<SpokenWord> words, int at, out Piece? piece)
    {
        piece = null;
        int multiple = SpokenWords.PhraseAt(words, at, static s => !double.IsNaN(AmountWords.MultipleOf(s)));
        if (multiple > 0) return Add(Element.Multiple, AmountWords.MultipleOf(SpokenWords.Join(words, at, multiple)), [], multiple, out piece);
        if (AmountWords.IsPart(words[at].Slug)) return Add(Element.Part, double.NaN, [], 1, out piece);

        // An amount with a unit, a percentage or a temperature is no count of parts.
        if (SpokenWords.AmountAt(clause, words, at) is not null) return 2;
        var (number, length) = SpokenWords.NumberAt(clause, words, at);
        if (length > 0)
        {
            int next = at + length;
            bool colon = next < words.Count && clause.Substring(words[next - 1].End, words[next].Start - words[next - 1].End).Trim() is ":" or "∶";
            if (!colon && next + 1 < words.Count && AmountWords.IsTo(words[next].Slug)) next++;
            var (second, its) = SpokenWords.NumberAt(clause, words, next);

            // 6:30 is a time.
            bool isCount = Math.Max(number, second) <= (Math.Min(number, second) == 1 ? MostToOne : MostOfTwo);
            if (its > 0 && second > 0 && isCount && (colon || next > at + length))
                return Add(Element.Ratio, number / second, [], next + its - at, out piece);
            return Add(Element.Number, number, [], length, out piece);
        }

        length = PartsNamed(context, words, at, out var parts);
        return length > 0 ? Add(Element.Name, double.NaN, parts, length, out piece) : 0;

        int Add(Element what, double value, List<Part> named, int count, out Piece? made)
        {
            made = new Piece(what, value, named, at, words[at].Start, words[at + count - 1].End);
            return count;
        }
    }

    /// <summary>How many words from one on name an item, the longest name first, and the poured parts that it means.</summary>
    private static int PartsNamed(RecipeContext context, List<SpokenWord> words, int at, out List<Part> parts)
    {
        var (ids, named) = SpokenWords.ItemAt(context.Book, words, at);
        for (int length = Math.Min(3, words.Count - at); length > 0; length--)
        {
            string slug = SpokenWords.Join(words, at, length);
            if (slug.Length < 3) continue;
            parts = Poured(context).Where(p => Means(p, slug, length == named ? ids : [])).ToList();
            if (parts.Count > 0 || length == named) return length;
        }

        parts = [];
        return named;
    }

    private static IEnumerable<Part> Poured(RecipeContext context) => context.Profile.Parts.Where(static p =>
        p.Line.Role is LineRole.Part or LineRole.Top or LineRole.Float && p.Line.Item.IsGiven
        && p.Line.Amount is { IsGiven: true, Value.Dimension: Dimension.Volume or Dimension.Mass, Value.Base: > 0 });

    /// <summary>Whether a name means a part: it is its id, its last words, that of what it is like, its kind, or the fruit of its juice.</summary>
    private static bool Means(Part part, string slug, FixedList<string> ids)
    {
        if (ItemKind.Of(slug) is { IsKnown: true } kind && part.Material?.Kind == kind) return true;
        string[] its =
        [
            part.Line.Item.Value,
            BuiltInCatalogue.Slug(part.Item?.File.Name.Or("") ?? ""),
            .. part.Material?.TakesAfter.Select(static o => o.Id) ?? [],
        ];
        return its.Any(id => IsNamed(id, slug) || ids.Any(named => IsNamed(id, named)));
    }

    private static bool IsNamed(string id, string name) =>
        id == name || id.EndsWith("-" + name, StringComparison.Ordinal) || id == name + "-juice"
        || (name.EndsWith("s", StringComparison.Ordinal) && name.Length > 3 && IsNamed(id, name.Substring(0, name.Length - 1)));
}
