using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>A run that lacks something it needs, or whose result finds no place, says so and ends with a status.</summary>
public class ResourceTests
{
    /// <summary>Every verb that prints a result, as its own help shows it or near that.</summary>
    public static TheoryData<string> Commands() =>
    [
        "check book --on 2026-11-25", "check book --format sarif", "check book --format html", "find --book book lime", "profile --book book low-tide", "correct book", "adjust low-tide --abv 18 --book book",
        "compare book book", "linecheck evening --book book", "event evening --guests 20 --on 2026-12-05 --book book", "labels book", "scale low-tide --to 1 l --book book", "costs --book book", "prices --book book",
        "rules", "rules SL5001", "settings book", "card low-tide --book book", "guests evening --book book", "neaten book --only-tell", "completion bash", "manual",
    ];

    [Theory]
    [MemberData(nameof(Commands))]
    public void A_result_that_finds_no_place_is_told(string command)
    {
        using var folder = new TestFolder();
        Assert.Equal(0, ToolRun.In(folder.Path, "start", "book").Status);
        string before = folder.Snapshot();
        string[] args = [.. System.CommandLine.Parsing.CommandLineParser.SplitCommandLine(command.Replace(
            "--to 1 l", "--to \"1 l\"", StringComparison.Ordinal))];
        var whole = ToolRun.In(folder.Path, args);
        Assert.True(whole.Status is 0 or 1, $"{command}: {whole.Error}");

        // The disk is full at the first byte, and in the middle.
        foreach (long room in (ReadOnlySpan<long>)[0, whole.Bytes.Length / 2])
        {
            if (whole.Bytes.Length == 0) continue;
            using var error = new StringWriter { NewLine = "\n" };
            using var output = new FullStream(room);
            int status = Shell.Run(
                args,
                new Host
                {
                    Output = output,
                    Error = error,
                    CurrentDirectory = folder.Path,
                    Today = () => Reading.CalendarDate.Parse(ToolRun.Day)!.Value,
                });
            Assert.True(status == 2, $"{command}: status {status}, {error}");
            Assert.Contains("cannot be written to standard output", error.ToString(), StringComparison.Ordinal);
        }

        // A verb that shows things changes none.
        Assert.Equal(before, folder.Snapshot());
    }

    [Fact]
    public void A_process_that_may_take_too_little_memory_is_told()
    {
        using var book = SmallBook.WithBroken();
        for (int i = 0; i < 1_000; i++) book.Write($"d{i}.drink.json", SmallBook.Broken);
        var run = Programs.Run(
            book.Path, "dotnet", [Path.Combine(AppContext.BaseDirectory, "SpecLint.Tool.dll"), "check"],
            ("DOTNET_GCHeapHardLimit", "1000000"));
        Assert.Equal((3, ""), (run.Status, run.Output));
        Assert.Contains("there is not enough memory: a book of 1002 files needs about", run.Error, StringComparison.Ordinal);
    }

    /// <summary>A file on a disk that has so many bytes left.</summary>
    private sealed class FullStream(long room) : Stream
    {
        // errno ENOSPC of Linux.
        private const int NoSpace = 28;

        private long left = room;

        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count)
        {
            if (count > left) throw new IOException("No space left on device", NoSpace);
            left -= count;
        }
    }
}
