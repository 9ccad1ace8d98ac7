using System.Text;
using System.Xml;
using SpecLint.Findings;

namespace SpecLint.Reports;

/// <summary>
/// Findings in the XML of JUnit, which build servers read: a suite a file, in it one case a finding, or one that passed
/// where there is none, and a last suite for the run as a whole. Errors and warnings are failures; a note passes and says its text; what is
/// accepted is skipped.
/// </summary>
internal static class JUnitReport
{
    /// <summary>Writes the report.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="content">What.</param>
    /// <param name="files">Paths of the files that were looked at, so that those without a finding show as passed.</param>
    public static void Write(Stream to, ReportContent content, IEnumerable<string> files)
    {
        var byFile = content.Findings.Flat()
            .Concat(content.Accepted)
            .GroupBy(f => f.Place.File.Path, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        var paths = files.Union(byFile.Keys, StringComparer.Ordinal).OrderBy(p => p, StringComparer.Ordinal).ToList();
        var none = new List<Finding>();
        var settings = new XmlWriterSettings
        {
            Indent = true,
            NewLineChars = "\n",
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            CloseOutput = false,
        };
        using (var xml = XmlWriter.Create(to, settings))
        {
            xml.WriteStartElement("testsuites");
            xml.WriteAttributeString("name", "SpecLint");
            xml.WriteAttributeString("tests", Number(1 + paths.Sum(p => byFile.TryGetValue(p, out var f) ? f.Count : 1)));
            xml.WriteAttributeString("failures", Number(byFile.Values.Sum(f => f.Count(IsFailure))));
            foreach (string path in paths) WriteSuite(xml, path, byFile.TryGetValue(path, out var found) ? found : none, content.NothingFound);
            WriteWhole(xml, content);
            xml.WriteEndElement();
        }

        JsonReport.WriteLineEnd(to);
    }

    private static void WriteSuite(XmlWriter xml, string path, List<Finding> found, string nothingFound)
    {
        string name = DisplayText.Escape(path);
        xml.WriteStartElement("testsuite");
        xml.WriteAttributeString("name", name);
        xml.WriteAttributeString("tests", Number(Math.Max(1, found.Count)));
        xml.WriteAttributeString("failures", Number(found.Count(IsFailure)));
        xml.WriteAttributeString("errors", "0");
        xml.WriteAttributeString("skipped", Number(found.Count(f => f.Suppression is not null)));
        xml.WriteAttributeString("time", "0");
        if (found.Count == 0) WriteCase(xml, name, nothingFound, null);
        foreach (var finding in found)
        {
            string path1 = finding.Path.Length == 0 ? "" : " " + finding.Path;
            WriteCase(xml, name, DisplayText.Escape($"{finding.Rule.Id} {finding.Rule.Name}{path1}"), finding);
        }

        xml.WriteEndElement();
    }

    /// <summary>A suite for the run as a whole: one case that passes, or is skipped where harm findings are put aside.</summary>
    private static void WriteWhole(XmlWriter xml, ReportContent content)
    {
        bool aside = content.Aside.Count > 0;
        xml.WriteStartElement("testsuite");
        xml.WriteAttributeString("name", "SpecLint");
        xml.WriteAttributeString("tests", "1");
        xml.WriteAttributeString("failures", "0");
        xml.WriteAttributeString("errors", "0");
        xml.WriteAttributeString("skipped", aside ? "1" : "0");
        xml.WriteAttributeString("time", "0");
        xml.WriteStartElement("testcase");
        xml.WriteAttributeString("classname", "SpecLint");
        xml.WriteAttributeString("name", "harm findings put aside");
        xml.WriteAttributeString("time", "0");
        if (aside)
        {
            xml.WriteStartElement("skipped");
            xml.WriteAttributeString("message", content.Aside.Sentence);
            xml.WriteEndElement();
        }

        xml.WriteElementString(
            "system-out",
            content.Aside.Sentence.Length > 0 ? content.Aside.Sentence + "\n" + ReportWords.Closing : ReportWords.Closing);
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void WriteCase(XmlWriter xml, string file, string name, Finding? finding)
    {
        xml.WriteStartElement("testcase");
        xml.WriteAttributeString("classname", file);
        xml.WriteAttributeString("name", name);
        xml.WriteAttributeString("time", "0");
        if (finding?.Suppression is { } suppression)
        {
            xml.WriteStartElement("skipped");
            xml.WriteAttributeString("message", DisplayText.Escape("accepted: " + suppression.Justification));
            xml.WriteEndElement();
        }
        else if (finding is not null)
        {
            string text = DisplayText.Escape(finding.Message);
            string place = $"{file}:{finding.Place.Start.Line}:{finding.Place.Start.Column}";
            string whole = $"{place}: {text}" + (finding.Advice.Length > 0
                ? "\nTo put it right: " + DisplayText.Escape(finding.Advice)
                : "") + (finding.Caution is null
                ? ""
                : "\nCaution: " + DisplayText.Escape(finding.Caution));
            if (IsFailure(finding))
            {
                xml.WriteStartElement("failure");
                xml.WriteAttributeString("type", ReportWords.Of(finding.Level));
                xml.WriteAttributeString("message", text);
                xml.WriteString(whole);
                xml.WriteEndElement();
            }
            else
            {
                xml.WriteElementString("system-out", whole);
            }
        }

        xml.WriteEndElement();
    }

    private static bool IsFailure(Finding finding) => finding.Suppression is null && finding.Level >= Level.Warning;

    private static string Number(int value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
