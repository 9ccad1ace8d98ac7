using System.Diagnostics;
using System.Text.RegularExpressions;
using SpecLint.Reading;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>The zone of the machine: it names the day where no other is named, and changes nothing else.</summary>
public sealed class ZoneTests(DemoBook demo) : IClassFixture<DemoBook>
{
    [Fact]
    public void With_a_day_given_no_zone_changes_a_byte()
    {
        string first = Run("Pacific/Kiritimati", "linecheck", "evening", "--on", "2026-11-28");
        Assert.StartsWith("Evening, 2026-11-28", first, StringComparison.Ordinal);
        Assert.Equal(first, Run("Pacific/Pago_Pago", "linecheck", "evening", "--on", "2026-11-28"));
    }

    [Theory]
    [InlineData("Pacific/Kiritimati")]
    [InlineData("Pacific/Pago_Pago")]
    public void Without_one_it_is_the_day_on_the_wall(string zone)
    {
        // The demo book is set on a day; a bar's own book is not.
        string bar = Path.Combine(demo.Path, "bar.json");
        File.WriteAllText(bar, Regex.Replace(File.ReadAllText(bar), ",\\s*\"asOf\": \"[^\"]*\"", ""));

        // Between the two zones lie 25 hours: at any moment their days differ.
        string before = Wall(), heading = Run(zone, "linecheck", "evening").Split('\n')[0], after = Wall();
        Assert.Contains(heading, new[] { $"Evening, {before}", $"Evening, {after}" });

        string Wall()
        {
            var now = TimeZoneInfo.ConvertTimeFromUtc(DateTime.UtcNow, TimeZoneInfo.FindSystemTimeZoneById(zone));
            return CalendarDate.Of(now.Year, now.Month, now.Day)!.Value.ToString();
        }
    }

    [Fact]
    public void The_last_days_of_the_calendar_are_no_fault()
    {
        Assert.Equal(0, ToolRun.In(demo.Path, "labels", "--made", "sour-cucumber=9999-12-31").Status);
        foreach (string format in new[] { "text", "html", "json", "sarif" })
        {
            foreach (string day in new[] { "9999-12-31", "0001-01-01" })
                Assert.True(ToolRun.In(demo.Path, "linecheck", "evening", "--on", day, "--format", format).Status is 0 or 1);
        }
    }

    private string Run(string zone, params string[] args)
    {
        var start = new ProcessStartInfo(
            "dotnet", [typeof(Shell).Assembly.Location, .. args])
        {
            WorkingDirectory = demo.Path,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["TZ"] = zone;
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode is 0 or 1, error.Result);
        return output;
    }
}
