using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules;

namespace SpecLint;

/// <summary>What to check.</summary>
/// <param name="Files">The files of the book, in any order; paths are relative to its root.</param>
/// <param name="On">The date of the run.</param>
public sealed record BookInput(IReadOnlyList<SourceFile> Files, CalendarDate On)
{
    /// <summary>Rules of a bar's own, beside the built-in ones; <see cref="Rules.HouseRules.WhyNot"/> says which can run.</summary>
    public IReadOnlyList<Rule> HouseRules { get; init; } = [];

    /// <summary>Checks of the bar's own schemas; <see langword="null"/> where none are configured.</summary>
    public IHouseSchemaCheck? HouseSchemas { get; init; }

    /// <summary>Levels by rule id that stand over those of the bar's own file, for a host with settings of its own.</summary>
    public IReadOnlyDictionary<string, Level> Levels { get; init; } = new Dictionary<string, Level>();

    /// <summary>
    /// The book before the change that is looked at: readings that stayed as they were while their recipe changed then do not
    /// count. <see langword="null"/> where no change is looked at.
    /// </summary>
    public LinkedBook? Earlier { get; init; }

    /// <summary>
    /// Whether the profiles of drinks are held after their check. Where nothing looks at the numbers of all drinks afterwards, letting
    /// go of them saves a third of the memory of a large book; the profile of one that is asked for is made anew.
    /// </summary>
    public bool KeepsProfiles { get; init; } = true;

    /// <summary>Whether a correction is tried on its file before it is offered; a test of what comes behind that may do without.</summary>
    internal bool TriesCorrections { get; init; } = true;

    /// <summary>
    /// Which files to check, by path, where not all are looked at: the others are read for what these are made of, and no rule runs
    /// over them. What is found in the files that are checked does not depend on it.
    /// </summary>
    public Func<string, bool>? Only { get; init; }

    /// <summary>Number of threads; 0 takes one a processor.</summary>
    public int Threads { get; init; }

    /// <summary>
    /// Called for progress, from any thread: with the number of files read so far, and then with the number of all files and that
    /// of those checked so far.
    /// </summary>
    public Action<int>? Progress { get; init; }
}

/// <summary>What a check found.</summary>
/// <param name="Book">The book, linked.</param>
/// <param name="Profiles">What each recipe comes to.</param>
/// <param name="Findings">Findings in force, in total order; folded ones stand under their cause.</param>
/// <param name="Accepted">Findings that an acceptance covers, in total order.</param>
public sealed record CheckResult(LinkedBook Book, ProfileSet Profiles, IReadOnlyList<Finding> Findings, IReadOnlyList<Finding> Accepted)
{
    /// <summary>The highest level among the findings in force.</summary>
    public Level Highest => Findings.Count == 0 ? Level.None : Findings.Max(f => f.Level);
}

/// <summary>Runs the whole way: read, bind, link, profile, rules, acceptances.</summary>
public static class Checker
{
    /// <summary>Reads and links a book and computes its profiles, without running rules.</summary>
    public static (LinkedBook Book, ProfileSet Profiles) Profile(BookInput input)
    {
        var book = ReadBook(input);
        return (book, ProfileSet.Of(book, input.Threads));
    }

    /// <summary>Checks a book.</summary>
    /// <exception cref="ArgumentException">A house's own rule has an id or a name that is not free.</exception>
    public static CheckResult Check(BookInput input)
    {
        if (HouseRules.WhyNot(input.HouseRules) is { } reason) throw new ArgumentException(reason, nameof(input));
        var book = ReadBook(input);
        var profiles = ProfileSet.Of(book, input.Threads);
        var rules = new RuleSet(RuleRegistry.All.Concat(input.HouseRules), input.TriesCorrections);
        var files = ToCheck(book, input.Only);
        var perFile = new List<Finding>[files.Count];
        int done = input.Files.Count;
        Workers.For(files.Count, input.Threads, i =>
        {
            perFile[i] = rules.CheckFile(book, profiles, files[i], letsGo: !input.KeepsProfiles);
            files[i].ForgetTree();
            if (input.Progress is { } progress) progress(Interlocked.Increment(ref done));
        });
        var all = new List<Finding>();
        foreach (var list in perFile) all.AddRange(list);
        rules.CheckBook(book, profiles, all);
        if (input.Only is not null) LeaveOut(files, all);
        var (findings, accepted) = Finish(book, profiles, rules, files, all, input.Levels);
        return new CheckResult(book, profiles, findings, accepted);
    }

    /// <summary>
    /// The files to check: those that are asked for, and those that share an id with
    /// one of them, since findings of one subject meet.
    /// </summary>
    private static IReadOnlyList<BookFile> ToCheck(LinkedBook book, Func<string, bool>? only)
    {
        if (only is null) return book.Files;
        var ids = new HashSet<string>(book.Files.Where(f => only(f.Source.Path)).Select(f => f.Id), StringComparer.Ordinal);
        return [.. book.Files.Where(f => ids.Contains(f.Id))];
    }

    /// <summary>Leaves out what rules about the whole book found in other files.</summary>
    private static void LeaveOut(IReadOnlyList<BookFile> files, List<Finding> all)
    {
        var sources = new HashSet<SourceFile>(files.Select(f => f.Source));
        all.RemoveAll(f => !sources.Contains(f.Place.File));
    }

    /// <summary>
    /// Makes of what the rules found what is in force: levels, acceptances, consequences under their causes, order. Findings meet
    /// only where they stand in one file or have one subject: a part of a book that leaves out neither of another gives the same
    /// as the whole.
    /// </summary>
    /// <param name="book">The book.</param>
    /// <param name="profiles">Its profiles.</param>
    /// <param name="rules">The rules of the run.</param>
    /// <param name="files">The files whose acceptances count.</param>
    /// <param name="all">What the rules found in them; the list is used up.</param>
    /// <param name="levels">Levels that stand over those of the bar.</param>
    internal static (List<Finding> Findings, List<Finding> Accepted) Finish(
        LinkedBook book, ProfileSet profiles, RuleSet rules, IReadOnlyList<BookFile> files, List<Finding> all,
        IReadOnlyDictionary<string, Level> levels)
    {
        SetLevels(all, book, levels);

        // An acceptance of a rule that is switched off is of use as long as there is something to accept.
        var accepted = Acceptances.Apply(book, files, all, rules.Find, out var uses);
        accepted.RemoveAll(f => f.Level == Level.None);
        accepted.AddRange(Acceptances.SwitchOff(book.Settings.Bar, all));
        var later = new List<Finding>();
        rules.CheckAcceptances(book, profiles, later, uses);
        SetLevels(later, book, levels);
        accepted.AddRange(Acceptances.SwitchOff(book.Settings.Bar, later));
        all.AddRange(later);

        all = Folding.Fold(all);
        all.Sort(FindingOrder.Instance);
        accepted.Sort(FindingOrder.Instance);
        return (all, accepted);
    }

    internal static LinkedBook ReadBook(BookInput input)
    {
        // The bar comes first: its measures are needed to read quantities.
        var sources = input.Files.OrderBy(f => f.Path, StringComparer.Ordinal).ToArray();
        var barSource = sources.Where(f => FileKinds.Of(f.Path) == FileKind.Bar).OrderBy(f => f.Path.Length).FirstOrDefault();
        var bar = barSource is null ? null : (Bar)BookReader.Read(barSource, FileKind.Bar, Measures.Default);
        var measures = bar is null ? Measures.Default : Measures.For(bar?.Measures);
        var files = new BookFile?[sources.Length];
        int done = 0;
        Workers.For(sources.Length, input.Threads, i =>
        {
            var kind = FileKinds.Of(sources[i].Path);
            files[i] = sources[i] == barSource ? bar : kind is null ? null : BookReader.Read(sources[i], kind.Value, measures);
            input.Progress?.Invoke(Interlocked.Increment(ref done));
        });
        var book = new LinkedBook(files.OfType<BookFile>(), new Settings(bar), input.On) { HouseSchemas = input.HouseSchemas };
        if (input.Earlier is not null) book.HoldReadings(input.Earlier);
        return book;
    }

    /// <summary>
    /// Sets the levels in force: those of the host, else those of the bar, else the rule's own. Of a rule that guards against
    /// harm the bar lowers a level only with a reason and a last day, and a host, which can give neither, not at all.
    /// </summary>
    private static void SetLevels(List<Finding> findings, LinkedBook book, IReadOnlyDictionary<string, Level> over)
    {
        foreach (var finding in findings)
        {
            var before = finding.LevelBefore;
            finding.Level = before;
            if (book.Settings.LevelOf(finding.Rule.Id) is { } set && set.Holds(finding.Rule.Safety, before, book.On))
            {
                if (finding.Rule.Safety && set.Level < before) finding.LoweredBy = set;
                if (finding.LoweredBy is not { Level: Level.None }) finding.Level = set.Level;
            }

            if (over.TryGetValue(finding.Rule.Id, out var level) && (!finding.Rule.Safety || level > finding.Level)) finding.Level = level;
        }
    }
}
