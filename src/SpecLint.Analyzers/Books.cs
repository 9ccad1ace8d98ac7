using System.Text;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Analyzers;

/// <summary>What the plug-in of the compiler and the task of MSBuild do alike, so that both report the same.</summary>
internal static class Books
{
    /// <summary>Files by the folder of the nearest bar.json above them: each such folder is a book of its own.</summary>
    /// <param name="files">The files.</param>
    /// <param name="pathOf">Full path of a file.</param>
    /// <param name="project">Folder of the project: root of the files that no bar.json stands above.</param>
    /// <returns>By root, with <c>/</c> at its end, in order.</returns>
    public static SortedDictionary<string, List<T>> ByRoot<T>(IReadOnlyList<T> files, Func<T, string> pathOf, string project)
    {
        project = Slashed(project).TrimEnd('/') + "/";
        var roots = new HashSet<string>(
            files.Select(pathOf).Where(p => FileKinds.Of(p) == FileKind.Bar).Select(p => FolderOf(Slashed(p))), StringComparer.Ordinal);
        var books = new SortedDictionary<string, List<T>>(StringComparer.Ordinal);
        foreach (var file in files)
        {
            string path = Slashed(pathOf(file)), root = FolderOf(path);
            while (root.Length > 0 && !roots.Contains(root)) root = FolderOf(root.TrimEnd('/'));
            if (!roots.Contains(root)) root = path.StartsWith(project, StringComparison.Ordinal) ? project : FolderOf(path);
            if (!books.TryGetValue(root, out var list)) books.Add(root, list = []);
            list.Add(file);
        }

        return books;
    }

    /// <summary>The files that the bar's own file takes in, as the command takes them.</summary>
    public static List<SourceFile> Wanted(List<SourceFile> sources)
    {
        var barSource = sources.Find(s => s.Path == BookFiles.BarFile);
        var bar = barSource is null ? null : BookReader.Read(barSource, FileKind.Bar, Measures.Default) as Bar;
        var wanted = new HashSet<string>(BookFiles.Choose(sources.Select(static s => s.Path), bar), StringComparer.Ordinal);
        return sources.FindAll(s => wanted.Contains(s.Path));
    }

    /// <summary>
    /// The findings that a build counts. What follows from one stands in its message; only where it weighs more is it
    /// reported by itself.
    /// </summary>
    public static IEnumerable<Finding> Reportable(CheckResult result)
    {
        foreach (var finding in result.Findings)
        {
            yield return finding;
            foreach (var folded in finding.Folded)
            {
                if (folded.Level > finding.Level) yield return folded;
            }
        }
    }

    /// <summary>All that a finding says, in one line.</summary>
    public static string MessageOf(Finding finding)
    {
        var message = new StringBuilder(finding.Message);
        if (finding.Advice.Length > 0) message.Append(" To put it right: ").Append(finding.Advice);
        if (finding.Caution is not null) message.Append(" Caution: ").Append(finding.Caution);
        if (finding.Folded.Count > 0)
            message.Append(" From this follows ")
                .Append(string.Join(", ", finding.Folded.Select(f => $"{f.Rule.Id} in line {f.Place.Start.Line}")))
                .Append('.');
        return DisplayText.Escape(message.ToString());
    }

    /// <summary>Address of a rule's page.</summary>
    /// <param name="id">The rule.</param>
    /// <param name="pages">Address of the folder of pages; empty for none.</param>
    public static string PageOf(string id, string pages) => pages.Length == 0 ? $"rules-docs/{id}.md" : $"{pages.TrimEnd('/')}/{id}.md";

    /// <summary>A path with <c>/</c>.</summary>
    public static string Slashed(string path) => path.Replace('\\', '/');

    private static string FolderOf(string path) => path.Substring(0, path.LastIndexOf('/') + 1);
}
