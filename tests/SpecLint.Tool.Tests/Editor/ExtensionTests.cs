using System.Text.Json;
using SpecLint.Book;
using SpecLint.Tool.Editor.Features;
using SpecLint.Tool.Tests.Support;

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
        foreach (string needed in new[] { "name", "publisher", "version", "engines", "main", "activationEvents", "contributes" })
            Assert.True(root.TryGetProperty(needed, out _), needed);
        Assert.True(File.Exists(Path.Combine(Folder, root.GetProperty("main").GetString()!)));
        var contributes = root.GetProperty("contributes");
        Assert.Equal(
            CommandFeature.Commands.Select(c => (c.Command, c.Title)),
            contributes.GetProperty("commands").EnumerateArray().Select(c => (c.GetProperty("command").GetString()!, c.GetProperty("title").GetString()!)));
        var language = contributes.GetProperty("languages")[0];
        var files = language.GetProperty("filenamePatterns")
            .EnumerateArray()
            .Concat(language.GetProperty("filenames").EnumerateArray())
            .Select(p => p.GetString()!.TrimStart('*'));
        Assert.Equal(Enum.GetValues<FileKind>().Select(FileKinds.EndingOf).Order(StringComparer.Ordinal), files.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Its_licence_is_that_of_the_project() =>
        Assert.Equal(File.ReadAllText(Repository.At("LICENSE")), File.ReadAllText(Path.Combine(Folder, "LICENSE")));

    /// <summary>The packer that Visual Studio Code's makers publish (npm, @vscode/vsce) takes the folder as it is.</summary>
    [Pages.NodeFact]
    public void The_public_packer_packs_it()
    {
        using TestFolder work = new(), packer = new();
        foreach (string file in Directory.EnumerateFiles(Folder)) work.Write(Path.GetFileName(file), File.ReadAllBytes(file));
        Must("npm", "install", "--no-audit", "--no-fund", "--ignore-scripts");
        Must("npm", "install", "--no-audit", "--no-fund", "--ignore-scripts", "--prefix", packer.Path, "@vscode/vsce@3.9.2");
        Must("node", packer["node_modules/@vscode/vsce/vsce"], "package", "--allow-missing-repository", "--out", work["speclint.vsix"]);
        using var packed = System.IO.Compression.ZipFile.OpenRead(work["speclint.vsix"]);
        var names = packed.Entries.Select(e => e.FullName).ToList();
        foreach (string needed in new[] { "extension.vsixmanifest", "extension/package.json", "extension/extension.js", "extension/node_modules/vscode-languageclient/package.json" })
            Assert.Contains(needed, names);
        Assert.Contains(names, n => n.StartsWith("extension/LICENSE", StringComparison.OrdinalIgnoreCase));
        using var manifest = new StreamReader(packed.GetEntry("extension.vsixmanifest")!.Open());
        Assert.Contains("Id=\"speclint\"", manifest.ReadToEnd(), StringComparison.Ordinal);

        void Must(string program, params string[] args)
        {
            var run = Programs.Run(work.Path, program, args);
            Assert.True(run.Status == 0, run.Output + run.Error);
        }
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
