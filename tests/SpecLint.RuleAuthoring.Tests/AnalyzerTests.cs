namespace SpecLint.RuleAuthoring.Tests;

public class AnalyzerTests
{
    [Fact]
    public Task A_rule_with_page_and_id_in_its_range_passes() => Checked.ByAsync<RuleIdAnalyzer>(RuleOf("SpecLint.Rules.Balance", "A", "\"SL3001\""), "SL3001");

    [Fact]
    public Task A_declared_rule_with_page_and_id_in_its_range_passes() =>
        Checked.ByAsync<RuleIdAnalyzer>(DeclaredRule("SpecLint.Rules.Balance", "A", "\"SL3001\""), "SL3001");

    [Fact]
    public Task A_declared_rule_without_a_page_is_reported() =>
        Checked.ByAsync<RuleIdAnalyzer>(DeclaredRule("SpecLint.Rules.Balance", "A", "{|SLA001:\"SL3001\"|}"), "SL3002");

    [Fact]
    public Task A_declared_id_outside_the_range_of_its_family_is_reported() =>
        Checked.ByAsync<RuleIdAnalyzer>(DeclaredRule("SpecLint.Rules.Balance", "A", "{|SLA002:\"SL1001\"|}"), "SL1001");

    [Fact]
    public Task A_declared_id_used_twice_is_reported_at_the_later_rule() =>
        Checked.ByAsync<RuleIdAnalyzer>(
            DeclaredRule("SpecLint.Rules.Balance", "A", "\"SL3001\"") + DeclaredRule(
                "SpecLint.Rules.Balance", "B", "{|SLA003:\"SL3001\"|}"),
            "SL3001");

    [Fact]
    public Task A_rule_without_a_page_is_reported() =>
        Checked.ByAsync<RuleIdAnalyzer>(RuleOf("SpecLint.Rules.Balance", "A", "{|SLA001:\"SL3001\"|}"), "SL3002");

    [Theory]
    [InlineData("SL1001")]
    [InlineData("SL301")]
    [InlineData("XX3001")]
    public Task An_id_outside_the_range_of_its_family_is_reported(string id) =>
        Checked.ByAsync<RuleIdAnalyzer>(RuleOf("SpecLint.Rules.Balance", "A", $"{{|SLA002:\"{id}\"|}}"), id);

    [Fact]
    public Task An_id_used_twice_is_reported_at_the_later_rule() =>
        Checked.ByAsync<RuleIdAnalyzer>(
            RuleOf("SpecLint.Rules.Balance", "A", "\"SL3001\"") + RuleOf("SpecLint.Rules.Balance", "B", "{|SLA003:\"SL3001\"|}"), "SL3001");

    [Theory]
    [InlineData("HR3001", true)]
    [InlineData("SL3001", false)]
    [InlineData("HR0001", false)]
    [InlineData("house-1", false)]
    public Task A_house_has_ids_of_its_own(string id, bool right) =>
        Checked.InAHouseByAsync<RuleIdAnalyzer>(RuleOf("Saltmarsh.Rules", "A", right ? $"\"{id}\"" : $"{{|SLA002:\"{id}\"|}}"), id);

    [Theory]
    [InlineData("if (value > {|SLA004:12.5|}) Report(\"\");")]
    [InlineData("if ({|SLA004:-3.0|} >= value) Report(\"\");")]
    [InlineData("if (value is < {|SLA004:0.3|} or > {|SLA004:3|}) Report(\"\");")]
    [InlineData("if ({|SLA004:Most|} < value) Report(\"\");")]
    [InlineData("bool over = value > {|SLA004:5|}; if (over) Report(\"\");")]
    [InlineData("if (value <= 0 || value >= 1 || value > 100) Report(\"\");")]
    [InlineData("if (System.Math.Abs(value - 2) < 1e-9) Report(\"\");")]
    [InlineData("if (System.Math.Round(value >= 50 ? value : value / 5) > Limit) Report(\"\");")]
    [InlineData("int count = (int)value; if (count > 3) Report(\"\");")]
    [InlineData("if (value > Limit) Report(\"\");")]
    [InlineData("if (value < {|SLA004:0.6|} * Limit) Report(\"\");")]
    [InlineData("if (value > Limit + {|SLA004:1.5|}) Report(\"\");")]
    [InlineData("if (value > Limit / {|SLA004:2|}) Report(\"\");")]
    [InlineData("if (value / 1000 > Limit * 60) Report(\"\");")]
    public Task A_limit_as_a_bare_number_is_reported(string statement) => Checked.ByAsync<BareLimitAnalyzer>($$"""
        namespace SpecLint.Rules.Balance
        {
            internal sealed class A : Rule
            {
                private const double Most = 7.5;
                private static readonly double Limit = double.Parse("4.5");
                public override RuleInfo Info => null;
                public void Check(double value) { {{statement}} }
            }
        }
        """);

    [Fact]
    public Task A_service_is_asked_for_its_limits_too() => Checked.ByAsync<BareLimitAnalyzer>(
        "namespace SpecLint.Service { internal static class Plan { public static bool Near(double value, double other) => value < "
            + "{|SLA004:0.25|} || value < {|SLA004:0.6|} * other; } }");

    [Fact]
    public Task Outside_of_rules_numbers_are_free() =>
        Checked.ByAsync<BareLimitAnalyzer>("internal static class Solver { public static bool Near(double value) => value < 0.25; }");

    [Theory]
    [InlineData("{|SLA008:step.Verb.Id|} == \"boil\"")]
    [InlineData("\"boil\" != {|SLA008:step.Verb.Id|}")]
    [InlineData("{|SLA008:step.Written|} is \"boil\"")]
    [InlineData("{|SLA008:step.Verb.Id|} is not (\"boil\")")]
    [InlineData("step.Verb is { {|SLA008:Id|}: \"boil\" }")]
    [InlineData("{|SLA008:step.Verb.Id|}.StartsWith(\"boil\")")]
    [InlineData("{|SLA008:step.Verb.ToString()|} == \"boil\"")]
    [InlineData("Listed.Contains({|SLA008:step.Verb.Id|})")]
    [InlineData("{|SLA008:step.Verb|} == Verb.Of(\"boil\")")]
    [InlineData("{|SLA008:word|} == \"boil\"")]
    [InlineData("{|SLA008:step.Verb.Id|} switch { \"boil\" => true, _ => false }")]
    [InlineData("Phrases.Has({|SLA008:step.Verb.Id|}, \"boil\")")]
    [InlineData("step.Verb.Boils")]
    [InlineData("step.Verb.Id == other.Verb.Id")]
    [InlineData("step.Verb == other.Verb")]
    [InlineData("Table.ContainsKey(step.Verb.Id)")]
    public Task A_word_is_asked_for_its_traits(string test) => Checked.ByAsync<WordAsTextAnalyzer>($$"""
        using System.Collections.Generic;
        using SpecLint.Book;
        using SpecLint.Vocabulary;
        namespace SpecLint.Profile
        {
            internal static class Phrases { public static bool Has(string text, string phrase) => text == phrase; }

            internal static class Reader
            {
                private static readonly HashSet<string> Listed = new HashSet<string>();
                private static readonly Dictionary<string, int> Table = new Dictionary<string, int>();
                public static bool Holds(Step step, Step other) { string word = step.Verb.Id; return {{test}}; }
            }
        }
        """);

    [Fact]
    public Task The_tables_of_words_may_read_text() => Checked.ByAsync<WordAsTextAnalyzer>("""
        namespace SpecLint.Vocabulary { internal static class Table { public static bool Holds(Verb verb) => verb.Id == "boil"; } }
        """);

    [Fact]
    public Task Of_a_house_only_rules_are_asked() => Checked.InAHouseByAsync<WordAsTextAnalyzer>("""
        using SpecLint.Book;
        using SpecLint.Findings;
        using SpecLint.Rules;
        internal sealed class A : Rule { public override RuleInfo Info => null; public bool Check(Step step) => {|SLA008:step.Verb.Id|} == "boil"; }
        internal static class Program { public static bool Check(Step step) => step.Verb.Id == "boil"; }
        """);

    [Theory]
    [InlineData("[Fact.Abv]", "new RecipeContext().Fact(Fact.Abv)")]
    [InlineData("[Fact.Abv]", "new RecipeContext().Fact({|SLA005:Fact.Sugar|})")]
    [InlineData("[Fact.Abv]", "new RecipeProfile().Get({|SLA005:Fact.Sugar|})")]
    [InlineData("[]", "new RecipeContext().Fact({|SLA005:Fact.Acid|})")]
    [InlineData("Listed", "new RecipeContext().Fact(Fact.Acid)")]
    public Task A_fact_that_is_read_is_declared(string needs, string read) => Checked.ByAsync<UndeclaredFactAnalyzer>($$"""
        using SpecLint.Profile;
        using SpecLint.Vocabulary;
        namespace SpecLint.Rules.Balance
        {
            internal sealed class A : Rule
            {
                private static Fact[] Listed => new Fact[0];
                private static readonly RuleInfo Own = new RuleInfo("SL3001", "") { Needs = {{needs}} };
                public override RuleInfo Info => Own;
                public double Check() => {{read}}.Value;
            }
        }
        """);

    [Theory]
    [InlineData(", Needs = [Fact.Abv, Fact.Sugar]", "Fact.Sugar")]
    [InlineData(", Needs = [Fact.Abv]", "{|SLA005:Fact.Sugar|}")]
    [InlineData("", "{|SLA005:Fact.Sugar|}")]
    public Task A_fact_that_is_read_stands_in_the_declaration(string needs, string read) => Checked.ByAsync<UndeclaredFactAnalyzer>($$"""
        using SpecLint.Vocabulary;
        namespace SpecLint.Rules.Balance
        {
            [Rule("SL3001"{{needs}})]
            internal sealed class A : Rule { public double Check() => new RecipeContext().Fact({{read}}).Value; }
        }
        """);

    [Fact]
    public Task A_fact_that_the_base_reads_is_declared_by_each_rule() => Checked.ByAsync<UndeclaredFactAnalyzer>("""
        using SpecLint.Profile;
        using SpecLint.Vocabulary;
        namespace SpecLint.Rules.Balance
        {
            internal abstract class Band : Rule { public double Check() => new RecipeContext().Fact(Fact.Acid).Value; }
            internal sealed class {|SLA005:A|} : Band { public override RuleInfo Info { get; } = new RuleInfo("SL3001", ""); }
            internal sealed class B : Band { public override RuleInfo Info { get; } = new RuleInfo("SL3002", "") { Needs = [Fact.Acid] }; }
        }
        """);

    [Theory]
    [InlineData("{|SLA006:System.DateTime.Now|}")]
    [InlineData("{|SLA006:System.DateTimeOffset.UtcNow|}")]
    [InlineData("{|SLA006:System.Guid.NewGuid()|}")]
    [InlineData("{|SLA006:new System.Random()|}")]
    [InlineData("{|SLA006:System.IO.File.ReadAllText(\"a\")|}")]
    [InlineData("{|SLA006:System.Environment.GetEnvironmentVariable(\"A\")|}")]
    [InlineData("{|SLA007:System.Globalization.CultureInfo.CurrentCulture|}")]
    [InlineData("{|SLA007:x.ToString()|}")]
    [InlineData("{|SLA007:x.ToString(\"0.0\")|}")]
    [InlineData("{|SLA007:double.Parse(\"1\")|}")]
    [InlineData("{|SLA007:\"A\".ToLower()|}")]
    [InlineData("\"a\".Equals(\"A\", {|SLA007:System.StringComparison.CurrentCulture|})")]
    [InlineData("$\"{|SLA007:{x}|} g\"")]
    [InlineData("{|SLA007:x + \" g\"|}")]
    [InlineData("new System.Text.StringBuilder().Append(x, 0)", "public static object Append(this System.Text.StringBuilder b, double v, int n) => b;")]
    [InlineData("{|SLA007:new System.Text.StringBuilder().Append(x)|}")]
    [InlineData("x.ToString(System.Globalization.CultureInfo.InvariantCulture)")]
    [InlineData("System.FormattableString.Invariant($\"{x} g\")")]
    [InlineData("string.Create(System.Globalization.CultureInfo.InvariantCulture, $\"{x} g\")")]
    [InlineData("$\"{n} files\"")]
    [InlineData("new System.DateTime(2026, 11, 25)")]
    public Task Surroundings_and_culture_stay_out(string expression, string member = "") =>
        Checked.ByAsync<AmbientStateAnalyzer>($$"""internal static class A { {{member}} public static object B(double x, int n) => {{expression}}; }""");

    [Fact]
    public Task In_a_house_only_the_rules_are_looked_at() => Checked.InAHouseByAsync<AmbientStateAnalyzer>("""
        internal static class Program { public static object Day() => System.DateTime.Now; }
        internal sealed class A : SpecLint.Rules.Rule
        {
            public override SpecLint.Findings.RuleInfo Info => null;
            public object Day() => {|SLA006:System.DateTime.Now|};
        }
        """);

    private static string RuleOf(string space, string name, string id) => $$"""
        namespace {{space}}
        {
            internal sealed class {{name}} : SpecLint.Rules.Rule
            {
                private static readonly SpecLint.Findings.RuleInfo Own = new SpecLint.Findings.RuleInfo({{id}}, "A mistake");
                public override SpecLint.Findings.RuleInfo Info => Own;
            }
        }

        """;

    private static string DeclaredRule(string space, string name, string id) => $$"""
        namespace {{space}}
        {
            [SpecLint.Rules.Rule({{id}})]
            internal sealed class {{name}} : SpecLint.Rules.Rule { }
        }

        """;
}
