using System.Globalization;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Binding;

/// <summary>Reads values of one file by their shapes, and reports every value that does not fit.</summary>
/// <remarks>One bad value never stops the others: it is reported, and is not given.</remarks>
internal sealed class Binder
{
    private readonly JsonTree tree;
    private readonly FileKind kind;
    private readonly Measures measures;
    private readonly List<ReadingProblem> problems;

    public Binder(JsonTree tree, FileKind kind, Measures measures, List<ReadingProblem> problems)
    {
        this.tree = tree;
        this.kind = kind;
        this.measures = measures;
        this.problems = problems;
    }

    public JsonTree Tree => tree;

    /// <summary>Whether no more problems are taken; sentences are costly in files made to be so.</summary>
    private bool IsFull => problems.Count >= JsonTree.MostProblems;

    /// <summary>Finds the properties of an object; of each, <paramref name="slots"/> has the index of its value or -1.</summary>
    public bool Open(JsonNode node, ObjectShape shape, Span<int> slots)
    {
        slots.Fill(-1);
        if (node.Kind != JsonKind.Object)
        {
            ReportType(node, shape.Noun + " between { and }");
            return false;
        }

        var all = shape.All;
        foreach (var property in node.Properties)
        {
            int index = property.NameIsEscaped
                ? shape.IndexOf(System.Text.Encoding.UTF8.GetBytes(property.Name))
                : shape.IndexOf(property.RawName);
            if (index < 0) ReportUnknown(node, property, shape);
            else if (slots[index] < 0) slots[index] = property.Index;
        }

        // Of a text that breaks off, nobody knows what would have come.
        if (!tree.IsWhole) return true;
        for (int i = 0; i < all.Length; i++)
        {
            if (all[i].Required && slots[i] < 0) ReportMissing(node, all[i]);
        }

        if (shape.AtLeastOneOf.Count > 0) CheckChoice(node, shape, slots);
        return true;
    }

    public Given<string> Text(int at, ValueShape shape)
    {
        if (at < 0) return default;
        var node = tree[at];
        if (node.Kind != JsonKind.String)
        {
            ReportType(node, shape.Noun);
            return default;
        }

        if (node.RawText.IsEmpty)
        {
            if (!IsFull)
                Report(ReadingProblemKind.UnreadableValue, node, $"{PlaceWords.Describe(node)} is empty.",
                    "Write it, or leave the property out.");
            return default;
        }

        return new Given<string>(StringOf(node), node.Span, node.NameSpan);
    }

    public Given<string> Pattern(int at, ValueShape shape)
    {
        var text = Text(at, shape);
        if (!text.IsGiven || shape.Matches!(text.Value)) return text;
        ReportUnreadable(tree[at], shape.Noun);
        return default;
    }

    public Given<string> Id(int at, ValueShape shape)
    {
        if (at < 0) return default;
        var node = tree[at];
        if (node.Kind == JsonKind.String && !node.IsEscaped && FileKinds.IsId(node.RawText))
            return new Given<string>(StringOf(node), node.Span, node.NameSpan);
        var text = Text(at, shape);
        if (!text.IsGiven || FileKinds.IsId(text.Value)) return text;
        if (IsFull) return default;
        string? made = FileKinds.MakeId(text.Value);
        string what = shape.Definition == "id" ? "not an id" : "not a single word";
        Report(
            ReadingProblemKind.UnreadableValue,
            node,
            $"{PlaceWords.Describe(node)} is {what}: `{ShortText.Of(text.Value)}`.",
            made is null
                ? "Use lower-case letters, digits and hyphens."
                : $"Use lower-case letters, digits and hyphens, as in `{ShortText.Of(made)}`.");
        return default;
    }

    public Given<string> Word(int at, ValueShape shape)
    {
        var text = Text(at, shape);
        if (!text.IsGiven) return default;
        var words = shape.Words;
        for (int i = 0; i < words.Count; i++)
        {
            if (words[i] == text.Value) return text;
        }

        return IsFull ? default : ReadWrongWord(at, text, shape);
    }

    private Given<string> ReadWrongWord(int at, Given<string> text, ValueShape shape)
    {
        var words = shape.Words;
        var node = tree[at];
        string? same = words.FirstOrDefault(word => NearestName.IsSame(word, text.Value));
        string? nearest = same ?? NearestMeant(text.Value, shape);
        string list = words.Count <= 16 ? string.Join(", ", words) : string.Join(", ", words.Take(16)) + " …";
        Report(
            ReadingProblemKind.UnreadableValue,
            node,
            $"{PlaceWords.Describe(node)} is not {shape.Noun} that is known: `{ShortText.Of(text.Value)}`.",
            nearest is null ? $"One of: {list}." : nearest.AsSpan().IndexOf(',') >= 0 ? $"Name each one: {nearest}." : $"The nearest is `{nearest}`.",
            same is null ? null : JsonText.Quote(same));
        if (same is not null) return new Given<string>(same, node.Span, node.NameSpan);
        // An allergen of a name that nobody knows is still told to the guest.
        return shape.Definition == "allergen" ? text : default;
    }

    public Given<CalendarDate> Date(int at, ValueShape shape)
    {
        var text = Text(at, shape);
        if (!text.IsGiven) return default;
        if (CalendarDate.Parse(text.Value) is { } date) return new Given<CalendarDate>(date, text.Span, text.Name);
        ReportUnreadable(tree[at], shape.Noun);
        return default;
    }

    public Given<bool> Flag(int at, ValueShape shape)
    {
        if (at < 0) return default;
        var node = tree[at];
        if (node.Kind is JsonKind.True or JsonKind.False) return new Given<bool>(node.Kind == JsonKind.True, node.Span, node.NameSpan);
        ReportType(node, shape.Noun);
        return default;
    }

    public Given<double> Number(int at, ValueShape shape)
    {
        if (at < 0) return default;
        var node = tree[at];
        if (node.Kind != JsonKind.Number)
        {
            ReportType(node, shape.Noun);
            return default;
        }

        double value = node.GetDouble();
        if (double.IsNaN(value) || !IsWithin(node, value, value, shape)) return default;
        return new Given<double>(value, node.Span, node.NameSpan);
    }

    public Given<string> TextOrNumber(int at, ValueShape shape)
    {
        if (at < 0) return default;
        var node = tree[at];
        return node.Kind == JsonKind.Number ? new Given<string>(StringOf(node), node.Span, node.NameSpan) : Text(at, shape);
    }

    public FixedList<Given<string>> TextOrTexts(int at, ValueShape shape)
    {
        if (at < 0) return [];
        if (tree[at].Kind == JsonKind.Array) return Texts(at, ShapeValues.TextList);
        var text = Text(at, shape);
        return text.IsGiven ? [text] : [];
    }

    /// <summary>A list of texts, ids or words.</summary>
    public FixedList<Given<string>> Texts(int at, ValueShape shape)
    {
        if (at < 0 || !OpenList(at, shape, out int count) || count == 0) return [];
        var texts = new Given<string>[count];
        int read = 0;
        foreach (var item in tree[at].Items)
        {
            var text = shape.Item!.Form switch
            {
                ValueForm.Id => Id(item.Index, shape.Item),
                ValueForm.Word => Word(item.Index, shape.Item),
                _ => Text(item.Index, shape.Item),
            };
            if (text.IsGiven) texts[read++] = text;
        }

        if (read < count) Array.Resize(ref texts, read);
        return texts;
    }

    /// <summary>Checks that a value is a list long enough.</summary>
    public bool OpenList(int at, ValueShape shape, out int count)
    {
        count = 0;
        if (at < 0) return false;
        var node = tree[at];
        if (node.Kind != JsonKind.Array)
        {
            ReportType(node, shape.Noun);
            return false;
        }

        count = node.Items.Count;
        if (count < shape.LeastItems && tree.IsWhole && !IsFull)
            Report(ReadingProblemKind.UnreadableValue, node, $"{PlaceWords.Describe(node)} is an empty list.", "Write at least one item into it.");
        return true;
    }

    /// <summary>Checks that a value is an object with free names, and each name.</summary>
    public bool OpenMap(int at, ValueShape shape)
    {
        if (at < 0) return false;
        var node = tree[at];
        if (node.Kind != JsonKind.Object)
        {
            ReportType(node, shape.Noun);
            return false;
        }

        foreach (var property in node.Properties) CheckKey(property, shape.Keys);
        return true;
    }

    public Given<Quantity> Quantity(int at, ValueShape shape)
    {
        if (at < 0) return default;
        var node = tree[at];
        if (node.Kind == JsonKind.Number) return BareQuantity(node, shape);
        if (node.Kind != JsonKind.String)
        {
            ReportType(node, shape.Noun);
            return default;
        }

        Span<char> buffer = stackalloc char[64];
        scoped ReadOnlySpan<char> text;
        if (!node.IsEscaped && node.RawText.Length <= buffer.Length) text = buffer.Slice(0, Utf8Text.DecodeTo(node.RawText, buffer));
        else text = node.GetString().AsSpan();

        bool read = QuantityReader.TryRead(text, measures, out var quantity, out var problem);
        if (!read && problem.Fault == QuantityFault.UnitMissing && shape.BareUnit is not null)
        {
            quantity = quantity with { Unit = shape.BareUnit };
            read = true;
        }
        else if (read && !Fits(quantity.Dimension, shape))
        {
            ReportDimension(node, text.ToString(), quantity.Dimension, shape);
            return default;
        }

        if (!read)
        {
            ReportQuantity(node, text.ToString(), problem, shape);
            return default;
        }

        if ((quantity.Form & QuantityForm.DecimalComma) != QuantityForm.Plain) ReportComma(node, text.ToString());
        if (!IsWithin(node, quantity.Low, quantity.High, shape)) return default;
        return new Given<Quantity>(quantity, node.Span, node.NameSpan);
    }

    /// <summary>Checks a value that the model does not hold.</summary>
    public void Check(int at, ValueShape shape)
    {
        if (at < 0) return;
        switch (shape.Form)
        {
            case ValueForm.TextOrTexts: TextOrTexts(at, shape); break;
            case ValueForm.Quantity: Quantity(at, shape); break;
            default: Text(at, shape); break;
        }
    }

    public void Report(ReadingProblemKind problem, JsonNode node, string message, string advice, string? replacement = null) =>
        Report(problem, node.Span, node.Path, message, advice, replacement);

    private static bool Fits(Dimension dimension, ValueShape shape)
    {
        var allowed = shape.Dimensions;
        for (int i = 0; i < allowed.Count; i++)
        {
            if (allowed[i] == dimension) return true;
        }

        return false;
    }

    private static string? NearestMeant(string text, ValueShape shape) => shape.Definition switch
    {
        // The categories of the laws are no substances, and people write them all the same.
        "allergen" => text.ToLowerInvariant() switch
        {
            "nuts" or "nut" or "tree-nuts" or "tree nuts" => "almond, hazelnut, walnut, cashew, pecan, brazil-nut, pistachio, macadamia",
            "gluten" or "cereals" => "wheat, rye, barley, oats",
            "dairy" or "lactose" or "cream" => "milk",
            "soy" or "soya" => "soybean",
            "sulfites" or "sulphur dioxide" or "so2" => "sulphites",
            "shellfish" => "crustacean, mollusc",
            _ => NearestName.Of(text, shape.Words),
        },
        "jurisdiction" => text.ToUpperInvariant() switch
        {
            "UK" or "GREAT BRITAIN" => "GB",
            "ENGLAND" => "GB-ENG",
            "SCOTLAND" => "GB-SCT",
            "WALES" => "GB-WLS",
            "NORTHERN IRELAND" or "NI" or "UK-NI" or "GB-NI" => "GB-NIR",
            "NEW YORK" or "NY" => "US-NY",
            "CALIFORNIA" => "US-CA",
            _ => NearestName.Of(text, shape.Words),
        },
        _ => NearestName.Of(text, shape.Words),
    };

    private static string Plain(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private string StringOf(JsonNode node) => node.IsEscaped ? node.GetString() : StringPool.Get(node.RawText);

    private Given<Quantity> BareQuantity(JsonNode node, ValueShape shape)
    {
        if (shape.BareUnit is null)
        {
            if (!IsFull) Report(
                ReadingProblemKind.UnitMissing,
                node,
                $"{PlaceWords.Describe(node)} is the number {ShortText.Of(node.GetString())} without a unit.",
                $"Write {shape.Noun}, in double quotes.");
            return default;
        }

        double value = node.GetDouble();
        if (double.IsNaN(value) || !IsWithin(node, value, value, shape)) return default;
        return new Given<Quantity>(new Quantity(value, value, value, shape.BareUnit, QuantityForm.Plain), node.Span, node.NameSpan);
    }

    private bool IsWithin(JsonNode node, double low, double high, ValueShape shape)
    {
        bool least = shape.AboveLeast ? low > shape.Least : low >= shape.Least;
        if (least && high <= shape.Most) return true;
        if (IsFull) return false;
        string limit = double.IsPositiveInfinity(shape.Most)
            ? (shape.AboveLeast ? "is above " : "is at least ") + Plain(shape.Least)
            : $"lies between {Plain(shape.Least)} and {Plain(shape.Most)}";
        Report(
            ReadingProblemKind.NumberOutOfRange,
            node,
            $"{PlaceWords.Describe(node)} is {ShortText.Of(node.GetString())}; it {limit}.",
            "Look for a slip of the decimal point.");
        return false;
    }

    private void CheckKey(JsonNode property, KeyForm keys)
    {
        if (IsFull) return;
        string name = property.Name;
        string? wrong = null, advice = null;
        switch (keys)
        {
            case KeyForm.Id when !FileKinds.IsId(name):
                wrong = "is not an id";
                advice = FileKinds.MakeId(name) is { } id
                    ? $"Use lower-case letters, digits and hyphens, as in `{ShortText.Of(id)}`."
                    : "Use lower-case letters, digits and hyphens.";
                break;
            case KeyForm.RuleId when !ShapeValues.IsRuleId(name):
                wrong = "is not the id of a rule";
                advice = "Ids of rules look like `SL3004`.";
                break;
            case KeyForm.FileKind when !FileShapes.KindNames.Contains(name):
                wrong = "is not a kind of file";
                advice = $"One of: {string.Join(", ", FileShapes.KindNames)}.";
                break;
            case KeyForm.PropertyPath when !IsPropertyPath(name):
                wrong = "is not a name";
                advice = "Names are letters and digits, beginning with a lower-case letter, parts joined by full stops.";
                break;
            case KeyForm.UnitWord when !IsUnitWord(name):
                wrong = "is not a word for a unit";
                advice = "Use letters, with spaces, full stops or hyphens between them.";
                break;
            case KeyForm.UnitWord when Measures.Default.TryFind(name.AsSpan(), out var word) && Measures.IsFixed(word.Unit):
                wrong = "has a fixed size that no house can change";
                advice = "Remove it.";
                break;
        }

        if (wrong is null) return;
        Report(ReadingProblemKind.UnreadableValue, property.NameSpan, property.Path, $"{PlaceWords.Describe(property)} {wrong}.", advice!);
    }

    private static bool IsPropertyPath(string name)
    {
        bool start = true;
        foreach (char c in name)
        {
            if (c == '.')
            {
                if (start) return false;
                start = true;
                continue;
            }

            if (start ? c is not (>= 'a' and <= 'z') : c is not ((>= 'a' and <= 'z') or (>= 'A' and <= 'Z') or (>= '0' and <= '9'))) return false;
            start = false;
        }

        return !start;
    }

    private static bool IsUnitWord(string name)
    {
        if (name.Length is 0 or > 30 || !char.IsLetter(name[0])) return false;
        foreach (char c in name)
        {
            if (!char.IsLetter(c) && c is not (' ' or '.' or '-')) return false;
        }

        return true;
    }

    private void CheckChoice(JsonNode node, ObjectShape shape, ReadOnlySpan<int> slots)
    {
        if (IsFull) return;
        foreach (string name in shape.AtLeastOneOf)
        {
            if (slots[shape.IndexOf(System.Text.Encoding.UTF8.GetBytes(name))] >= 0) return;
        }

        var first = shape.Find(shape.AtLeastOneOf[0])!;
        Report(
            ReadingProblemKind.MissingProperty,
            HeadOf(node),
            PathOf(node, first.Name),
            $"{PlaceWords.Describe(node, first.Name)} is missing.",
            $"Give {string.Join(" or ", shape.AtLeastOneOf.Select(name => $"`{name}`"))}, for example `\"{first.Name}\": {first.Examples[0]}`.");
    }

    private void ReportMissing(JsonNode node, PropertyShape property)
    {
        if (IsFull) return;
        Report(
            ReadingProblemKind.MissingProperty,
            HeadOf(node),
            PathOf(node, property.Name),
            $"{PlaceWords.Describe(node, property.Name)} is missing.",
            $"Add it, for example `\"{property.Name}\": {property.Examples[0]}`.");
    }

    private void ReportUnknown(JsonNode node, JsonNode property, ObjectShape shape)
    {
        if (IsFull) return;
        string name = property.Name;
        string? nearest = NearestName.Of(name, shape.All.Select(p => p.Name));
        int edits = nearest is null ? int.MaxValue : NearestName.Distance(name, nearest, 3);
        string place = PlaceWords.Describe(property);
        if (edits > 1 && PlaceWords.HomesOf(name, kind) is { Count: > 0 } homes)
        {
            Report(
                ReadingProblemKind.MisplacedProperty,
                property.NameSpan,
                property.Path,
                $"{place} does not belong in {shape.Noun}.",
                $"It is a property of {string.Join(", ", homes.Take(3))}: move it there, or take it out.");
            return;
        }

        bool certain = edits == 0 || (edits == 1 && name.Length >= 4);
        if (certain && node.TryGetProperty(System.Text.Encoding.UTF8.GetBytes(nearest!), out _)) certain = false;
        Report(
            ReadingProblemKind.UnknownProperty,
            property.NameSpan,
            property.Path,
            $"{place} is not a property of {shape.Noun}.",
            nearest is null ? "Take it out, or put it in a comment or in `notes`." : $"Write `{nearest}`, if that is meant.",
            certain ? JsonText.Quote(nearest!) : null);
    }

    private void ReportType(JsonNode node, string noun)
    {
        if (IsFull) return;
        string place = PlaceWords.Describe(node);
        string advice = node.Kind switch
        {
            JsonKind.Null => "Leave the property out where there is nothing to say.",
            JsonKind.Number => $"Write {noun}, in double quotes.",
            _ => $"Write {noun}.",
        };
        Report(ReadingProblemKind.WrongType, node, $"{place} is {PlaceWords.KindOf(node)}, not {noun}.", advice);
    }

    private void ReportUnreadable(JsonNode node, string noun)
    {
        if (IsFull) return;
        Report(
            ReadingProblemKind.UnreadableValue,
            node,
            $"{PlaceWords.Describe(node)} cannot be read: `{ShortText.Of(node.GetString())}`.",
            $"Write {noun}.");
    }

    private void ReportDimension(JsonNode node, string text, Dimension dimension, ValueShape shape)
    {
        if (IsFull) return;
        Report(
            ReadingProblemKind.UnreadableValue,
            node,
            $"{PlaceWords.Describe(node)}: `{ShortText.Of(text)}` is {PlaceWords.Of(dimension)}, not {shape.Noun}.",
            $"Write {shape.Noun}.");
    }

    private void ReportQuantity(JsonNode node, string text, QuantityProblem problem, ValueShape shape)
    {
        if (IsFull) return;
        if (problem.Fault == QuantityFault.UnknownUnit)
        {
            string? nearest = measures.Nearest(problem.Part, unit => Fits(unit.Dimension, shape));
            problem = problem with { Suggestion = nearest ?? problem.Suggestion, Part = ShortText.Of(problem.Part) };
        }

        bool general = problem.Fault is QuantityFault.BadNumber or QuantityFault.Empty or QuantityFault.NumberMissing or QuantityFault.UnitMissing;
        Report(
            problem.Fault == QuantityFault.UnitMissing ? ReadingProblemKind.UnitMissing : ReadingProblemKind.UnreadableValue,
            node,
            $"{PlaceWords.Describe(node)}: `{ShortText.Of(text)}` {problem.Message}.",
            general ? $"Write {shape.Noun}." : problem.Advice);
    }

    private void ReportComma(JsonNode node, string text)
    {
        if (IsFull) return;
        string points = QuantityReader.WithPoints(text);
        Report(
            ReadingProblemKind.DecimalComma,
            node,
            $"{PlaceWords.Describe(node)}: `{ShortText.Of(text)}` has a comma where the decimal point belongs.",
            $"Write `{ShortText.Of(points)}`.",
            JsonText.Quote(points));
    }

    private void Report(ReadingProblemKind problem, TextSpan span, string path, string message, string advice, string? replacement = null)
    {
        if (problems.Count >= JsonTree.MostProblems) return;
        // Sentences begin with a capital unless a name in backticks opens them.
        if (message[0] is >= 'a' and <= 'z') message = char.ToUpperInvariant(message[0]) + message.Substring(1);
        problems.Add(new ReadingProblem(problem, span, path, message, advice, replacement));
    }

    /// <summary>Where a missing property is shown: at the name of the object, else at the object, else at the file's first character.</summary>
    private TextSpan HeadOf(JsonNode node) => node.HasName ? node.NameSpan : node.Parent.Exists ? node.Span : new TextSpan(node.Span.Start, 1);

    private static string PathOf(JsonNode node, string property) => node.Path is { Length: > 0 } path ? path + "." + property : property;
}
