using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.RecipeText;
using SpecLint.Service;

namespace SpecLint.Bench;

/// <summary>What was understood of what somebody is writing, and what the check of the book says with it.</summary>
public sealed class BenchReading
{
    private readonly RecipeDraft? draft;

    internal BenchReading(
        BenchEntry entry, IReadOnlyList<WrittenRecipe> recipes, WrittenRecipe? written, RecipeDraft? draft, SourceFile? file,
        BookInput input, CheckResult result)
    {
        Entry = entry;
        Recipes = recipes;
        Written = written;
        this.draft = draft;
        File = file;
        Input = input;
        Result = result;
        Verdicts = Verdicts.Of(result);
        Recipe = file is null ? null : result.Book.Files.FirstOrDefault(f => f.Source.Path == file.Path) as Recipe;
    }

    /// <summary>What is being written.</summary>
    public BenchEntry Entry { get; }

    /// <summary>The recipes of the text; empty where it is a file.</summary>
    public IReadOnlyList<WrittenRecipe> Recipes { get; }

    /// <summary>The recipe that this is about; <see langword="null"/> where the text is a file or holds none.</summary>
    public WrittenRecipe? Written { get; }

    /// <summary>The file as it is checked; <see langword="null"/> where there is nothing to check.</summary>
    public SourceFile? File { get; }

    /// <summary>The recipe of the file; <see langword="null"/> where the file is none.</summary>
    public Recipe? Recipe { get; }

    /// <summary>What was checked.</summary>
    internal BookInput Input { get; }

    /// <summary>The check.</summary>
    public CheckResult Result { get; }

    /// <summary>The verdicts of the check.</summary>
    public Verdicts Verdicts { get; }

    /// <summary>Findings about the file, in total order.</summary>
    public IEnumerable<Finding> Findings => File is null ? [] : Result.Findings.Where(f => f.Place.File.Path == File.Path);

    /// <summary>Findings of rules that guard against harm about what goes into it.</summary>
    public IEnumerable<Finding> FindingsBelow =>
        Recipe is null ? [] : Verdicts.InTreeOf(Recipe).Where(f => f.Rule.Safety && f.Place.File.Path != File!.Path).Distinct();

    /// <summary>The steps of a line of the method.</summary>
    /// <param name="number">Number of the line.</param>
    public IReadOnlyList<WrittenStep> StepsOf(int number) => draft is not null && draft.Steps.TryGetValue(number, out var steps) ? steps : [];

    /// <summary>The line of the typed text that a line of the file comes from, from 1; 0 where it is of the whole.</summary>
    /// <param name="place">A place of the file.</param>
    public int LineOf(Place place)
    {
        int line = place.Start.Line;
        if (draft is null) return line;
        return line <= draft.Origins.Count ? draft.Origins[line - 1] : 0;
    }
}
