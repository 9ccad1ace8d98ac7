using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Service;

namespace SpecLint.Rules;

/// <summary>What every rule is given: the linked book, the settings and a place for findings.</summary>
public class BookContext
{
    private readonly List<Finding> findings;

    internal BookContext(LinkedBook book, ProfileSet profiles, List<Finding> findings)
    {
        Book = book;
        Profiles = profiles;
        this.findings = findings;
    }

    /// <summary>The book, linked.</summary>
    public LinkedBook Book { get; }

    /// <summary>The settings in force.</summary>
    public Settings Settings => Book.Settings;

    /// <summary>The profiles of all recipes.</summary>
    public ProfileSet Profiles { get; }

    /// <summary>The rules of the run by id, those of the bar's own included; <see langword="null"/> stands for the built-in ones.</summary>
    internal Dictionary<string, RuleInfo>? RunRules { get; init; }

    /// <summary>What a rule of the run is, by its id; <see langword="null"/> where none has it.</summary>
    internal RuleInfo? FindRule(string id) =>
        RunRules is null ? RuleRegistry.Find(id) : RunRules.TryGetValue(id, out var info) ? info : null;

    /// <summary>Whether a rule of the run has an id.</summary>
    internal bool KnowsRule(string id) => FindRule(id) is not null;

    /// <summary>
    /// Whether an id may be that of a rule which this run has not been given: it has the form of a house's own, and the run
    /// has none of those. A book is also checked where they cannot be (an editor, a build).
    /// </summary>
    internal bool MayBeElsewhere(string id) => HouseRules.IsHouseId(id) && (RunRules is null || RunRules.Count == RuleRegistry.All.Count);

    /// <summary>
    /// Whether anybody is offered the corrections of what is found. Where a correction is tried nobody is: a rule that has to look
    /// for its own may save itself the search.
    /// </summary>
    internal bool OffersCorrections { get; init; } = true;

    /// <summary>The date of the run.</summary>
    public CalendarDate On => Book.On;

    private Dictionary<(string Rule, string Subject, string Path, string Key), int>? told;

    /// <summary>Reports a finding; its subject, place and path come from the file that is checked unless the rule gives them.</summary>
    public void Report(Finding finding)
    {
        finding.Complete(Checked);
        if (finding.Rule.Safety) TellApart(finding);
        if (finding.Corrections.Count > 0 && OffersCorrections) finding.Amend(Amended);
        findings.Add(finding);
    }

    /// <summary>Two lines of one thing have two findings: a baseline that takes one in must not put the other aside.</summary>
    private void TellApart(Finding finding)
    {
        var key = (finding.Rule.Id, finding.Subject, finding.Path, finding.Key);
        told ??= [];
        told.TryGetValue(key, out int before);
        told[key] = before + 1;
        if (before > 0) finding.IsAgain(before + 1);
    }

    /// <summary>A correction with what follows from it in the same file.</summary>
    private protected virtual Correction Amended(Correction correction) => correction;

    /// <summary>The file that is checked; <see langword="null"/> where the whole book is.</summary>
    private protected virtual BookFile? Checked => null;
}

/// <summary>The context of a rule about one file.</summary>
public class FileContext : BookContext
{
    internal FileContext(LinkedBook book, ProfileSet profiles, List<Finding> findings, BookFile file)
        : base(book, profiles, findings) => File = file;

    /// <summary>The file.</summary>
    public BookFile File { get; }

    /// <summary>Its id: the subject of findings.</summary>
    public string Id => File.Id;

    /// <summary>Place of a part of the file.</summary>
    public Place At(TextSpan span) => File.At(span);

    /// <summary>Place and path of a part of the file.</summary>
    public Spot At(TextSpan span, string path) => new(File.At(span), path);

    /// <summary>A further place of a finding in the file, with what is there.</summary>
    public RelatedPlace See(TextSpan span, string message) => new(File.At(span), message);

    /// <summary>The edit that writes a JSON string in place of what stands at a part of the file.</summary>
    public TextEdit Rewrite(TextSpan span, string text) => new(File.At(span), JsonText.Quote(text));

    /// <summary>
    /// The one correction that writes a JSON string in place of what stands at a part of the file; none where there is no text.
    /// </summary>
    /// <param name="span">What is replaced.</param>
    /// <param name="text">The text, without quotation marks; <see langword="null"/> where nobody knows a better one.</param>
    /// <param name="description">What it does, in one sentence; unless given, "Write" and the text.</param>
    public IReadOnlyList<Correction> Write(TextSpan span, string? text, string? description = null) =>
        text is null ? [] : Correction.Propose(description ?? $"Write {text}.", Rewrite(span, text));

    private protected override BookFile Checked => File;
}

/// <summary>The context of a rule about one recipe.</summary>
public sealed class RecipeContext : FileContext
{
    private GlassFill? glass;
    private bool glassKnown;
    private FixedList<Labels.PlacedClaim>? claims;
    private FixedList<Hazards.RecipeText>? texts;
    private bool? namesHazard;

    internal RecipeContext(LinkedBook book, ProfileSet profiles, List<Finding> findings, Recipe recipe, RecipeProfile profile)
        : base(book, profiles, findings, recipe)
    {
        Recipe = recipe;
        Profile = profile;
    }

    /// <summary>The recipe.</summary>
    public Recipe Recipe { get; }

    /// <summary>What it comes to.</summary>
    public RecipeProfile Profile { get; }

    /// <summary>The glass of a drink with what is in it; <see langword="null"/> where the glass or the volume is not known.</summary>
    internal GlassFill? Glass
    {
        get
        {
            if (!glassKnown && Recipe is Drink drink) glass = GlassFill.Of(this, drink);
            glassKnown = true;
            return glass;
        }
    }

    /// <summary>The claims of the recipe, read once for all rules about claims.</summary>
    internal FixedList<Labels.PlacedClaim> Claims
    {
        get
        {
            // They are read off what is declared, also where another rule has read them already.
            DeclarationReads.Note();
            return claims ??= Labels.Claims.Of(Recipe, Book);
        }
    }

    /// <summary>What the recipe says in words, gathered once for all rules that look for words.</summary>
    internal FixedList<Hazards.RecipeText> Texts => texts ??= Hazards.RecipeTexts.Of(this);

    /// <summary>Whether one of the <see cref="Texts"/> names a hazard, whichever.</summary>
    internal bool NamesHazard => namesHazard ??= Hazards.RecipeTexts.NameHazard(Texts);

    /// <summary>A fact of the recipe.</summary>
    public FactValue Fact(Fact fact) => Profile.Get(fact);

    private protected override Correction Amended(Correction correction) => Amendments.With(this, correction);

    /// <summary>The amount of a line; its item where no amount is given.</summary>
    public Spot AmountOf(Line line) => At(line.Amount.IsGiven ? line.Amount.Span : SpanOfItem(line), PathOf(line, "amount"));

    /// <summary>The item of a line, as an id or in words; the line where it has neither.</summary>
    public Spot ItemOf(Line line) => At(SpanOfItem(line), PathOf(line, "item"));

    /// <summary>The verb of a step.</summary>
    public Spot VerbOf(Step step) => At(step.Do.Span, PathOf(step));

    private static TextSpan SpanOfItem(Line line) =>
        line.Item.IsGiven ? line.Item.Span : line.ItemText.IsGiven ? line.ItemText.Span : line.Span;

    /// <summary>JSON path of a line by its item's name.</summary>
    public static string PathOf(Line line, string property = "")
    {
        string list = line.Role switch { LineRole.Garnish => "garnish", LineRole.Rim => "rim", _ => "ingredients" };
        string name = line.Item.IsGiven ? line.Item.Value : line.Number.ToString();
        return property.Length == 0 ? $"{list}[{name}]" : $"{list}[{name}].{property}";
    }

    /// <summary>JSON path of a step: its verb and which one of that verb it is.</summary>
    public string PathOf(Step step) => PathOf(Recipe, step);

    /// <summary>JSON path of a step of a recipe.</summary>
    internal static string PathOf(Recipe recipe, Step step)
    {
        int nth = 1;
        foreach (var other in recipe.Method)
        {
            if (other == step) break;
            if (step.Do.IsGiven && other.Written == step.Written) nth++;
        }

        string verb = step.Do.IsGiven ? step.Written : "step";
        return nth == 1 ? $"method[{verb}]" : $"method[{verb} {nth}]";
    }
}
