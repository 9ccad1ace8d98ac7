using System.Globalization;
using System.Text;
using SpecLint.Findings;

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
internal readonly record struct PlotMark(string Label, string Title, double X, double XLow, double XHigh, double Y, double YLow, double YHigh, bool Filled);

/// <summary>A plot of two numbers as SVG: marks with crosses for their ranges, bands behind them. Shape and label carry the meaning, colour none.</summary>
internal sealed class Plot
{
    private const double Width = 720, Height = 420, Left = 52, Right = 14, Top = 14, Bottom = 44;

    private readonly double xLow, xHigh, yLow, yHigh;
    private readonly StringBuilder body = new();
    private readonly List<(double X, double Y, string Text)> names = [];

    /// <summary>A plot with its axes.</summary>
    public Plot(string xLabel, double xLow, double xHigh, string yLabel, double yLow, double yHigh)
    {
        (this.xLow, this.xHigh, this.yLow, this.yHigh) = (xLow, xHigh > xLow ? xHigh : xLow + 1, yLow, yHigh > yLow ? yHigh : yLow + 1);
        for (double x = First(this.xLow, StepOf(this.xLow, this.xHigh)); x <= this.xHigh + 1e-9; x += StepOf(this.xLow, this.xHigh))
            body.Append($"<line x1=\"{N(X(x))}\" y1=\"{N(Top)}\" x2=\"{N(X(x))}\" y2=\"{N(Height - Bottom)}\" stroke=\"var(--line)\"/><text x=\"{N(X(x))}\" y=\"{N(Height - Bottom + 16)}\" text-anchor=\"middle\">{Say.Number(x, 2)}</text>");
        for (double y = First(this.yLow, StepOf(this.yLow, this.yHigh)); y <= this.yHigh + 1e-9; y += StepOf(this.yLow, this.yHigh))
            body.Append($"<line x1=\"{N(Left)}\" y1=\"{N(Y(y))}\" x2=\"{N(Width - Right)}\" y2=\"{N(Y(y))}\" stroke=\"var(--line)\"/><text x=\"{N(Left - 6)}\" y=\"{N(Y(y) + 4)}\" text-anchor=\"end\">{Say.Number(y, 2)}</text>");
        body.Append($"<text x=\"{N((Left + Width - Right) / 2)}\" y=\"{N(Height - 8)}\" text-anchor=\"middle\">{Html.Text(xLabel)}</text>");
        body.Append($"<text x=\"14\" y=\"{N((Top + Height - Bottom) / 2)}\" text-anchor=\"middle\" transform=\"rotate(-90 14 {N((Top + Height - Bottom) / 2)})\">{Html.Text(yLabel)}</text>");
    }

    /// <summary>Number of marks so far.</summary>
    public int Marks { get; private set; }

    /// <summary>A band behind the marks, named inside.</summary>
    public void Band(string name, double x1, double x2, double y1, double y2)
    {
        double left = X(Clamp(x1, xLow, xHigh)), right = X(Clamp(x2, xLow, xHigh)), top = Y(Clamp(y2, yLow, yHigh)), bottom = Y(Clamp(y1, yLow, yHigh));
        if (right - left < 0.5 || bottom - top < 0.5) return;
        body.Append($"<rect x=\"{N(left)}\" y=\"{N(top)}\" width=\"{N(right - left)}\" height=\"{N(bottom - top)}\" fill=\"var(--band)\" fill-opacity=\"0.35\" stroke=\"var(--soft)\" stroke-dasharray=\"4 3\"/>");
        if (name.Length == 0) return;

        // Names stand over all bands, one beneath another where two would meet.
        double y = top + 12;
        while (names.Exists(n => Math.Abs(n.Y - y) < 12 && Math.Abs(n.X - left) < 150)) y += 12;
        names.Add((left, y, name));
    }

    /// <summary>A limit of a mark: a dashed way to a stroke across.</summary>
    public void Limit(double fromX, double toX, double y)
    {
        double a = X(Clamp(fromX, xLow, xHigh)), b = X(Clamp(toX, xLow, xHigh)), h = Y(Clamp(y, yLow, yHigh));
        body.Append($"<path d=\"M{N(a)} {N(h)}H{N(b)}\" stroke=\"var(--soft)\" stroke-dasharray=\"2 3\" fill=\"none\"/><path d=\"M{N(b)} {N(h - 6)}V{N(h + 6)}\" stroke=\"currentColor\" stroke-width=\"2\"/>");
    }

    /// <summary>A mark.</summary>
    public void Mark(PlotMark mark)
    {
        Marks++;
        double x = X(Clamp(mark.X, xLow, xHigh)), y = Y(Clamp(mark.Y, yLow, yHigh));
        body.Append($"<g class=\"mark\"><title>{Html.Text(mark.Title)}</title>");
        body.Append($"<path d=\"M{N(X(Clamp(mark.XLow, xLow, xHigh)))} {N(y)}H{N(X(Clamp(mark.XHigh, xLow, xHigh)))}M{N(x)} {N(Y(Clamp(mark.YLow, yLow, yHigh)))}V{N(Y(Clamp(mark.YHigh, yLow, yHigh)))}\" stroke=\"var(--mark)\" fill=\"none\"/>");
        body.Append($"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"4\" stroke=\"var(--mark)\" stroke-width=\"2\" fill=\"{(mark.Filled ? "var(--mark)" : "var(--paper)")}\"/>");
        body.Append($"<text x=\"{N(x + 6)}\" y=\"{N(y - 6)}\">{Html.Text(mark.Label)}</text></g>");
    }

    /// <summary>The finished picture.</summary>
    public string ToSvg(string name)
    {
        string words = string.Concat(names.Select(n => $"<text x=\"{N(n.X + 3)}\" y=\"{N(n.Y)}\" font-style=\"italic\">{Html.Text(n.Text)}</text>"));
        return $"<svg viewBox=\"0 0 {N(Width)} {N(Height)}\" role=\"img\" aria-label=\"{Html.Text(name)}\">{body}{words}</svg>\n";
    }

    internal static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

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
