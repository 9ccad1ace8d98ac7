namespace SpecLint.Tool.Tests.Support;

/// <summary>The example of a house's own rules, built beside these tests.</summary>
internal static class HouseRulesExample
{
#if DEBUG
    private const string Configuration = "Debug";
#else
    private const string Configuration = "Release";
#endif

    /// <summary>Full path of its assembly.</summary>
    public static string Path { get; } = System.IO.Path.Combine(Root(), "tests", "SpecLint.HouseRules.Example", "bin", Configuration, "net10.0", "SpecLint.HouseRules.Example.dll");

    private static string Root()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder, "SpecLint.sln"))) folder = System.IO.Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("The root of the project was not found.");
    }
}
