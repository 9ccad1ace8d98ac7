using SpecLint.Linking;

namespace SpecLint.Live;

/// <summary>Which files have to be looked at again when something of the book changes.</summary>
internal sealed class Dependents
{
    private readonly Dictionary<string, HashSet<LiveFile>> mentioning = new(StringComparer.Ordinal);
    private readonly Dictionary<BookRead, HashSet<LiveFile>> reading = [];

    /// <summary>Adds what a file mentions.</summary>
    public void AddMentions(LiveFile file)
    {
        foreach (string id in file.Mentions)
        {
            if (!mentioning.TryGetValue(id, out var files)) mentioning.Add(id, files = []);
            files.Add(file);
        }
    }

    /// <summary>Takes out what a file mentions.</summary>
    public void RemoveMentions(LiveFile file)
    {
        foreach (string id in file.Mentions)
        {
            var files = mentioning[id];
            files.Remove(file);
            if (files.Count == 0) mentioning.Remove(id);
        }
    }

    /// <summary>Takes what the check of a file looked at in place of what it looked at before.</summary>
    public void SetReads(LiveFile file, IEnumerable<BookRead> reads)
    {
        foreach (var read in file.Reads)
        {
            var files = reading[read];
            files.Remove(file);
            if (files.Count == 0) reading.Remove(read);
        }

        // What it mentions is followed by its mentions. Its own id is not: another file may bear it, and be the one that counts.
        file.Reads = [.. reads.Where(r => r.Kind != BookReadKind.Item || Array.IndexOf(file.Mentions, r.Of) < 0)];
        foreach (var read in file.Reads)
        {
            if (!reading.TryGetValue(read, out var files)) reading.Add(read, files = []);
            files.Add(file);
        }
    }

    /// <summary>The files that mention one of some ids, or a file that does: what comes of the ids goes into what they come to.</summary>
    /// <param name="ids">The ids; those of the files that are found are added.</param>
    /// <param name="into">Takes the files.</param>
    public void AddAbove(HashSet<string> ids, HashSet<LiveFile> into)
    {
        var waiting = new Stack<string>(ids);
        while (waiting.Count > 0)
        {
            if (!mentioning.TryGetValue(waiting.Pop(), out var files)) continue;
            foreach (var file in files)
            {
                if (!into.Add(file)) continue;
                foreach (string id in FileChange.IdsOf(file.File))
                {
                    if (ids.Add(id)) waiting.Push(id);
                }
            }
        }
    }

    /// <summary>The files that mention an id.</summary>
    public IReadOnlyCollection<LiveFile> Mentioning(string id) => mentioning.TryGetValue(id, out var files) ? files : [];

    /// <summary>Adds the files whose check looked at something.</summary>
    public void AddReaders(BookRead read, HashSet<LiveFile> into)
    {
        if (reading.TryGetValue(read, out var files)) into.UnionWith(files);
    }
}
