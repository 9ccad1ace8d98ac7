using System.CommandLine;
using System.Text;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Verbs;

/// <summary><c>new</c>: the first text of a drink, preparation, ingredient, menu or stock file.</summary>
internal sealed class NewVerb : Verb
{
    private readonly Argument<string> kind = new("KIND") { Description = "What to write.", HelpName = "drink|prep|ingredient|menu|stock" };
    private readonly Argument<string> name = new("NAME") { Description = "Its name, as people say it; the file is called after it." };
    private readonly Argument<string[]> lines = new("LINE")
    {
        Description = "What goes in, a line each, as in \"50 ml gin\"; of an ingredient what it is like; of a menu its drinks, each "
            + "with its covers before it where known.",
        Arity = ArgumentArity.ZeroOrMore,
    };
    private readonly Option<string> style = new("--style")
    {
        Description = "Style of a drink, such as shaken-sour.",
        HelpName = "STYLE",
        DefaultValueFactory = _ => "",
    };
    private readonly Option<string> family = new("--family")
    {
        Description = "Family of a preparation, such as syrup; taken from its name where that holds one.",
        HelpName = "FAMILY",
        DefaultValueFactory = _ => "",
    };
    private readonly Option<string> glass = new("--glass")
    {
        Description = "Glass of a drink, by its id in bar.json.",
        HelpName = "ID",
        DefaultValueFactory = _ => "",
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<CalendarDate?> on = CommonOptions.On();

    public NewVerb() => kind.Validators.Add(result =>
    {
        if (result.Tokens.Count == 1 && KindOf(result.Tokens[0].Value) is null)
            result.AddError($"'{result.Tokens[0].Value}' is none of drink, prep, ingredient, menu and stock.");
    });

    public override string Name => "new";

    public override string Description =>
        "Writes a new file of a book: ids resolved where a name means one thing, usual steps, and what is open as "
            + "comments. Never overwrites.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint new drink \"Half Tide\" \"50 ml gin\" \"25 ml lemon juice\" --book my-bar",
        "speclint new prep \"Bay syrup\" \"500 g white sugar\" \"500 g water\" --book my-bar",
        "speclint new ingredient \"Fogbank Dry Gin\" gin --book my-bar",
        "speclint new menu Friday \"30 half tide\" --book my-bar",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(kind);
        command.Arguments.Add(name);
        command.Arguments.Add(lines);
        foreach (var option in new Option[] { style, family, glass, book, on }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var wanted = KindOf(parsed.GetValue(kind)!)!.Value;
        string called = parsed.GetValue(name)!.Trim(), at = parsed.GetValue(book) ?? ".";
        var folder = BookFolder.Open(host, [at]);
        if (folder.Bar is null)
            throw new UsageException($"{at} is not a book: it has no {BookFiles.BarFile}. speclint start --empty FOLDER writes one.");
        var request = new NewFileRequest(wanted, called, parsed.GetValue(lines) ?? [])
        {
            Style = StyleOf(parsed, wanted),
            Family = FamilyOf(parsed, wanted, called),
            Glass = parsed.GetValue(glass)!,
        };
        var day = CommonOptions.DayOf(parsed.GetValue(on), folder, host);
        var (linked, profiles) = Checker.Profile(folder.ToInput(day, 0));
        var made = NewFile.Of(profiles, request);
        if (made.Id.Length == 0) throw new UsageException($"'{called}' holds no letter or digit to name a file by.");
        if (linked.Files.FirstOrDefault(f => f.Id == made.Id && (f.Kind == wanted || (IsItem(f.Kind) && IsItem(wanted)))) is { } standing)
            throw new UsageException($"the book has {standing.Source.Path} already, whose id is {made.Id}; nothing was written.");
        string file = $"{made.Id}.{ReportWords.KeyOf(wanted)}.json";
        if (wanted is FileKind.Drink or FileKind.Prep && made.IsUnderstood) made = WithAllergens(folder, day, file, made, profiles, request);
        Write(host, Path.Combine(folder.Root, file), folder.DisplayPrefix + file, made.Text);
        ResultOutput.DeliverText(host, null, writer =>
        {
            writer.WriteLine($"Wrote {DisplayText.Escape(folder.DisplayPrefix + file)}.");
            if (made.Open.Count > 0) writer.WriteLine("Left open, as comments in the file:");
            foreach (string what in made.Open)
            {
                foreach (string line in DisplayText.Wrap(DisplayText.Escape(what), "  - ", "    ")) writer.WriteLine(line);
            }

            writer.WriteLine($"Next: speclint check {DisplayText.Escape(folder.DisplayPrefix + file)}");
        });
        return ExitStatus.Clean;
    }

    /// <summary>The same file with the allergens that its lines bring, where all of them are known.</summary>
    private static NewFile WithAllergens(BookFolder folder, CalendarDate day, string file, NewFile made, ProfileSet profiles, NewFileRequest request)
    {
        var (linked, tried) = Checker.Profile(folder.With(file, Encoding.UTF8.GetBytes(made.Text)).ToInput(day, 0));
        if (linked.Resolve(made.Id)?.File is not Recipe recipe || tried.Of(recipe).Allergens is not { Unknown.Count: 0 } allergens) return made;
        return allergens.Possible(linked.Settings).Count > 0 ? made : NewFile.Of(profiles, request, allergens.Contained(linked.Settings));
    }

    private static void Write(Host host, string full, string shown, string text)
    {
        try
        {
            host.Files.Create(full, Encoding.UTF8.GetBytes(text));
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException(
                File.Exists(full)
                    ? $"{shown} exists already; nothing was written."
                    : $"{shown} cannot be written: {IoFault.Reason(e)}.", e);
        }
    }

    private string StyleOf(ParseResult parsed, FileKind wanted)
    {
        string given = parsed.GetValue(style)!;
        if (given.Length == 0) return "";
        if (wanted != FileKind.Drink) throw new UsageException("--style goes with a drink.");
        var meant = Style.Of(given);
        if (meant.IsKnown) return meant.Id;
        string others = meant.Meant is { } other
            ? $"{other.Id} is, if that is meant"
            : $"styles are {string.Join(", ", Style.All.Select(s => s.Id).Order(StringComparer.Ordinal))}";
        throw new UsageException($"{given} is not a style; {others}.");
    }

    private string FamilyOf(ParseResult parsed, FileKind wanted, string called)
    {
        string given = parsed.GetValue(family)!;
        if (wanted != FileKind.Prep) return given.Length == 0 ? "" : throw new UsageException("--family goes with a prep.");
        string all = string.Join(", ", Family.All.Select(f => f.Id));
        if (given.Length > 0)
            return Family.Of(given) is { IsKnown: true } known
                ? known.Id
                : throw new UsageException($"{given} is not a family of preparations; those are {all}.");
        string slug = "-" + SpecLint.Catalogue.BuiltInCatalogue.Slug(called) + "-";
        return Family.All.FirstOrDefault(f => f.Id != "other" && slug.Contains("-" + f.Id + "-", StringComparison.Ordinal))?.Id
            ?? throw new UsageException($"which family is it? Say it with --family, one of {all}.");
    }

    private static bool IsItem(FileKind kind) => kind is FileKind.Drink or FileKind.Prep or FileKind.Ingredient;

    private static FileKind? KindOf(string word) => word switch
    {
        "drink" => FileKind.Drink,
        "prep" => FileKind.Prep,
        "ingredient" => FileKind.Ingredient,
        "menu" => FileKind.Menu,
        "stock" => FileKind.Stock,
        _ => null,
    };
}
