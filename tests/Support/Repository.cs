namespace SpecLint.TestSupport;

/// <summary>Files of the project, found from where the tests run.</summary>
internal static class Repository
{
    /// <summary>The folder that holds SpecLint.sln.</summary>
    public static string Root { get; } = Find();

    /// <summary>A path below the root.</summary>
    public static string At(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "SpecLint.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("The tests run outside the project: SpecLint.sln is in no folder above.");
    }
}
