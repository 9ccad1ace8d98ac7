using System.CommandLine;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool;

/// <summary>Options that several verbs share; each verb makes its own, so that they say the same.</summary>
internal static class CommonOptions
{
    /// <summary><c>--format</c>, one of a few.</summary>
    public static Option<string> Format(params string[] formats)
    {
        var option = new Option<string>("--format")
        {
            Description = "How to write the result.",
            HelpName = string.Join("|", formats),
            DefaultValueFactory = _ => formats[0],
        };
        option.TakesOneOf(formats);
        return option;
    }

    /// <summary><c>--output</c>, a file.</summary>
    public static Option<string?> Output() => new("--output")
    {
        Description = "File to write the result to, completely or not at all; default: standard output.",
        HelpName = "FILE",
    };

    /// <summary><c>--on</c>, a day.</summary>
    public static Option<CalendarDate?> On() => new("--on")
    {
        Description = "The day to check for, as YYYY-MM-DD; default: today, in an example book the day it is set on.",
        HelpName = "DATE",
        CustomParser = result =>
        {
            var date = CalendarDate.Parse(result.Tokens[0].Value);
            if (date is null) result.AddError($"'{result.Tokens[0].Value}' is not a day written as YYYY-MM-DD.");
            return date;
        },
    };

    /// <summary>
    /// The day of a run: the one that <c>--on</c> gives, else the one that an example book is set on, which is said on standard error, else
    /// today.
    /// </summary>
    public static CalendarDate DayOf(CalendarDate? on, BookFolder folder, Host host, bool quiet = false) => DayOf(on, folder.SetOn, host, quiet);

    /// <inheritdoc cref="DayOf(CalendarDate?, BookFolder, Host, bool)"/>
    public static CalendarDate DayOf(CalendarDate? on, CalendarDate? setOn, Host host, bool quiet = false)
    {
        if (on is { } given) return given;
        if (setOn is not { } set) return host.Today();
        if (!quiet && set != host.Today())
            Shell.Say(
                host,
                $"this is an example book, set on {set} (asOf in {BookFiles.BarFile}): that day is taken, not today; --on "
                    + $"DATE takes another.");
        return set;
    }

    /// <summary><c>--threads</c>.</summary>
    public static Option<int> Threads()
    {
        var option = new Option<int>("--threads")
        {
            Description = "Number of threads; 0 means one per processor. It does not affect the result.",
            HelpName = "NUMBER",
            DefaultValueFactory = _ => 0,
        };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && int.TryParse(result.Tokens[0].Value, out int threads) && threads is < 0 or > 256)
                result.AddError("--threads takes a number from 0 to 256.");
        });
        return option;
    }

    /// <summary><c>--fail-at</c>.</summary>
    public static Option<string> FailAt()
    {
        var option = new Option<string>("--fail-at")
        {
            Description = "Lowest level at which findings make the exit status 1.",
            HelpName = "error|warning|note|never",
            DefaultValueFactory = _ => "error",
        };
        option.TakesOneOf("error", "warning", "note", "never");
        return option;
    }

    /// <summary><c>--part</c>, one of several parts of a book.</summary>
    public static Option<BookPart?> Part() => new("--part")
    {
        Description = "Check one of several parts of the book, as 2/4; 'combine' makes one report of those in JSON. Every part reads the whole book.",
        HelpName = "I/N",
        CustomParser = result =>
        {
            var part = BookPart.Parse(result.Tokens[0].Value);
            if (part is null)
                result.AddError($"'{result.Tokens[0].Value}' is not a part of a book; write it as 2/4, from 1/N to N/N, N at "
                    + $"most {BookPart.Most}.");
            return part;
        },
    };

    /// <summary><c>--quiet</c>.</summary>
    public static Option<bool> Quiet() => new("--quiet") { Description = "Leave out the summary, progress and remarks." };

    /// <summary><c>--colour</c>.</summary>
    public static Option<string> Colour()
    {
        var option = new Option<string>("--colour")
        {
            Description = "Whether to colour text; auto colours on a terminal unless NO_COLOR is set.",
            HelpName = "auto|always|never",
            DefaultValueFactory = _ => "auto",
        };
        option.TakesOneOf("auto", "always", "never");
        return option;
    }

    /// <summary><c>--units</c>.</summary>
    public static Option<string> Units()
    {
        var option = new Option<string>("--units")
        {
            Description = "Units of text, Markdown and pages: us shows volumes in US fluid ounces, quarts and gallons, and temperatures "
                + "in °F. JSON and SARIF stay in mL and °C.",
            HelpName = "metric|us",
            DefaultValueFactory = _ => "metric",
        };
        option.TakesOneOf("metric", "us");
        return option;
    }

    /// <summary>The units that <c>--units</c> names.</summary>
    public static DisplayUnits UnitsOf(string? name) => name == "us" ? DisplayUnits.UnitedStates : DisplayUnits.Metric;

    /// <summary>The same, by which the names of a book stay as they are.</summary>
    public static DisplayUnits UnitsOf(string? name, Linking.LinkedBook book) => UnitsOf(name).Keeping(book);

    /// <summary><c>--rules</c>, assemblies.</summary>
    public static Option<string[]> HouseRules() => new("--rules")
    {
        Description = "Assembly with the house's own rules, written in C#: its code is loaded and run. May be given more than once.",
        HelpName = "FILE",
    };

    /// <summary>A number of serves to make, over 0 and at most 100,000.</summary>
    /// <exception cref="UsageException">It is none.</exception>
    public static double ServesToMake(double count) =>
        count is > 0 and <= 100_000 ? count : throw new UsageException("--serves takes a number over 0, 100000 at most.");

    /// <summary>An amount to make: a volume or a mass.</summary>
    /// <exception cref="UsageException">It is neither.</exception>
    public static Quantity AmountToMake(string amount) =>
        QuantityReader.TryRead(amount, Measures.Default, out var quantity, out _)
            && quantity.Base is > 0 and <= 1e9
            && quantity.Dimension is Dimension.Volume or Dimension.Mass
            ? quantity
            : throw new UsageException($"--to takes a volume or a mass, such as \"3 l\" or \"800 g\"; '{amount}' is neither.");

    /// <summary><c>--book</c>, where the arguments are not paths.</summary>
    public static Option<string?> Book() => new("--book")
    {
        Description = "Folder or file of the book; default: the current folder.",
        HelpName = "PATH",
    };

    /// <summary>Whether to colour, given the option, the environment and where the result goes (no-color.org: set and not empty).</summary>
    public static bool WantsColour(string colour, string? output, Host host) => colour switch
    {
        "always" => true,
        "never" => false,
        _ => output is null && host.OutputIsTerminal && string.IsNullOrEmpty(host.Variable("NO_COLOR")) && host.Variable("TERM") != "dumb",
    };
}
