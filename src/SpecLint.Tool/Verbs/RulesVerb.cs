using System.CommandLine;
using System.Text.Json;
using SpecLint.Reports;
using SpecLint.Rules;

namespace SpecLint.Tool.Verbs;

/// <summary><c>rules</c>: lists the rules, or explains some.</summary>
internal sealed class RulesVerb : Verb
{
    private readonly Argument<string[]> rules = new("RULE") { Description = "Ids or names of rules to explain; a list of all where none is given.", Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> format = CommonOptions.Format("text", "json");
    private readonly Option<string?> output = CommonOptions.Output();

    public override string Name => "rules";

    public override string Description => "Lists the rules by family, or prints the page of one.";

    public override IReadOnlyList<string> Examples => ["speclint rules", "speclint rules SL9001"];

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
        var chosen = named.Length == 0 ? [.. RuleRegistry.All.Select(r => r.Info)] : named.Select(Find).ToList();
        string? file = parsed.GetValue(output);
        if (parsed.GetValue(format) == "json") ResultOutput.Deliver(host, file, stream => WriteJson(stream, chosen, withPages: named.Length > 0));
        else if (named.Length == 0) ResultOutput.DeliverText(host, file, writer => WriteList(writer, chosen));
        else ResultOutput.DeliverText(host, file, writer => WritePages(writer, chosen));
        return ExitStatus.Clean;
    }

    private static RuleInfo Find(string name) =>
        RuleRegistry.All.Select(r => r.Info).FirstOrDefault(i => i.Id.Equals(name, StringComparison.OrdinalIgnoreCase) || i.Name == name)
        ?? throw new UsageException($"there is no rule {name}; 'speclint rules' lists them.");

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
            string page = Embedded.PageOf(rules[i].Id) ?? throw new InvalidOperationException($"The page of {rules[i].Id} is missing from the build.");
            to.Write(page.ReplaceLineEndings("\n").TrimEnd('\n') + "\n");
        }
    }

    private static void WriteJson(Stream to, IReadOnlyList<RuleInfo> rules, bool withPages)
    {
        using var json = new Utf8JsonWriter(to, new JsonWriterOptions { Indented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
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
            foreach (var fact in rule.Needs) json.WriteStringValue(Profile.FactNames.Name(fact));
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
