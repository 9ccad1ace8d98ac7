using System.Text.Json;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Tool.Editor.Features;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>The extension for Visual Studio Code agrees with the server that it starts.</summary>
public sealed class ExtensionTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "src", "SpecLint.Tool", "Editor", "VsCode");

    [Fact]
    public void The_manifest_names_what_there_is()
    {
        using var manifest = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "package.json")));
        var root = manifest.RootElement;
        foreach (string needed in new[] { "name", "publisher", "version", "engines", "main", "activationEvents", "contributes" }) Assert.True(root.TryGetProperty(needed, out _), needed);
        Assert.True(File.Exists(Path.Combine(Folder, root.GetProperty("main").GetString()!)));
        var contributes = root.GetProperty("contributes");
        Assert.Equal(
            CommandFeature.Commands.Select(c => (c.Command, c.Title)),
            contributes.GetProperty("commands").EnumerateArray().Select(c => (c.GetProperty("command").GetString()!, c.GetProperty("title").GetString()!)));
        var language = contributes.GetProperty("languages")[0];
        var files = language.GetProperty("filenamePatterns").EnumerateArray().Concat(language.GetProperty("filenames").EnumerateArray()).Select(p => p.GetString()!.TrimStart('*'));
        Assert.Equal(Enum.GetValues<FileKind>().Select(FileKinds.EndingOf).Order(StringComparer.Ordinal), files.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_settings_are_those_of_the_server_and_the_page()
    {
        using var manifest = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "package.json")));
        string page = File.ReadAllText(Path.Combine(Repository.Root, "rules-docs", "editors.md")), script = File.ReadAllText(Path.Combine(Folder, "extension.js"));
        string server = File.ReadAllText(Path.Combine(Repository.Root, "src", "SpecLint.Tool", "Editor", "Client.cs"));
        foreach (var setting in manifest.RootElement.GetProperty("contributes").GetProperty("configuration").GetProperty("properties").EnumerateObject())
        {
            string name = setting.Name["speclint.".Length..];
            Assert.Contains(name, script, StringComparison.Ordinal);
            if (name == "command") continue;
            Assert.Contains($"\"{name}\"", server, StringComparison.Ordinal);
            Assert.Contains($"`{name}`", page, StringComparison.Ordinal);
        }

        foreach (var (command, _) in CommandFeature.Commands)
        {
            Assert.Contains(command, page, StringComparison.Ordinal);
            Assert.Contains($"\"{command}\"", script, StringComparison.Ordinal);
        }
    }
}
