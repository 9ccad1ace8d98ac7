using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules;

namespace SpecLint.Live;

/// <summary>A file of a book as it is now.</summary>
/// <param name="Path">Path relative to the root of the book, with <c>/</c>.</param>
/// <param name="Source">Its text; <see langword="null"/> where the file is gone.</param>
public readonly record struct FileState(string Path, SourceFile? Source)
{
    /// <summary>What to take so that some files become others: those that differ, came or went, by path.</summary>
    /// <param name="before">The files that a book has.</param>
    /// <param name="now">The files that it is to have.</param>
    internal static List<FileState> Between(IEnumerable<SourceFile> before, IEnumerable<SourceFile> now)
    {
        var known = before.ToDictionary(f => f.Path, StringComparer.Ordinal);
        var states = new List<FileState>();
        foreach (var file in now)
        {
            bool isSame = known.TryGetValue(file.Path, out var old) && (old == file || old.Utf8.Span.SequenceEqual(file.Utf8.Span));
            known.Remove(file.Path);
            if (!isSame) states.Add(new FileState(file.Path, file));
        }

        states.AddRange(known.Keys.Select(path => new FileState(path, null)));
        states.Sort(static (a, b) => string.CompareOrdinal(a.Path, b.Path));
        return states;
    }
}

/// <summary>
/// A book that stays open while its files change. It takes changed files and checks again only what depends on them, with the
/// same findings, order and fingerprints as <see cref="Checker.Check"/> gives for the files as they are.
/// </summary>
/// <remarks>
/// <para>What depends on what is never listed. What a recipe comes to hangs on the files that it mentions, and on those that they
/// mention (<see cref="Mentions"/>). What else a rule looks at is noted while it runs (<see cref="BookReads"/>). Rules about the
/// book as a whole run after each change. A change of <c>bar.json</c>, or a circle of references, checks everything.</para>
/// <para>Not thread-safe. Results are handed out until the next change and are not to be kept.</para>
/// </remarks>
public sealed class LiveBook
{
    private readonly RuleSet rules;
    private readonly Rule[] all;
    private readonly Dictionary<string, LiveFile> files = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<string>> pathsById = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (List<Finding> Findings, List<Finding> Accepted)> inForce = new(StringComparer.Ordinal);
    private readonly HashSet<LiveFile> waiting = [];
    private BookInput input;
    private Dependents dependents = new();
    private FindingLedger ledger = new();
    private readonly Dictionary<BookRule, List<Finding>> ofTheBook = [];
    private readonly Queue<BookRule> bookRules = new();
    private Measures measures = Measures.Default;

    /// <summary>Opens a book. Nothing is checked yet.</summary>
    /// <exception cref="ArgumentException">A house's own rule has an id or a name that is not free.</exception>
    public LiveBook(BookInput input)
    {
        if (HouseRules.WhyNot(input.HouseRules) is { } reason) throw new ArgumentException(reason, nameof(input));
        this.input = input;
        all = [.. RuleRegistry.All, .. input.HouseRules];
        rules = new RuleSet(all, input.TriesCorrections);
        Read();
    }

    /// <summary>The book, linked, as it is now.</summary>
    public LinkedBook Book { get; private set; } = null!;

    /// <summary>What each recipe comes to.</summary>
    public ProfileSet Profiles { get; private set; } = null!;

    /// <summary>Whether everything that depends on the changes so far is checked.</summary>
    public bool IsSettled => waiting.Count == 0 && bookRules.Count == 0;

    /// <summary>Whether files wait to be checked; when none does, the rules about the book as a whole may still.</summary>
    public bool FilesWait => waiting.Count > 0;

    /// <summary>Takes files that changed, came or went.</summary>
    public void Take(IReadOnlyCollection<FileState> states)
    {
        var changes = new List<(LiveFile? Known, FileState State)>();
        foreach (var state in states.GroupBy(s => s.Path, StringComparer.Ordinal).Select(g => g.Last()))
        {
            var known = files.TryGetValue(state.Path, out var file) ? file : null;
            bool isSame = known is null
                ? state.Source is null
                : state.Source is not null && known.File.Source.Utf8.Span.SequenceEqual(state.Source.Utf8.Span);
            if (!isSame && FileKinds.Of(state.Path) is not null) changes.Add((known, state));
        }

        if (changes.Count == 0) return;
        if (changes.Any(c => FileKinds.Of(c.State.Path) == FileKind.Bar))
        {
            // Its measures are part of every amount, its settings of every rule.
            var sources = files.ToDictionary(f => f.Key, f => f.Value.File.Source, StringComparer.Ordinal);
            foreach (var (_, state) in changes)
            {
                if (state.Source is null) sources.Remove(state.Path);
                else sources[state.Path] = state.Source;
            }

            Reopen(input with { Files = [.. sources.Values] });
            return;
        }

        Follow(changes);
    }

    /// <summary>Reads everything anew: another day, other files.</summary>
    /// <param name="now">What to check now; the house's rules stay those it was opened with.</param>
    public void Reopen(BookInput now)
    {
        input = now with { HouseRules = input.HouseRules };
        Read();
    }

    /// <summary>
    /// Checks some of the files that wait; when none waits any more, the next of the rules about the book as a whole. Until that has
    /// run, what it found stays where it was in the text.
    /// </summary>
    /// <param name="first">Paths of files that come first; while one of them waits, nothing else is checked.</param>
    /// <param name="most">How many files at most, those that come first apart; with 0, no others and no rules about the whole.</param>
    /// <returns>Paths of the files whose findings may be other ones than before.</returns>
    public IReadOnlyCollection<string> CheckSome(IReadOnlyCollection<string> first, int most)
    {
        var batch = new List<LiveFile>();
        foreach (string path in first)
        {
            if (files.TryGetValue(path, out var file) && waiting.Remove(file)) batch.Add(file);
        }

        if (batch.Count == 0) batch.AddRange(waiting.Take(most));
        waiting.ExceptWith(batch);
        CheckFiles(batch);
        if (batch.Count == 0 && most > 0 && bookRules.Count > 0) CheckBook(bookRules.Dequeue());
        return PutInForce();
    }

    /// <summary>Checks everything that waits.</summary>
    /// <returns>Paths of the files whose findings may be other ones than before.</returns>
    public IReadOnlyCollection<string> Settle()
    {
        var changed = new HashSet<string>(StringComparer.Ordinal);
        while (!IsSettled) changed.UnionWith(CheckSome([], int.MaxValue));
        return changed;
    }

    /// <summary>The file at a path; <see langword="null"/> where there is none.</summary>
    public BookFile? Find(string path) => files.TryGetValue(path, out var file) ? file.File : null;

    /// <summary>The files whose text holds an id, by path.</summary>
    public IReadOnlyList<BookFile> Mentioning(string id) =>
        [.. dependents.Mentioning(id).Select(f => f.File).OrderBy(f => f.Source.Path, StringComparer.Ordinal)];

    /// <summary>Findings in force in a file, in order; those of the last time it was checked.</summary>
    public IReadOnlyList<Finding> FindingsIn(string path) => inForce.TryGetValue(path, out var found) ? found.Findings : [];

    /// <summary>The whole result, everything that waits checked.</summary>
    public CheckResult Result()
    {
        Settle();
        List<Finding> findings = [], accepted = [];
        foreach (var file in Book.Files)
        {
            if (!inForce.TryGetValue(file.Source.Path, out var found)) continue;
            findings.AddRange(found.Findings);
            accepted.AddRange(found.Accepted);
        }

        return new CheckResult(Book, Profiles, findings, accepted);
    }

    private void Read()
    {
        Book = Checker.ReadBook(input);
        measures = Book.Settings.Bar is { } bar ? Measures.For(bar?.Measures) : Measures.Default;
        Profiles = ProfileSet.Of(Book, input.Threads);
        var gone = new HashSet<string>(inForce.Keys, StringComparer.Ordinal);
        files.Clear();
        pathsById.Clear();
        waiting.Clear();
        dependents = new Dependents();
        ledger = new FindingLedger();
        ofTheBook.Clear();
        CheckBookAgain();
        var read = new LiveFile[Book.Files.Count];
        Workers.For(read.Length, input.Threads, i => read[i] = new LiveFile(Book.Files[i], Mentions.In(Book.Files[i].Source)));
        foreach (var file in read)
        {
            Know(file);
            waiting.Add(file);
            gone.Remove(file.Path);
        }

        foreach (string path in gone) ledger.Touch(path);
    }

    private void Follow(List<(LiveFile? Known, FileState State)> changes)
    {
        var fileChanges = new List<FileChange>(changes.Count);
        var changed = new HashSet<LiveFile>();
        var reads = new HashSet<BookRead> { BookReads.All };
        var ids = new HashSet<string>(StringComparer.Ordinal);
        bool hadCycles = Book.HasCycles;
        foreach (var (known, state) in changes)
        {
            var file = state.Source is null ? null : BookReader.Read(state.Source, FileKinds.Of(state.Path)!.Value, measures);
            var change = new FileChange(known?.File, file);
            fileChanges.Add(change);
            ledger.Touch(state.Path);
            foreach (var side in new[] { change.Old, change.New })
            {
                ids.UnionWith(FileChange.IdsOf(side));
                AddReads(side, reads);
            }

            if (!change.KeepsNames) reads.Add(new BookRead(BookReadKind.Names, ""));
            if (known is not null) Forget(known, isGone: file is null);
            if (file is null) continue;
            string[] mentions = Mentions.In(file.Source);
            var now = known ?? new LiveFile(file, mentions);
            now.File = file;
            now.Mentions = mentions;
            Know(now);
            changed.Add(now);
        }

        Book.Replace(fileChanges);
        var touched = new HashSet<LiveFile>(changed);
        if (hadCycles || Book.HasCycles)
        {
            // Which member of a circle goes without its part is settled by the order of the whole book.
            touched.UnionWith(files.Values);
            foreach (var file in files.Values) ids.UnionWith(FileChange.IdsOf(file.File));
        }
        else
        {
            dependents.AddAbove(ids, touched);
        }

        Book.HoldReadingsOf(touched.Select(t => t.File).OfType<Recipe>());
        Profiles.Renew(fileChanges, [.. touched.Select(t => t.File)], ids, input.Threads);
        foreach (string id in ids) reads.Add(new BookRead(BookReadKind.Item, id));
        foreach (var read in reads) dependents.AddReaders(read, touched);
        waiting.UnionWith(touched);
        foreach (var change in fileChanges) MoveFindings(change);
        CheckBookAgain();
    }

    private void CheckBookAgain()
    {
        bookRules.Clear();
        foreach (var rule in rules.BookRules) bookRules.Enqueue(rule);
    }

    /// <summary>
    /// Moves what the rules about the whole book found in a file to where it stands in the changed text. What stood in the part that
    /// changed is let go of: the rules run again soon.
    /// </summary>
    private void MoveFindings(FileChange change)
    {
        if (change.Old is not { } old || change.New is not { } file) return;
        ReadOnlySpan<byte> before = old.Source.Utf8.Span, now = file.Source.Utf8.Span;
        int same = 0, most = Math.Min(before.Length, now.Length), tail = 0;
        while (same < most && before[same] == now[same]) same++;
        while (tail < most - same && before[before.Length - 1 - tail] == now[now.Length - 1 - tail]) tail++;
        foreach (var rule in rules.BookRules)
        {
            if (!ofTheBook.TryGetValue(rule, out var found) || !found.Exists(f => f.Place.File == old.Source)) continue;
            var moved = new List<Finding>(found.Count);
            foreach (var finding in found)
            {
                var span = finding.Place.Span;
                if (finding.Place.File != old.Source) moved.Add(finding);
                else if (span.End <= same) moved.Add(finding.MovedTo(file.At(span)));
                else if (span.Start >= before.Length - tail)
                    moved.Add(finding.MovedTo(file.At(new TextSpan(span.Start + now.Length - before.Length, span.Length))));
            }

            ledger.Replace(found, moved);
            ofTheBook[rule] = moved;
        }
    }

    /// <summary>The looks that a file, as it was or as it is, may have changed the answer of.</summary>
    private static void AddReads(BookFile? file, HashSet<BookRead> reads)
    {
        if (file is null) return;
        reads.Add(BookReads.AllOf(file.Kind));
        if (file is Recipe recipe)
        {
            foreach (var line in LinkedBook.LinesOf(recipe))
            {
                if (line.Item.IsGiven) reads.Add(new BookRead(BookReadKind.Users, line.Item.Value));
            }
        }

        if (file is not Stock stock) return;
        foreach (var lot in stock.Lots)
        {
            if (lot.LotCode.IsGiven) reads.Add(new BookRead(BookReadKind.Lots, lot.LotCode.Value));
        }
    }

    private void Know(LiveFile file)
    {
        files[file.Path] = file;
        if (!pathsById.TryGetValue(file.File.Id, out var paths)) pathsById.Add(file.File.Id, paths = new(StringComparer.Ordinal));
        paths.Add(file.Path);
        dependents.AddMentions(file);
    }

    private void Forget(LiveFile file, bool isGone)
    {
        dependents.RemoveMentions(file);
        if (!isGone) return;
        dependents.SetReads(file, []);
        ledger.Replace(file.Found, []);
        files.Remove(file.Path);
        pathsById[file.File.Id].Remove(file.Path);
        waiting.Remove(file);
    }

    private void CheckFiles(List<LiveFile> batch)
    {
        var found = new List<Finding>[batch.Count];
        var reads = new HashSet<BookRead>[batch.Count];
        Workers.For(batch.Count, input.Threads, i =>
        {
            reads[i] = [];
            // As in a check of a large book: what is asked for again is made again.
            found[i] = BookReads.Noting(reads[i], () => rules.CheckFile(Book, Profiles, batch[i].File, letsGo: true));
            batch[i].File.ForgetTree();
        });
        for (int i = 0; i < batch.Count; i++)
        {
            ledger.Replace(batch[i].Found, found[i]);
            ledger.Touch(batch[i].Path);
            batch[i].Found = found[i];
            dependents.SetReads(batch[i], reads[i]);
        }
    }

    private void CheckBook(BookRule rule)
    {
        var found = new List<Finding>();
        rules.CheckBook(Book, Profiles, rule, found);
        ledger.Replace(ofTheBook.TryGetValue(rule, out var before) ? before : [], found);
        ofTheBook[rule] = found;
    }

    private HashSet<string> PutInForce()
    {
        var (changed, findings) = ledger.TakeChanged(
            path => files.TryGetValue(path, out var file) ? file.File.Id : null,
            id => pathsById.TryGetValue(id, out var paths) ? paths : []);
        foreach (var finding in findings) finding.Reset();
        var theirs = changed.Where(files.ContainsKey).Select(path => files[path].File).OrderBy(f => f.Source.Path, StringComparer.Ordinal).ToList();
        var (inForceNow, accepted) = Checker.Finish(Book, Profiles, rules, theirs, findings, input.Levels);
        foreach (string path in changed)
        {
            inForce.Remove(path);
            if (files.ContainsKey(path)) inForce.Add(path, ([], []));
        }

        // What the rules about the whole book found in a file that is gone goes when they run again.
        foreach (var finding in inForceNow)
        {
            if (inForce.TryGetValue(finding.Place.File.Path, out var its)) its.Findings.Add(finding);
        }

        foreach (var finding in accepted)
        {
            if (inForce.TryGetValue(finding.Place.File.Path, out var its)) its.Accepted.Add(finding);
        }

        return changed;
    }
}
