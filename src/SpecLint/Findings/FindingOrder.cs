namespace SpecLint.Findings;

/// <summary>The total order of findings: path, start, end, rule, message.</summary>
internal sealed class FindingOrder : IComparer<Finding>
{
    /// <summary>The one instance.</summary>
    public static readonly FindingOrder Instance = new();

    /// <inheritdoc/>
    public int Compare(Finding? x, Finding? y)
    {
        if (ReferenceEquals(x, y)) return 0;
        if (x is null) return -1;
        if (y is null) return 1;
        int c = ReferenceEquals(x.Place.File, y.Place.File) ? 0 : string.CompareOrdinal(x.Place.File.Path, y.Place.File.Path);
        if (c == 0) c = x.Place.Span.Start.CompareTo(y.Place.Span.Start);
        if (c == 0) c = x.Place.Span.End.CompareTo(y.Place.Span.End);
        if (c == 0) c = string.CompareOrdinal(x.Rule.Id, y.Rule.Id);
        if (c == 0) c = string.CompareOrdinal(x.Message, y.Message);
        return c == 0 ? string.CompareOrdinal(x.Fingerprint, y.Fingerprint) : c;
    }
}
