using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace SpecLint.Tool.Editor.Protocol;

/// <summary>
/// Messages of an editor over two streams: a header with <c>Content-Length</c>, an empty line, JSON
/// (Microsoft, Language Server Protocol Specification 3.17, Base Protocol).
/// </summary>
internal sealed class MessageStream(Stream from, Stream to)
{
    /// <summary>A longer message is no message of an editor: documents end at 4 MiB, escapes can triple them.</summary>
    private const int LongestMessage = 64 << 20;

    private readonly Lock writing = new();

    /// <summary>The next message; <see langword="null"/> at the end of the stream.</summary>
    /// <exception cref="InvalidDataException">What comes is no message; the place of the next one is not known.</exception>
    public byte[]? Read()
    {
        int length = -1;
        for (bool first = true; ; first = false)
        {
            string? line = ReadLine();
            if (line is null) return first ? null : throw new InvalidDataException("the stream ends within the header of a message");
            if (line.Length == 0)
            {
                if (length >= 0) break;
                throw new InvalidDataException("a message has no Content-Length");
            }

            const string Name = "Content-Length:";
            if (!line.StartsWith(Name, StringComparison.OrdinalIgnoreCase)) continue;
            if (!int.TryParse(line.AsSpan(Name.Length).Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out length)
                || length > LongestMessage)
                throw new InvalidDataException("a message has a Content-Length that cannot be read");
        }

        byte[] message = new byte[length];
        from.ReadExactly(message);
        return message;
    }

    /// <summary>Writes one message; from any thread.</summary>
    public void Write(Action<Utf8JsonWriter> body)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("jsonrpc", "2.0");
            body(json);
            json.WriteEndObject();
        }

        byte[] header = Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {buffer.WrittenCount}\r\n\r\n"));
        lock (writing)
        {
            to.Write(header);
            to.Write(buffer.WrittenSpan);
            to.Flush();
        }
    }

    private string? ReadLine()
    {
        var line = new StringBuilder();
        for (int b = from.ReadByte(); b != '\n'; b = from.ReadByte())
        {
            if (b < 0) return line.Length == 0 ? null : throw new InvalidDataException("the stream ends within the header of a message");
            if (line.Length > 1024) throw new InvalidDataException("the header of a message does not end");
            line.Append((char)b);
        }

        if (line.Length > 0 && line[^1] == '\r') line.Length--;
        return line.ToString();
    }
}
