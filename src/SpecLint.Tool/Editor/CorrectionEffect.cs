using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Editor;

/// <summary>What a correction does to the figures of its recipe, in a few words for a title.</summary>
internal static class CorrectionEffect
{
    /// <summary>Figures that are named, at most.</summary>
    private const int MostFacts = 3;

    private static readonly Fact[] Told = [Fact.Abv, Fact.Sugar, Fact.Acid, Fact.ServedVolume, Fact.Alcohol, Fact.Ph, Fact.Life];

    /// <summary>The figures before and after, empty where none changes by as much as is shown.</summary>
    public static string Of(OpenBook book, Correction correction)
    {
        string[] paths = [.. correction.Edits.Select(e => e.Place.File.Path).Distinct(StringComparer.Ordinal)];
        if (paths is not [var path] || book.Live.Find(path) is not Recipe recipe) return "";

        // Only what the recipe is made of is read again.
        var files = BookPart.Below(book, recipe).ToDictionary(f => f.Source.Path, f => f.Source, StringComparer.Ordinal);
        if (files.Count > BookPart.Most) return "";
        files[path] = new SourceFile(path, TextEdits.Apply(recipe.Source, correction.Edits));
        var (changed, profiles) = Checker.Profile(new BookInput([.. files.Values], book.Day) { Threads = 1 });
        if (changed.Recipes.FirstOrDefault(r => r.Source.Path == path) is not { } after) return "";
        RecipeProfile before = book.Profiles.Of(recipe), now = profiles.Of(after);
        var told = new List<string>();
        foreach (var fact in Told)
        {
            FactValue was = before.Get(fact), becomes = now.Get(fact);
            if (!was.IsKnown || !becomes.IsKnown || double.IsNaN(was.Value) || double.IsNaN(becomes.Value)) continue;
            string unit = Say.Unit(fact, now.IsSolid),
                from = DisplayUnits.Metric.With(was.Value, unit),
                to = DisplayUnits.Metric.With(becomes.Value, unit);
            if (from != to) told.Add($"{FactNames.Name(fact)} {from} → {to}");
        }

        return string.Join(", ", told.Take(MostFacts));
    }
}

/// <summary>A part of a book that stands alone.</summary>
internal static class BookPart
{
    /// <summary>Files of a part that is looked at in passing.</summary>
    public const int Most = 60;

    /// <summary>A recipe, all that it is made of, and the bar's file.</summary>
    public static IEnumerable<BookFile> Below(OpenBook book, BookFile file)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var waiting = new Stack<BookFile>([file]);
        if (book.Linked.Settings.Bar is { } bar) waiting.Push(bar);
        while (waiting.TryPop(out var next))
        {
            if (!seen.Add(next.Source.Path)) continue;
            yield return next;
            foreach (var named in References.In(next).Where(n => n.Thing.Kind == NamedKind.Item))
            {
                if (book.Linked.Resolve(named.Thing.Id) is { IsBuiltIn: false } item) waiting.Push(item.File);
            }
        }
    }
}
