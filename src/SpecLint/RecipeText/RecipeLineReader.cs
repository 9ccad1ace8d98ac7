using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.RecipeText;

/// <summary>
/// Reads a line of a recipe as people write them: <c>2 oz gin</c>, <c>¾ oz lemon</c>, <c>1-1/2 oz dark rum</c>, <c>a dash of
/// bitters</c>, <c>juice of 1/2 lime</c>, <c>gin – 2 oz</c>, <c>fill with soda water</c>. It never guesses in silence: what it
/// assumes is said, and what is open is marked as unclear.
/// </summary>
/// <param name="names">Understands the items.</param>
/// <param name="measures">The units.</param>
internal sealed class RecipeLineReader(NameResolver names, Measures measures)
{
    private const int MostWordsOfAmount = 6;

    /// <summary>How far two amounts lie apart that are one, rounded to jiggers of two systems (a pure number).</summary>
    private const double SameAmount = 0.05;

    /// <summary>Reads a line.</summary>
    /// <param name="written">The line.</param>
    /// <param name="number">Its number in the text, from 1.</param>
    public WrittenLine Read(string written, int number = 1)
    {
        string text = WithoutBullet(written);
        if (text.Length == 0) return new WrittenLine(number, written, WrittenLineKind.Blank);
        if (text[0] == '#' || text[text.Length - 1] == ':')
            return new WrittenLine(number, written, WrittenLineKind.Heading) { ItemWritten = text.Trim('#', ' ', ':') };
        var draft = new Draft(written, number);
        if (WithoutNumbering(text) is { } step && TakesItem(step) && !LineWords.TakeFront(ref step, LineWords.Add)) text = step;
        if (IsMethod(text)) return new WrittenLine(number, written, WrittenLineKind.Method);
        ReadFront(ref text, draft);
        ReadEnd(ref text, draft);
        if (!ReadJuice(text, draft)) ReadWithBrackets(text, draft);
        return Finish(draft);
    }

    /// <summary>What is gathered of a line.</summary>
    private sealed class Draft(string written, int number)
    {
        public string Written { get; } = written;

        public int Number { get; } = number;

        public LineRole Role { get; set; } = LineRole.Part;

        public string Amount { get; set; } = "";

        public string NumberWritten { get; set; } = "";

        public string UnitWritten { get; set; } = "";

        public Quantity? Quantity { get; set; }

        public string Item { get; set; } = "";

        public WrittenName? Name { get; set; }

        public List<string> Assumed { get; } = [];

        public List<string> Open { get; } = [];
    }

    private static string WithoutBullet(string written)
    {
        string text = written.Replace('\u00A0', ' ').Replace('\t', ' ').Trim();
        while (text.Length > 1 && text[0] is '-' or '*' or '•' or '–' or '·' && text[1] == ' ') text = text.Substring(2).TrimStart();
        return text;
    }

    /// <summary>The text behind the number of a step, <c>3. Garnish with mint</c>; <see langword="null"/> where it has none.</summary>
    private static string? WithoutNumbering(string text)
    {
        int end = text.IndexOf(' ');
        return end is > 1 and <= 3 && text[end - 1] is '.' or ')' && text.Take(end - 1).All(char.IsDigit)
            ? text.Substring(end + 1).TrimStart()
            : null;
    }

    /// <summary>Whether a line says what to do: it begins with a verb of the trade and is not an item.</summary>
    private bool IsMethod(string text)
    {
        string[] words = text.Split([' '], StringSplitOptions.RemoveEmptyEntries);
        int first = WithoutNumbering(text) is null ? 0 : 1;
        string word = words[first].Trim('.', ',', ';', ':').ToLowerInvariant();
        if (first + 1 < words.Length && words[first + 1] == "of" && NameWords.IsPiece(word)) return false;
        bool begins = VerbTable.Find(word) is not null
            || (first + 1 < words.Length && VerbTable.Find(word + "-" + words[first + 1].Trim('.', ',').ToLowerInvariant()) is not null);
        if (!begins) return first == 0 && words.Length > 5 && text[text.Length - 1] == '.' && !char.IsDigit(text[0]);
        if (first == 1) return true;
        return !TakesItem(text) && names.Resolve(text).Answer == NameAnswer.NotKnown;
    }

    /// <summary>Whether the verb at the front stands before an ingredient: <c>fill with</c>, <c>garnish with</c>, <c>add 25 ml</c>.</summary>
    private static bool TakesItem(string text)
    {
        string rest = text;
        if (LineWords.TakeFront(ref rest, LineWords.Top)
            || LineWords.TakeFront(ref rest, LineWords.Garnish)
            || LineWords.TakeFront(ref rest, LineWords.Float)
            || LineWords.TakeFront(ref rest, LineWords.JuiceOf))
            return true;
        return LineWords.TakeFront(ref rest, LineWords.Add) && StartsNumber(rest);
    }

    private static void ReadFront(ref string text, Draft draft)
    {
        if (LineWords.TakeFront(ref text, LineWords.Top)) draft.Role = LineRole.Top;
        else if (LineWords.TakeFront(ref text, LineWords.Garnish)) draft.Role = LineRole.Garnish;
        else if (LineWords.TakeFront(ref text, LineWords.Float)) draft.Role = LineRole.Float;
        else LineWords.TakeFront(ref text, LineWords.Add);
        if (draft.Role != LineRole.Part) text = text.TrimEnd('.', ' ');
        if (LineWords.TakeFront(ref text, LineWords.About)) draft.Assumed.Add("the amount is not exact");
    }

    private static void ReadEnd(ref string text, Draft draft)
    {
        if (LineWords.TakeEnd(ref text, LineWords.ToTop) || LineWords.TakeFront(ref text, LineWords.ToTop)) draft.Role = LineRole.Top;
        if (LineWords.TakeEnd(ref text, LineWords.ToFloat)) draft.Role = LineRole.Float;
        if (LineWords.TakeEnd(ref text, LineWords.ToFinish)) draft.Role = LineRole.Garnish;
        if (LineWords.TakeEnd(ref text, LineWords.ToTaste) || LineWords.TakeFront(ref text, LineWords.ToTaste))
            draft.Open.Add("the amount is left to taste");
    }

    /// <summary><c>juice of 1/2 lime</c>, <c>juice 1 lemon</c>, <c>1/2 juice of 1 lemon</c>.</summary>
    private bool ReadJuice(string text, Draft draft)
    {
        double times = 1;
        string rest = text;
        if (TakeNumber(ref rest, out var first) && LineWords.TakeFront(ref rest, LineWords.JuiceOf)) times = first.Value;
        else rest = text;
        if (rest == text && !LineWords.TakeFront(ref rest, LineWords.JuiceOf)) return false;
        if (TakeNumber(ref rest, out var count)) times *= count.Value;
        else if (rest == text) return false;
        var name = names.Resolve("juice of " + rest);
        if (name.Answer != NameAnswer.Resolved || !name.Id.EndsWith("-juice", StringComparison.Ordinal)) return false;
        draft.Name = name;
        draft.Item = text;
        string fruit = name.Id.Substring(0, name.Id.Length - "-juice".Length);
        if (BuiltInCatalogue.Find(fruit) is not { } whole || !whole.Values.TryGetValue("yields", out var yields))
        {
            draft.Open.Add($"how much juice one {fruit} gives is not known");
            return true;
        }

        draft.Amount = Round(times * yields.Typical) + " ml";
        draft.Assumed.Add($"one {fruit} gives about {Round(yields.Typical)} ml of juice ({Round(yields.Low)}–{Round(yields.High)})");
        if (QuantityReader.TryRead(draft.Amount, measures, out var quantity, out _)) draft.Quantity = quantity;
        return true;
    }

    /// <summary>
    /// An amount that brackets say again, <c>1 oz (30 ml) gin</c>, or say at all, <c>a good measure (50 ml) of whisky</c>. Beside a measure
    /// without a size it is the amount; beside another that it is not the same as, both are left open.
    /// </summary>
    private void ReadWithBrackets(string text, Draft draft)
    {
        int open = text.IndexOf('('), close = open < 0 ? -1 : text.IndexOf(')', open);
        string inside = close < 0 ? "" : text.Substring(open + 1, close - open - 1).Trim();
        if (inside.Length == 0
            || !StartsNumber(inside)
            || !QuantityReader.TryRead(inside, measures, out var said, out _)
            || said.Dimension is not (Dimension.Volume or Dimension.Mass))
        {
            ReadAmountAndItem(text, draft);
            return;
        }

        string before = text.Substring(0, open).Trim(), after = text.Substring(close + 1).Trim();
        ReadAmountAndItem((before + " " + after).Trim(), draft);
        if (draft.Quantity is { } other && other.Dimension == said.Dimension && other.Unit.Name is not ("shot" or "jigger" or "measure" or "splash"))
        {
            bool same = said.BaseLow <= other.BaseHigh * (1 + SameAmount) && said.BaseHigh >= other.BaseLow * (1 - SameAmount);
            if (!same) draft.Open.Add($"two amounts stand in it, {draft.Amount} and {inside}");
            return;
        }

        if (draft.Quantity is null) draft.Item = WithoutOf(after.Length > 0 ? after : before);
        Take(inside.Split([' '], StringSplitOptions.RemoveEmptyEntries), 1, inside.Count(c => c == ' ') + 1, said, draft);
        draft.Quantity = said;
        draft.Assumed.Add("the amount in brackets is taken");
    }

    private void ReadAmountAndItem(string text, Draft draft)
    {
        string[] words = text.Split([' '], StringSplitOptions.RemoveEmptyEntries);
        if (AtFront(words, draft) || AtEnd(words, draft)) return;
        draft.Item = text;
    }

    /// <summary>An amount before the item: the most words that are one, of which the item leaves some.</summary>
    private bool AtFront(string[] words, Draft draft)
    {
        for (int length = Math.Min(MostWordsOfAmount, words.Length - 1); length > 0; length--)
        {
            string amount = string.Join(" ", words, 0, length);
            if (!QuantityReader.TryRead(amount, measures, out var quantity, out var problem))
            {
                if (problem.Fault != QuantityFault.UnitMissing || quantity.Unit is null) continue;
                Number(amount, quantity, draft);
                draft.Item = string.Join(" ", words, length, words.Length - length);
                return true;
            }

            if (!IsAmount(quantity)) continue;
            string rest = string.Join(" ", words, length, words.Length - length);
            int numbers = NumberWords(words, length);

            // "2 egg whites", "1 cherry tomato": the word belongs to the item.
            if (quantity.Unit.System == UnitSystem.Piece && BelongsToItem(string.Join(" ", words, numbers, words.Length - numbers), WithoutOf(rest)))
            {
                if (numbers == 0) return false;
                continue;
            }

            Take(words, numbers, length, quantity, draft);
            draft.Item = WithoutOf(rest);
            return true;
        }

        return false;
    }

    /// <summary>An amount behind the item: <c>gin – 2 oz</c>, <c>gin, 50 ml</c>.</summary>
    private bool AtEnd(string[] words, Draft draft)
    {
        for (int length = Math.Min(3, words.Length - 1); length > 0; length--)
        {
            int start = words.Length - length;
            if (!StartsNumber(words[start])
                || !QuantityReader.TryRead(string.Join(" ", words, start, length), measures, out var quantity, out _)
                || !IsAmount(quantity))
                continue;
            Take([.. words.Skip(start)], NumberWords([.. words.Skip(start)], length), length, quantity, draft);
            draft.Item = string.Join(" ", words, 0, start).TrimEnd(' ', '-', '–', '—', ':', ',', '.', '…');
            return draft.Item.Length > 0;
        }

        return false;
    }

    private static void Number(string amount, Quantity quantity, Draft draft)
    {
        draft.NumberWritten = amount;
        draft.Amount = amount + " piece";
        draft.Quantity = quantity with { Unit = new Unit("piece", Dimension.Count, UnitSystem.Piece, 1, 1, 1) };
    }

    private static void Take(string[] words, int numbers, int length, Quantity quantity, Draft draft)
    {
        draft.NumberWritten = string.Join(" ", words, 0, numbers);
        draft.UnitWritten = string.Join(" ", words, numbers, length - numbers);

        // "4cl": the unit stands at the number.
        if (draft.UnitWritten.Length == 0)
        {
            int at = draft.NumberWritten.Length;
            while (at > 0 && (char.IsLetter(draft.NumberWritten[at - 1]) || draft.NumberWritten[at - 1] == '.')) at--;
            draft.UnitWritten = draft.NumberWritten.Substring(at);
            draft.NumberWritten = draft.NumberWritten.Substring(0, at);
        }

        draft.Quantity = quantity;
        draft.Amount = (StartsNumber(draft.NumberWritten) ? draft.NumberWritten : "1") + " " + quantity.Unit.Name;
    }

    /// <summary>How many words at the front belong to the number.</summary>
    private static int NumberWords(string[] words, int length)
    {
        int numbers = 0;
        while (numbers < length
            && (StartsNumber(words[numbers])
                || words[numbers] is "-" or "–" or "to" or "a" or "an" or "A" or "An" or "one" or "One")) numbers++;
        return numbers;
    }

    /// <summary>Whether the word of a piece is part of a name: "white of an egg" is not the egg, "twist of lemon peel" is the peel.</summary>
    private bool BelongsToItem(string whole, string rest) =>
        names.Resolve(whole) is { Answer: not NameAnswer.NotKnown } meant
            && (names.Resolve(rest) is not { Answer: NameAnswer.Resolved } part || part.Id != meant.Id);

    /// <summary>Whether a bare number may count a thing: two limes, and not two gins.</summary>
    private static bool IsCounted(WrittenName name) =>
        name.Answer != NameAnswer.Resolved || BuiltInCatalogue.Find(name.Id) is not { } entry
        || entry.Values.ContainsKey("piece")
        || entry.IngredientKind.OrNone() is { IsBotanical: true } or { ComesInPieces: true } or { MayComeInPieces: true };

    private static bool IsAmount(Quantity quantity) => quantity.Dimension is Dimension.Volume or Dimension.Mass or Dimension.Count or Dimension.Part;

    private static bool StartsNumber(string word) =>
        word.Length > 0
            && (char.IsDigit(word[0])
                || (word[0] == '.' && word.Length > 1 && char.IsDigit(word[1]))
                || char.GetNumericValue(word[0]) is > 0 and < 1);

    private static string WithoutOf(string text) => text.StartsWith("of ", StringComparison.OrdinalIgnoreCase) ? text.Substring(3).TrimStart() : text;

    private bool TakeNumber(ref string text, out Quantity number)
    {
        string[] words = text.Split([' '], StringSplitOptions.RemoveEmptyEntries);
        for (int length = Math.Min(3, words.Length - 1); length > 0; length--)
        {
            if (QuantityReader.TryRead(string.Join(" ", words, 0, length), measures, out number, out var problem)
                || problem.Fault != QuantityFault.UnitMissing)
                continue;
            text = string.Join(" ", words, length, words.Length - length);
            return true;
        }

        number = default;
        return false;
    }

    private WrittenLine Finish(Draft draft)
    {
        draft.Item = draft.Item.Trim();
        var name = draft.Name ?? names.Resolve(draft.Item);
        string item = draft.Item;
        if (draft.Name is null)
        {
            if (!name.IsExact && item.Any(c => char.IsDigit(c))) draft.Open.Add("there is another number in it");
            if (item.IndexOf(';') >= 0
                || (item.Length > 0 && !char.IsLetterOrDigit(item[0]))
                || item.Count(c => c == '(') != item.Count(c => c == ')'))
                draft.Open.Add("it holds more than an item");
        }

        switch (name.Answer)
        {
            case NameAnswer.NotKnown: draft.Open.Add($"`{item}` is not known"); break;
            case NameAnswer.Unclear: draft.Open.Add($"{name.Because}: {string.Join(", ", name.Choices)}"); break;
            case NameAnswer.Maker when name.Id.Length > 0: draft.Assumed.Add("the kind that this maker's bottle is of"); break;
            case NameAnswer.Maker:
                draft.Open.Add(name.Choices.Count > 0 ? $"{name.Because}: {string.Join(", ", name.Choices)}" : name.Because);
                break;
            case NameAnswer.Resolved when !name.IsExact && draft.Name is null: draft.Assumed.Add($"`{item}` is read as {name.Id}"); break;
        }

        if (draft.Quantity is not null && draft.UnitWritten.Length == 0 && draft.Name is null && !IsCounted(name))
        {
            draft.Open.Add("the number has no unit");
            draft.Amount = "";
        }

        if (draft.Quantity is null && draft.Role is LineRole.Part && draft.Open.Count == 0) draft.Open.Add("no amount is written");
        else if (draft.Quantity is { Unit.Name: "part" }) draft.Assumed.Add("parts have no size until the whole has one");
        bool open = draft.Open.Count > 0;
        return new WrittenLine(draft.Number, draft.Written, WrittenLineKind.Ingredient)
        {
            Amount = draft.Amount.Length == 0 && draft.Role is LineRole.Top ? "1 top" : draft.Amount,
            NumberWritten = draft.NumberWritten,
            UnitWritten = draft.UnitWritten,
            Quantity = draft.Quantity,
            ItemWritten = item,
            Item = name,
            Role = draft.Role,
            Certainty = open ? Certainty.Unclear : draft.Assumed.Count > 0 ? Certainty.Likely : Certainty.Certain,
            Because = string.Join("; ", open ? draft.Open.Concat(draft.Assumed) : draft.Assumed),
        };
    }

    private static string Round(double millilitres) =>
        Math.Round(millilitres, millilitres < 10 ? 1 : 0).ToString(System.Globalization.CultureInfo.InvariantCulture);
}
