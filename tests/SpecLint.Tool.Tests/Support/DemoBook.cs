namespace SpecLint.Tool.Tests.Support;

/// <summary>The demo book as <c>start</c> writes it, in a folder that is the root of a repository; shared by the tests of a class.</summary>
public sealed class DemoBook : IDisposable
{
    private readonly TestFolder folder = new();

    public DemoBook()
    {
        Directory.CreateDirectory(folder[".git"]);
        var run = ToolRun.In(folder.Path, "start", "house/the book");
        if (run.Status != 0) throw new InvalidOperationException(run.Error);
    }

    /// <summary>The root of the repository.</summary>
    public string Repository => folder.Path;

    /// <summary>The root of the book.</summary>
    public string Path => folder["house/the book"];

    public void Dispose() => folder.Dispose();
}
