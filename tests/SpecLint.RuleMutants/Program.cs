using System.Diagnostics;
using System.Globalization;
using SpecLint.RuleMutants;

const char BetweenBooks = '\u001e';
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
int seed = 20261125, count = 20, cases = 1500, books = 2000, minutes = 10;
bool shift = false, none = false, sweep = false;
int? only = null;
int first = 0, sample = 0;
string known = "", switched = "", property = "";
for (int i = 0; i < args.Length; i++)
{
    switch (args[i])
    {
        case "--seed": seed = int.Parse(args[++i]); break;
        case "--count": count = int.Parse(args[++i]); break;
        case "--cases": cases = int.Parse(args[++i]); break;
        case "--books": books = int.Parse(args[++i]); break;
        case "--only": only = int.Parse(args[++i]); break;
        case "--shift": shift = true; break;
        case "--none": none = true; break;
        case "--sweep": sweep = true; break;
        case "--sample": sample = int.Parse(args[++i]); break;
        case "--first": first = int.Parse(args[++i]); break;
        case "--property": property = args[++i]; break;
        case "--known": known = args[++i]; break;
        case "--switched": switched = args[++i]; break;
        default:
            Console.WriteLine("""
                Turns one comparison around in a rule that guards against harm, in the verdict or in what they rest on, and says whether
                the properties catch it. One that changes no finding, no verdict and no word in any of many generated books counts as
                missed, unless Equivalent.cs says why it cannot. One that only changes words or findings of taste guards against nothing
                and is left out.

                  --count 20        mutations that count
                  --seed 20261125   seed of the draw
                  --cases 1500      cases of each property
                  --books 2000      books by which a change is known, the seeds of the properties first
                  --shift           shift comparisons by the case in which both sides are the same, instead of turning them around
                  --only 17         one mutation alone, by its number
                  --sweep           lists every mutation that changes nothing at all on any seed as it is: what the seeds lack
                  --first 80        the first mutation of a sweep, by its number
                  --sample 150      a sweep of that many, drawn by the seed, that also lists what only changes and breaks no expectation of a seed
                  --none            no mutation: the properties on the library as it is
                  --property WORD   of these, only those with the word in their name
                """);
            return args[i] == "--help" ? 0 : 2;
    }
}

string configuration = Path.GetFileName(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory)))!;
if (none) return Properties();
var library = new Library(configuration);
var mutations = library.Mutations(shift);
if (sweep) return Sweep();
if (only is { } number) return One(mutations[number], number);

// What the library as it is answers, for every child to compare with.
string folder = Path.Combine(Path.GetTempPath(), $"speclint-mutants-{Environment.ProcessId}");
Directory.CreateDirectory(folder);
using var cleared = new Cleared(folder);
known = Path.Combine(folder, "answers.txt");
File.WriteAllText(known, string.Join(BetweenBooks, new Trial(File.ReadAllBytes(Path.Combine(library.Tests, "SpecLint.dll")), library.Tests).Corpus(books)));
int[] order = [.. Enumerable.Range(0, mutations.Count)];
new Random(seed).Shuffle(order);
Console.WriteLine($"{mutations.Count} mutations of comparisons; seed {seed}, {cases} cases of each property, a change is known by {books} books.");
var outcomes = new List<(Mutation Of, string Answer, string Text)>();
IReadOnlySet<int> alone = new HashSet<int>();
for (int i = 0, compiled = 0; i < order.Length && outcomes.Count(IsCounted) < count; i++)
{
    if (i == compiled)
    {
        // One compilation holds the next of them, each behind a switch.
        var next = order.Skip(i).Take(2 * count).ToDictionary(n => n, n => mutations[n]);
        compiled += next.Count;
        switched = Path.Combine(folder, $"switched-{i}.dll");
        File.WriteAllBytes(switched, library.CompileSwitched(next, out alone));
    }

    var mutation = mutations[order[i]];
    var (answer, text) = Equivalent.Because(mutation) is { } reason ? ("equivalent", reason) : Child(order[i]);
    outcomes.Add((mutation, answer, text));
    Console.WriteLine($"{answer,-12} {order[i],5}  {mutation}{(text.Length > 0 ? $"\n                    {text}" : "")}");
}

int counted = outcomes.Count(IsCounted), byProperty = Count("property"), byRecord = Count("record"), byPage = Count("page");
Console.WriteLine($"\nOf {counted} mutations, a property catches {byProperty} by what it says of any book and {byRecord} more by what is written down of its "
    + $"seeds; only the pages of the rules catch {byPage}, nothing {counted - byProperty - byRecord - byPage}.");
Console.WriteLine($"{outcomes.Count - counted} more were drawn and only change words, are the same by a reason given, do not compile, or do not end.");
return (byProperty + byRecord) * 20 >= counted * 19 ? 0 : 1;

int Count(string answer) => outcomes.Count(o => o.Answer == answer);

static bool IsCounted((Mutation Of, string Answer, string Text) outcome) => outcome.Answer is "property" or "record" or "page" or "survives" or "no change";

// In a process of its own: a mutant may run for ever.
(string Answer, string Text) Child(int at)
{
    var start = new ProcessStartInfo(Environment.ProcessPath!) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
    if (Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet") start.ArgumentList.Add(typeof(Mutation).Assembly.Location);
    foreach (string argument in new[] { "--only", $"{at}", "--cases", $"{cases}", "--books", $"{books}", "--known", known }) start.ArgumentList.Add(argument);
    if (shift) start.ArgumentList.Add("--shift");
    if (!alone.Contains(at))
    {
        start.ArgumentList.Add("--switched");
        start.ArgumentList.Add(switched);
        start.Environment[Library.Switch] = $"{at}";
    }

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

int Properties()
{
    string tests = Library.TestsOf(configuration);
    Environment.SetEnvironmentVariable("SPECLINT_SEED", $"{seed}");
    Environment.SetEnvironmentVariable("SPECLINT_CASES", $"{cases}");
    var asIs = new Trial(File.ReadAllBytes(Path.Combine(tests, "SpecLint.dll")), tests);
    int failed = 0;
    foreach (var (type, test) in Trial.Properties.Where(p => p.Test.Contains(property, StringComparison.OrdinalIgnoreCase)))
    {
        var watch = Stopwatch.StartNew();
        string? wrong = asIs.Run(type, test, whole: true);
        if (wrong is not null) failed++;
        Console.WriteLine($"{(wrong is null ? "holds" : "FAILS")}  {test}: {cases} cases, seed {seed}, {watch.Elapsed.TotalSeconds:0} "
            + $"s{(wrong is null ? "" : "\n" + wrong)}");
    }

    return failed;
}

// All mutations in one process, each on the seeds that reach it until one of them changes.
int Sweep()
{
    byte[] all = library.CompileSwitched(Enumerable.Range(0, mutations.Count).ToDictionary(n => n, n => mutations[n]), out var left, isSweep: true);
    var trial = new Trial(all, library.Tests) { On = -1 };
    int seeds = trial.Seeds, unmoved = 0;
    string[] before = new string[seeds], whole = new string[seeds];
    var reaching = Enumerable.Range(0, mutations.Count).Select(_ => new List<int>()).ToArray();
    for (int i = 0; i < seeds; i++)
    {
        bool[] reached = trial.Reached;
        Array.Clear(reached);
        before[i] = trial.Harm(whole[i] = trial.Answer(i));
        for (int n = 0; n < reached.Length; n++)
        {
            if (reached[n]) reaching[n].Add(i);
        }
    }

    int[] swept = [.. Enumerable.Range(first, mutations.Count - first)];
    if (sample > 0)
    {
        new Random(seed).Shuffle(swept);
        swept = [.. swept.Take(sample).Order()];
    }

    int unexpected = 0, words = 0;
    foreach (int n in swept)
    {
        if (left.Contains(n) || Equivalent.Because(mutations[n]) is not null) continue;
        trial.On = n;
        int moved = -1;
        bool isExpected = false;

        // A mutant may run for ever; without its mutation it ends.
        var look = Task.Run(() =>
        {
            moved = reaching[n]
                .AsParallel()
                .Where(i => trial.Harm(trial.Answer(i)) != before[i])
                .Select(i => reaching[n].IndexOf(i))
                .DefaultIfEmpty(-1)
                .First();
            isExpected = moved >= 0 && (sample == 0 || reaching[n].Skip(moved).Any(i => trial.Unlike(i) is not null));
        });
        if (!look.Wait(TimeSpan.FromSeconds(60)))
        {
            trial.On = -1;
            look.Wait();
            Console.WriteLine($"{n,5} no end  {mutations[n]}");
            continue;
        }

        if (isExpected) continue;
        if (moved < 0 && reaching[n].AsParallel().Any(i => trial.Answer(i) != whole[i]))
        {
            words++;
            continue;
        }

        if (moved < 0) unmoved++;
        else unexpected++;
        Console.WriteLine($"{n,5} {reaching[n].Count,4} reach "
            + $"it{(moved < 0 ? "" : $", changes {trial.SeedOf(reaching[n][moved])}: {Difference(before[reaching[n][moved]], trial.Harm(trial.Answer(reaching[n][moved])))}")}  {mutations[n]}");
    }

    Console.WriteLine($"\n{unmoved} of {swept.Length} mutations change nothing on {seeds} seeds, {words} only words and findings of taste; "
        + $"{left.Count} more cannot stand behind a switch.");
    if (sample > 0) Console.WriteLine($"{unexpected} more change something that no seed expects.");
    return 0;
}

int One(Mutation mutation, int at)
{
    Environment.SetEnvironmentVariable("SPECLINT_FAILURES", "1");
    byte[]? mutant;
    string? refused = null;
    if (switched.Length > 0) mutant = File.ReadAllBytes(switched);
    else mutant = library.Compile(mutation, out refused);
    if (mutant is null) return Say("refused", refused!);
    var trial = new Trial(mutant, library.Tests);

    // What fails without the mutation catches nothing.
    var asIs = new Lazy<Trial>(() => new Trial(File.ReadAllBytes(Path.Combine(library.Tests, "SpecLint.dll")), library.Tests));
    string[] before = known.Length > 0 ? File.ReadAllText(known).Split(BetweenBooks) : asIs.Value.Corpus(books);
    string[] after = trial.Corpus(books);
    int[] changed = [.. Enumerable.Range(0, books).Where(i => trial.Harm(before[i]) != trial.Harm(after[i]))];
    if (changed.Length == 0)
        return before.SequenceEqual(after)
            ? Say("no change", "")
            : Say("words", $"{Enumerable.Range(0, books).Count(i => before[i] != after[i])} books change in words or taste");

    // First on the seeds that change, on which a case is worth most; then on all; what is written down of the seeds comes last.
    Environment.SetEnvironmentVariable("SPECLINT_RECORD", "0");
    string[] seeds = [.. changed.Select(trial.SeedOf).Distinct(StringComparer.Ordinal).Take(40)];
    foreach (var (from, n) in new[] { (string.Join('|', seeds), cases / 3), ("", cases) })
    {
        Environment.SetEnvironmentVariable("SPECLINT_SEEDS", from);
        Environment.SetEnvironmentVariable("SPECLINT_CASES", $"{n}");
        foreach (var (type, test) in Trial.Properties)
        {
            if (trial.Run(type, test) is { } caught && asIs.Value.Run(type, test) is null)
                return Say(
                    "property",
                    $"{changed.Length} books change; "
                        + $"{test}{(from.Length > 0 ? $" in {n} cases from {seeds.Length} seeds" : $" in {n} cases")}: {caught}");
        }
    }

    Environment.SetEnvironmentVariable("SPECLINT_RECORD", null);
    foreach (int i in changed.Where(i => i < trial.Seeds))
    {
        if (trial.Unlike(i) is { } unlike) return Say("record", $"{changed.Length} books change; {trial.SeedOf(i)}: {unlike.ReplaceLineEndings(" ")}");
    }

    foreach (string page in trial.Pages())
    {
        if (trial.Run("SpecLint.Tests.Rules.RulePageTests", "Examples_do_what_the_page_says", [page]) is not null)
            return Say("page", $"{changed.Length} books change; page of {page}");
    }

    int first = changed[0];
    return Say("survives", $"{changed.Length} books change; the first, {first} from {trial.SeedOf(first)}: {Difference(before[first], after[first])}");
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
