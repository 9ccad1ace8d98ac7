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
    public static string Path { get; } = Repository.At(
        "tests", "SpecLint.HouseRules.Example", "bin", Configuration, "net10.0", "SpecLint.HouseRules.Example.dll");
}
