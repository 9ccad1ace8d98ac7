namespace SpecLint.RuleAuthoring.Tests;

public class CodeFixTests
{
    [Theory]
    [InlineData("{|SLA007:x.ToString()|}", "x.ToString(CultureInfo.InvariantCulture)")]
    [InlineData("{|SLA007:x.ToString(\"0.0\")|}", "x.ToString(\"0.0\", CultureInfo.InvariantCulture)")]
    [InlineData("{|SLA007:double.Parse(\"1\")|}", "double.Parse(\"1\", CultureInfo.InvariantCulture)")]
    [InlineData("{|SLA007:\"A\".ToLower()|}", "\"A\".ToLowerInvariant()")]
    [InlineData("\"a\".Equals(\"A\", {|SLA007:StringComparison.CurrentCultureIgnoreCase|})", "\"a\".Equals(\"A\", StringComparison.OrdinalIgnoreCase)")]
    [InlineData("{|SLA007:StringComparer.CurrentCulture|}", "StringComparer.Ordinal")]
    [InlineData("{|SLA007:CultureInfo.CurrentCulture|}", "CultureInfo.InvariantCulture")]
    [InlineData("{|SLA007:string.Compare(\"a\", \"b\")|}", "string.CompareOrdinal(\"a\", \"b\")")]
    [InlineData("$\"{|SLA007:{x}|} g\"", "FormattableString.Invariant($\"{x} g\")")]
    [InlineData("{|SLA007:x + \" g\"|}", "x.ToString(CultureInfo.InvariantCulture) + \" g\"")]
    [InlineData("{|SLA007:new StringBuilder().Append(x * 2)|}", "new StringBuilder().Append((x * 2).ToString(CultureInfo.InvariantCulture))")]
    public Task Text_is_made_invariant(string expression, string better) =>
        Checked.FixedByAsync<AmbientStateAnalyzer, InvariantCultureFix>(ClassWith(expression), ClassWith(better));

    [Theory]
    [InlineData("new RuleInfo(\"SL3001\", \"\") { Needs = [Fact.Abv] }", "new RuleInfo(\"SL3001\", \"\") { Needs = [Fact.Abv, Fact.Sugar] }")]
    [InlineData("new RuleInfo(\"SL3001\", \"\") { Needs = [] }", "new RuleInfo(\"SL3001\", \"\") { Needs = [Fact.Sugar] }")]
    [InlineData("new RuleInfo(\"SL3001\", \"\")", "new RuleInfo(\"SL3001\", \"\") { Needs = [Fact.Sugar] }")]
    [InlineData("new(\"SL3001\", \"\")", "new(\"SL3001\", \"\") { Needs = [Fact.Sugar] }")]
    public Task A_fact_that_is_read_is_declared(string info, string better) =>
        Checked.FixedByAsync<UndeclaredFactAnalyzer, DeclareFactFix>(RuleWith(info, "{|SLA005:Fact.Sugar|}"), RuleWith(better, "Fact.Sugar"));

    [Theory]
    [InlineData("", ", Needs = [Fact.Sugar]")]
    [InlineData(", Needs = [Fact.Abv]", ", Needs = [Fact.Abv, Fact.Sugar]")]
    public Task A_fact_that_is_read_is_put_in_the_declaration(string needs, string better) =>
        Checked.FixedByAsync<UndeclaredFactAnalyzer, DeclareFactFix>(DeclaredWith(needs, "{|SLA005:Fact.Sugar|}"), DeclaredWith(better, "Fact.Sugar"));

    private static string DeclaredWith(string needs, string fact) => $$"""
        using SpecLint.Profile;
        using SpecLint.Vocabulary;

        namespace SpecLint.Rules.Balance
        {
            [Rule("SL3001"{{needs}})]
            internal sealed class A : Rule
            {
                public double Check() => new RecipeContext().Fact({{fact}}).Value;
            }
        }
        """;

    private static string ClassWith(string expression) => $$"""
        using System;
        using System.Globalization;
        using System.Text;

        internal static class A
        {
            public static object B(double x) => {{expression}};
        }
        """;

    private static string RuleWith(string info, string fact) => $$"""
        using SpecLint.Profile;
        using SpecLint.Vocabulary;

        namespace SpecLint.Rules.Balance
        {
            internal sealed class A : Rule
            {
                private static readonly RuleInfo Own = {{info}};
                public override RuleInfo Info => Own;
                public double Check() => new RecipeContext().Fact({{fact}}).Value;
            }
        }
        """;
}
