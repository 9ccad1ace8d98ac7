using System.Diagnostics;
using System.Globalization;
using SpecLint.RuleMutants;

const char BetweenBooks = '\u001e';
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
int seed = 20261125, count = 20, cases = 1500, books = 4000, minutes = 10;
int? only = null;
string known = "";
for (int i = 0; i < args.Length; i++)
{
    switch (args[i])
    {
        case "--seed": seed = int.Parse(args[++i]); break;
        case "--count": count = int.Parse(args[++i]); break;
        case "--cases": cases = int.Parse(args[++i]); break;
        case "--books": books = int.Parse(args[++i]); break;
        case "--only": only = int.Parse(args[++i]); break;
        case "--known": known = args[++i]; break;
        default:
            Console.WriteLine("""
                Changes one comparison in a rule that guards against harm, in the verdict or in what they rest on, and says whether the
                properties catch it. A mutation counts if it changes what is found in one of many generated books.

                  --count 20        mutations that change something
                  --seed 20261125   seed of the draw
                  --cases 1500      cases of each property
                  --books 4000      books by which a change is known
                  --only 17         one mutation alone, by its number
                """);
            return args[i] == "--help" ? 0 : 2;
    }
}

string configuration = Path.GetFileName(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory)))!;
var library = new Library(configuration);
var mutations = library.Mutations();
if (only is { } number) return One(mutations[number]);

// What the library as it is answers, for every child to compare with.
known = Path.Combine(Path.GetTempPath(), $"speclint-answers-{Environment.ProcessId}.txt");
File.WriteAllText(known, string.Join(BetweenBooks, new Trial(File.ReadAllBytes(Path.Combine(library.Tests, "SpecLint.dll")), library.Tests).Corpus(books)));
using var cleared = new Cleared(known);
int[] order = [.. Enumerable.Range(0, mutations.Count)];
new Random(seed).Shuffle(order);
Console.WriteLine($"{mutations.Count} mutations of comparisons; seed {seed}, {cases} cases of each property, a change is known by {books} books.");
var outcomes = new List<(Mutation Of, string Answer, string Text)>();
foreach (int at in order)
{
    var (answer, text) = Child(at);
    outcomes.Add((mutations[at], answer, text));
    Console.WriteLine($"{answer,-12} {at,5}  {mutations[at]}{(text.Length > 0 ? $"\n                    {text}" : "")}");
    if (outcomes.Count(IsCounted) >= count) break;
}

int counted = outcomes.Count(IsCounted), byProperty = outcomes.Count(o => o.Answer == "property"), byPage = outcomes.Count(o => o.Answer == "page");
Console.WriteLine($"\n{counted} mutations change what is found: a property catches {byProperty}, only the pages of the rules {byPage}, nothing {counted - byProperty - byPage}.");
Console.WriteLine($"{outcomes.Count - counted} more were drawn and change nothing in {books} books, or do not compile, or do not end.");
return byProperty * 20 >= counted * 19 ? 0 : 1;

static bool IsCounted((Mutation Of, string Answer, string Text) outcome) => outcome.Answer is "property" or "page" or "survives";

// In a process of its own: a mutant may run for ever.
(string Answer, string Text) Child(int at)
{
    var start = new ProcessStartInfo(Environment.ProcessPath!) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
    if (Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet") start.ArgumentList.Add(typeof(Mutation).Assembly.Location);
    foreach (string argument in new[] { "--only", $"{at}", "--cases", $"{cases}", "--books", $"{books}", "--known", known }) start.ArgumentList.Add(argument);
    using var child = Process.Start(start)!;
    var output = child.StandardOutput.ReadToEndAsync();
    var errors = child.StandardError.ReadToEndAsync();
    if (!child.WaitForExit(TimeSpan.FromMinutes(minutes)))
    {
        child.Kill(entireProcessTree: true);
        return ("endless", $"no end within {minutes} min");
    }

    string[] lines = output.Result.Split('\n', 2, StringSplitOptions.TrimEntries);
    return child.ExitCode == 0 ? (lines[0], lines.Length > 1 ? lines[1] : "") : ("fault", errors.Result.Split('\n')[0]);
}

int One(Mutation mutation)
{
    Environment.SetEnvironmentVariable("SPECLINT_CASES", $"{cases}");
    Environment.SetEnvironmentVariable("SPECLINT_FAILURES", "1");
    if (library.Compile(mutation, out string? refused) is not { } mutant) return Say("refused", refused!);
    var trial = new Trial(mutant, library.Tests);
    string[] before = known.Length > 0 ? File.ReadAllText(known).Split(BetweenBooks) : new Trial(File.ReadAllBytes(Path.Combine(library.Tests, "SpecLint.dll")), library.Tests).Corpus(books);
    string[] after = trial.Corpus(books);
    int changed = Enumerable.Range(0, books).Count(i => before[i] != after[i]);
    if (changed == 0) return Say("no change", "");
    const string Properties = "SpecLint.Tests.Properties.";
    foreach (var (type, test) in new[]
    {
        ("KnowledgeTests", "Worse_conditions_never_remove_or_lower_a_harm_finding"), ("KnowledgeTests", "Less_knowledge_never_removes_a_harm_finding"),
        ("DisguiseTests", "No_disguise_hides_an_allergen_or_a_hazard"), ("AgreementTests", "No_verb_allows_what_check_forbids"), ("CorrectionHarmTests", "No_correction_adds_an_allergen_or_a_harm_finding"),
    })
    {
        if (trial.Run(Properties + type, test) is { } caught) return Say("property", $"{changed} books change; {test}: {caught}");
    }

    foreach (string page in trial.Pages())
    {
        if (trial.Run("SpecLint.Tests.Rules.RulePageTests", "Examples_do_what_the_page_says", [page]) is { } caught) return Say("page", $"{changed} books change; page of {page}");
    }

    int first = Array.FindIndex(before, b => !after.Contains(b));
    return Say("survives", $"{changed} books change; the first, {first}: {Difference(before[first], after[first])}");
}

static int Say(string answer, string text)
{
    Console.WriteLine(answer);
    Console.WriteLine(text);
    return 0;
}

static string Difference(string before, string after)
{
    string[] was = before.Split('\n'), now = after.Split('\n');
    return $"gone: {string.Join(" / ", was.Except(now).Take(2))}; new: {string.Join(" / ", now.Except(was).Take(2))}";
}
