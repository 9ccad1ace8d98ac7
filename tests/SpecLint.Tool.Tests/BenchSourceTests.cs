using System.Text.RegularExpressions;

namespace SpecLint.Tool.Tests;

/// <summary>What the sources of the bench's page keep to, so that a text stays a text and nothing is asked of anybody.</summary>
public sealed partial class BenchSourceTests
{
    public static TheoryData<string> Scripts => [.. Directory.GetFiles(Folder, "*.js").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Scripts))]
    public void No_script_reads_a_text_as_markup_or_as_code_or_names_an_address(string name)
    {
        string text = File.ReadAllText(Path.Combine(Folder, name));
        Assert.DoesNotMatch(Markup(), text);
        Assert.DoesNotMatch(@"https?://", text.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal));
        Assert.Equal(name == "paper.js", text.Contains("DOMParser", StringComparison.Ordinal));
    }

    [Fact]
    public void The_policy_is_strict_and_the_same_in_the_page_and_in_its_service_worker()
    {
        string page = File.ReadAllText(Path.Combine(Folder, "index.html")), worker = File.ReadAllText(Path.Combine(Folder, "sw.js"));
        string policy = Policy().Match(page).Groups[1].Value;
        Assert.StartsWith("default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-inline", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);

        // A frame's ancestors can be forbidden by a header alone.
        Assert.Contains($"\"{policy}; frame-ancestors 'none'\"", worker, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"(?i)<script(?! type=""module"" src=)|\son\w+=|style=""|<style", page);
    }

    [Fact]
    public void Texts_of_the_page_stand_in_one_file()
    {
        // A text for people begins with a capital and has a blank: elsewhere there is none but in comments.
        foreach (string file in Directory.GetFiles(Folder, "*.js").Where(f => Path.GetFileName(f) is not ("strings.js" or "sw.js")))
        {
            string code = Comment().Replace(File.ReadAllText(file), "");
            Assert.True(!Sentence().IsMatch(code), $"{Path.GetFileName(file)}: {Sentence().Match(code).Value}");
        }
    }

    private static string Folder => Repository.At("src", "SpecLint.Page", "wwwroot");

    [GeneratedRegex(
        @"innerHTML|outerHTML|insertAdjacentHTML|document\.write|createContextualFragment|\beval\(|new Function|setAttribute\(\s*['""]on|javascript:")]
    private static partial Regex Markup();

    [GeneratedRegex(@"http-equiv=""Content-Security-Policy"" content=""([^""]+)""")]
    private static partial Regex Policy();

    [GeneratedRegex(@"/\*[\s\S]*?\*/|(?<=^|\s)//[^\n]*")]
    private static partial Regex Comment();

    [GeneratedRegex(@"'[A-Z][a-z]+ [a-z][^'\n]*'")]
    private static partial Regex Sentence();
}
