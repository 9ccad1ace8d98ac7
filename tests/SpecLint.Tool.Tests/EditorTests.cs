using System.Globalization;
using System.Text;
using System.Text.Json;
using SpecLint.Reading;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>Sessions of an editor, message by message (Microsoft, Language Server Protocol Specification 3.17).</summary>
public sealed class EditorTests(DemoBook demo) : IClassFixture<DemoBook>
{
    private const string Comma = """
        {
          "name": "Mudflat — é 🍋",
          "ingredients": [
            { "item": "gin", "amount": "45 ml" }, { "item": "lime-juice", "amount": "2,5 cl" }, { "item": "simple-syrup", "amount": "20 ml" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ],
          "glass": "coupe"
        }
        """;

    [Fact]
    public void Diagnostics_are_the_findings_of_check_at_the_same_places()
    {
        string opened = Path.Combine(demo.Path, "bar.json");
        var answers = Session(demo.Path, Open(opened, File.ReadAllText(opened)), Request(2, "textDocument/hover", opened, "\"position\":{\"line\":0,\"character\":0}"), Request(3, "shutdown"), "{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}");
        Assert.Equal(0, answers.Status);
        var shown = new List<string>();
        foreach (var message in answers.Messages.Where(m => MethodOf(m) == "textDocument/publishDiagnostics"))
        {
            var parameters = message.GetProperty("params");
            string path = Path.GetRelativePath(demo.Path, new Uri(parameters.GetProperty("uri").GetString()!).LocalPath).Replace('\\', '/');
            foreach (var diagnostic in parameters.GetProperty("diagnostics").EnumerateArray())
            {
                var start = diagnostic.GetProperty("range").GetProperty("start");
                shown.Add($"{path} {start.GetProperty("line").GetInt32() + 1} {start.GetProperty("character").GetInt32() + 1} {diagnostic.GetProperty("code").GetString()}");
            }
        }

        using var json = JsonDocument.Parse(ToolRun.In(demo.Path, "check", "--format", "json").Bytes);
        var found = json.RootElement.GetProperty("findings").EnumerateArray().Select(f =>
            $"{f.GetProperty("file").GetString()} {f.GetProperty("region").GetProperty("startLine").GetInt32()} {f.GetProperty("region").GetProperty("startColumn").GetInt32()} {f.GetProperty("rule").GetString()}").ToList();
        Assert.NotEmpty(found);
        Assert.Equal(found.Order(StringComparer.Ordinal), shown.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_is_typed_counts_before_it_is_saved_and_nothing_is_written()
    {
        using var book = SmallBook.WithBroken();
        string path = book["mudflat.drink.json"], before = book.Snapshot();
        var answers = Session(
            book.Path,
            Open(path, SmallBook.Broken),
            Request(2, "textDocument/hover", path, "\"position\":{\"line\":0,\"character\":0}"),
            Change(path, SmallBook.Broken.Replace("no-such-thing", "gin", StringComparison.Ordinal)),
            Request(3, "textDocument/hover", path, "\"position\":{\"line\":0,\"character\":0}"),
            Request(4, "shutdown"));
        var published = answers.Messages.Where(m => MethodOf(m) == "textDocument/publishDiagnostics" && m.GetProperty("params").GetProperty("uri").GetString() == Address(path)).ToList();
        Assert.Equal(2, published.Count);
        Assert.Contains("SL9001", CodesIn(published[0]));
        Assert.DoesNotContain("SL9001", CodesIn(published[1]));
        Assert.Equal(before, book.Snapshot());
    }

    [Fact]
    public void A_correction_is_offered_as_an_edit_that_puts_the_finding_right()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write("mudflat.drink.json", Comma);
        string path = book["mudflat.drink.json"];
        int column = Comma.Split('\n')[3].IndexOf("2,5", StringComparison.Ordinal);
        string at = $"{{\"line\":3,\"character\":{column}}}";
        var answers = Session(book.Path, Open(path, Comma), Request(2, "textDocument/codeAction", path, $"\"range\":{{\"start\":{at},\"end\":{at}}},\"context\":{{\"diagnostics\":[]}}"));
        var actions = answers.ResultOf(2).EnumerateArray().ToList();
        var assured = actions.First(a => a.TryGetProperty("isPreferred", out var preferred) && preferred.GetBoolean());
        Assert.Equal("quickfix", assured.GetProperty("kind").GetString());
        var edit = assured.GetProperty("edit").GetProperty("changes").GetProperty(Address(path)).EnumerateArray().Single();
        string[] lines = Comma.Split('\n');
        var start = edit.GetProperty("range").GetProperty("start");
        var end = edit.GetProperty("range").GetProperty("end");
        Assert.Equal(3, start.GetProperty("line").GetInt32());
        Assert.Equal(3, end.GetProperty("line").GetInt32());
        lines[3] = lines[3][..start.GetProperty("character").GetInt32()] + edit.GetProperty("newText").GetString() + lines[3][end.GetProperty("character").GetInt32()..];
        book.Write("mudflat.drink.json", string.Join('\n', lines));
        string rule = assured.GetProperty("diagnostics")[0].GetProperty("code").GetString()!;
        using var after = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "json").Bytes);
        Assert.DoesNotContain(after.RootElement.GetProperty("findings").EnumerateArray(), f => f.GetProperty("rule").GetString() == rule);
    }

    [Fact]
    public void Hovering_over_an_item_tells_what_it_is_made_of()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        string path = book["new.drink.json"];
        int gin = Comma.Split('\n')[3].IndexOf("\"gin\"", StringComparison.Ordinal) + 2;
        var answers = Session(
            book.Path,
            Open(path, Comma),
            Request(2, "textDocument/hover", path, $"\"position\":{{\"line\":3,\"character\":{gin}}}"),
            Request(3, "textDocument/hover", path, "\"position\":{\"line\":1,\"character\":14}"),
            Request(4, "textDocument/hover", path, "\"position\":{\"line\":0,\"character\":0}"));
        Assert.Contains("(ingredient gin)", answers.ResultOf(2).GetProperty("contents").GetProperty("value").GetString(), StringComparison.Ordinal);
        Assert.Contains("volume before ice", answers.ResultOf(3).GetProperty("contents").GetProperty("value").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, answers.ResultOf(4).ValueKind);
    }

    [Fact]
    public void A_message_that_cannot_be_read_is_answered_and_the_next_is_served()
    {
        using var book = SmallBook.WithBroken();
        var answers = Session(book.Path, "{ no json", Request(7, "no/such/request"), "[]", Request(8, "textDocument/hover"), Request(9, "initialize"));
        Assert.Equal([-32700, -32601, -32600, -32603], answers.Messages.Where(m => m.TryGetProperty("error", out _)).Select(m => m.GetProperty("error").GetProperty("code").GetInt32()));
        Assert.Equal("utf-16", answers.ResultOf(9).GetProperty("capabilities").GetProperty("positionEncoding").GetString());
    }

    [Theory]
    [InlineData("Hello\r\n\r\n", "Content-Length")]
    [InlineData("Content-Length: many\r\n\r\n", "Content-Length")]
    [InlineData("Content-Length: 999999999999\r\n\r\n", "Content-Length")]
    [InlineData("Content-Length: 10\r\n\r\n{}", "cannot be read")]
    public void A_stream_that_is_no_editors_ends_with_a_sentence(string sent, string word)
    {
        using var book = SmallBook.WithBroken();
        var (status, _, error) = Run(book.Path, Encoding.UTF8.GetBytes(sent));
        Assert.Equal(2, status);
        Assert.Contains(word, error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    private static string? MethodOf(JsonElement message) => message.TryGetProperty("method", out var method) ? method.GetString() : null;

    private static IEnumerable<string> CodesIn(JsonElement published) =>
        published.GetProperty("params").GetProperty("diagnostics").EnumerateArray().Select(d => d.GetProperty("code").GetString()!);

    private static string Address(string path) => new Uri(path).AbsoluteUri;

    private static string Open(string path, string text) =>
        $"{{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{{\"textDocument\":{{\"uri\":{Quote(Address(path))},\"languageId\":\"json\",\"version\":1,\"text\":{Quote(text)}}}}}}}";

    private static string Change(string path, string text) =>
        $"{{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didChange\",\"params\":{{\"textDocument\":{{\"uri\":{Quote(Address(path))},\"version\":2}},\"contentChanges\":[{{\"text\":{Quote(text)}}}]}}}}";

    private static string Request(int id, string method, string? path = null, string more = "") =>
        $"{{\"jsonrpc\":\"2.0\",\"id\":{id.ToString(CultureInfo.InvariantCulture)},\"method\":\"{method}\",\"params\":{{{(path is null ? "" : $"\"textDocument\":{{\"uri\":{Quote(Address(path))}}}")}{(more.Length > 0 ? "," + more : "")}}}}}";

    private static string Quote(string text) => JsonSerializer.Serialize(text);

    private static Answers Session(string folder, params string[] messages)
    {
        var sent = new MemoryStream();
        foreach (string message in messages)
        {
            byte[] bytes = Encoding.UTF8.GetBytes(message);
            sent.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {bytes.Length}\r\n\r\n")));
            sent.Write(bytes);
        }

        var (status, output, _) = Run(folder, sent.ToArray());
        var answers = new List<JsonElement>();
        for (int at = 0; at < output.Length;)
        {
            int body = output.AsSpan(at).IndexOf("\r\n\r\n"u8) + at + 4;
            int length = int.Parse(Encoding.ASCII.GetString(output, at, body - at - 4).Split(':')[1], CultureInfo.InvariantCulture);
            answers.Add(JsonDocument.Parse(output.AsMemory(body, length)).RootElement);
            at = body + length;
        }

        return new Answers(status, answers);
    }

    private static (int Status, byte[] Output, string Error) Run(string folder, byte[] sent)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var host = new Host
        {
            Input = new MemoryStream(sent),
            Output = output,
            Error = error,
            CurrentDirectory = folder,
            Today = static () => CalendarDate.Parse(ToolRun.Day)!.Value,
        };
        int status = Shell.Run(["editor"], host);
        return (status, output.ToArray(), error.ToString());
    }

    private sealed record Answers(int Status, IReadOnlyList<JsonElement> Messages)
    {
        public JsonElement ResultOf(int id) =>
            Messages.Single(m => m.TryGetProperty("id", out var given) && given.ValueKind == JsonValueKind.Number && given.GetInt32() == id).GetProperty("result");
    }
}
