using System.Globalization;
using System.Text;

namespace SpecLint.Reports;

/// <summary>A mark of a plot, with its ranges.</summary>
/// <param name="Label">Its number or short name, beside the mark.</param>
/// <param name="Title">Its name.</param>
/// <param name="X">Its value along the plot, in the unit of the axis.</param>
/// <param name="XLow">Low end along the plot.</param>
/// <param name="XHigh">High end along the plot.</param>
/// <param name="Y">Its value up the plot, in the unit of the axis.</param>
/// <param name="YLow">Low end up the plot.</param>
/// <param name="YHigh">High end up the plot.</param>
/// <param name="Filled">Whether the mark is filled.</param>
internal readonly record struct PlotMark(
    string Label, string Title, double X, double XLow, double XHigh, double Y, double YLow, double YHigh, bool Filled);

/// <summary>
/// A plot of two numbers as SVG: marks with crosses for their ranges, bands behind
/// them. Shape and label carry the meaning, colour none.
/// </summary>
internal sealed class Plot
{
    private const double Width = 720, Height = 420, Left = 52, Right = 14, Top = 14, Bottom = 44;

    private readonly double xLow, xHigh, yLow, yHigh;
    private readonly StringBuilder body = new();
    private readonly List<(double X, double Y, string Text)> names = [];
    private readonly List<(double X, double Y, PlotMark Mark)> marks = [];

    /// <summary>Places of a label about its mark: across, down, and which end of the text stands there.</summary>
    private static readonly (double X, double Y, string Anchor)[] Around =
    [
        (7, -6, "start"), (7, 15, "start"), (-7, -6, "end"), (-7, 15, "end"), (0, -9, "middle"), (0, 20, "middle"), (10, 4, "start"), (-10, 4, "end"),
        (20, -14, "start"), (20, 23, "start"), (-20, -14, "end"), (-20, 23, "end"), (0, -22, "middle"), (0, 33, "middle"),
        (26, 4, "start"), (-26, 4, "end"),
    ];

    /// <summary>A plot with its axes.</summary>
    public Plot(string xLabel, double xLow, double xHigh, string yLabel, double yLow, double yHigh)
    {
        (this.xLow, this.xHigh, this.yLow, this.yHigh) = (xLow, xHigh > xLow ? xHigh : xLow + 1, yLow, yHigh > yLow ? yHigh : yLow + 1);
        for (double x = First(this.xLow, StepOf(this.xLow, this.xHigh)); x <= this.xHigh + 1e-9; x += StepOf(this.xLow, this.xHigh))
            body.Append($"<line x1=\"{N(X(x))}\" y1=\"{N(Top)}\" x2=\"{N(X(x))}\" y2=\"{N(Height - Bottom)}\" "
                + $"stroke=\"var(--line)\"/><text x=\"{N(X(x))}\" y=\"{N(Height - Bottom + 16)}\" "
                + $"text-anchor=\"middle\">{Say.Number(x, 2)}</text>");
        for (double y = First(this.yLow, StepOf(this.yLow, this.yHigh)); y <= this.yHigh + 1e-9; y += StepOf(this.yLow, this.yHigh))
            body.Append($"<line x1=\"{N(Left)}\" y1=\"{N(Y(y))}\" x2=\"{N(Width - Right)}\" y2=\"{N(Y(y))}\" "
                + $"stroke=\"var(--line)\"/><text x=\"{N(Left - 6)}\" y=\"{N(Y(y) + 4)}\" text-anchor=\"end\">{Say.Number(y, 2)}</text>");
        body.Append($"<text x=\"{N((Left + Width - Right) / 2)}\" y=\"{N(Height - 8)}\" text-anchor=\"middle\">{Html.Text(xLabel)}</text>");
        body.Append($"<text x=\"14\" y=\"{N((Top + Height - Bottom) / 2)}\" text-anchor=\"middle\" transform=\"rotate(-90 14 "
            + $"{N((Top + Height - Bottom) / 2)})\">{Html.Text(yLabel)}</text>");
    }

    /// <summary>Number of marks so far.</summary>
    public int Marks => marks.Count;

    /// <summary>A band behind the marks, named inside.</summary>
    public void Band(string name, double x1, double x2, double y1, double y2)
    {
        double left = X(Clamp(x1, xLow, xHigh)), right = X(Clamp(x2, xLow, xHigh)),
            top = Y(Clamp(y2, yLow, yHigh)), bottom = Y(Clamp(y1, yLow, yHigh));
        if (right - left < 0.5 || bottom - top < 0.5) return;
        body.Append($"<rect x=\"{N(left)}\" y=\"{N(top)}\" width=\"{N(right - left)}\" height=\"{N(bottom - top)}\" "
            + $"fill=\"var(--band)\" fill-opacity=\"0.35\" stroke=\"var(--soft)\" stroke-dasharray=\"4 3\"/>");
        if (name.Length == 0) return;

        // Names stand over all bands, one beneath another where two would meet.
        const double LetterWidth = 6.6;
        double y = top + 12;
        while (names.Exists(n => Math.Abs(n.Y - y) < 12
            && n.X < left + (LetterWidth * name.Length) && left < n.X + (LetterWidth * n.Text.Length))) y += 12;
        names.Add((left, y, name));
    }

    /// <summary>A limit of a mark: a dashed way to a stroke across.</summary>
    public void Limit(double fromX, double toX, double y)
    {
        double a = X(Clamp(fromX, xLow, xHigh)), b = X(Clamp(toX, xLow, xHigh)), h = Y(Clamp(y, yLow, yHigh));
        body.Append($"<path d=\"M{N(a)} {N(h)}H{N(b)}\" stroke=\"var(--soft)\" stroke-dasharray=\"2 3\" fill=\"none\"/><path "
            + $"d=\"M{N(b)} {N(h - 6)}V{N(h + 6)}\" stroke=\"currentColor\" stroke-width=\"2\"/>");
    }

    /// <summary>A mark.</summary>
    public void Mark(PlotMark mark) => marks.Add((X(Clamp(mark.X, xLow, xHigh)), Y(Clamp(mark.Y, yLow, yHigh)), mark));

    /// <summary>The finished picture.</summary>
    public string ToSvg(string name)
    {
        var svg = new StringBuilder($"<svg viewBox=\"0 0 {N(Width)} {N(Height)}\" role=\"img\" aria-label=\"{Html.Text(name)}\">");
        svg.Append(body);
        foreach (var (x, y, text) in names) svg.Append($"<text x=\"{N(x + 3)}\" y=\"{N(y)}\" font-style=\"italic\">{Html.Text(text)}</text>");
        var taken = new List<(double Left, double Top, double Right, double Bottom)>();
        foreach (var (x, y, mark) in marks)
        {
            svg.Append($"<g class=\"mark\"><title>{Html.Text(mark.Title)}</title>");
            svg.Append($"<path d=\"M{N(X(Clamp(mark.XLow, xLow, xHigh)))} {N(y)}H{N(X(Clamp(mark.XHigh, xLow, xHigh)))}M{N(x)} "
                + $"{N(Y(Clamp(mark.YLow, yLow, yHigh)))}V{N(Y(Clamp(mark.YHigh, yLow, yHigh)))}\" stroke=\"var(--mark)\" "
                + $"stroke-opacity=\"0.55\" fill=\"none\"/>");
            svg.Append($"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"4\" stroke=\"var(--mark)\" stroke-width=\"2\" "
                + $"fill=\"{(mark.Filled ? "var(--mark)" : "var(--paper)")}\"/></g>");
            taken.Add((x - 5, y - 5, x + 5, y + 5));
        }

        // Labels come last, over everything, each where it meets the fewest marks and labels.
        foreach (var (x, y, mark) in marks)
        {
            double wide = (7 * mark.Label.Length) + 1;
            var best = Around[0];
            var bestBox = BoxOf(x, y, best, wide);
            int fewest = int.MaxValue;
            foreach (var place in Around)
            {
                var box = BoxOf(x, y, place, wide);
                if (box.Left < Left || box.Right > Width || box.Top < 0 || box.Bottom > Height - Bottom) continue;
                int meets = taken.Count(t => t.Left < box.Right && t.Right > box.Left && t.Top < box.Bottom && t.Bottom > box.Top);
                if (meets >= fewest) continue;
                (fewest, best, bestBox) = (meets, place, box);
                if (meets == 0) break;
            }

            taken.Add(bestBox);
            svg.Append($"<text x=\"{N(x + best.X)}\" y=\"{N(y + best.Y)}\" text-anchor=\"{best.Anchor}\">{Html.Text(mark.Label)}</text>");
        }

        return svg.Append("</svg>\n").ToString();
    }

    internal static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static (double Left, double Top, double Right, double Bottom) BoxOf(
        double x, double y, (double X, double Y, string Anchor) place, double wide)
    {
        double left = x + place.X - (place.Anchor switch { "start" => 0, "end" => wide, _ => wide / 2 });
        return (left, y + place.Y - 10, left + wide, y + place.Y + 2);
    }

    private static double Clamp(double value, double low, double high) => double.IsNaN(value) ? low : Math.Min(high, Math.Max(low, value));

    private static double StepOf(double low, double high)
    {
        double rough = (high - low) / 7, power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return power * (rough / power < 1.5 ? 1 : rough / power < 3.5 ? 2 : rough / power < 7.5 ? 5 : 10);
    }

    private static double First(double low, double step) => Math.Ceiling((low / step) - 1e-9) * step;

    private double X(double x) => Left + ((x - xLow) / (xHigh - xLow) * (Width - Left - Right));

    private double Y(double y) => Height - Bottom - ((y - yLow) / (yHigh - yLow) * (Height - Top - Bottom));
}
