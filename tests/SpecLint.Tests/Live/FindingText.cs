using System.Globalization;
using System.Text;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Tests.Live;

/// <summary>Everything that a result says, as text, to hold one against another.</summary>
internal static class FindingText
{
    /// <summary>The findings in force and the accepted, in order.</summary>
    public static List<string> Of(CheckResult result) =>
        [.. result.Findings.Select(f => Of(f, "")), .. result.Accepted.Select(f => Of(f, "accepted "))];

    private static string Of(Finding finding, string before)
    {
        var text = new StringBuilder(before);
        text.Append(
            CultureInfo.InvariantCulture,
            $"{Of(finding.Place)} {finding.Level} {finding.Rule.Id} {finding.Answer} {finding.Subject} {finding.Path} {finding.Key} "
                + $"{finding.Fingerprint} {finding.AllowedDays}\n");
        text.Append(CultureInfo.InvariantCulture, $"  {finding.Message}|{finding.Advice}|{finding.Caution}\n");
        foreach (var evidence in finding.Evidence)
            text.Append(
                CultureInfo.InvariantCulture,
                $"  {evidence.Name} {evidence.Value:R} {evidence.Low:R} {evidence.High:R} {evidence.Unit} {evidence.Source} "
                    + $"{evidence.Text} {(evidence.Place is { } place ? Of(place) : "")}\n");
        foreach (var related in finding.Related) text.Append(CultureInfo.InvariantCulture, $"  {Of(related.Place)} {related.Message}\n");
        foreach (var correction in finding.Corrections)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {correction.Grade} {correction.Description}\n");
            foreach (var edit in correction.Edits) text.Append(CultureInfo.InvariantCulture, $"    {Of(edit.Place)} {edit.NewText}\n");
        }

        if (finding.Suppression is { } suppression)
            text.Append(CultureInfo.InvariantCulture, $"  {suppression.Justification} {suppression.Until} {Of(suppression.Place)}\n");
        if (finding.LoweredBy is { } lowered) text.Append(CultureInfo.InvariantCulture, $"  lowered to {lowered.Level}\n");
        foreach (var folded in finding.Folded) text.Append(Of(folded, "  beneath: "));
        return text.ToString();
    }

    private static string Of(Place place) =>
        string.Create(
            CultureInfo.InvariantCulture, $"{place.File.Path}[{place.Span.Start}+{place.Span.Length} of {place.File.Utf8.Length}]");
}
