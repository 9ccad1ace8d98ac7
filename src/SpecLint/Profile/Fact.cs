namespace SpecLint.Profile;

/// <summary>A fact's value with the range that holds about 95 %, or the reason why it is open.</summary>
/// <param name="Value">The value; meaningless when open.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
/// <param name="From">What it was worked out from: <c>computed</c>, <c>measured</c>, a part's id …</param>
/// <param name="OpenBecause">The reason why it cannot be had; <see langword="null"/> when it is known.</param>
public readonly record struct FactValue(double Value, double Low, double High, string From, string? OpenBecause) : IRanged
{
    private const string ComputedOutside = "computed, outside the tested range";

    /// <summary>Whether it is known.</summary>
    public bool IsKnown => OpenBecause is null && From is not null;

    /// <summary>Whether it was worked out where its model was not held against measurement: the range is then a guess.</summary>
    public bool IsOutsideTestedRange { get; init; }

    /// <summary>The same, marked where its model was not held against measurement.</summary>
    /// <param name="isTested">Whether it was.</param>
    internal FactValue Tested(bool isTested) =>
        isTested || IsOutsideTestedRange || !IsKnown
            ? this
            : this with { From = From == "computed" ? ComputedOutside : $"{From}, outside the tested range", IsOutsideTestedRange = true };

    /// <summary>An open fact.</summary>
    public static FactValue Open(string because) => new(double.NaN, double.NaN, double.NaN, "", because);
}
