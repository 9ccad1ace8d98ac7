using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tool.Editor;

/// <summary>What a word of a file names.</summary>
internal enum NamedKind
{
    /// <summary>A recipe, an ingredient, or what is left of making one.</summary>
    Item,

    /// <summary>A glass of the bar.</summary>
    Glass,

    /// <summary>A meter of the bar.</summary>
    Meter,

    /// <summary>A vessel of the bar.</summary>
    Vessel,

    /// <summary>A rule.</summary>
    Rule,

    /// <summary>A lot.</summary>
    Lot,
}

/// <summary>A thing that words of files name.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Id">Its id.</param>
internal readonly record struct Named(NamedKind Kind, string Id);

/// <summary>A place that names a thing, or that makes it.</summary>
/// <param name="Thing">The thing.</param>
/// <param name="Place">The word, quotes included.</param>
/// <param name="MakesIt">Whether the thing is made here.</param>
internal readonly record struct NamingPlace(Named Thing, Place Place, bool MakesIt);

/// <summary>Finds what the words of files name, by the shapes of the files.</summary>
internal static class References
{
    /// <summary>All places of a file that name something.</summary>
    public static IEnumerable<NamingPlace> In(BookFile file)
    {
        // Read anew and not kept: a search goes through all files of a book.
        var tree = JsonTree.Parse(file.Source, new List<ReadingProblem>());
        foreach (var value in ShapedTree.Values(tree, FileShapes.Of(file.Kind)))
        {
            if (KindOfKey(value) is { } keyed)
            {
                yield return new NamingPlace(new Named(keyed, value.Node.Name), file.At(value.Node.NameSpan), MakesIt: keyed != NamedKind.Rule);
            }
            else if (KindOfValue(value.Property, value.Value) is { } kind && value.Node.Kind is JsonKind.String or JsonKind.Number)
            {
                bool makes = value.Property!.Name is "id" or "lot";
                yield return new NamingPlace(new Named(kind, value.Node.GetString()), file.At(value.Node.Span), makes);
            }
        }
    }

    /// <summary>What a value names; <see langword="null"/> where it names nothing.</summary>
    public static NamedKind? KindOfValue(PropertyShape? property, ValueShape? value) => value?.Form switch
    {
        ValueForm.Id when value.Definition != "id" => null,
        ValueForm.Id => property?.Name switch { "glass" => NamedKind.Glass, "meter" => NamedKind.Meter, _ => NamedKind.Item },
        ValueForm.Pattern when value.Definition == "ruleId" => NamedKind.Rule,
        ValueForm.TextOrNumber when property?.Name == "lot" => NamedKind.Lot,
        ValueForm.Text when property?.Name == "madeFrom" => NamedKind.Lot,
        ValueForm.Text when property?.Name is "vessel" or "in" => NamedKind.Vessel,
        _ => null,
    };

    /// <summary>The place at an offset that names something.</summary>
    public static NamingPlace? At(BookFile file, int offset)
    {
        foreach (var place in In(file))
        {
            if (place.Place.Span.Start <= offset && offset <= place.Place.Span.End) return place;
        }

        return null;
    }

    /// <summary>All places of a book that name a thing, by path; that which makes it among them.</summary>
    public static IEnumerable<NamingPlace> Of(OpenBook book, Named thing)
    {
        // Ids stand in files as they are; other words may not be ids, and names of properties are none that are mentioned.
        var files = thing.Kind == NamedKind.Item ? book.Live.Mentioning(thing.Id) : book.Linked.Files;
        return files.SelectMany(In).Where(p => p.Thing == thing);
    }

    private static NamedKind? KindOfKey(ShapedValue value)
    {
        if (value.Property is not null || value.Owner is not null || !value.Node.HasName) return null;
        return value.Node.Parent.Name switch
        {
            "glasses" => NamedKind.Glass,
            "meters" => NamedKind.Meter,
            "vessels" => NamedKind.Vessel,
            "rules" => NamedKind.Rule,
            _ => null,
        };
    }
}
