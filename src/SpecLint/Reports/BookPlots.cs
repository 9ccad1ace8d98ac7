using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Reports;

/// <summary>The plots of a book and the tables that say the same.</summary>
internal static class BookPlots
{
    private static readonly Fact[] Shown = [Fact.ServedVolume, Fact.Abv, Fact.Sugar, Fact.Acid, Fact.Ph, Fact.Alcohol, Fact.Energy];

    /// <summary>Facts of drinks, with ranges.</summary>
    public static void Facts(Html page, IReadOnlyList<Drink> drinks, ProfileSet profiles, DisplayUnits units)
    {
        var rows = new List<IReadOnlyList<string>>();
        for (int i = 0; i < drinks.Count; i++)
        {
            var profile = profiles.Of(drinks[i]);
            rows.Add([$"{i + 1} {drinks[i].Name.Or(drinks[i].Id)}", .. Shown.Select(f => Cell(profile, f, units))]);
        }

        page.Table("What each drink comes to, with its range", ["drink", .. Shown.Select(f => HeadOf(f, units))], rows, figures: true);
    }

    /// <summary>Sugar against acid.</summary>
    public static void SugarAndAcid(Html page, IReadOnlyList<Drink> drinks, ProfileSet profiles)
    {
        var marks = Marks(drinks, profiles, Fact.Acid, Fact.Sugar);
        if (marks.Count == 0) return;
        var plot = new Plot(
            "acid, g/100 mL as citric", 0, Math.Max(1, 1.1 * marks.Max(m => m.Mark.X)),
            "sugar, g/100 mL", 0, Math.Max(10, 1.1 * marks.Max(m => m.Mark.Y)));
        foreach (var style in marks.Select(m => m.Drink.KnownStyle).OfType<Style>().Distinct())
        {
            if (style.Usual(Fact.Acid) is { } acid && style.Usual(Fact.Sugar) is { } sugar)
                plot.Band(style.Name, acid.Low, acid.High, sugar.Low, sugar.High);
        }

        Finish(
            page, plot, marks, "Sugar against acid",
            "Dashed fields: where most drinks of a style lie. A cross is the range of about 95 %; where it ends at the frame it goes on beyond.",
            ["drink", "acid, g/100 mL", "sugar, g/100 mL", "style", "usual acid", "usual sugar"],
            m =>
            {
                var style = m.Drink.KnownStyle;
                return [
                    Range(m.Mark.X, m.Mark.XLow, m.Mark.XHigh), Range(m.Mark.Y, m.Mark.YLow, m.Mark.YHigh),
                    style?.Name ?? "none given", Usual(style, Fact.Acid), Usual(style, Fact.Sugar)];
            });
    }

    /// <summary>Strength against volume in the glass.</summary>
    public static void StrengthAndVolume(Html page, IReadOnlyList<Drink> drinks, ProfileSet profiles, DisplayUnits units)
    {
        var marks = Marks(drinks, profiles, Fact.ServedVolume, Fact.Abv);
        if (marks.Count == 0) return;
        for (int i = 0; i < marks.Count; i++)
        {
            var (drink, mark) = marks[i];
            marks[i] = (drink, mark with
            {
                X = units.InGlassUnit(mark.X),
                XLow = units.InGlassUnit(mark.XLow),
                XHigh = units.InGlassUnit(mark.XHigh),
            });
        }

        var glasses = profiles.Book.Settings.Bar?.Glasses;
        double widest = Math.Max(units.InGlassUnit(100), 1.1 * marks.Max(m => m.Mark.X));
        foreach (var (drink, _) in marks) widest = Math.Max(widest, 1.05 * units.InGlassUnit(LineOf(glasses, drink).Millilitres));
        var plot = new Plot(
            $"volume in the glass, {units.GlassUnit} (no ice)", 0, widest,
            "strength, % vol", 0, Math.Max(10, 1.1 * marks.Max(m => m.Mark.Y)));
        foreach (var (drink, mark) in marks)
        {
            double line = units.InGlassUnit(LineOf(glasses, drink).Millilitres);
            if (line > 0) plot.Limit(mark.X, line, mark.Y);
        }

        Finish(
            page, plot, marks, "Strength against volume in the glass",
            "The upright stroke at the end of a dotted line is the wash line of the drink's glass, or its brim where no wash line is given; "
                + "ice takes its part of the room.",
            ["drink", $"volume, {units.GlassUnit}", "strength, % vol", "glass", $"filled to, {units.GlassUnit}"],
            m =>
            {
                var (line, what) = LineOf(glasses, m.Drink);
                return [
                    Range(m.Mark.X, m.Mark.XLow, m.Mark.XHigh), Range(m.Mark.Y, m.Mark.YLow, m.Mark.YHigh),
                    m.Drink.GlassWritten is { Length: > 0 } glass ? glass : "none given",
                    line > 0 ? $"{Say.Number(units.InGlassUnit(line))} ({what})" : "not known"];
            });
    }

    /// <summary>pH against water activity of the preparations.</summary>
    public static void PhAndWaterActivity(Html page, IReadOnlyList<Prep> preps, ProfileSet profiles)
    {
        var marks = new List<(Prep Prep, PlotMark Mark)>();
        foreach (var prep in preps)
        {
            var profile = profiles.Of(prep);
            FactValue ph = profile.Get(Fact.Ph), activity = profile.Get(Fact.WaterActivity);
            if (!IsShown(ph) || !IsShown(activity)) continue;
            int number = marks.Count + 1;
            bool measured = ph.From == "measured";
            marks.Add((prep, new PlotMark(
                number.ToString(System.Globalization.CultureInfo.InvariantCulture), $"{number} {prep.Name.Or(prep.Id)}",
                activity.Value, activity.Low, activity.High, ph.Value, ph.Low, ph.High, measured)));
        }

        if (marks.Count == 0) return;
        var plot = new Plot("water activity", Math.Max(0, Math.Min(0.7, marks.Min(m => m.Mark.XLow) - 0.02)), 1, "pH", 1.5, 8);
        using (var document = Tables.Open("keeping-tables"))
        {
            foreach (var table in Tables.Rows(document))
            {
                if (table.Text("id") != "B") continue;
                foreach (var cell in table.Get("cells").Items)
                {
                    if (cell.Text("verdict") != "not controlled") continue;
                    var a = cell.Get("waterActivity");
                    var p = cell.Get("ph");
                    plot.Band("", a.Number("low"), a.Number("high"), p.Number("low"), p.Number("high"));
                }
            }
        }

        foreach (var (_, mark) in marks) plot.Mark(mark);
        Draw(page, plot, "pH against water activity of the preparations");
        page.Paragraph(
            "Dashed fields: where table B of US FDA Food Code 1-201.10 asks for no control by time and temperature. "
                + "A full mark is a measured pH, a hollow one a computed one, which never clears anything. "
                + "A cross that leaves the fields shows nothing.",
            "soft");
        page.Table(
            "pH and water activity of the preparations",
            ["preparation", "pH", "water activity", "pH from", "control by time and temperature"],
            [.. marks.Select(m => (IReadOnlyList<string>)[
                m.Mark.Title, Range(m.Mark.Y, m.Mark.YLow, m.Mark.YHigh, 2), Range(m.Mark.X, m.Mark.XLow, m.Mark.XHigh, 3),
                m.Mark.Filled ? "measured" : "computed", VerdictOf(profiles.Of(m.Prep))])]);
    }

    private static string VerdictOf(RecipeProfile profile) => profile.Keeping?.Verdict switch
    {
        KeepingVerdict.NotControlled => "not asked for by the table",
        KeepingVerdict.ListedAsControlled => "asked for: the code names such food",
        KeepingVerdict.AssessmentRequired => "asked for, until a product assessment",
        _ => "asked for: not shown otherwise",
    };

    private static (double Millilitres, string What) LineOf(IReadOnlyDictionary<string, Glass>? glasses, Drink drink)
    {
        if (glasses is null || !drink.Glass.IsGiven || !glasses.TryGetValue(drink.GlassWritten, out var glass)) return (0, "");
        return glass.WashLine.IsGiven ? (glass.WashLine.Value.Base, "wash line") : glass.Brim.IsGiven ? (glass.Brim.Value.Base, "brim") : (0, "");
    }

    private static List<(Drink Drink, PlotMark Mark)> Marks(IReadOnlyList<Drink> drinks, ProfileSet profiles, Fact xFact, Fact yFact)
    {
        var marks = new List<(Drink, PlotMark)>();
        for (int i = 0; i < drinks.Count; i++)
        {
            var profile = profiles.Of(drinks[i]);
            FactValue x = profile.Get(xFact), y = profile.Get(yFact);
            if (!IsShown(x) || !IsShown(y)) continue;
            marks.Add((drinks[i], new PlotMark(
                (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), $"{i + 1} {drinks[i].Name.Or(drinks[i].Id)}",
                x.Value, x.Low, x.High, y.Value, y.Low, y.High, true)));
        }

        return marks;
    }

    private static void Finish(
        Html page, Plot plot, List<(Drink Drink, PlotMark Mark)> marks, string name, string how, IReadOnlyList<string> heads,
        Func<(Drink Drink, PlotMark Mark), IReadOnlyList<string>> cells)
    {
        foreach (var (_, mark) in marks) plot.Mark(mark);
        Draw(page, plot, name);
        page.Paragraph(how + " Numbers are those of the table of facts.", "soft");
        page.Raw("<details><summary>The same as a table</summary>\n");
        page.Table(name, heads, [.. marks.Select(m => (IReadOnlyList<string>)[m.Mark.Title, .. cells(m)])], figures: true);
        page.Raw("</details>\n");
    }

    private static void Draw(Html page, Plot plot, string name)
    {
        page.Heading(3, name);
        page.BeginWide(name);
        page.Raw(plot.ToSvg(name + "; the table beneath says the same"));
        page.Raw("</div>\n");
    }

    private static string Usual(Style? style, Fact fact) =>
        style?.Usual(fact) is { } usual ? $"{Say.Number(usual.Low)}–{Say.Number(usual.High)}" : "none";

    private static string HeadOf(Fact fact, DisplayUnits units)
    {
        string unit = fact == Fact.ServedVolume ? units.GlassUnit : Say.Unit(fact);
        return unit.Length == 0 ? ProfileReport.LabelOf(fact) : $"{ProfileReport.LabelOf(fact)}, {unit}";
    }

    private static bool IsShown(FactValue value) => value.IsKnown && !double.IsNaN(value.Value) && !double.IsInfinity(value.Value);

    private static string Range(double value, double low, double high) => Say.Range(value, low, high, "");

    private static string Range(double value, double low, double high, int decimals)
    {
        string first = Say.Number(low, decimals), last = Say.Number(high, decimals);
        return first == last ? Say.Number(value, decimals) : $"{Say.Number(value, decimals)} ({Say.Between(first, last)})";
    }

    private static string Cell(RecipeProfile profile, Fact fact, DisplayUnits units)
    {
        var value = profile.Get(fact);
        if (!IsShown(value)) return "open";
        if (fact == Fact.ServedVolume) return Range(units.InGlassUnit(value.Value), units.InGlassUnit(value.Low), units.InGlassUnit(value.High));
        return fact == Fact.Ph ? Say.Ph(value) : Range(value.Value, value.Low, value.High);
    }
}
