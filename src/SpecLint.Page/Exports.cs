using System.Reflection;
using System.Runtime.InteropServices.JavaScript;
using System.Text;
using SpecLint.Bench;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Page;

/// <summary>What the script of the page can call: text in, text or JSON out. One book lives behind it.</summary>
internal static partial class Exports
{
    private static readonly string Version =
        typeof(BenchBook).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];

    private static readonly BenchBook Book = new(CalendarDate.Of(2026, 1, 1)!.Value);

    /// <summary>The version of the library.</summary>
    [JSExport]
    internal static string LibraryVersion() => Version;

    /// <summary>The words that the page offers: styles, glasses, families, label stocks.</summary>
    [JSExport]
    internal static string Words() => BenchOutputs.Words();

    /// <summary>Sets the day of the check, e.g. <c>2026-11-25</c>.</summary>
    [JSExport]
    internal static bool SetDay(string day)
    {
        if (CalendarDate.Parse(day) is not { } on) return false;
        Book.SetDay(on);
        return true;
    }

    /// <summary>Adds a file of the book, or replaces the one at its path.</summary>
    [JSExport]
    internal static void Put(string path, byte[] utf8) => Book.Put(path, utf8);

    /// <summary>Takes a file out of the book.</summary>
    [JSExport]
    internal static void Drop(string path) => Book.Drop(path);

    /// <summary>Takes all files out of the book.</summary>
    [JSExport]
    internal static void Clear() => Book.Clear();

    /// <summary>The output of <c>speclint check --format json</c> for the book.</summary>
    [JSExport]
    internal static string Check() => Text(to => BenchOutputs.WriteCheck(to, Book.Check(), Version));

    /// <summary>The output of <c>speclint profile --format json</c> for the book.</summary>
    [JSExport]
    internal static string Profile() => Text(to => BenchOutputs.WriteProfile(to, Book.Check()));

    /// <summary>What a screen shows of a text.</summary>
    [JSExport]
    internal static string Read(
        string text, string path, int which, bool quick, bool us) =>
            Text(to => BenchReport.Write(to, Reading(text, path, which, quick, us)));

    /// <summary>The text with an item chosen for a line.</summary>
    [JSExport]
    internal static string Choose(
        string text, string path, int which, int line, string item, string written) =>
            BenchOutputs.Write(BenchEdits.Choose(Book, Entry(text, path, which), line, item, written));

    /// <summary>The text with the correction of a finding taken.</summary>
    [JSExport]
    internal static string Correct(
        string text, string path, int which, string fingerprint) =>
            BenchOutputs.Write(BenchEdits.Correct(Book, Entry(text, path, which), fingerprint));

    /// <summary>The text solved for targets, as JSON.</summary>
    [JSExport]
    internal static string Adjust(
        string text, string path, int which, bool us, string request) =>
            BenchSolving.Adjust(Book, Entry(text, path, which) with { Units = UnitsOf(us) }, request);

    /// <summary>The lines of a preparation from the figures of a form.</summary>
    [JSExport]
    internal static string Prepare(string text, string path, int which, string request) =>
        BenchPreparing.Prepare(Book, Entry(text, path, which), request);

    /// <summary>What is understood of prices as they are typed, and the price list that they make.</summary>
    [JSExport]
    internal static string Prices(string text, string name) => BenchPrices.Read(Book, text, name);

    /// <summary>The text with a reading written into it; NaN where none was read.</summary>
    [JSExport]
    internal static string Record(
        string text, string path, int which, double ph, double brix) =>
            BenchOutputs.Write(BenchPreparing.Record(Book, Entry(text, path, which), ph, brix));

    /// <summary>The spec card of a text as an HTML page; empty where it is no recipe.</summary>
    [JSExport]
    internal static string Card(
        string text, string path, int which, bool us, string paper) =>
            BenchOutputs.Card(Reading(text, path, which, false, us), paper, Version);

    /// <summary>The kitchen label of a preparation made on the day of the check, as an HTML page; empty where it is none.</summary>
    [JSExport]
    internal static string Label(
        string text, string path, int which, bool us, string stock, string by) =>
            BenchOutputs.Label(Reading(text, path, which, false, us), stock, by);

    private static BenchEntry Entry(string text, string path, int which) => new(text) { Path = path, Which = which };

    private static BenchReading Reading(string text, string path, int which, bool quick, bool us) =>
        Book.Read(Entry(text, path, which) with { Quick = quick, Units = UnitsOf(us) });

    private static DisplayUnits UnitsOf(bool us) => us ? DisplayUnits.UnitedStates : DisplayUnits.Metric;

    private static string Text(Action<Stream> write)
    {
        using var text = new MemoryStream();
        write(text);
        return Encoding.UTF8.GetString(text.GetBuffer(), 0, (int)text.Length);
    }
}
