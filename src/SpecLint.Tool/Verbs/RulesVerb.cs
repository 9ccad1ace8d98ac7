using System.CommandLine;
using System.Text.Json;
using SpecLint.Findings;
using SpecLint.Reports;
using SpecLint.Rules;

namespace SpecLint.Tool.Verbs;

/// <summary><c>rules</c>: lists the rules, or explains some.</summary>
internal sealed class RulesVerb : Verb
{
    private readonly Argument<string[]> rules = new("RULE")
    {
        Description = "Ids or names of rules to explain, or words to search for in the rule pages; default: a list of all rules.",
        HelpName = "RULE|WORD",
        Arity = ArgumentArity.ZeroOrMore,
    };
    private readonly Option<string> format = CommonOptions.Format("text", "json");
    private readonly Option<string?> output = CommonOptions.Output();

    public override string Name => "rules";

    public override string Description => "Lists the rules by family, or prints the page of one.";

    public override IReadOnlyList<string> Examples => ["speclint rules honey ferment", "speclint rules", "speclint rules SL9001"];

    public override void Define(Command command)
    {
        rules.CompletionSources.Add(_ => RuleRegistry.All.Select(r => new System.CommandLine.Completions.CompletionItem(r.Info.Id)));
        command.Arguments.Add(rules);
        command.Options.Add(format);
        command.Options.Add(output);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var named = parsed.GetValue(rules) ?? [];
        var all = RuleRegistry.All.Select(r => r.Info).ToList();
        var byName = named.Select(n => all.Find(i => i.Id.Equals(n, StringComparison.OrdinalIgnoreCase) || i.Name == n)).OfType<RuleInfo>().ToList();
        bool asksForPages = named.Length > 0 && byName.Count == named.Length;
        var chosen = named.Length == 0 ? all : asksForPages ? byName : BySymptom(named, all);
        string? file = parsed.GetValue(output);
        if (parsed.GetValue(format) == "json") ResultOutput.Deliver(host, file, stream => WriteJson(stream, chosen, withPages: asksForPages));
        else if (asksForPages) ResultOutput.DeliverText(host, file, writer => WritePages(writer, chosen));
        else ResultOutput.DeliverText(host, file, writer => WriteList(writer, chosen));
        return ExitStatus.Clean;
    }

    /// <summary>The rules whose pages hold every word: somebody who has a symptom knows no id.</summary>
    private static List<RuleInfo> BySymptom(string[] named, List<RuleInfo> all)
    {
        var bySymptom = all.Where(i => Embedded.PageOf(i.Id) is { } page && named.All(w => page.Contains(w, StringComparison.OrdinalIgnoreCase)))
            .OrderByDescending(i => named.Count(w => i.Title.Contains(w, StringComparison.OrdinalIgnoreCase)
                || i.Name.Contains(w, StringComparison.OrdinalIgnoreCase))).ToList();
        if (bySymptom.Count > 0) return bySymptom;
        string words = string.Join(" ", named);
        throw new UsageException($"there is no rule {words}, and no rule page holds "
            + $"{(named.Length == 1 ? "the word" : "all of these words")}."
            + $"{Suggestion.For(words, all.Select(i => i.Id).Concat(all.Select(i => i.Name)))} 'speclint rules' lists them.");
    }

    private static void WriteList(TextWriter to, IReadOnlyList<RuleInfo> rules)
    {
        foreach (var family in rules.GroupBy(r => r.Family).OrderBy(g => g.Key))
        {
            to.Write($"{(int)family.Key} {ReportWords.Of(family.Key)}\n");
            foreach (var rule in family)
            {
                string first = $"  {rule.Id}  {ReportWords.Of(rule.Level),-7}  ";
                string text = rule.Title + (rule.Safety ? " (guards against harm)" : "");
                foreach (string line in DisplayText.Wrap(text, first, new string(' ', first.Length))) to.Write(line + "\n");
            }

            to.Write('\n');
        }

        to.Write($"{ReportWords.Count(rules.Count, "rule", "rules")}. 'speclint rules ID' explains one.\n");
    }

    private static void WritePages(TextWriter to, IReadOnlyList<RuleInfo> rules)
    {
        for (int i = 0; i < rules.Count; i++)
        {
            if (i > 0) to.Write("\n");
            string page = Embedded.PageOf(rules[i].Id)
                ?? throw new InvalidOperationException($"The page of {rules[i].Id} is missing from the build.");
            to.Write(page.ReplaceLineEndings("\n").TrimEnd('\n') + "\n");
        }
    }

    private static void WriteJson(Stream to, IReadOnlyList<RuleInfo> rules, bool withPages)
    {
        using var json = new Utf8JsonWriter(to, JsonOutput.Options);
        json.WriteStartArray();
        foreach (var rule in rules)
        {
            json.WriteStartObject();
            json.WriteString("id", rule.Id);
            json.WriteString("name", rule.Name);
            json.WriteString("family", ReportWords.Of(rule.Family));
            json.WriteString("title", rule.Title);
            json.WriteString("level", ReportWords.Of(rule.Level));
            json.WriteBoolean("guardsAgainstHarm", rule.Safety);
            json.WriteStartArray("needs");
            foreach (var fact in rule.Needs) json.WriteStringValue(Vocabulary.FactNames.Name(fact));
            json.WriteEndArray();
            json.WriteStartArray("limits");
            foreach (string limit in rule.Limits) json.WriteStringValue(limit);
            json.WriteEndArray();
            if (withPages) json.WriteString("page", Embedded.PageOf(rule.Id));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.Flush();
        to.Write("\n"u8);
    }
}
