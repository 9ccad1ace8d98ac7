using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Live;
using SpecLint.Reading;

namespace SpecLint.Changes;

/// <summary>
/// Changes of a book that are tried one after the other, and kept or not. The first is checked anew, since most often it is the only
/// one; the others on a book that stays open, of which only what depends on a change is checked again.
/// </summary>
internal sealed class Trials(BookInput input, CheckResult first)
{
    private LiveBook? live;
    private CheckResult? result = first;
    private (IReadOnlyList<SourceFile> Files, CheckResult? Result) tried = ([], null);
    private IReadOnlyList<SourceFile> inLive = [];
    private bool isTried;

    /// <summary>The files as they stand.</summary>
    public IReadOnlyList<SourceFile> Files { get; private set; } = input.Files;

    /// <summary>The check of the files as they stand, to be kept.</summary>
    public CheckResult Result => result ??= Fresh(Files);

    /// <summary>The check of the files as they stand; good until the next trial.</summary>
    public CheckResult Standing => live is null ? Result : InLive(Files);

    /// <summary>Tries other files.</summary>
    /// <returns>Their check, good until the next trial, and what recipes would have that they have not as they stand.</returns>
    public (CheckResult Result, List<Harm> Added) Try(IReadOnlyList<SourceFile> files)
    {
        if (!isTried)
        {
            isTried = true;
            tried = (files, Fresh(files));
            return (tried.Result!, Harm.Added(Result, tried.Result!));
        }

        if (live is null)
        {
            live = new LiveBook(input with { Files = Files, Progress = null });
            inLive = Files;
        }

        var before = InLive(Files);
        var isTouched = Touched(FileState.Between(Files, files));
        var known = Harm.Of(before, isTouched);
        tried = (files, null);
        var after = InLive(files);
        return (after, Harm.Added(known, after, isTouched));
    }

    /// <summary>Lets the files that were tried last stand.</summary>
    public void Keep() => (Files, result) = tried;

    private CheckResult Fresh(IReadOnlyList<SourceFile> files) => Checker.Check(input with { Files = files, Progress = null });

    private CheckResult InLive(IReadOnlyList<SourceFile> files)
    {
        live!.Take(FileState.Between(inLive, files));
        inLive = files;
        return live.Result();
    }

    /// <summary>The recipes that a change reaches: those that change, and all that name them, through everything between.</summary>
    private Func<Recipe, bool> Touched(List<FileState> changes)
    {
        if (changes.Exists(c => FileKinds.Of(c.Path) == FileKind.Bar)) return static _ => true;
        var paths = new HashSet<string>(changes.Select(c => c.Path), StringComparer.Ordinal);
        var waiting = new Stack<BookFile>(paths.Select(live!.Find).OfType<BookFile>());
        while (waiting.Count > 0)
        {
            foreach (string id in FileChange.IdsOf(waiting.Pop()))
            {
                foreach (var file in live.Mentioning(id))
                {
                    if (paths.Add(file.Source.Path)) waiting.Push(file);
                }
            }
        }

        return recipe => paths.Contains(recipe.Source.Path);
    }
}
