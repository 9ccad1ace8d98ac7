using System.Globalization;
using System.Text;
using System.Xml;
using SpecLint.Findings;

namespace SpecLint.Reports;

/// <summary>
/// Findings in the XML of Checkstyle, which many build servers read: a file with its
/// errors, each with line, column, severity and source.
/// </summary>
internal static class CheckstyleReport
{
    /// <summary>Writes the report.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="content">What.</param>
    /// <param name="pathPrefix">The way from the root of the repository to the root of the book, with <c>/</c> at its end.</param>
    public static void Write(Stream to, ReportContent content, string pathPrefix)
    {
        var settings = new XmlWriterSettings
        {
            Indent = true,
            NewLineChars = "\n",
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            CloseOutput = false,
        };
        using (var xml = XmlWriter.Create(to, settings))
        {
            xml.WriteStartElement("checkstyle");
            xml.WriteAttributeString("version", "10.0");
            foreach (var file in content.Findings.Flat()
                .GroupBy(f => f.Place.File.Path, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
            {
                xml.WriteStartElement("file");
                xml.WriteAttributeString("name", DisplayText.Escape(pathPrefix + file.Key));
                foreach (var finding in file)
                {
                    xml.WriteStartElement("error");
                    xml.WriteAttributeString("line", finding.Place.Start.Line.ToString(CultureInfo.InvariantCulture));
                    xml.WriteAttributeString("column", finding.Place.Start.Column.ToString(CultureInfo.InvariantCulture));
                    xml.WriteAttributeString("severity", finding.Level switch { Level.Error => "error", Level.Warning => "warning", _ => "info" });
                    xml.WriteAttributeString("message", DisplayText.Escape(finding.Message));
                    xml.WriteAttributeString("source", "speclint." + finding.Rule.Id);
                    xml.WriteEndElement();
                }

                xml.WriteEndElement();
            }

            xml.WriteEndElement();
        }

        JsonReport.WriteLineEnd(to);
    }
}
