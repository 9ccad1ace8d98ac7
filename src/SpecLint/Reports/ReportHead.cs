using SpecLint.Book;

namespace SpecLint.Reports;

/// <summary>Which part of a book a report is about.</summary>
/// <param name="Part">The part.</param>
/// <param name="Book">What all parts of one run share; see <see cref="BookPart.Mark"/>.</param>
public sealed record ReportPart(BookPart Part, string Book);

/// <summary>What a JSON report says before its findings.</summary>
internal sealed record ReportHead
{
    /// <summary>Version of the product.</summary>
    public required string Version { get; init; }

    /// <summary>The day of the check, as YYYY-MM-DD.</summary>
    public required string On { get; init; }

    /// <summary>Which part of a book it is; <see langword="null"/> for the whole.</summary>
    public ReportPart? Part { get; init; }

    /// <summary>Number of files looked at.</summary>
    public required int Files { get; init; }

    /// <summary>Number of recipes among them.</summary>
    public required int Recipes { get; init; }

    /// <summary>Number of errors, those that stand beneath their cause included.</summary>
    public required int Errors { get; init; }

    /// <summary>Number of warnings, likewise.</summary>
    public required int Warnings { get; init; }

    /// <summary>Number of notes, likewise.</summary>
    public required int Notes { get; init; }

    /// <summary>Number of accepted findings.</summary>
    public required int Accepted { get; init; }

    /// <summary>Number of accepted findings of rules that guard against harm.</summary>
    public required int AcceptedSafety { get; init; }

    /// <summary>Findings of such rules that are put aside.</summary>
    public required HarmAside Aside { get; init; }
}
