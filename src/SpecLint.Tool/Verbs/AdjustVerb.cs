using System.CommandLine;
using System.Globalization;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Linking;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Verbs;

/// <summary><c>adjust</c>: solves the amounts of a recipe for targets, or puts another item in the place of one that ran out.</summary>
internal sealed class AdjustVerb : Verb
{
    private const int MostSubstitutes = 20;

    private readonly Argument<string> recipe = new("RECIPE") { Description = "Id of a drink or preparation of the book, or its file." };
    private readonly Option<string?> abv = Target("--abv", "Strength, % vol, such as 18 or 17-19.");
    private readonly Option<string?> sugar = Target("--sugar", "Sugar, g per 100 mL (of a solid per 100 g).");
    private readonly Option<string?> acid = Target("--acid", "Acid as citric, g per 100 mL (of a solid per 100 g).");
    private readonly Option<string?> ratio = Target("--ratio", "Sugar to acid.");
    private readonly Option<string?> salt = Target("--salt", "Salt, g per 100 mL (of a solid per 100 g).");
    private readonly Option<string?> brix = Target("--brix", "Dissolved solids, °Brix.");
    private readonly Option<string?> volume = Target("--volume", "Volume, mL: of a drink in the glass, of a preparation as made.");
    private readonly Option<string?> glass = new("--glass")
    {
        Description = "Glass that the drink is to fit, by its id in bar.json.",
        HelpName = "GLASS",
    };
    private readonly Option<string?> like = new("--like")
    {
        Description = "Item whose acids, sugar and salt a preparation is to have, such as lime-juice.",
        HelpName = "ID",
    };
    private readonly Option<string[]> keep = new("--keep") { Description = "Item whose amount stays. May be given several times.", HelpName = "ID" };
    private readonly Option<string[]> add = new("--add")
    {
        Description = "Item that may be added, such as malic-acid or water. May be given several times.",
        HelpName = "ID",
    };
    private readonly Option<string?> without = new("--without")
    {
        Description = "Item that ran out: shows what could take its place, with the amounts solved again.",
        HelpName = "ID",
    };
    private readonly Option<string?> use = new("--use") { Description = "With --without: what takes its place.", HelpName = "ID" };
    private readonly Option<int> most = new("--most")
    {
        Description = "With --without: maximum number of substitutes.",
        HelpName = "NUMBER",
        DefaultValueFactory = _ => 5,
    };
    private readonly Option<bool> write = new("--write") { Description = "Write the amounts into the file. Without it, nothing is written." };
    private readonly Option<bool> admitNew = new("--admit-new")
    {
        Description = "With --write: write also where the change brings an "
        + "allergen, a hazard or a finding of a rule that guards against harm; they are listed."
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string> format = CommonOptions.Format("text", "json");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> colour = CommonOptions.Colour();

    public AdjustVerb() => most.Validators.Add(result =>
    {
        if (result.Tokens.Count == 1 && int.TryParse(result.Tokens[0].Value, out int number) && number is < 1 or > MostSubstitutes)
            result.AddError($"--most takes a number from 1 to {MostSubstitutes}.");
    });

    public override string Name => "adjust";

    public override string Description =>
        "Solves the amounts of a recipe for a strength, sugar, acid, ratio, volume, glass or the make-up of a juice, in the steps of "
            + "the bar's tools. Exit status 1 when a target is not reached.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint adjust low-tide --abv 18 --keep sour-cucumber --book recipes",
        "speclint adjust sour-celery --like lime-juice --add white-sugar --write",
        "speclint adjust low-tide --without fogbank-gin",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(recipe);
        Option[] options =
        [
            abv, sugar, acid, ratio, salt, brix, volume, glass, like, keep, add, without, use, most, write, admitNew, book,
            units, format, output, on, colour,
        ];
        foreach (var option in options)
            command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var named = NamedBook.Open(host, parsed.GetValue(recipe), parsed.GetValue(book));
        var folder = named.Folder;
        var input = folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host), 0);
        var result = Checker.Check(input);
        var chosen = named.RecipeOf(result.Book, Name);
        var request = RequestOf(parsed, chosen);
        bool isText = parsed.GetValue(format) != "json";
        string? file = parsed.GetValue(output);
        bool inColour = CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host);
        var inUnits = CommonOptions.UnitsOf(parsed.GetValue(units), result.Book);
        if (request.Without.Length > 0 && request.Use.Length == 0)
        {
            if (parsed.GetValue(write)) throw new UsageException("--write with --without takes --use ID: name what takes the place of the item.");
            if (result.Book.Resolve(request.Without) is null || !HasLine(chosen, request.Without))
                throw new UsageException($"{request.Without} is not a line of {chosen.Id}.");
            var substitutes = Substitutes.Of(input, result, chosen, request, parsed.GetValue(most));
            if (isText)
                ResultOutput.DeliverText(host, file, writer =>
                    AdjustReport.WriteText(writer, substitutes, request.Without, inColour, inUnits));
            else ResultOutput.Deliver(host, file, stream => AdjustReport.WriteJson(stream, substitutes, request.Without));
            if (substitutes.Count == 0) Shell.Say(host, $"nothing in the book, the stock or the catalogue is near enough to {request.Without}.");
            return substitutes.Any(s => s.Adjustment.IsReached) ? ExitStatus.Clean : ExitStatus.Findings;
        }

        var adjustment = Adjuster.Of(input, result, chosen, request, out string why)
            ?? throw new UsageException($"{chosen.Id} cannot be adjusted: {why}.");
        if (isText) ResultOutput.DeliverText(host, file, writer => AdjustReport.WriteText(writer, adjustment, inColour, inUnits));
        else ResultOutput.Deliver(host, file, stream => AdjustReport.WriteJson(stream, adjustment));
        bool isWritten = parsed.GetValue(write) && Write(host, folder, adjustment, parsed.GetValue(admitNew));
        if (!parsed.GetValue(write) && adjustment.IsChanged) Shell.Say(host, "nothing is written; --write writes it.");
        return adjustment.IsReached && (isWritten || !parsed.GetValue(write) || !adjustment.IsChanged) ? ExitStatus.Clean : ExitStatus.Findings;
    }

    private static bool HasLine(Recipe recipe, string id)
    {
        foreach (var line in LinkedBook.LinesOf(recipe))
        {
            if (line.Item.Or("") == id) return true;
        }

        return false;
    }

    private static bool Write(Host host, BookFolder folder, Adjustment adjustment, bool admitNew)
    {
        string shown = folder.DisplayPrefix + adjustment.File.Path;
        if (!adjustment.IsChanged)
        {
            Shell.Say(host, $"{shown} stays as it is.");
            return true;
        }

        if (adjustment.Harm.Count > 0 && !admitNew)
        {
            Shell.Say(
                host,
                $"{shown} is not written: the change brings "
                    + $"{adjustment.Harm[0]}{(adjustment.Harm.Count > 1 ? $" and {adjustment.Harm.Count - 1} more" : "")}. "
                    + $"--admit-new writes it anyway.");
            return false;
        }

        try
        {
            if (host.Files.Replace(
                Path.Combine(folder.Root, adjustment.File.Path), adjustment.Recipe.Source.Utf8, adjustment.File.Utf8) == AtomicFiles.Outcome.Written)
            {
                Shell.Say(host, $"{shown} is written.");
                return true;
            }

            Shell.Say(host, $"{shown} has changed since it was read and is left as it is; run the command again.");
            return false;
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"{shown} cannot be written: {IoFault.Reason(e)}.", e);
        }
    }

    private AdjustRequest RequestOf(ParseResult parsed, Recipe chosen)
    {
        var targets = new List<AdjustTarget>();
        Add(abv, Fact.Abv, 100);
        Add(sugar, Fact.Sugar, 200);
        Add(acid, Fact.Acid, 200);
        Add(ratio, Fact.SugarAcidRatio, 1000);
        Add(salt, Fact.Salt, 100);
        Add(brix, Fact.Brix, 100);
        Add(volume, chosen is Drink ? Fact.ServedVolume : Fact.MixVolume, 1e6);
        var request = new AdjustRequest
        {
            Targets = targets,
            Like = parsed.GetValue(like) ?? "",
            Glass = parsed.GetValue(glass) ?? "",
            Keep = parsed.GetValue(keep) ?? [],
            Add = parsed.GetValue(add) ?? [],
            Without = parsed.GetValue(without) ?? "",
            Use = parsed.GetValue(use) ?? "",
        };
        if (request.Use.Length > 0 && request.Without.Length == 0) throw new UsageException("--use goes with --without ID.");
        if (parsed.GetValue(admitNew) && !parsed.GetValue(write)) throw new UsageException("--admit-new goes with --write.");
        return targets.Count > 0 || request.Like.Length + request.Glass.Length + request.Without.Length > 0
            ? request
            : throw new UsageException("adjust takes a target, such as --abv 18, --like lime-juice or --glass coupe, or --without ID.");

        void Add(Option<string?> option, Fact fact, double largest)
        {
            if (parsed.GetValue(option) is not { } text) return;
            string[] ends = text.Replace('–', '-').Split('-', 2, StringSplitOptions.TrimEntries);
            if (!Read(ends[0], out double low) || !Read(ends[^1], out double high) || low > high || high > largest || high <= 0)
                throw new UsageException($"{option.Name} takes a number or a range such as 17-19, up to "
                    + $"{largest.ToString(CultureInfo.InvariantCulture)}; '{text}' is neither.");
            targets.Add(new AdjustTarget(fact, low, high));
        }

        static bool Read(string text, out double number) =>
            double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number) && number >= 0;
    }

    private static Option<string?> Target(string name, string description) => new(name) { Description = description, HelpName = "NUMBER" };
}
