using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Changes;

/// <summary>Which corrections to apply.</summary>
public sealed record CorrectionChoice
{
    /// <summary>Whether to take every assured correction.</summary>
    public bool Assured { get; init; }

    /// <summary>Ids or names of rules whose corrections are taken, the proposed ones too.</summary>
    public IReadOnlyCollection<string> Rules { get; init; } = [];

    /// <summary>Whether to take every correction of every rule; for a preview.</summary>
    public bool All { get; init; }

    /// <summary>Ids of the recipes and files whose findings are meant; all where empty.</summary>
    public IReadOnlyCollection<string> Subjects { get; init; } = [];

    /// <summary>Paths of the files whose findings are meant; all where <see langword="null"/>.</summary>
    public Func<string, bool>? Includes { get; init; }

    /// <summary>Whether a correction stays although other findings came with it.</summary>
    public bool AdmitNew { get; init; }

    /// <summary>The correction of a finding that is meant: of its rule by name the best one, else the best assured one.</summary>
    public Correction? Of(Finding finding)
    {
        if (finding.Corrections.Count == 0) return null;
        if (Subjects.Count > 0 && !Subjects.Contains(finding.Subject)) return null;
        if (Includes is not null && !Includes(finding.Place.File.Path)) return null;
        bool named = All || Rules.Contains(finding.Rule.Id) || Rules.Contains(finding.Rule.Name);
        foreach (var correction in finding.Corrections)
        {
            if (correction.Edits.Count > 0 && (named || (Assured && correction.Grade == CorrectionGrade.Assured))) return correction;
        }

        return null;
    }
}

/// <summary>What became of a correction.</summary>
public enum CorrectionState
{
    /// <summary>It is made, and the finding is gone.</summary>
    Applied,

    /// <summary>Another correction put the finding right.</summary>
    RightAlready,

    /// <summary>Rolled back: the finding would still be there.</summary>
    NotGone,

    /// <summary>Rolled back: other findings would come.</summary>
    BringsNew,

    /// <summary>Rolled back: it would add an allergen, a hazard or a finding of a rule that guards against harm.</summary>
    BringsHarm,

    /// <summary>Rolled back: the edits cannot be made (they overlap, or lie outside the file).</summary>
    Unfit,
}

/// <summary>A correction and what became of it.</summary>
/// <param name="Finding">The finding, as it was before any correction.</param>
/// <param name="Correction">The correction.</param>
/// <param name="State">What became of it.</param>
/// <param name="Brought">Findings that it brings: those for which it was rolled back, which were admitted, or which it brought to light.</param>
/// <param name="Added">Allergens and hazards for which it was rolled back, or which it brought to light, each with its recipe.</param>
public sealed record CorrectionOutcome(
    Finding Finding, Correction Correction, CorrectionState State, IReadOnlyList<Finding> Brought, IReadOnlyList<string> Added)
{
    /// <summary>Whether the correction is in the new text.</summary>
    public bool IsMade => State == CorrectionState.Applied;
}

/// <summary>A file that corrections change.</summary>
/// <param name="Before">Its text before.</param>
/// <param name="After">Its text after.</param>
public sealed record CorrectedFile(SourceFile Before, SourceFile After);

/// <summary>What corrections come to.</summary>
/// <param name="Outcomes">Every correction that was meant, in the order of the findings.</param>
/// <param name="Files">The files that change, by path.</param>
/// <param name="Before">The check before.</param>
/// <param name="After">The check after.</param>
public sealed record CorrectionResult(
    IReadOnlyList<CorrectionOutcome> Outcomes, IReadOnlyList<CorrectedFile> Files, CheckResult Before, CheckResult After)
{
    /// <summary>Facts, allergens and findings before and after.</summary>
    public Comparison Comparison => comparison ??= Comparison.Of(Before, After);

    private Comparison? comparison;
}

/// <summary>
/// Applies corrections and checks what they come to: a correction stays only where its finding is gone and, unless told
/// otherwise, no other has come. One that changes what is made never adds an allergen, a hazard or a finding of a rule that
/// guards against harm; what one that changes only words brings to light was true before, and stays. It works on texts alone; writing them
/// is left to the caller.
/// </summary>
public static class Corrector
{
    /// <summary>Corrections that await one another are tried in so many rounds at most: each round settles at least one.</summary>
    private const int MostRounds = 10_000;

    /// <summary>Applies the corrections that are meant.</summary>
    /// <param name="input">The book.</param>
    /// <param name="choice">Which corrections.</param>
    public static CorrectionResult Apply(BookInput input, CorrectionChoice choice)
    {
        var first = Checker.Check(input);
        var run = new Run(input, choice, first);
        var asked = first.Findings.Flat().Select(f => (Finding: f, Correction: choice.Of(f))).Where(f => f.Correction is not null).ToList();
        asked.Sort(static (a, b) => FindingOrder.Instance.Compare(a.Finding, b.Finding));
        var waiting = asked.Select(a => a.Finding.Fingerprint).Distinct(StringComparer.Ordinal).ToList();
        for (int round = 0; waiting.Count > 0 && round < MostRounds; round++) waiting = run.Round(waiting);

        var outcomes = new List<CorrectionOutcome>();
        foreach (var (finding, correction) in asked)
        {
            var (state, made, brought, added) = run.StateOf(finding.Fingerprint);
            outcomes.Add(new CorrectionOutcome(finding, made ?? correction!, state, brought, added));
        }

        var files = new List<CorrectedFile>();
        var before = input.Files.ToDictionary(f => f.Path, StringComparer.Ordinal);
        foreach (var file in run.Files.OrderBy(f => f.Path, StringComparer.Ordinal))
        {
            if (before[file.Path] != file && !before[file.Path].Utf8.Span.SequenceEqual(file.Utf8.Span))
                files.Add(new CorrectedFile(before[file.Path], file));
        }

        return new CorrectionResult(outcomes, files, first, run.Result);
    }

    private sealed class Run(BookInput input, CorrectionChoice choice, CheckResult first)
    {
        private readonly Dictionary<string, (CorrectionState State, Correction? Made,
            IReadOnlyList<Finding> Brought, IReadOnlyList<string> Added)> states = new(StringComparer.Ordinal);

        private readonly Trials trials = new(input, first);

        public IReadOnlyList<SourceFile> Files => trials.Files;

        /// <summary>The check of the files as they stand.</summary>
        public CheckResult Result => trials.Result;

        public (CorrectionState State, Correction? Made, IReadOnlyList<Finding> Brought, IReadOnlyList<string> Added) StateOf(string fingerprint) =>
            states.TryGetValue(fingerprint, out var state) ? state : (CorrectionState.RightAlready, null, [], []);

        /// <summary>Tries corrections that do not conflict; hands back those that must wait for them.</summary>
        public List<string> Round(List<string> waiting)
        {
            var now = FindNow();
            var batch = new List<string>();
            var later = new List<string>();
            var taken = new EditSet();
            foreach (string fingerprint in waiting)
            {
                if (!now.TryGetValue(fingerprint, out var finding))
                {
                    states[fingerprint] = (CorrectionState.RightAlready, null, [], []);
                    continue;
                }

                // A correction that its finding no longer offers, since another put half of it right.
                if (choice.Of(finding) is not { } correction)
                {
                    states[fingerprint] = (CorrectionState.Unfit, null, [], []);
                    continue;
                }

                if (taken.TryAdd(correction)) batch.Add(fingerprint);
                else later.Add(fingerprint);
            }

            Try(batch);
            return later;
        }

        /// <summary>Applies corrections together; where that fails, the halves one after the other.</summary>
        private void Try(List<string> batch)
        {
            if (batch.Count == 0) return;
            var now = FindNow();
            var corrections = new List<(string Fingerprint, Correction Correction)>();
            foreach (string fingerprint in batch)
            {
                if (!now.TryGetValue(fingerprint, out var finding)) states[fingerprint] = (CorrectionState.RightAlready, null, [], []);
                else if (choice.Of(finding) is { } correction) corrections.Add((fingerprint, correction));
                else states[fingerprint] = (CorrectionState.Unfit, null, [], []);
            }

            if (corrections.Count == 0) return;
            var made = Make(corrections.ConvertAll(c => c.Correction));
            if (made is null)
            {
                if (corrections.Count == 1) states[corrections[0].Fingerprint] = (CorrectionState.Unfit, corrections[0].Correction, [], []);
                else Halves(corrections);
                return;
            }

            var (result, added) = trials.Try(made);
            var after = result.Fingerprints();
            bool stays = corrections.Exists(c => after.Contains(c.Fingerprint));
            var brought = result.Findings.Flat().Where(f => !now.ContainsKey(f.Fingerprint)).ToList();
            bool keepsAll = corrections.TrueForAll(c => c.Correction.KeepsTheThing);
            bool harms = !keepsAll && (added.Count > 0 || brought.Exists(f => f.Rule.Safety));
            bool more = !choice.AdmitNew && brought.Exists(f => !(keepsAll && f.Rule.Safety));
            if (stays || harms || more)
            {
                if (corrections.Count > 1)
                {
                    Part(
                        corrections,
                        c => after.Contains(c.Fingerprint)
                            || brought.Exists(b => b.Subject == now[c.Fingerprint].Subject)
                            || added.Exists(a => a.Recipe == now[c.Fingerprint].Subject));
                    return;
                }

                var state = stays ? CorrectionState.NotGone : harms ? CorrectionState.BringsHarm : CorrectionState.BringsNew;
                states[corrections[0].Fingerprint] = (state, corrections[0].Correction, brought, added.ConvertAll(a => a.ToString()));
                return;
            }

            trials.Keep();
            foreach (var (fingerprint, correction) in corrections)
            {
                bool alone = corrections.Count == 1;
                string subject = now[fingerprint].Subject;
                states[fingerprint] = (
                    CorrectionState.Applied,
                    correction,
                    alone ? brought : brought.FindAll(f => f.Subject == subject),
                    added.FindAll(a => alone || a.Recipe == subject).ConvertAll(a => a.ToString()));
            }
        }

        /// <summary>First those that are not to blame, so that the others can be tried against what they leave.</summary>
        private void Part(
            List<(string Fingerprint, Correction Correction)> corrections,
            Func<(string Fingerprint, Correction Correction), bool> isSuspect)
        {
            var suspects = corrections.FindAll(c => isSuspect(c));
            if (suspects.Count == 0 || suspects.Count == corrections.Count)
            {
                Halves(corrections);
                return;
            }

            Try(corrections.FindAll(c => !isSuspect(c)).ConvertAll(c => c.Fingerprint));
            Try(suspects.ConvertAll(c => c.Fingerprint));
        }

        private void Halves(List<(string Fingerprint, Correction Correction)> corrections)
        {
            int half = corrections.Count / 2;
            Try(corrections.GetRange(0, half).ConvertAll(c => c.Fingerprint));
            Try(corrections.GetRange(half, corrections.Count - half).ConvertAll(c => c.Fingerprint));
        }

        private Dictionary<string, Finding> FindNow() => Comparison.ByFingerprint(trials.Standing.Findings.Flat());

        /// <summary>The files with corrections made; <see langword="null"/> where they cannot be.</summary>
        private List<SourceFile>? Make(List<Correction> corrections)
        {
            var byPath = corrections.SelectMany(c => c.Edits)
                .GroupBy(e => e.Place.File.Path, StringComparer.Ordinal)
                .ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
            var files = new List<SourceFile>(Files.Count);
            foreach (var file in Files)
            {
                if (!byPath.TryGetValue(file.Path, out var edits))
                {
                    files.Add(file);
                    continue;
                }

                byPath.Remove(file.Path);
                try
                {
                    files.Add(new SourceFile(file.Path, TextEdits.Apply(file, edits)));
                }
                catch (ArgumentException)
                {
                    return null;
                }
            }

            // An edit of a file that is not of the book (the catalogue's own) cannot be made.
            return byPath.Count == 0 ? files : null;
        }
    }

    /// <summary>Edits that do not conflict, by file.</summary>
    private sealed class EditSet
    {
        private readonly Dictionary<string, List<TextEdit>> byPath = new(StringComparer.Ordinal);

        public bool TryAdd(Correction correction)
        {
            foreach (var edit in correction.Edits)
            {
                if (byPath.TryGetValue(edit.Place.File.Path, out var known) && known.Exists(k => TextEdits.Conflict(k, edit))) return false;
            }

            foreach (var edit in correction.Edits)
            {
                if (!byPath.TryGetValue(edit.Place.File.Path, out var known)) byPath.Add(edit.Place.File.Path, known = []);
                known.Add(edit);
            }

            return true;
        }
    }
}
