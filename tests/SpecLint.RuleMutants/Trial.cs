using System.Reflection;
using System.Runtime.Loader;

namespace SpecLint.RuleMutants;

/// <summary>A compiled library with the tests that were built against it, loaded beside the others.</summary>
internal sealed class Trial : AssemblyLoadContext
{
    private readonly Assembly library;
    private readonly Assembly tests;
    private readonly string folder;

    public Trial(byte[] library, string folder)
        : base("trial")
    {
        this.folder = folder;
        this.library = LoadFromStream(new MemoryStream(library));
        tests = LoadFromAssemblyPath(Path.Combine(folder, "SpecLint.Tests.dll"));
    }

    /// <summary>The five properties; worse conditions as single steps and as ladders over the limits, agreement of verbs, of dates and of words.</summary>
    public static IReadOnlyList<(string Type, string Test)> Properties { get; } =
    [
        ("SpecLint.Tests.Properties.KnowledgeTests", "Worse_conditions_never_remove_or_lower_a_harm_finding"),
        ("SpecLint.Tests.Properties.LadderTests", "No_rung_of_worse_conditions_removes_or_lowers_a_harm_finding"),
        ("SpecLint.Tests.Properties.KnowledgeTests", "Less_knowledge_never_removes_a_harm_finding"),
        ("SpecLint.Tests.Properties.DisguiseTests", "No_disguise_hides_an_allergen_or_a_hazard"),
        ("SpecLint.Tests.Properties.DisguiseTests", "No_disguise_changes_a_figure"),
        ("SpecLint.Tests.Properties.AgreementTests", "No_verb_allows_what_check_forbids"),
        ("SpecLint.Tests.Properties.LotDateTests", "A_lot_lasts_as_long_as_the_verdict_on_its_recipe_says"),
        ("SpecLint.Tests.Properties.WordsTests", "No_word_stands_against_the_facts"),
        ("SpecLint.Tests.Properties.WordsTests", "A_list_of_allergens_that_lacks_one_is_found_to_lack_it"),
        ("SpecLint.Tests.Properties.CorrectionHarmTests", "No_correction_adds_an_allergen_or_a_harm_finding"),
    ];

    /// <summary>What each of many books comes to, one text a book.</summary>
    public string[] Corpus(int books) => (string[])OfCorpus("Answers", books);

    /// <summary>What one book comes to.</summary>
    public string Answer(int book) => (string)OfCorpus("AnswerOf", book);

    /// <summary>How many books of the corpus are seeds as they are.</summary>
    public int Seeds =>
        ((System.Collections.ICollection)tests.GetType(
            "SpecLint.Tests.Properties.PropertySeeds", throwOnError: true)!.GetProperty("All")!.GetValue(null)!).Count;

    /// <summary>Sets the mutation of a library that was compiled for a sweep; -1 for none.</summary>
    public int On { set => library.GetType("SpecLint.MutantSwitch", throwOnError: true)!.GetField("On")!.SetValue(null, value); }

    /// <summary>Which mutations such a library has reached; to be cleared by who reads it.</summary>
    public bool[] Reached => (bool[])library.GetType("SpecLint.MutantSwitch", throwOnError: true)!.GetField("Reached")!.GetValue(null)!;

    /// <summary>Which harm finding that a seed expects it has not, or has beyond; <see langword="null"/> where all is as expected.</summary>
    public string? Unlike(int book) => (string?)OfCorpus("UnlikeOf", book);

    /// <summary>The part of an answer that is about harm.</summary>
    public string Harm(string answer) => (string)OfCorpus("Harm", answer);

    /// <summary>The name of the seed that a book of the corpus is made of.</summary>
    public string SeedOf(int book) => (string)OfCorpus("SeedOf", book);

    /// <summary>Runs a test; why it fails, in one line unless the whole is wanted, or <see langword="null"/> where it passes.</summary>
    public string? Run(string type, string test, object?[]? arguments = null, bool whole = false)
    {
        var of = tests.GetType(type, throwOnError: true)!;
        try
        {
            of.GetMethod(test)!.Invoke(Activator.CreateInstance(of), arguments);
            return null;
        }
        catch (TargetInvocationException failed)
        {
            if (whole) return failed.InnerException!.Message;
            string[] lines = failed.InnerException!.Message.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            return string.Join(" | ", lines.Where(l => !l.StartsWith("//", StringComparison.Ordinal)).Skip(lines.Length > 2 ? 1 : 0).Take(2));
        }
    }

    /// <summary>Ids of the rule pages.</summary>
    public IEnumerable<string> Pages() =>
        Directory.EnumerateFiles(Repository.At("rules-docs"), "SL*.md")
            .Select(p => Path.GetFileNameWithoutExtension(p))
            .Order(StringComparer.Ordinal);

    private object OfCorpus(string method, object argument) =>
        tests.GetType(
            "SpecLint.Tests.Properties.PropertyCorpus", throwOnError: true)!.GetMethod(method, BindingFlags.Static | BindingFlags.Public)!.Invoke(null, [argument])!;

    protected override Assembly? Load(AssemblyName name)
    {
        if (name.Name == "SpecLint") return library;
        string path = Path.Combine(folder, name.Name + ".dll");
        return File.Exists(path) ? LoadFromAssemblyPath(path) : null;
    }
}
