using SpecLint.Live;
using SpecLint.Reading;

namespace SpecLint.Changes;

/// <summary>An earlier state of a book and the book as it is, of which only what differs is checked twice.</summary>
internal static class TwoStates
{
    /// <summary>Checks both.</summary>
    /// <param name="now">The book as it is.</param>
    /// <param name="before">Its files in the earlier state, which are checked by the rules and schemas of now.</param>
    /// <returns>The fingerprints of what was found in the earlier state, and the check of the book as it is.</returns>
    public static (HashSet<string> Known, CheckResult Result) Check(BookInput now, IReadOnlyList<SourceFile> before)
    {
        var then = now with { Files = before };
        var live = new LiveBook(then with { Earlier = Checker.ReadBook(then with { Earlier = null, Progress = null }) });
        var known = live.Result().Fingerprints();
        live.Take(FileState.Between(before, now.Files));
        return (known, live.Result());
    }
}
