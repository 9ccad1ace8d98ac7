using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Findings;

/// <summary>What a check answered; a check that holds makes no finding.</summary>
public enum Answer
{
    /// <summary>The whole range is on the wrong side of the limit.</summary>
    Broken,

    /// <summary>The range straddles the limit, or an input is missing.</summary>
    NotShown,
}

/// <summary>A number or a text that a finding rests on.</summary>
/// <param name="Name">What it is: a fact's name, an input, a limit.</param>
/// <param name="Value">Its value, <see cref="double.NaN"/> where it is a text.</param>
/// <param name="Low">Low end of its range; equal to <paramref name="Value"/> where exact.</param>
/// <param name="High">High end of its range.</param>
/// <param name="Unit">Unit in UCUM; empty where there is none.</param>
/// <param name="Source">Source of a limit or a value from the catalogue; <see langword="null"/> for a computed one.</param>
/// <param name="Text">The text, where it is one.</param>
/// <param name="Place">Where it stands, also in another file.</param>
public sealed record Evidence(
    string Name,
    double Value,
    double Low,
    double High,
    string Unit,
    string? Source = null,
    string? Text = null,
    Place? Place = null);

/// <summary>A further place of a finding, with what is there.</summary>
/// <param name="Place">Where.</param>
/// <param name="Message">What is there.</param>
public sealed record RelatedPlace(Place Place, string Message);

/// <summary>How sure a correction is.</summary>
public enum CorrectionGrade
{
    /// <summary>The same drink, better written.</summary>
    Assured,

    /// <summary>Changes what is made, sold or declared: applied only by name.</summary>
    Proposed,
}

/// <summary>A replacement of some bytes of a file.</summary>
/// <param name="Place">What is replaced; an empty span inserts.</param>
/// <param name="NewText">The text that takes its place.</param>
public sealed record TextEdit(Place Place, string NewText);

/// <summary>A correction: edits that put a finding right.</summary>
/// <param name="Grade">How sure.</param>
/// <param name="Description">What it does, in one sentence.</param>
/// <param name="Edits">The edits; they do not overlap.</param>
public sealed record Correction(CorrectionGrade Grade, string Description, IReadOnlyList<TextEdit> Edits)
{
    /// <summary>
    /// Whether only what is said of a thing changes, not the thing: its spelling, or a date that comes sooner. A harm finding that
    /// comes with such a correction was true before, so that the correction stays and says so.
    /// </summary>
    public bool KeepsTheThing { get => keepsTheThing || Grade == CorrectionGrade.Assured; init => keepsTheThing = value; }

    private readonly bool keepsTheThing;

    /// <summary>The one correction that changes what is made, sold or declared; none where an edit of it is missing.</summary>
    /// <param name="description">What it does, in one sentence.</param>
    /// <param name="edits">The edits; <see langword="null"/> stands for one that cannot be made.</param>
    public static IReadOnlyList<Correction> Propose(string description, params IReadOnlyList<TextEdit?> edits)
    {
        var made = new List<TextEdit>(edits.Count);
        foreach (var edit in edits)
        {
            if (edit is null) return [];
            made.Add(edit);
        }

        return made.Count == 0 ? [] : [new Correction(CorrectionGrade.Proposed, description, made)];
    }

    /// <summary>Corrections without those that would write nothing: an amount of 0, or one that is no number.</summary>
    internal static IReadOnlyList<Correction> Sensible(IReadOnlyList<Correction> corrections)
    {
        for (int i = 0; i < corrections.Count; i++)
        {
            if (corrections[i].WritesNothing) return [.. corrections.Where(c => !c.WritesNothing)];
        }

        return corrections;
    }

    private bool WritesNothing
    {
        get
        {
            foreach (var edit in Edits)
            {
                string text = edit.NewText;
                if (text.StartsWith("\"0 ", StringComparison.Ordinal)
                    || text.StartsWith("\"unknown ", StringComparison.Ordinal)
                    || text.StartsWith("\"countless ", StringComparison.Ordinal))
                    return true;
            }

            return false;
        }
    }
}

/// <summary>An acceptance that covers a finding (a SARIF suppression).</summary>
/// <param name="Justification">The reason.</param>
/// <param name="Until">The last day, if one is given.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Suppression(string Justification, CalendarDate? Until, Place Place);

/// <summary>One thing that a rule found.</summary>
public sealed class Finding
{
    /// <summary>A finding of a rule.</summary>
    public Finding(RuleInfo rule) => Rule = rule;

    /// <summary>The rule.</summary>
    public RuleInfo Rule { get; }

    /// <summary>The level in force; the engine sets it from the settings.</summary>
    public Level Level { get; internal set; }

    /// <summary>The level that it has without the settings of the bar or of the host.</summary>
    internal Level LevelBefore => AskedLevel ?? Rule.Level;

    /// <summary>
    /// What the bar says, with a reason and a last day, about a rule that guards against harm where it lowers its level or
    /// switches it off; what is switched off keeps its level and is among the accepted.
    /// </summary>
    public RuleLevel? LoweredBy { get; internal set; }

    /// <summary>
    /// A level other than the rule's own, which the rule may ask for case by case (a
    /// limit known from memory asks for a warning at most).
    /// </summary>
    public Level? AskedLevel { get; init; }

    /// <summary>Broken or not shown.</summary>
    public Answer Answer { get; init; } = Answer.Broken;

    /// <summary>
    /// Days from the day made, that day counted, for which the limit that this finding breaks still allows what it is about;
    /// <see langword="null"/> where no time is allowed until it is put right.
    /// </summary>
    public double? AllowedDays { get; init; }

    /// <summary>Where; unless given, the name of the file that the rule was given.</summary>
    public Place Place { get => place; init => place = value; }

    /// <summary>JSON path by item name, stable under reordering, e.g. <c>ingredients[lime-juice].amount</c>.</summary>
    public string Path { get => path; init => path = value; }

    /// <summary>Place and path in one, as the context gives them for a value.</summary>
    public Spot At { get => new(place, path); init => (place, path) = (value.Place, value.Path); }

    /// <summary>
    /// Id of the recipe or file that it is about; unless given, that of the file that
    /// the rule was given, else of the file of its place.
    /// </summary>
    public string Subject { get => subject; init => subject = value; }

    /// <summary>Tells apart two findings of one rule at one path; part of the fingerprint.</summary>
    public string Key { get => key; init => key = value; }

    /// <summary>One sentence with the computed number, its range, the limit and its source.</summary>
    public required string Message { get; init; }

    /// <summary>One sentence with what to do.</summary>
    public string Advice { get; init; } = "";

    /// <summary>A caution, where someone can be hurt.</summary>
    public string? Caution { get; init; }

    /// <summary>Facts, inputs and limits used.</summary>
    public IReadOnlyList<Evidence> Evidence { get; init; } = [];

    /// <summary>Further places.</summary>
    public IReadOnlyList<RelatedPlace> Related { get; init; } = [];

    /// <summary>Corrections, the best first.</summary>
    /// <remarks>One that would write an amount of nothing, or none at all, is left out: it is the end of a sum that has no answer.</remarks>
    public IReadOnlyList<Correction> Corrections { get => corrections; init => corrections = Correction.Sensible(value); }

    private IReadOnlyList<Correction> corrections = [];

    /// <summary>The acceptance that covers it, if any.</summary>
    public Suppression? Suppression { get; internal set; }

    /// <summary>Findings that this one causes: shown beneath it, not beside it.</summary>
    public IReadOnlyList<Finding> Folded { get; internal set; } = [];

    /// <summary>Versioned fingerprint from rule, subject, path and key: it survives reordering and reformatting.</summary>
    public string Fingerprint => fingerprint ??= Fingerprints.Of(this);

    private string? fingerprint;

    private Place place;
    private string path = "";
    private string subject = "";
    private string key = "";

    /// <summary>Fills in what the rule left to the context.</summary>
    /// <param name="file">The file that the rule was given; <see langword="null"/> for a rule about the whole book.</param>
    /// <exception cref="InvalidOperationException">The finding is about the book and has no place.</exception>
    internal void Complete(BookFile? file)
    {
        if (place.File is null)
        {
            if (file is null) throw new InvalidOperationException($"A finding of {Rule.Id} has no place.");
            place = file.Head;
            if (path.Length == 0) path = "name";
        }

        if (subject.Length == 0) subject = file?.Id ?? FileKinds.IdOf(place.File.Path);
    }

    /// <summary>Says that one of the same rule, path and key came before, so that the two stay apart.</summary>
    /// <param name="nth">Which of them it is, from 2.</param>
    internal void IsAgain(int nth) => key = key.Length == 0 ? nth.ToString(System.Globalization.CultureInfo.InvariantCulture) : $"{key} {nth}";

    /// <summary>The same finding at another place.</summary>
    internal Finding MovedTo(Place there)
    {
        var copy = (Finding)MemberwiseClone();
        copy.place = there;
        return copy;
    }

    /// <summary>Adds to each correction what follows from it.</summary>
    internal void Amend(Func<Correction, Correction> amended)
    {
        for (int i = 0; i < corrections.Count; i++)
        {
            if (amended(corrections[i]) is var with && !ReferenceEquals(with, corrections[i]))
                corrections = [.. corrections.Take(i), with, .. corrections.Skip(i + 1)];
        }
    }

    /// <summary>Lets go of the corrections that do not hold.</summary>
    internal void KeepCorrections(Func<Correction, bool> holds)
    {
        for (int i = 0; i < corrections.Count; i++)
        {
            if (holds(corrections[i])) continue;
            List<Correction> kept = [.. corrections.Take(i)];
            for (int later = i + 1; later < corrections.Count; later++)
            {
                if (holds(corrections[later])) kept.Add(corrections[later]);
            }

            corrections = kept;
            return;
        }
    }

    /// <summary>As the rule made it: without what the engine has set since.</summary>
    internal void Reset()
    {
        Suppression = null;
        LoweredBy = null;
        Folded = [];
    }

    /// <summary>The same finding with other findings beneath it.</summary>
    internal Finding WithFolded(IReadOnlyList<Finding> folded)
    {
        var copy = (Finding)MemberwiseClone();
        copy.Folded = folded;
        return copy;
    }
}
