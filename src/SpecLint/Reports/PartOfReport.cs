using System.Text.Json;
using SpecLint.Book;

namespace SpecLint.Reports;

/// <summary>
/// A JSON report of one part of a book, read finding by finding: of a report of any length only the finding at hand is held.
/// </summary>
internal sealed class PartOfReport
{
    private readonly Stream from;
    private byte[] buffer = new byte[1 << 16];
    private int start;
    private int end;
    private bool isWhole;
    private JsonReaderState state;

    /// <summary>Reads what stands before the findings.</summary>
    /// <param name="from">The report.</param>
    /// <exception cref="FormatException">It is not a JSON report of a check; the message says what of it is missing.</exception>
    public PartOfReport(Stream from)
    {
        this.from = from;
        var head = new Dictionary<string, JsonElement>(StringComparer.Ordinal);
        Take((ref Utf8JsonReader reader) => reader.Read()
            && (reader.TokenType == JsonTokenType.StartObject ? true : throw new FormatException("it does not begin with {")));
        while (ReadName() is var name && name != "findings") head[name] = ReadValue();
        Head = HeadOf(head);
        BeginList();
    }

    /// <summary>What stands before the findings.</summary>
    public ReportHead Head { get; }

    /// <summary>The finding that the reading has come to; <see langword="null"/> where the list has ended.</summary>
    public PlacedFinding? Current { get; private set; }

    /// <summary>Goes on to the next finding of the list.</summary>
    /// <exception cref="FormatException">It is not a finding.</exception>
    public void MoveNext() => Take((ref Utf8JsonReader reader) =>
    {
        if (!reader.Read()) return false;
        if (reader.TokenType == JsonTokenType.EndArray)
        {
            Current = null;
            return true;
        }

        int from = (int)reader.TokenStartIndex;
        if (!JsonDocument.TryParseValue(ref reader, out var document)) return false;
        using (document) Current = PlacedFinding.Of(document.RootElement, buffer.AsSpan(start + from, (int)reader.BytesConsumed - from));
        return true;
    });

    /// <summary>Goes on to the list of accepted findings, once that of findings has ended.</summary>
    /// <exception cref="FormatException">There is none.</exception>
    public void BeginAccepted()
    {
        if (ReadName() != "accepted") throw new FormatException("its list of accepted findings is not behind that of findings");
        BeginList();
    }

    /// <summary>Reads to the end.</summary>
    /// <exception cref="FormatException">The report ends early, or something else follows.</exception>
    public void End()
    {
        if (ReadName() != "closing") throw new FormatException("it has no closing");
        ReadValue();
        Take((ref Utf8JsonReader reader) => reader.Read());
        Take((ref Utf8JsonReader reader) => !reader.Read() && isWhole);
    }

    private static ReportHead HeadOf(Dictionary<string, JsonElement> head)
    {
        return new ReportHead
        {
            Version = Text(Of("tool"), "version"),
            On = Of("on").GetString() ?? "",
            Part = head.TryGetValue("part", out var part)
                ? PartOf(part)
                : throw new FormatException("it is the report of a whole book, not of a part"),
            Files = Number(Of("files")),
            Recipes = Number(Of("recipes")),
            Errors = Count("error"),
            Warnings = Count("warning"),
            Notes = Count("note"),
            Accepted = Count("accepted"),
            AcceptedSafety = Count("acceptedSafety"),
            Aside = HarmAside.Read(Of("harmPutAside")),
        };

        JsonElement Of(string name) => head.TryGetValue(name, out var value) ? value : throw new FormatException($"it has no {name}");

        int Count(string name) => Number(Property(Of("counts"), name));

        static int Number(JsonElement value) =>
            value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out int number)
                ? number
                : throw new FormatException("a count in it is not a number");
    }

    private static ReportPart PartOf(JsonElement part)
    {
        var which = BookPart.Parse($"{Property(part, "number").GetRawText()}/{Property(part, "of").GetRawText()}");
        return new ReportPart(which ?? throw new FormatException("it does not say which part it is"), Text(part, "book"));
    }

    private static JsonElement Property(JsonElement of, string name) =>
        of.ValueKind == JsonValueKind.Object && of.TryGetProperty(name, out var value) ? value : throw new FormatException($"it has no {name}");

    private static string Text(JsonElement of, string name) =>
        Property(of, name) is { ValueKind: JsonValueKind.String } value ? value.GetString()! : throw new FormatException($"its {name} is not a text");

    private string ReadName()
    {
        string name = "";
        Take((ref Utf8JsonReader reader) =>
        {
            if (!reader.Read()) return false;
            name = reader.TokenType == JsonTokenType.PropertyName ? reader.GetString()! : throw new FormatException("it ends before its findings");
            return true;
        });
        return name;
    }

    private JsonElement ReadValue()
    {
        JsonElement value = default;
        Take((ref Utf8JsonReader reader) =>
        {
            if (!reader.Read() || !JsonDocument.TryParseValue(ref reader, out var document)) return false;
            using (document) value = document.RootElement.Clone();
            return true;
        });
        return value;
    }

    private void BeginList()
    {
        Take((ref Utf8JsonReader reader) => reader.Read()
            && (reader.TokenType == JsonTokenType.StartArray ? true : throw new FormatException("its findings are not a list")));
        MoveNext();
    }

    /// <summary>Takes a step, with more of the report where what is at hand does not suffice.</summary>
    private void Take(Step step)
    {
        while (true)
        {
            var reader = new Utf8JsonReader(buffer.AsSpan(start, end - start), isWhole, state);
            try
            {
                if (step(ref reader))
                {
                    start += (int)reader.BytesConsumed;
                    state = reader.CurrentState;
                    return;
                }
            }
            catch (JsonException e)
            {
                throw new FormatException("it is not well-formed JSON, or it is cut off", e);
            }

            if (isWhole) throw new FormatException("it is cut off");
            Refill();
        }
    }

    private void Refill()
    {
        if (start > 0)
        {
            buffer.AsSpan(start, end - start).CopyTo(buffer);
            end -= start;
            start = 0;
        }

        if (end == buffer.Length) Array.Resize(ref buffer, buffer.Length * 2);
        int read = from.Read(buffer, end, buffer.Length - end);
        isWhole = read == 0;
        end += read;
    }

    /// <summary>One step of reading; <see langword="false"/> where more text is needed for it.</summary>
    private delegate bool Step(ref Utf8JsonReader reader);
}

/// <summary>A finding as it is written, and its place in the total order.</summary>
/// <param name="Text">Its JSON as it stands in the report.</param>
/// <param name="File">Path of its file.</param>
/// <param name="Start">Its first byte.</param>
/// <param name="Length">Its length in bytes.</param>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Fingerprint">Its fingerprint.</param>
internal sealed record PlacedFinding(byte[] Text, string File, int Start, int Length, string Rule, string Message, string Fingerprint)
    : IComparable<PlacedFinding>
{
    /// <summary>Reads what places it.</summary>
    /// <exception cref="FormatException">It is not a finding.</exception>
    public static PlacedFinding Of(JsonElement finding, ReadOnlySpan<byte> text)
    {
        var region = Property("region", JsonValueKind.Object);
        return new PlacedFinding(
            text.ToArray(), Word("file"), Number("byteOffset"), Number("byteLength"),
            Word("rule"), Word("message"), Word("fingerprint"));

        JsonElement Property(string name, JsonValueKind kind) =>
            finding.ValueKind == JsonValueKind.Object && finding.TryGetProperty(name, out var value) && value.ValueKind == kind
                ? value
                : throw new FormatException($"a finding in it has no {name}");

        string Word(string name) => Property(name, JsonValueKind.String).GetString()!;

        int Number(string name) =>
            region.TryGetProperty(name, out var value) && value.TryGetInt32(out int number)
                ? number
                : throw new FormatException($"the region of a finding in it has no {name}");
    }

    /// <summary>The order of <see cref="Findings.FindingOrder"/>.</summary>
    public int CompareTo(PlacedFinding? other)
    {
        if (other is null) return 1;
        int c = string.CompareOrdinal(File, other.File);
        if (c == 0) c = Start.CompareTo(other.Start);
        if (c == 0) c = (Start + Length).CompareTo(other.Start + other.Length);
        if (c == 0) c = string.CompareOrdinal(Rule, other.Rule);
        if (c == 0) c = string.CompareOrdinal(Message, other.Message);
        return c == 0 ? string.CompareOrdinal(Fingerprint, other.Fingerprint) : c;
    }
}
