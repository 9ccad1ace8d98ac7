using System.Text.RegularExpressions;
using CsCheck;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>The view in US units. Factors by NIST Handbook 44 (2024), appendix C: 29.5735295625 mL, 32 fl oz a quart, 4 quarts a gallon.</summary>
public sealed partial class UnitsTests(DemoBook demo) : IClassFixture<DemoBook>
{
    private static readonly DisplayUnits Us = DisplayUnits.UnitedStates;

    [Theory]
    [InlineData(
        "In the glass there are 159 mL (151–170) of liquid: together 159 mL.",
        "In the glass there are 5.38 oz (5.11–5.75) of liquid: together 5.38 oz.")]
    [InlineData("It stands at 9 °C, over 5 °C.", "It stands at 48 °F, over 41 °F.")]
    [InlineData("First ice at -4.2 °C (-5.1 to -3.4).", "First ice at 24 °F (23–26).")]
    [InlineData("First ice at -4.2 °C (-5.1–-3.4).", "First ice at 24 °F (23–26).")]
    [InlineData("First ice at -30 °C (-32.5 to -20).", "First ice at -22 °F (-27 to -4).")]
    [InlineData("Freeze at -30–-20 °C.", "Freeze at -22 to -4 °F.")]
    [InlineData("Write 30 ml.", "Write 30 ml (1.01 oz).")]
    [InlineData("One fruit gives 20 to 35 mL of it.", "One fruit gives 0.68 to 1.18 oz of it.")]
    [InlineData("It makes 3 L, which is 3000 mL.", "It makes 3.17 qt, which is 3.17 qt.")]
    [InlineData("Keep 20 l back.", "Keep 20 l (5.28 gal) back.")]
    [InlineData(
        "8.2 g/100 mL of sugar, 1.04 g/mL, 61.5 g in 100 mL, 3 mL/L, 2 mL a litre of the drink",
        "8.2 g/100 mL of sugar, 1.04 g/mL, 61.5 g in 100 mL, 3 mL/L, 2 mL a litre of the drink")]
    [InlineData("`45 ml` and \"2 cl\" are quoted, item-2 ml is an id, 1,5 mL a comma.", "`45 ml` and \"2 cl\" are quoted, item-2 ml is an id, 1,5 mL a comma.")]
    [InlineData("12 mlx, 5 months, 7 °Bx, an open ` mark and 30 mL", "12 mlx, 5 months, 7 °Bx, an open ` mark and 1.01 oz")]
    public void A_sentence_shows_amounts_and_nothing_else_in_us_units(string metric, string us)
    {
        Assert.Equal(us, Us.Sentence(metric));
        Assert.Equal(metric, DisplayUnits.Metric.Sentence(metric));
        Assert.Equal(metric, DisplayUnits.Metric.Spoken(metric));
    }

    [Fact]
    public void To_people_who_read_no_file_only_the_one_unit_is_shown() => Assert.Equal("make it: 20.3 oz more", Us.Spoken("make it: 600 ml more"));

    [Theory]
    [InlineData(15, "0.51 oz")]
    [InlineData(29.5735295625, "1 oz")]
    [InlineData(946.352946, "1 qt")]
    [InlineData(3785.411784, "1 gal")]
    public void A_volume_takes_the_unit_of_its_size(double millilitres, string words) => Assert.Equal(words, Us.Volume(millilitres));

    [Theory]
    [InlineData(45, "1½ oz")]
    [InlineData(22.18, "¾ oz")]
    [InlineData(12.5, "½ oz (0.42 oz)")]
    [InlineData(5, "1 bar spoon")]
    [InlineData(1.6, "2 dashes")]
    [InlineData(946.353, "1 qt")]
    [InlineData(1200, "1 qt 8½ oz")]
    [InlineData(4000, "4 qt 7¼ oz")]
    public void What_is_poured_is_said_in_what_a_bar_measures(double millilitres, string words) => Assert.Equal(words, Us.Pour(millilitres));

    [Fact]
    public void What_is_poured_comes_to_what_is_asked_for_or_says_the_exact_value() => Gen.Double[0.5, 20_000].Sample(millilitres =>
    {
        string said = Us.Pour(millilitres);
        double sum = 0;
        foreach (Match part in Regex.Matches(said.Split(" (")[0], "([0-9]*)([¼½¾]?) (qt|oz|bar spoons?|dash(?:es)?)"))
        {
            double number = (part.Groups[1].Value.Length > 0
                ? double.Parse(part.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)
                : 0) + (part.Groups[2].Value switch { "¼" => 0.25, "½" => 0.5, "¾" => 0.75, _ => 0 });
            sum += number * (part.Groups[3].Value[0] switch { 'q' => 946.352946, 'o' => 29.5735295625, 'b' => 5, _ => 0.8 });
        }

        Assert.True(Math.Abs(sum - millilitres) <= (0.0201 * millilitres) || said.EndsWith(')'), $"{millilitres} mL is said to be {said}");
    });

    [Fact]
    public void An_amount_in_a_name_stays_in_the_name()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write(
            "sea.drink.json",
            """{ "name": "Sea 30 ml", "ingredients": [ { "item": "water", "amount": "100 ml" } ], "method": [ { "do": "build" } ], "declares": { "allergens": [] } }""");
        book.Write("tonight.menu.json", """{ "name": "Tonight", "drinks": [ { "drink": "sea" } ] }""");
        var (linked, _) = Checker.Profile(BookFolder.Open(
            new Host
            {
                Output = Stream.Null,
                Error = TextWriter.Null,
                CurrentDirectory = book.Path,
                Today = () => SpecLint.Reading.CalendarDate.Parse(ToolRun.Day)!.Value,
            },
            [])
            .ToInput(SpecLint.Reading.CalendarDate.Parse(ToolRun.Day)!.Value, 0));
        Assert.Equal("Sea 30 ml takes 20.3 oz", Us.Keeping(linked).Spoken("Sea 30 ml takes 600 ml"));
        Assert.Equal("Sea 1.01 oz takes 20.3 oz", Us.Spoken("Sea 30 ml takes 600 ml"));
    }

    [Fact]
    public void An_amount_comes_back_within_its_rounding() => Gen.Double[0.5, 20_000].Sample(millilitres =>
    {
        string shown = Us.Sentence($"it is {millilitres.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)} mL");
        var match = Shown().Match(shown);
        Assert.True(match.Success, shown);
        double size = match.Groups[2].Value switch { "oz" => 29.5735295625, "qt" => 946.352946, _ => 3785.411784 };
        double back = size * double.Parse(match.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(back, millilitres - (0.06 * size), millilitres + (0.06 * size));
    });

    [Fact]
    public void No_text_makes_it_fail_and_text_without_amounts_stays() => Gen.String.Sample(text =>
    {
        string shown = Us.Sentence(text);
        return text.Any(char.IsAsciiDigit) || shown == text;
    });

    [Theory]
    [InlineData("check")]
    [InlineData("profile", "low-tide")]
    [InlineData("profile", "marsh-martini-freezer")]
    [InlineData("scale", "low-tide", "--serves", "40")]
    [InlineData("linecheck", "evening", "--on", "2026-11-28")]
    [InlineData("correct")]
    public void No_metric_amount_is_left_in_the_text_but_as_written_in_a_file(params string[] args)
    {
        string metric = ToolRun.In(demo.Path, args).Output, us = ToolRun.In(demo.Path, [.. args, "--units", "us"]).Output;
        Assert.NotEqual(metric, us);
        Assert.Matches("[0-9] (oz|°F)", us);

        // Excerpts, differences and what a recipe says ("from 45 ml") are the file's own words.
        string spoken = Quoted().Replace(us, "");
        spoken = string.Join('\n', spoken.Split('\n').Where(l => l.Length == 0 || l[0] is not ('+' or '-') || args[0] != "correct"));
        foreach (Match left in Metric().Matches(spoken))
        {
            string around = spoken[Math.Max(0, left.Index - 60)..Math.Min(spoken.Length, left.Index + 60)];
            Assert.True(
                Beside().IsMatch(spoken[left.Index..])
                    || spoken[..left.Index].TrimEnd().EndsWith("from", StringComparison.Ordinal)
                    || args[0] == "correct" && around.Contains('{', StringComparison.Ordinal),
                around);
        }
    }

    [Fact]
    public void Json_and_sarif_stay_metric()
    {
        foreach (string[] args in new string[][] { ["check", "--format", "json"], ["check", "--format", "sarif"], ["profile", "--format", "json"], ["linecheck", "evening", "--format", "json"], ["linecheck", "evening", "--format", "sarif"], ["labels", "--format", "json"] })
            Assert.Equal(ToolRun.In(demo.Path, args).Output, ToolRun.In(demo.Path, [.. args, "--units", "us"]).Output);
    }

    [Fact]
    public void A_profile_shows_volume_and_temperature_and_keeps_the_rest()
    {
        string us = ToolRun.In(demo.Path, "profile", "low-tide", "--units", "us").Output, metric = ToolRun.In(demo.Path, "profile", "low-tide").Output;
        double millilitres = double.Parse(Glass().Match(metric).Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
        double ounces = double.Parse(Glass().Match(us).Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(millilitres / 29.5735295625, ounces, 0.02);
        Assert.Contains("°F", us, StringComparison.Ordinal);
        Assert.Contains("g/100 mL", us, StringComparison.Ordinal);
    }

    [GeneratedRegex("^it is ([0-9.]+) (oz|qt|gal)$")]
    private static partial Regex Shown();

    [GeneratedRegex("`[^`]*`|\"[^\"]*\"")]
    private static partial Regex Quoted();

    [GeneratedRegex("(?<![/0-9.])(?!100 mL)[0-9][0-9.]* (mL|ml|cl|l|°C)(?![\\w/]|\\s+a\\s+litre)")]
    private static partial Regex Metric();

    [GeneratedRegex("^[0-9.]+ (ml|cl|l)\\s+\\([0-9.]+\\s+(oz|qt|gal)\\)")]
    private static partial Regex Beside();

    [GeneratedRegex("volume in the glass +([0-9.]+) ")]
    private static partial Regex Glass();
}
