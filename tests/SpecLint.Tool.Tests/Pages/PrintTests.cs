using System.Diagnostics;
using SpecLint.Catalogue;
using SpecLint.Tool.Tests.Support;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace SpecLint.Tool.Tests.Pages;

/// <summary>What comes out of the printer: pages as a headless Chromium writes them into a PDF, measured in its letters.</summary>
public sealed class PrintTests(DemoBook demo) : IClassFixture<DemoBook>
{
    private const double PointsPerMillimetre = 72 / 25.4;

    /// <summary>Letters keep so far from the edge of their label, mm.</summary>
    private const double Margin = 1;

    public static TheoryData<string> Stocks => [.. LabelStock.All.Select(s => s.Id)];

    [ChromiumTheory]
    [MemberData(nameof(Stocks))]
    public void Every_letter_stands_inside_its_label_by_a_millimetre(string id)
    {
        var stock = LabelStock.Find(id)!;

        // All lots of the fridge, or of a small stock the short ones: a label that does not fit is refused in words.
        string[] items = [.. Lots().Where(i => ToolRun.In(demo.Path, "labels", "--sheet", id, "--item", i, "--on", ToolRun.Day).Status != 2)];
        Assert.NotEmpty(items);
        var run = ToolRun.In(demo.Path, ["labels", "--sheet", id, "--start-at", stock.PerPage > 1 ? "2" : "1", "--on", ToolRun.Day, .. items.SelectMany(i => new[] { "--item", i })]);
        Assert.True(run.Status is 0 or 1, run.Error);
        using var pdf = Print(run.Output);
        int count = 0;
        foreach (var page in pdf.GetPages())
        {
            Assert.Equal(stock.PageWidth, page.Width / PointsPerMillimetre, 0.5);
            Assert.Equal(stock.PageHeight, page.Height / PointsPerMillimetre, 0.5);
            foreach (var letter in page.Letters.Where(l => !string.IsNullOrWhiteSpace(l.Value)))
            {
                count++;
                double left = letter.BoundingBox.Left / PointsPerMillimetre, right = letter.BoundingBox.Right / PointsPerMillimetre;
                double top = (page.Height - letter.BoundingBox.Top) / PointsPerMillimetre, bottom = (page.Height - letter.BoundingBox.Bottom) / PointsPerMillimetre;
                bool inside = Enumerable.Range(0, stock.PerPage).Select(stock.At).Any(at =>
                    left >= at.X + Margin && right <= at.X + stock.Width - Margin && top >= at.Y + Margin && bottom <= at.Y + stock.Height - Margin);
                Assert.True(inside, $"{id}, page {page.Number}: '{letter.Value}' at {left:0.0}–{right:0.0}, {top:0.0}–{bottom:0.0} mm");
            }
        }

        Assert.True(count > 100, $"{count} letters");
    }

    [BrowserFact]
    public void The_line_check_of_an_evening_is_one_sheet_with_the_details_behind_it()
    {
        using var pdf = Print(ToolRun.In(demo.Path, "linecheck", "evening", "--on", ToolRun.Day, "--format", "html").Output);
        string first = Words(pdf.GetPage(1)), second = Words(pdf.GetPage(2));
        Assert.Equal(210, pdf.GetPage(1).Width / PointsPerMillimetre, 1.0);
        foreach (string word in new[] { "Serve", "Allergens" }) Assert.Contains(word, first, StringComparison.OrdinalIgnoreCase);
        Assert.StartsWith("Details", second, StringComparison.Ordinal);
        Assert.DoesNotContain("Details", first, StringComparison.Ordinal);
    }

    [ChromiumTheory]
    [InlineData("card", "low-tide")]
    [InlineData("card", "sour-cucumber")]
    [InlineData("card", "clarified-tea-punch")]
    [InlineData("guests", "evening")]
    public void A_card_and_the_sheet_for_guests_are_one_page(params string[] args)
    {
        var run = ToolRun.In(demo.Path, args);
        Assert.True(run.Status is 0 or 1, run.Error);
        using var pdf = Print(run.Output);
        Assert.Equal(1, pdf.NumberOfPages);
        Assert.True(pdf.GetPage(1).Letters.Count > 100);
    }

    private IEnumerable<string> Lots()
    {
        using var json = System.Text.Json.JsonDocument.Parse(ToolRun.In(demo.Path, "labels", "--on", ToolRun.Day, "--format", "json").Bytes);
        return [.. json.RootElement.EnumerateArray().Select(l => l.GetProperty("item").GetString()!).Distinct().Order(StringComparer.Ordinal)];
    }

    private static string Words(Page page) => string.Join(" ", page.GetWords().Select(w => w.Text));

    private static PdfDocument Print(string html)
    {
        using var folder = new TestFolder();
        folder.Write("page.html", html);
        string pdf = folder["page.pdf"];
        string[] args = ["--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", $"--user-data-dir={folder["profile"]}", $"--print-to-pdf={pdf}", new Uri(folder["page.html"]).AbsoluteUri];
        using var process = Process.Start(new ProcessStartInfo(Browser.Chromium!, args) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(File.Exists(pdf), error.Result);
        return PdfDocument.Open(File.ReadAllBytes(pdf));
    }
}
