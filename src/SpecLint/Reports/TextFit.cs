namespace SpecLint.Reports;

/// <summary>
/// How much room text takes in a sans-serif face, without a browser: widths of Helvetica, which the faces that stand in for it
/// share (Adobe, Font Metrics for PDF Core 14 Fonts), with a reserve for those that do not.
/// </summary>
internal static class TextFit
{
    /// <summary>Room on top of the widths of the table, for another face and for rounding.</summary>
    private const double Reserve = 1.12;

    private const double BoldFactor = 1.08;

    /// <summary>Widths from blank to tilde, thousandths of the size.</summary>
    private static readonly short[] Widths =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
        556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
        667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
        556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

    /// <summary>Lines that a text takes in a width, words kept whole where they fit.</summary>
    /// <param name="text">The text.</param>
    /// <param name="width">Width, in sizes of the letters (em).</param>
    /// <param name="bold">Whether it is bold.</param>
    public static int Lines(string text, double width, bool bold)
    {
        if (text.Length == 0) return 0;
        int lines = 1;
        double at = 0, blank = Width(' ') * Reserve;
        foreach (string word in text.Split(' '))
        {
            double wide = word.Sum(Width) * Reserve * (bold ? BoldFactor : 1);
            if (at > 0 && at + blank + wide > width)
            {
                lines++;
                at = 0;
            }

            at += (at > 0 ? blank : 0) + wide;

            // A word that is longer than a line is broken.
            while (at > width)
            {
                lines++;
                at -= width;
            }
        }

        return lines;
    }

    private static double Width(char c) => c is >= ' ' and <= '~' ? Widths[c - ' '] / 1000.0 : c < 0x2000 ? 0.75 : 1;
}
