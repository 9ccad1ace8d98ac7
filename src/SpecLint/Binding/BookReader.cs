using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Binding;

/// <summary>Reads a file of a book: bytes to tree to recipe.</summary>
public static partial class BookReader
{
    /// <summary>Reads and binds a file; whatever is wrong with it is in <see cref="BookFile.Problems"/>, in the order of the text.</summary>
    /// <param name="file">The file.</param>
    /// <param name="kind">Its kind, by <see cref="FileKinds.Of"/>.</param>
    /// <param name="measures">The units of the house, by <see cref="Measures.For"/>.</param>
    public static BookFile Read(SourceFile file, FileKind kind, Measures measures)
    {
        var problems = new List<ReadingProblem>(0);
        string id = FileKinds.IdOf(file.Path);
        if (!FileKinds.IsId(id)) problems.Add(BadId(file, kind, id));
        var tree = JsonTreeReader.Lend(file, problems);
        var bound = Bind(file, kind, id, tree, measures, problems);
        JsonTreeReader.TakeBack(tree);
        return bound;
    }

    private static BookFile Bind(SourceFile file, FileKind kind, string id, JsonTree tree, Measures measures, List<ReadingProblem> problems)
    {
        if (tree.Root.Kind != JsonKind.Object)
        {
            if (tree.Root.Exists)
            {
                problems.Add(new ReadingProblem(
                    ReadingProblemKind.Syntax,
                    tree.Root.Span,
                    "",
                    $"The file holds {PlaceWords.KindOf(tree.Root)}, not {FileShapes.Of(kind).Noun}.",
                    "A file of a book is one object, between { and }."));
            }

            return Empty(file, kind, id, problems);
        }

        var binder = new Binder(tree, kind, measures, problems);
        BookFile bound = kind switch
        {
            FileKind.Drink => BindDrink(binder, file, id, problems),
            FileKind.Prep => BindPrep(binder, file, id, problems),
            FileKind.Ingredient => BindIngredient(binder, file, id, problems),
            FileKind.Menu => BindMenu(binder, file, id, problems),
            FileKind.Stock => BindStock(binder, file, id, problems),
            FileKind.Prices => BindPrices(binder, file, id, problems),
            _ => BindBar(binder, file, id, problems),
        };
        if (problems.Count > 1) problems.Sort(InOrderOfText);
        return bound;
    }

    private static int InOrderOfText(ReadingProblem a, ReadingProblem b)
    {
        int order = a.Span.Start.CompareTo(b.Span.Start);
        if (order == 0) order = a.Span.Length.CompareTo(b.Span.Length);
        if (order == 0) order = a.Kind.CompareTo(b.Kind);
        if (order == 0) order = string.CompareOrdinal(a.Path, b.Path);
        return order != 0 ? order : string.CompareOrdinal(a.Message, b.Message);
    }

    private static BookFile Empty(SourceFile file, FileKind kind, string id, List<ReadingProblem> problems) => kind switch
    {
        FileKind.Drink => new Drink { Source = file, Id = id, Problems = problems },
        FileKind.Prep => new Prep { Source = file, Id = id, Problems = problems },
        FileKind.Ingredient => new Ingredient { Source = file, Id = id, Problems = problems },
        FileKind.Menu => new Menu { Source = file, Id = id, Problems = problems },
        FileKind.Stock => new Stock { Source = file, Id = id, Problems = problems },
        FileKind.Prices => new PriceList { Source = file, Id = id, Problems = problems },
        _ => new Bar { Source = file, Id = id, Problems = problems },
    };

    private static ReadingProblem BadId(SourceFile file, FileKind kind, string id)
    {
        string? better = FileKinds.MakeId(id);
        return new ReadingProblem(
            ReadingProblemKind.BadId,
            new TextSpan(file.ByteOrderMarkLength, file.Utf8.Length > file.ByteOrderMarkLength ? 1 : 0),
            "",
            $"The name of the file makes no id: `{ShortText.Of(id)}`.",
            better is null
                ? "Give it a name of lower-case letters, digits and hyphens."
                : $"Rename it to `{better}{FileKinds.EndingOf(kind)}`; recipes then use it as `{better}`.");
    }

    private static FixedList<Acceptance> BindAccept(Binder binder, int at, ValueShape shape) =>
        BindRows(binder, at, shape, AcceptanceShape.Shape, static (b, row, slots, _) => new Acceptance
        {
            Span = row.Span,
            Rule = b.Pattern(slots[AcceptanceShape.Rule.Index], AcceptanceShape.Rule.Value),
            Because = Text(b, slots, AcceptanceShape.Because),
            Until = Date(b, slots, AcceptanceShape.Until),
        });

    private static Measurement? BindMeasurement(Binder binder, int at)
    {
        if (at < 0) return null;
        Span<int> slots = stackalloc int[MeasurementShape.Shape.All.Length];
        var node = binder.Tree[at];
        if (!binder.Open(node, MeasurementShape.Shape, slots)) return null;
        return new Measurement
        {
            Span = node.Span,
            Ph = Quantity(binder, slots, MeasurementShape.Ph),
            Brix = Quantity(binder, slots, MeasurementShape.Brix),
            Abv = Quantity(binder, slots, MeasurementShape.Abv),
            WaterActivity = Quantity(binder, slots, MeasurementShape.WaterActivity),
            TitratableAcidity = Quantity(binder, slots, MeasurementShape.TitratableAcidity),
            Temperature = Quantity(binder, slots, MeasurementShape.Temperature),
            Mass = Quantity(binder, slots, MeasurementShape.Mass),
            Volume = Quantity(binder, slots, MeasurementShape.Volume),
            On = Date(binder, slots, MeasurementShape.On),
            Meter = Id(binder, slots, MeasurementShape.Meter),
            Of = binder.Pattern(slots[MeasurementShape.Of.Index], MeasurementShape.Of.Value),
            Revision = binder.TextOrNumber(slots[MeasurementShape.Revision.Index], MeasurementShape.Revision.Value),
        };
    }

    private static Given<Vessel> Vessel(Binder binder, ReadOnlySpan<int> slots, PropertyShape property)
    {
        var text = Text(binder, slots, property);
        return text.IsGiven ? new Given<Vessel>(Vocabulary.Vessel.Of(text.Value), text.Span, text.Name) : default;
    }

    private static Given<string> Text(Binder binder, ReadOnlySpan<int> slots, PropertyShape property) =>
        binder.Text(slots[property.Index], property.Value);

    private static Given<string> Id(Binder binder, ReadOnlySpan<int> slots, PropertyShape property) =>
        binder.Id(slots[property.Index], property.Value);

    private static Given<string> Word(Binder binder, ReadOnlySpan<int> slots, PropertyShape property) =>
        binder.Word(slots[property.Index], property.Value);

    private static Given<CalendarDate> Date(
        Binder binder, ReadOnlySpan<int> slots, PropertyShape property) => binder.Date(slots[property.Index], property.Value);

    private static Given<Quantity> Quantity(
        Binder binder, ReadOnlySpan<int> slots, PropertyShape property) => binder.Quantity(slots[property.Index], property.Value);

    private static Given<bool> Flag(Binder binder, ReadOnlySpan<int> slots, PropertyShape property) =>
        binder.Flag(slots[property.Index], property.Value);

    private static FixedList<Given<string>> Texts(
        Binder binder, ReadOnlySpan<int> slots, PropertyShape property) => binder.Texts(slots[property.Index], property.Value);

    private static void Check(Binder binder, ReadOnlySpan<int> slots, PropertyShape property) => binder.Check(slots[property.Index], property.Value);

    /// <summary>Reads an object of a list; the number is its place in the list, from 1.</summary>
    private delegate T? RowReader<T>(Binder binder, JsonNode row, ReadOnlySpan<int> slots, int number)
        where T : class;

    /// <summary>The objects of a list; what is no object is a problem of its own and is left out.</summary>
    private static FixedList<T> BindRows<T>(Binder binder, int at, ValueShape list, ObjectShape row, RowReader<T> read)
        where T : class
    {
        if (!binder.OpenList(at, list, out int count) || count == 0) return [];
        var rows = new T[count];
        Span<int> slots = stackalloc int[row.All.Length];
        int done = 0, number = 0;
        foreach (var item in binder.Tree[at].Items)
        {
            number++;
            if (binder.Open(item, row, slots) && read(binder, item, slots, number) is { } bound) rows[done++] = bound;
        }

        return Cut(rows, done);
    }

    private static T[] Cut<T>(T[] list, int length)
    {
        if (length < list.Length) Array.Resize(ref list, length);
        return list;
    }
}
