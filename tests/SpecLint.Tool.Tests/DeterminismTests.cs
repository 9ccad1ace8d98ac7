using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public class DeterminismTests(DemoBook demo) : IClassFixture<DemoBook>
{
    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("sarif")]
    public void One_thread_or_two_give_the_same_bytes(string format)
    {
        byte[] one = ToolRun.In(demo.Path, "check", "--format", format, "--threads", "1").Bytes;
        Assert.NotEmpty(one);
        for (int i = 0; i < 3; i++) Assert.Equal(one, ToolRun.In(demo.Path, "check", "--format", format, "--threads", "2").Bytes);
    }

    [Fact]
    public void Profiles_are_the_same_bytes_too()
    {
        byte[] one = ToolRun.In(demo.Path, "profile", "--format", "json", "--threads", "1").Bytes;
        Assert.Equal(one, ToolRun.In(demo.Path, "profile", "--format", "json", "--threads", "2").Bytes);
    }

    [Fact]
    public void The_order_of_the_files_does_not_show()
    {
        var files = Directory.EnumerateFiles(demo.Path, "*.json").OrderBy(f => f, StringComparer.Ordinal)
            .Select(f => new SourceFile(Path.GetFileName(f), File.ReadAllBytes(f))).ToArray();
        var on = CalendarDate.Parse(ToolRun.Day)!.Value;
        byte[] expected = Report(files);
        var random = new Random(20261125);
        for (int i = 0; i < 5; i++)
        {
            var shuffled = files.ToArray();
            random.Shuffle(shuffled);
            Assert.Equal(expected, Report(shuffled));
        }

        byte[] Report(SourceFile[] input)
        {
            using var stream = new MemoryStream();
            var content = ReportContent.Of(Checker.Check(new BookInput(input, on) { Threads = 2 }));
            SarifReport.Write(stream, content, new SarifReportOptions { Version = "1.0.0" });
            JsonReport.Write(stream, content, "1.0.0");
            return stream.ToArray();
        }
    }

    [Fact]
    public void The_day_comes_from_the_option()
    {
        string today = ToolRun.In(demo.Path, "check", "--format", "json").Output;
        string same = ToolRun.In(demo.Path, "check", "--format", "json", "--on", ToolRun.Day).Output;
        Assert.Equal(today, same);
        Assert.Contains("\"on\": \"2026-11-25\"", same, StringComparison.Ordinal);
    }
}
