using SpecLint.Findings;

namespace SpecLint.Live;

/// <summary>
/// What the rules found in a book, by the file and by the subject of each finding: the two ways in which findings bear on each
/// other. A change concerns those that can be reached from it, and no others.
/// </summary>
internal sealed class FindingLedger
{
    private readonly Dictionary<string, List<Finding>> byFile = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Finding>> bySubject = new(StringComparer.Ordinal);
    private readonly HashSet<string> changedFiles = new(StringComparer.Ordinal);
    private readonly HashSet<string> changedSubjects = new(StringComparer.Ordinal);

    /// <summary>Takes findings in place of others.</summary>
    public void Replace(List<Finding> old, List<Finding> found)
    {
        foreach (var finding in old)
        {
            Remove(byFile, finding.Place.File.Path, finding);
            Remove(bySubject, finding.Subject, finding);
            Note(finding);
        }

        foreach (var finding in found)
        {
            Add(byFile, finding.Place.File.Path, finding);
            Add(bySubject, finding.Subject, finding);
            Note(finding);
        }
    }

    /// <summary>Notes that a file changed, whether or not something was found in it: it may accept something.</summary>
    public void Touch(string path) => changedFiles.Add(path);

    /// <summary>What the changes since the last call concern.</summary>
    /// <param name="idOf">The id of the file at a path; <see langword="null"/> where there is none any more.</param>
    /// <param name="pathsOf">The paths of the files with an id.</param>
    public (HashSet<string> Files, List<Finding> Findings) TakeChanged(Func<string, string?> idOf, Func<string, IEnumerable<string>> pathsOf)
    {
        HashSet<string> files = new(changedFiles, StringComparer.Ordinal), subjects = new(changedSubjects, StringComparer.Ordinal);
        Stack<string> waitingFiles = new(files), waitingSubjects = new(subjects);
        changedFiles.Clear();
        changedSubjects.Clear();
        while (waitingFiles.Count > 0 || waitingSubjects.Count > 0)
        {
            if (waitingFiles.Count > 0)
            {
                string path = waitingFiles.Pop();

                // The subject of what is found about its acceptances is its id.
                if (idOf(path) is { } id && subjects.Add(id)) waitingSubjects.Push(id);
                foreach (var finding in At(byFile, path))
                {
                    if (subjects.Add(finding.Subject)) waitingSubjects.Push(finding.Subject);
                }
            }
            else
            {
                string subject = waitingSubjects.Pop();
                foreach (string path in pathsOf(subject).Concat(At(bySubject, subject).Select(f => f.Place.File.Path)))
                {
                    if (files.Add(path)) waitingFiles.Push(path);
                }
            }
        }

        return (files, [.. files.SelectMany(path => At(byFile, path))]);
    }

    private static List<Finding> At(Dictionary<string, List<Finding>> index, string key) => index.TryGetValue(key, out var list) ? list : [];

    private static void Add(Dictionary<string, List<Finding>> index, string key, Finding finding)
    {
        if (!index.TryGetValue(key, out var list)) index.Add(key, list = []);
        list.Add(finding);
    }

    private static void Remove(Dictionary<string, List<Finding>> index, string key, Finding finding)
    {
        var list = index[key];
        list.Remove(finding);
        if (list.Count == 0) index.Remove(key);
    }

    private void Note(Finding finding)
    {
        changedFiles.Add(finding.Place.File.Path);
        changedSubjects.Add(finding.Subject);
    }
}
