using System.Diagnostics;
using System.Text;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>Files that no bar would write: each gives findings, or status 2 with a sentence; the other files go on; nothing is written.</summary>
public class HostileFileTests
{
    public static TheoryData<string> Names
    {
        get
        {
            var names = new TheoryData<string>();
            foreach (var name in Cases.Keys) names.Add(name);
            return names;
        }
    }

    private static string Drink(string inner) =>
        $$"""{ "name": "X", "ingredients": [ {{inner}} ], "method": [ { "do": "stir", "ice": "cubed", "for": "20 s" } ] }""";

    private static string Line(string item, string amount = "30 ml") => $$"""{ "item": "{{item}}", "amount": "{{amount}}" }""";

    private static readonly Dictionary<string, Action<TestFolder>> Cases = new(StringComparer.Ordinal)
    {
        ["empty"] = f => f.Write("x.drink.json", ""),
        ["only a byte order mark"] = f => f.Write("x.drink.json", [0xEF, 0xBB, 0xBF]),
        ["cut short"] = f => f.Write("x.drink.json", """{ "name": "X", "ingredients": [ { "item": "gi"""),
        ["binary"] = f => f.Write("x.drink.json", RandomBytes(5000)),
        ["zero bytes"] = f => f.Write("x.drink.json", new byte[5000]),
        ["UTF-16"] = f => f.Write("x.drink.json", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Drink(Line("gin")))]),
        ["invalid UTF-8"] = f => f.Write("x.drink.json", [.. Encoding.UTF8.GetBytes("{ \"name\": \"X"), 0xC3, 0x28, 0xFF, .. Encoding.UTF8.GetBytes("\" }")]),
        ["lone surrogates"] = f => f.Write("x.drink.json", Drink(Line("\\ud800"))),
        ["zero in a text"] = f => f.Write("x.drink.json", Drink(Line("gi\\u0000n"))),
        ["deep lists"] = f => f.Write("x.drink.json", $"{{ \"name\": {new string('[', 100_000)}{new string(']', 100_000)} }}"),
        ["deep objects, not closed"] = f => f.Write("x.prep.json", string.Concat(Enumerable.Repeat("{\"target\":", 200_000))),
        ["huge number"] = f => f.Write(
            "x.drink.json",
            $$"""{ "name": "X", "serves": 1e999999, "ingredients": [ {{Line("gin", "1e308 ml")}}, {{Line("gin", new string('9', 400) + " ml")}} ] }"""),
        ["numbers without sense"] = f => f.Write(
            "x.drink.json",
            Drink(string.Join(
                ", ",
                new[] { "-5 ml", "0 ml", "1/0 oz", "NaN ml", "Infinity g", "5–1 ml", "1e-320 g", "--3 ml", "١٢ ml" }.Select(a => Line("gin", a))))),
        ["names twice"] = f => f.Write(
            "x.drink.json",
            """{ "name": "X", "name": "Y", "ingredients": [ { "item": "gin", "item": "rum", "amount": "1 ml", "amount": "2 ml" } ] }"""),
        ["a list at the top"] = f => f.Write("x.drink.json", "[ 1, 2, 3 ]"),
        ["wrong types everywhere"] = f => f.Write(
            "x.drink.json",
            """{ "name": [], "ingredients": { "item": 3 }, "method": "shake", "serves": "two", "garnish": null, "declares": true, "accept": 7 }"""),
        ["10 MB"] = f => f.Write("x.drink.json", Drink(Line("gin")) + new string(' ', 10_000_000)),
        ["an id that climbs"] = f => f.Write("x.drink.json", Drink(Line("../../../etc/passwd"))),
        ["a name that makes no id"] = f => f.Write("Bad Name!.drink.json", Drink(Line("gin"))),
        ["made of itself"] = f => f.Write("x.prep.json", """{ "name": "X", "family": "syrup", "ingredients": [ { "item": "x", "amount": "30 ml" } ] }"""),
        ["cycles of preparations"] = f =>
        {
            for (int i = 0; i < 50; i++)
                f.Write(
                    $"p{i}.prep.json",
                    $$"""{ "name": "P", "family": "syrup", "ingredients": [ { "item": "p{{(i + 1) % 50}}", "amount": "30 ml" }, { "item": "p{{(i * 7) % 50}}", "amount": "1 ml" } ] }""");
        },
        ["cycles of likeness"] = f =>
        {
            f.Write("a.ingredient.json", """{ "name": "A", "like": "b" }""");
            f.Write("b.ingredient.json", """{ "name": "B", "like": "a" }""");
            f.Write("x.drink.json", Drink(Line("a")));
        },
        ["a long chain of preparations"] = f =>
        {
            for (int i = 0; i < 300; i++)
                f.Write(
                    $"c{i}.prep.json",
                    $$"""{ "name": "C", "family": "syrup", "ingredients": [ { "item": "{{(i == 0 ? "simple-syrup" : $"c{i - 1}")}}", "amount": "30 ml" } ] }""");
            f.Write("x.drink.json", Drink(Line("c299")));
        },
        ["twenty thousand lines"] = f => f.Write("x.drink.json", Drink(string.Join(", ", Enumerable.Repeat(Line("gin"), 20_000)))),
        ["one very long text"] = f => f.Write(
            "x.drink.json", $$"""{ "name": "{{new string('x', 3_000_000)}}", "ingredients": [ {{Line(new string('y', 500_000))}} ] }"""),
        ["terminal escapes"] = f => f.Write(
            "x.drink.json",
            """{ "name": "\u001b[2J\u001b]0;owned\u0007 \u202Egnp", "ingredients": [ { "item": "\u009b31m", "amount": "\u0008\u0008" } ] }"""),
        ["a broken bar"] = f => f.Write("bar.json", "{ \"name\": "),
        ["a bar that makes no sense"] = f => f.Write(
            "bar.json",
            """{ "name": 3, "jurisdictions": ["Atlantis", 7], "measures": { "oz": "-3 ml", "ml": "30 g", "dash": "blue" }, "rules": { "SL9001": "fatal", "XX": "error" }, "files": ["**/*", "[", "../../**/*"], "leaveOut": [""], "glasses": [] }"""),
        ["a pipe"] = f =>
        {
            if (!OperatingSystem.IsWindows()) Process.Start("mkfifo", f["x.drink.json"]).WaitForExit();
        },
        ["a folder with a file's name"] = f => Directory.CreateDirectory(f["x.drink.json"]),
        ["one id twice"] = f =>
        {
            f.Write("x.drink.json", Drink(Line("gin")));
            f.Write("sub/x.drink.json", Drink(Line("gin")));
            f.Write("x.prep.json", """{ "name": "X", "family": "syrup", "ingredients": [ { "item": "water", "amount": "1 l" } ] }""");
        },
        ["a stock of nonsense"] = f => f.Write(
            "x.stock.json",
            """{ "on": "0000-00-00", "lots": [ { "item": "mudflat", "made": "9999-12-31", "at": "-500 °C", "measured": { "ph": -4 } }, null, 3, [] ] }"""),
        ["a menu of nonsense"] = f => f.Write(
            "x.menu.json", """{ "name": "", "drinks": [ { "drink": "", "covers": -1e300 }, { "drink": "x", "claims": [ 3 ] } ] }"""),
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void It_gives_findings_or_a_sentence(string name)
    {
        using var book = SmallBook.WithBroken();
        Cases[name](book);
        string before = book.Snapshot();
        foreach (string format in new[] { "text", "json", "sarif" })
        {
            var run = ToolRun.In(book.Path, "check", "--format", format);
            Assert.True(run.Status is 1 or 2, $"status {run.Status}: {run.Error}");
            Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
            if (run.Status == 2) Assert.NotEmpty(run.Error);
            if (run.Status == 1) Assert.Contains("no-such-thing", run.Output, StringComparison.Ordinal);
            if (format == "text") Assert.DoesNotContain(run.Output, c => char.IsControl(c) && c != '\n');
            else using (System.Text.Json.JsonDocument.Parse(run.Bytes)) { }
        }

        var profile = ToolRun.In(book.Path, "profile", "--format", "json");
        Assert.True(profile.Status is 0 or 2, $"status {profile.Status}: {profile.Error}");
        Assert.Equal(before, book.Snapshot());
    }

    [Fact]
    public void Twenty_kinds_at_least() => Assert.True(Cases.Count >= 20);

    private static byte[] RandomBytes(int count)
    {
        byte[] bytes = new byte[count];
        new Random(7).NextBytes(bytes);
        return bytes;
    }
}
