using System.Globalization;
using System.Text;
using System.Text.Json;
using SpecLint.Reading;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>Sessions of an editor, message by message (Microsoft, Language Server Protocol Specification 3.17).</summary>
public sealed class MessageTests(DemoBook demo) : IClassFixture<DemoBook>
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
        var answers = Session(demo.Path, Open(opened, File.ReadAllText(opened)), Request(2, "workspace/diagnostic"), Request(3, "shutdown"), "{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}");
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
        Assert.Contains("(in the built-in catalogue, `gin`)", answers.ResultOf(2).GetProperty("contents").GetProperty("value").GetString(), StringComparison.Ordinal);
        Assert.Contains("volume before ice", answers.ResultOf(3).GetProperty("contents").GetProperty("value").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, answers.ResultOf(4).ValueKind);
    }

    [Fact]
    public void A_message_that_cannot_be_read_is_answered_and_the_next_is_served()
    {
        using var book = SmallBook.WithBroken();
        var answers = Session(book.Path, "{ no json", Request(7, "no/such/request"), "[]", Request(8, "textDocument/hover"), Request(9, "initialize"));
        Assert.Equal([-32700, -32601, -32600, -32602, -32600], answers.Messages.Where(m => m.TryGetProperty("error", out _)).Select(m => m.GetProperty("error").GetProperty("code").GetInt32()));
        Assert.Equal("utf-16", answers.ResultOf(0).GetProperty("capabilities").GetProperty("positionEncoding").GetString());
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

    /// <summary>What no editor sends: after each the next request is answered, and the session ends as it should.</summary>
    public static TheoryData<string, string> Hostile => new()
    {
        { "a method with half a pair", """{"id":5,"method":"\ud800"}""" },
        { "an id with half a pair", """{"id":"\udc00","method":"textDocument/hover"}""" },
        { "a name with half a pair", """{"\ud800":1,"id":5,"method":"x"}""" },
        { "a text with half a pair", """{"method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///a.drink.json","text":"\ud800"}}}""" },
        { "an address with half a pair", """{"method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///\udfff.drink.json","text":"{}"}}}""" },
        { "no text", """{"method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///a.drink.json","text":null}}}""" },
        { "no address", """{"method":"textDocument/didOpen","params":{"textDocument":{"uri":null,"text":"{}"}}}""" },
        { "an address with a zero", """{"method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///a%00.drink.json","text":"{}"}}}""" },
        { "an address that is no file", """{"id":5,"method":"textDocument/hover","params":{"textDocument":{"uri":"https://example.org/a.drink.json"},"position":{"line":0,"character":0}}}""" },
        { "a position of words", """{"id":5,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///a.drink.json"},"position":{"line":"x","character":{}}}}""" },
        { "a position beyond all numbers", """{"id":5,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///a.drink.json"},"position":{"line":1e400,"character":-1}}}""" },
        { "parameters of another type", """{"id":5,"method":"textDocument/codeAction","params":[1,2,3]}""" },
        { "an id that is an object", """{"id":{"a":1},"method":"textDocument/hover"}""" },
        { "an id that is a list", """{"id":[],"method":"textDocument/hover"}""" },
        { "an id of many digits", """{"id":123456789012345678901234567890e99,"method":"textDocument/hover"}""" },
        { "a method that is a number", """{"id":5,"method":1}""" },
        { "a method that is null", """{"id":5,"method":null}""" },
        { "an answer to nothing", """{"id":5,"result":null}""" },
        { "a list of messages", """[{"id":5,"method":"textDocument/hover"}]""" },
        { "a text alone", "\"x\"" },
        { "nothing", "" },
        { "blanks", "   " },
        { "a change without text", """{"method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///a.drink.json"},"contentChanges":[{}]}}""" },
        { "a change of a range that is not there", """{"method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///a.drink.json"},"contentChanges":[{"range":{"start":{"line":99,"character":99},"end":{"line":-5,"character":-7}},"text":"x"}]}}""" },
        { "a completion before everything", """{"id":5,"method":"textDocument/completion","params":{"textDocument":{"uri":"file:///a.drink.json"},"position":{"line":-1,"character":-1}}}""" },
        { "a new name that is no text", """{"id":5,"method":"textDocument/rename","params":{"textDocument":{"uri":"file:///a.drink.json"},"position":{"line":0,"character":0},"newName":7}}""" },
        { "a command of nobody", """{"id":5,"method":"workspace/executeCommand","params":{"command":"rm","arguments":[1]}}""" },
        { "a change of no files", """{"method":"workspace/didChangeWatchedFiles","params":{"changes":[{"uri":7}]}}""" },
        { "settings of another kind", """{"method":"workspace/didChangeConfiguration","params":{"settings":[1,2]}}""" },
        { "a cancellation of nothing", """{"method":"$/cancelRequest","params":{"id":{}}}""" },
        { "a change that is no list", """{"method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///a.drink.json"},"contentChanges":7}}""" },
        { "a cancelled request", """{"method":"$/cancelRequest","params":{"id":5}}""" },
        { "an unknown notification", """{"method":"no/such"}""" },
        { "a second initialize", """{"id":5,"method":"initialize","params":{}}""" },
        { "a name given twice", """{"id":5,"id":6,"method":"no/such","method":"no/such/either"}""" },
        { "folders of another kind", """{"method":"workspace/didChangeWorkspaceFolders","params":{"event":{"added":[7,{"uri":7},{"uri":"x:y"}],"removed":"x"}}}""" },
        { "no folders", """{"method":"workspace/didChangeWorkspaceFolders","params":[]}""" },
        { "an action of nobody", """{"id":5,"method":"codeAction/resolve","params":{"title":"x","data":{"solve":"x","uri":"file:///a.drink.json"}}}""" },
        { "an action without data", """{"id":5,"method":"codeAction/resolve","params":7}""" },
        { "deep nesting", new string('[', 5000) + new string(']', 5000) },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public void No_message_ends_the_session(string what, string message)
    {
        using var book = SmallBook.WithBroken();
        var answers = Session(book.Path, message, Request(77, "no/such/request"), Request(78, "shutdown"), "{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}");
        Assert.True(answers.Status == 0, what);
        Assert.Equal(-32601, answers.ErrorOf(77));
        Assert.Equal(JsonValueKind.Null, answers.ResultOf(78).ValueKind);
    }

    [Theory]
    [InlineData("""{"id":5,"method":"§"}""")]
    [InlineData("""{"id":"§","method":"textDocument/hover"}""")]
    [InlineData("""{"method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///a.drink.json","text":"§"}}}""")]
    public void Bytes_that_are_not_UTF_8_are_a_message_that_cannot_be_read(string message)
    {
        using var book = SmallBook.WithBroken();
        byte[][] wrong = [[0xff], [0xc0, 0xaf], [0xed, 0xa0, 0x80], [0xf5, 0x80, 0x80, 0x80], [0xe2, 0x82]];
        var sent = wrong.Select(bytes => (byte[])[.. Encoding.UTF8.GetBytes(message.Split('§')[0]), .. bytes, .. Encoding.UTF8.GetBytes(message.Split('§')[1])]);
        var answers = Send(book.Path, [Initialize, Initialized, .. sent, Encoding.UTF8.GetBytes(Request(77, "no/such/request")), Encoding.UTF8.GetBytes(Request(78, "shutdown")), "{\"method\":\"exit\"}"u8.ToArray()]);
        Assert.Equal(0, answers.Status);
        Assert.Equal(wrong.Length, answers.Messages.Count(m => m.TryGetProperty("error", out var error) && error.GetProperty("code").GetInt32() == -32700));
        Assert.Equal(-32601, answers.ErrorOf(77));
    }

    [Fact]
    public void A_request_that_is_cancelled_before_its_turn_is_not_served()
    {
        using var book = SmallBook.WithBroken();
        string[] messages =
        [
            Request(4, "textDocument/foldingRange", book["mudflat.drink.json"]), Request(5, "textDocument/foldingRange", book["mudflat.drink.json"]),
            """{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":5}}""", Request(6, "shutdown"), """{"jsonrpc":"2.0","method":"exit"}""",
        ];

        // The first answer waits until everything has been read, as with an editor that sends faster than is served.
        using var allRead = new ManualResetEventSlim();
        using var output = new LateStream(allRead);
        using var input = new ToldStream(Framed([Initialize, Initialized, .. messages.Select(Encoding.UTF8.GetBytes)]), allRead);
        var host = new Host { Input = input, Output = output, Error = new StringWriter(), CurrentDirectory = book.Path, Today = static () => CalendarDate.Parse(ToolRun.Day)!.Value };
        var answers = new Answers(Shell.Run(["editor"], host), Read(output.ToArray()));
        Assert.Equal(0, answers.Status);
        Assert.Equal(JsonValueKind.Array, answers.ResultOf(4).ValueKind);
        Assert.Equal(-32800, answers.ErrorOf(5));
    }

    [Fact]
    public void Before_initialize_and_after_shutdown_requests_are_refused_and_notifications_passed_over()
    {
        using var book = SmallBook.WithBroken();
        string path = book["mudflat.drink.json"];
        byte[][] sent =
        [
            .. new[] { Open(path, SmallBook.Broken), Request(1, "textDocument/hover", path, "\"position\":{\"line\":0,\"character\":0}"), Request(2, "shutdown") }.Select(Encoding.UTF8.GetBytes),
            Initialize, Initialized,
            .. new[] { Request(3, "shutdown"), Open(path, SmallBook.Broken), Request(4, "textDocument/hover", path, "\"position\":{\"line\":0,\"character\":0}"), Request(5, "initialize"), "{\"method\":\"exit\"}" }.Select(Encoding.UTF8.GetBytes),
        ];
        var answers = Send(book.Path, sent);
        Assert.Equal(0, answers.Status);
        Assert.Equal([-32002, -32002, -32600, -32600], new[] { 1, 2, 4, 5 }.Select(answers.ErrorOf));
        Assert.DoesNotContain(answers.Messages, m => MethodOf(m) == "textDocument/publishDiagnostics");
    }

    [Fact]
    public void Without_a_bar_the_folder_of_the_file_is_checked_and_none_below()
    {
        using var book = new TestFolder();
        book.Write("above.drink.json", SmallBook.Broken);
        book.Write("below/deep.drink.json", SmallBook.Broken);
        book.Write("below/bar/bar.json", SmallBook.Bar);
        book.Write("below/bar/other.drink.json", SmallBook.Broken);
        var answers = Session(book.Path, Open(book["above.drink.json"], SmallBook.Broken), Open(book["new.drink.json"], SmallBook.Broken), Request(2, "workspace/diagnostic"), Request(3, "shutdown"));
        var named = answers.Messages.Where(m => MethodOf(m) == "textDocument/publishDiagnostics").Select(m => m.GetProperty("params").GetProperty("uri").GetString()!).ToList();
        Assert.Contains(Address(book["above.drink.json"]), named);
        Assert.Contains(Address(book["new.drink.json"]), named);
        Assert.DoesNotContain(named, a => a.Contains("below", StringComparison.Ordinal));
    }

    private static readonly byte[] Initialize = Encoding.UTF8.GetBytes(Request(0, "initialize"));

    private static readonly byte[] Initialized = """{"jsonrpc":"2.0","method":"initialized","params":{}}"""u8.ToArray();

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

    private static Answers Session(string folder, params string[] messages) =>
        Send(folder, [Initialize, Initialized, .. messages.Select(Encoding.UTF8.GetBytes)]);

    private static byte[] Framed(IEnumerable<byte[]> messages)
    {
        var sent = new MemoryStream();
        foreach (byte[] bytes in messages)
        {
            sent.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {bytes.Length}\r\n\r\n")));
            sent.Write(bytes);
        }

        return sent.ToArray();
    }

    private static Answers Send(string folder, params byte[][] messages)
    {
        var (status, output, _) = Run(folder, Framed(messages));
        return new Answers(status, Read(output));
    }

    private static List<JsonElement> Read(byte[] output)
    {
        var answers = new List<JsonElement>();
        for (int at = 0; at < output.Length;)
        {
            int body = output.AsSpan(at).IndexOf("\r\n\r\n"u8) + at + 4;
            int length = int.Parse(Encoding.ASCII.GetString(output, at, body - at - 4).Split(':')[1], CultureInfo.InvariantCulture);
            answers.Add(JsonDocument.Parse(output.AsMemory(body, length)).RootElement);
            at = body + length;
        }

        return answers;
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

    /// <summary>Bytes that tell when they have been read to their end.</summary>
    private sealed class ToldStream(byte[] bytes, ManualResetEventSlim atEnd) : MemoryStream(bytes)
    {
        public override int ReadByte()
        {
            int next = base.ReadByte();
            if (next < 0) atEnd.Set();
            return next;
        }
    }

    /// <summary>A stream that takes nothing before it is told to.</summary>
    private sealed class LateStream(ManualResetEventSlim told) : MemoryStream
    {
        public override void Write(ReadOnlySpan<byte> buffer)
        {
            told.Wait();
            base.Write(buffer);
        }
    }

    private sealed record Answers(int Status, IReadOnlyList<JsonElement> Messages)
    {
        public int ErrorOf(int id) =>
            Messages.Single(m => m.TryGetProperty("id", out var given) && given.ValueKind == JsonValueKind.Number && given.TryGetInt32(out int number) && number == id).GetProperty("error").GetProperty("code").GetInt32();

        public JsonElement ResultOf(int id) =>
            Messages.Single(m => m.TryGetProperty("id", out var given) && given.ValueKind == JsonValueKind.Number && given.TryGetInt32(out int number) && number == id).GetProperty("result");
    }
}
