using System.Text;
using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>What differs on Windows and macOS, as far as it can be had here: line ends, the mark at the beginning, code pages, separators.</summary>
public class OtherSystemsTests
{
    /// <summary>An editor of Windows has saved every file: other line ends, and the mark.</summary>
    [Theory]
    [InlineData("\r\n", false)]
    [InlineData("\r\n", true)]
    [InlineData("\r", false)]
    public void Line_ends_and_the_mark_change_no_finding(string lineEnd, bool hasMark)
    {
        using var folder = new TestFolder();
        Assert.Equal(0, ToolRun.In(folder.Path, "start", "book").Status);
        var before = Findings(folder);
        foreach (string file in Directory.GetFiles(folder["book"], "*.json", SearchOption.AllDirectories))
            File.WriteAllText(file, File.ReadAllText(file).Replace("\n", lineEnd, StringComparison.Ordinal), new UTF8Encoding(hasMark));
        Assert.Equal(before, Findings(folder));

        // What is written back keeps them.
        Assert.True(ToolRun.In(folder.Path, "correct", "book", "--apply", "assured").Status is 0 or 1);
        foreach (string file in Directory.GetFiles(folder["book"], "*.drink.json"))
        {
            byte[] bytes = File.ReadAllBytes(file);
            Assert.Equal(hasMark, bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble));
            Assert.DoesNotContain("\n", Encoding.UTF8.GetString(bytes).Replace(lineEnd, "", StringComparison.Ordinal), StringComparison.Ordinal);
        }
    }

    /// <summary>
    /// Every JSON output ends its lines with LF, also on Windows, where a writer left to itself does otherwise: so all that indents
    /// shares one set of options, and these name the line end.
    /// </summary>
    [Fact]
    public void Json_ends_its_lines_alike_on_every_system()
    {
        using var folder = new TestFolder();
        Assert.Equal(0, ToolRun.In(folder.Path, "start", "book").Status);
        foreach (string[] verb in (string[][])[["check", "book"], ["check", "book", "--part", "1/2"], ["profile", "book"], ["rules"], ["settings", "book"]])
            Assert.DoesNotContain((byte)'\r', ToolRun.In(folder.Path, [.. verb, "--format", "json"]).Bytes);

        var indenting = Directory.EnumerateFiles(Repository.At("src"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Where(f => File.ReadAllText(f) is var text
                && (text.Contains("Indented = true", StringComparison.Ordinal) || text.Contains("WriteIndented", StringComparison.Ordinal)))
            .ToList();
        Assert.Equal("JsonOutput.cs", Path.GetFileName(Assert.Single(indenting)));
        Assert.Contains("NewLine = \"\\n\",", File.ReadAllText(indenting[0]), StringComparison.Ordinal);
    }

    /// <summary>The bytes are UTF-8 whatever the process is told of its language, and numbers are written in one way.</summary>
    [Fact]
    public void No_code_page_changes_a_byte()
    {
        using var folder = new TestFolder();
        Assert.Equal(0, ToolRun.In(folder.Path, "start", "book").Status);
        string tool = Path.Combine(AppContext.BaseDirectory, "SpecLint.Tool.dll");
        var expected = ToolRun.In(folder.Path, "check", "book", "--on", ToolRun.Day).Output;
        Assert.Contains("°C", expected, StringComparison.Ordinal);
        foreach (string language in (ReadOnlySpan<string>)["C", "POSIX", "de_DE.ISO-8859-1", "tr_TR.UTF-8"])
            Assert.Equal(
                expected,
                Programs.Run(
                    folder.Path, "dotnet", [tool, "check", "book", "--on", ToolRun.Day], ("LC_ALL", language), ("LANG", language),
                    ("TERM", "dumb")).Output);
    }

    [Fact]
    public void A_console_of_Windows_is_set_to_UTF_8_and_back()
    {
        var set = new List<int>();
        var western = Encoding.Latin1;
        using (ConsolePage.UseUtf8(isWindows: true, isTerminal: true, () => western, e => set.Add(e.CodePage))) Assert.Equal([65001], set);
        Assert.Equal([65001, western.CodePage], set);

        // A file or a pipe gets the bytes as they are; a console that already is, and other systems, are left alone.
        set.Clear();
        ConsolePage.UseUtf8(isWindows: true, isTerminal: false, () => western, e => set.Add(e.CodePage))?.Dispose();
        ConsolePage.UseUtf8(isWindows: true, isTerminal: true, () => new UTF8Encoding(false), e => set.Add(e.CodePage))?.Dispose();
        ConsolePage.UseUtf8(isWindows: false, isTerminal: true, () => western, e => set.Add(e.CodePage))?.Dispose();
        Assert.Empty(set);

        // A console that refuses shows what it can.
        Assert.Null(ConsolePage.UseUtf8(isWindows: true, isTerminal: true, () => western, _ => throw new IOException("no")));
    }

    /// <summary>A listing as Windows gives it, and the patterns of bar.json as somebody writes them there.</summary>
    [Fact]
    public void A_backslash_separates_folders_in_a_listing_and_in_a_pattern()
    {
        byte[] bar = """{ "files": ["drinks\\**\\*.drink.json"], "leaveOut": ["drinks\\old\\"] }"""u8.ToArray();
        var files = Binding.BookFiles.Read(
            ["bar.json", "drinks\\new\\a.drink.json", "drinks\\old\\b.drink.json", "c.drink.json"],
            p => p == "bar.json" ? bar : "{}"u8.ToArray());
        Assert.Equal(["bar.json", "drinks/new/a.drink.json"], files.Select(f => f.Path));
    }

    private static List<string> Findings(TestFolder folder)
    {
        using var json = JsonDocument.Parse(ToolRun.In(folder.Path, "check", "book", "--on", ToolRun.Day, "--format", "json").Bytes);
        return [.. json.RootElement.GetProperty("findings")
            .EnumerateArray()
            .Select(f => $"{f.GetProperty("rule")} {f.GetProperty("file")} {f.GetProperty("region").GetProperty("startLine")}:{f.GetProperty("region").GetProperty("startColumn")} {f.GetProperty("message")}")];
    }
}
