using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Pages;

/// <summary>A fact that needs a Chromium and npm; without them it is skipped and says so.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserFactAttribute : LongFactAttribute
{
    public BrowserFactAttribute()
    {
        if (Skip is not null) return;
        if (Browser.Chromium is null)
            Skip = "DID NOT RUN: no Chromium was found. Set SPECLINT_CHROMIUM to its path, or put chromium, chromium-browser or "
                + "google-chrome on PATH.";
        else if (Browser.OnPath("npm") is null || Browser.OnPath("node") is null) Skip = "DID NOT RUN: it needs node and npm on PATH.";
    }
}

/// <summary>A fact that needs node and npm; without them it is skipped and says so.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class NodeFactAttribute : LongFactAttribute
{
    public NodeFactAttribute()
    {
        if (Skip is null && (Browser.OnPath("npm") is null || Browser.OnPath("node") is null)) Skip = "DID NOT RUN: it needs node and npm on PATH.";
    }
}

/// <summary>A theory that needs a Chromium; without one it is skipped and says so.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class ChromiumTheoryAttribute : TheoryAttribute
{
    public ChromiumTheoryAttribute()
    {
        if (!LongRun.IsOn) Skip = LongRun.Reason;
        else if (Browser.Chromium is null)
            Skip = "DID NOT RUN: no Chromium was found. Set SPECLINT_CHROMIUM to its path, or put chromium, chromium-browser or "
                + "google-chrome on PATH.";
    }
}

/// <summary>
/// The pages of the demo book as a headless Chromium shows them, at 320 and 1280 px, light and dark. playwright-core drives
/// it and axe-core judges how accessible they are; both are installed from the npm registry.
/// </summary>
public sealed class Browser : IDisposable
{
    internal static readonly string[] Packages = ["playwright-core@1.65.1", "axe-core@4.14.1"];

    private readonly TestFolder folder = new();
    private readonly DemoBook demo = new();
    private JsonDocument? seen;

    /// <summary>Path of the browser; <see langword="null"/> where none is found.</summary>
    public static string? Chromium { get; } = Environment.GetEnvironmentVariable("SPECLINT_CHROMIUM") is { Length: > 0 } named
        ? File.Exists(named) ? named : null
        : OnPath("chromium") ?? OnPath("chromium-browser") ?? OnPath("google-chrome");

    /// <summary>Where the pictures are kept.</summary>
    public static string Pictures { get; } = Path.Combine(AppContext.BaseDirectory, "artifacts");

    /// <summary>The book that the pages are about.</summary>
    internal DemoBook Demo => demo;

    /// <summary>What was seen: an element a page, scheme and width.</summary>
    public IReadOnlyList<JsonElement> Seen => [.. (seen ??= Look()).RootElement.EnumerateArray()];

    /// <summary>
    /// Holds the pictures in the documents to the pages as they are: run with <c>SPECLINT_UPDATE=1</c>, a test writes what the browser
    /// shows now. Fonts differ between systems, so only that there is a picture of that size is asserted.
    /// </summary>
    public static void Documented(params (string Seen, string Picture)[] pictures)
    {
        foreach (var (seen, picture) in pictures)
        {
            string from = Path.Combine(Pictures, seen), to = Repository.At("rules-docs", "pictures", picture);
            if (Environment.GetEnvironmentVariable("SPECLINT_UPDATE") == "1")
            {
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(from, to, overwrite: true);
            }

            Assert.True(File.Exists(to), $"{picture} is missing: run the long tests once with SPECLINT_UPDATE=1 and commit it.");
            Assert.Equal(SizeOf(from), SizeOf(to));
        }

        // PNG, 11.2.2: width and height stand behind the signature and the name of the first chunk.
        static string SizeOf(string path) => Convert.ToHexString(File.ReadAllBytes(path).AsSpan(16, 8));
    }

    public static string? OnPath(string name) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(f => Path.Combine(f, name)).FirstOrDefault(File.Exists);

    private JsonDocument Look()
    {
        Run("npm", ["install", "--no-audit", "--no-fund", "--ignore-scripts", "--prefix", folder.Path, .. Packages]);
        Page("check", "check", "--format", "html", "--quiet");
        Page("evening", "linecheck", "evening", "--on", "2026-11-25", "--format", "html");
        Page("days-later", "linecheck", "evening", "--on", "2026-11-28", "--format", "html", "--units", "us");
        Page("labels", "labels");
        Page("labels-roll", "labels", "--sheet", "roll", "--bought");
        Page("card", "card", "low-tide");
        Page("guests", "guests", "evening");
        Page("event", "event", "evening", "--guests", "120", "--on", "2026-12-12", "--format", "html");
        Directory.CreateDirectory(Pictures);
        folder.Write("task.json", JsonSerializer.Serialize(new
        {
            chromium = Chromium,
            modules = folder.Path,
            pictures = Pictures,
            pages = new object[]
            {
                new { name = "check", file = folder["check.html"], jumps = new[] { "details a", "article[id^=finding-] p a", "article[id^=file-] p a" } },
                new { name = "evening", file = folder["evening.html"] },
                new { name = "days-later", file = folder["days-later.html"] },
                new { name = "labels", file = folder["labels.html"] },
                new { name = "labels-roll", file = folder["labels-roll.html"] },
                new { name = "card", file = folder["card.html"] },
                new { name = "guests", file = folder["guests.html"] },
                new { name = "event", file = folder["event.html"] },
            },
        }));
        return JsonDocument.Parse(Run("node", [Path.Combine(AppContext.BaseDirectory, "Pages", "look.mjs"), folder["task.json"]]));
    }

    private void Page(string name, params string[] args)
    {
        var run = ToolRun.In(demo.Path, args);
        if (run.Status > 1) throw new InvalidOperationException(run.Error);
        folder.Write(name + ".html", run.Bytes);
    }

    private static string Run(string file, string[] args)
    {
        var run = Programs.Run(Environment.CurrentDirectory, file, args);
        return run.Status == 0 ? run.Output : throw new InvalidOperationException($"{file} ended with {run.Status}: {run.Text}");
    }

    public void Dispose()
    {
        seen?.Dispose();
        demo.Dispose();
        folder.Dispose();
    }
}
