using System.Text.Json;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>The plan of an event: as text, JSON, rows and one page for the wall.</summary>
public static class EventReport
{
    private const int LabelColumns = 34;

    private const string Caution =
        "Amounts are what the recipes come to, with a reserve; look at the stock before you buy. "
        + "Anything that has to be kept is held against the rules of keeping by check and linecheck on the day, "
        + "and your food-safety plan and local code decide.";

    private const string Style = """
        @page{size:A4;margin:10mm}
        @media print{html,body{font-size:8.5pt;line-height:1.25}h2{margin:2mm 0 .6mm;font-size:10.5pt}th,td{padding:.2mm .8mm}}
        """;

    /// <summary>Writes the plan as text, at 80 columns.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units of volume and temperature.</param>
    /// <param name="colour">Whether to colour.</param>
    public static void WriteText(TextWriter to, EventPlan plan, DisplayUnits units, bool colour)
    {
        var text = new TextTable(to, colour);
        text.Heading(Title(plan));
        text.Wrapped(Basis(plan), "  ", "  ");
        foreach (string no in plan.CannotServe) text.Wrapped($"Cannot be served: {no}", "  ", "    ");
        text.Line("");
        text.Heading("Serves");
        foreach (var serve in plan.Serves) text.Row(serve.Name, LabelColumns, $"{serve.Count} ({Say.Number(serve.Share, 1)} %)");
        foreach (var day in plan.Tasks.GroupBy(t => t.StartDay.DayNumber).OrderBy(g => g.Key))
        {
            text.Line("");
            text.Heading($"{day.First().StartDay}{DayWords(plan, day.First().StartDay)}");
            foreach (var task in day)
            {
                text.Row(
                    $"{Clock(task.StartHour)} {task.Make.Prep.Name.Or(task.Make.Prep.Id)}",
                    LabelColumns, $"{TaskWords(task, units)}; {task.Station}");
                text.Row("", LabelColumns, string.Join(", ", task.Make.Lines.Select(l =>
                    $"{AmountOf(l.Rounded, l.Dimension, l.Unit, units)} {l.Item}")));
                if (task.Warning.Length > 0) text.Row("", LabelColumns, "Mind: " + task.Warning + ".");
            }
        }

        text.Line("");
        text.Heading("By station");
        foreach (var station in plan.Tasks.GroupBy(t => t.Station).OrderBy(g => g.Key, StringComparer.Ordinal))
            text.Row(station.Key, LabelColumns, string.Join(", ", station.Select(t => $"{t.Make.Prep.Name.Or(t.Make.Prep.Id)} {Made(t, units)}")));
        text.Line("");
        text.Heading("Buy");
        foreach (var buy in plan.Purchases) text.Row(buy.Id, LabelColumns, BuyWords(buy, plan, units));
        text.Row("ice", LabelColumns, $"{Say.Number(plan.Ice, 0)} kg");
        if (TotalWords(plan) is { Length: > 0 } total) text.Row("together", LabelColumns, total);
        text.Line("");
        text.Wrapped(Caution, "", "");
    }

    /// <summary>Writes the plan as one page.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units of volume and temperature.</param>
    /// <param name="version">Version of the product.</param>
    public static void WritePage(TextWriter to, EventPlan plan, DisplayUnits units, string version)
    {
        var page = new Html(to);
        page.Begin(Title(plan), css: Style);
        page.Paragraph(Basis(plan));
        if (plan.CannotServe.Count > 0) page.List([.. plan.CannotServe.Select(c => "Cannot be served: " + c)]);
        page.Table(
            "Serves",
            ["drink", "serves", "share"],
            [.. plan.Serves.Select(s => (IReadOnlyList<string>)[
                s.Name, s.Count.ToString(System.Globalization.CultureInfo.InvariantCulture), $"{Say.Number(s.Share, 1)} %"])]);
        foreach (var day in plan.Tasks.GroupBy(t => t.StartDay.DayNumber).OrderBy(g => g.Key))
        {
            page.Heading(2, $"{day.First().StartDay}{DayWords(plan, day.First().StartDay)}");
            page.Table(
                $"To begin on {day.First().StartDay}",
                ["from", "what", "amounts"],
                [.. day.Select(t => (IReadOnlyList<string>)[
                    Clock(t.StartHour),
                    $"{t.Make.Prep.Name.Or(t.Make.Prep.Id)}: {TaskWords(t, units)}; {t.Station}"
                        + $"{(t.Warning.Length > 0 ? $". Mind: {t.Warning}" : "")}",
                    string.Join(", ", t.Make.Lines.Select(l => $"{AmountOf(l.Rounded, l.Dimension, l.Unit, units)} {l.Item}"))])]);
        }

        page.Heading(2, "Buy");
        page.Table(
            "What to buy",
            ["what", "how much"],
            [.. plan.Purchases.Select(b => (IReadOnlyList<string>)[b.Name, BuyWords(b, plan, units)]),
                ["Ice", $"{Say.Number(plan.Ice, 0)} kg"]]);
        if (TotalWords(plan) is { Length: > 0 } total) page.Paragraph($"Together {total}.");
        page.End(Caution, version);
    }

    /// <summary>The plan as rows: serves, tasks, purchases, ice.</summary>
    /// <param name="plan">The plan.</param>
    public static Sheet ToSheet(EventPlan plan)
    {
        var sheet = new Sheet("what", "id", "name", "day", "hour", "station", "amount", "unit", "size", "count", "cases", "cost", "for", "mind");
        foreach (var serve in plan.Serves)
            sheet.Add(
                "serve", serve.Drink.Id, serve.Name, plan.Request.On.ToString(), null,
                "bar", serve.Count, "serves", "", null, null, null, "", "");
        foreach (var task in plan.Tasks)
        {
            bool pours = !double.IsNaN(task.Make.MakesMillilitres);
            sheet.Add(
                "make", task.Make.Prep.Id, task.Make.Prep.Name.Or(task.Make.Prep.Id), task.StartDay.ToString(), Clock(task.StartHour),
                task.Station, pours ? task.Make.MakesMillilitres : task.Make.Makes, pours ? "ml" : "g",
                "", null, null, null, string.Join(" ", task.Make.For), task.Warning);
        }

        foreach (var buy in plan.Purchases)
            sheet.Add(
                "buy", buy.Id, buy.Name, "", null, "", buy.Amount, UnitOf(buy.Dimension), buy.Size,
                buy.Count == 0 ? null : buy.Count, buy.Cases == 0 ? null : buy.Cases, buy.Cost, string.Join(" ", buy.For), "");
        sheet.Add("ice", "ice", "Ice", plan.Request.On.ToString(), null, "bar", plan.Ice, "kg", "", null, null, null, "", "");
        return sheet;
    }

    /// <summary>Writes the plan as one JSON object.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="plan">The plan.</param>
    public static void WriteJson(Stream to, EventPlan plan)
    {
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("menu", JsonOutput.WellFormed(plan.Menu.Id));
            json.WriteString("on", plan.Request.On.ToString());
            json.WriteNumber("guests", plan.Request.Guests);
            json.WriteFinite("drinksEach", plan.Request.DrinksEach);
            json.WriteFinite("ice", plan.Ice);
            json.WriteStartArray("serves");
            foreach (var serve in plan.Serves)
            {
                json.WriteStartObject();
                json.WriteString("drink", JsonOutput.WellFormed(serve.Drink.Id));
                json.WriteFinite("share", serve.Share);
                json.WriteNumber("serves", serve.Count);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("make");
            foreach (var task in plan.Tasks)
            {
                json.WriteStartObject();
                json.WriteString("prep", JsonOutput.WellFormed(task.Make.Prep.Id));
                json.WriteString("station", task.Station);
                json.WriteString("begin", task.StartDay.ToString());
                json.WriteString("hour", Clock(task.StartHour));
                json.WriteString("ready", task.ReadyDay.ToString());
                if (task.Earliest is { } earliest) json.WriteString("earliest", earliest.ToString());
                json.WriteFinite("hours", task.Hours);
                json.WriteFinite("times", task.Make.Times);
                json.WriteFinite("grams", task.Make.Makes);
                json.WriteFinite("millilitres", task.Make.MakesMillilitres);
                LineCheckReport.Texts(json, "for", task.Make.For);
                json.WriteGiven("mind", task.Warning);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("buy");
            foreach (var buy in plan.Purchases)
            {
                json.WriteStartObject();
                json.WriteString("item", JsonOutput.WellFormed(buy.Id));
                json.WriteFinite("amount", buy.Amount);
                json.WriteString("unit", UnitOf(buy.Dimension));
                json.WriteGiven("size", buy.Size);
                if (buy.Count > 0) json.WriteNumber("count", buy.Count);
                if (buy.Cases > 0) json.WriteNumber("cases", buy.Cases);
                if (buy.Cost is { } cost) json.WriteString("cost", Sheet.Cell(cost));
                LineCheckReport.Texts(json, "for", buy.For);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            LineCheckReport.Texts(json, "cannotServe", plan.CannotServe);
            json.WriteEndObject();
        }

        JsonReport.WriteLineEnd(to);
    }

    private static string Title(EventPlan plan) =>
        $"{plan.Menu.Name.Or(plan.Menu.Id)}, {plan.Request.On}, {ReportWords.Count(plan.Request.Guests, "guest", "guests")}";

    private static string Basis(EventPlan plan) =>
        $"{Say.Number(plan.Request.DrinksEach, 2)} drinks a guest, {plan.Serves.Sum(s => s.Count)} serves by the covers of the menu, "
        + $"first serve at {Clock(plan.Request.Hour)}; times are the latest to begin, "
        + $"and earlier where a day would hold more than {Say.Number(EventPlan.HoursOfADay, 1)} h of work at what keeps; "
        + $"{Say.Number(EventPlan.ReservePercent, 0)} % more is made and bought than the serves need (common practice, no source).";

    private static string DayWords(EventPlan plan, CalendarDate day) => plan.Request.On.DaysSince(day) switch
    {
        0 => ", the day",
        1 => ", the day before",
        var days => $", {days} days before",
    };

    private static string Clock(double hour)
    {
        int minutes = (int)Math.Floor((hour * 60) + 1e-6);
        return $"{minutes / 60:00}:{minutes % 60:00}";
    }

    private static string TaskWords(EventTask task, DisplayUnits units)
    {
        string earliest = task.Earliest is { } day && day < task.StartDay ? $", not before {day}" : "";
        string ready = task.ReadyDay != task.StartDay ? $", ready on {task.ReadyDay}" : "";
        return $"{Made(task, units)}, takes "
            + $"{(task.Hours < 1 ? $"{Say.Number(task.Hours * 60, 0)} min" : $"{Say.Number(task.Hours, 1)} h")}{ready}{earliest}";
    }

    private static string Made(EventTask task, DisplayUnits units) =>
        double.IsNaN(task.Make.MakesMillilitres) ? units.Mass(task.Make.Makes) : units.Volume(task.Make.MakesMillilitres);

    private static string AmountOf(double amount, Dimension dimension, string unit, DisplayUnits units) => dimension switch
    {
        Dimension.Volume => units.Volume(amount),
        Dimension.Mass => units.Mass(amount),
        _ => $"{Say.Number(amount, 0)} {unit}",
    };

    private static string BuyWords(EventPurchase buy, EventPlan plan, DisplayUnits units)
    {
        string amount = AmountOf(buy.Amount, buy.Dimension, "pieces", units);
        if (buy.Count == 0) return amount;
        string many = buy.Cases > 0
            ? $"{ReportWords.Count(buy.Cases, "case", "cases")}"
                + $"{(buy.Loose > 0 ? $" and {ReportWords.Count(buy.Loose, "bottle", "bottles")}" : "")} of {buy.Size}"
            : buy.Dimension == Dimension.Volume && !char.IsDigit(buy.Size[0])
                ? $"about {buy.Count} × {buy.Size.ToLowerInvariant()}"
                : $"{buy.Count} × {buy.Size}";
        string cost = buy.Cost is { } paid ? $", {Money.Digits(paid)} {FactUnits.CurrencyOf(plan.Profiles.Book.Settings)}" : "";
        return $"{many} ({amount}){cost}";
    }

    private static string TotalWords(EventPlan plan)
    {
        var known = plan.Purchases.Where(b => b.Cost is not null).ToList();
        if (known.Count == 0) return "";
        int open = plan.Purchases.Count - known.Count;
        return $"{Money.Digits(known.Sum(b => b.Cost!.Value))} {FactUnits.CurrencyOf(plan.Profiles.Book.Settings)}"
            + $"{(open > 0 ? $", without {ReportWords.Count(open, "item that has", "items that have")} no price" : "")}";
    }

    private static string UnitOf(Dimension dimension) => dimension switch { Dimension.Volume => "ml", Dimension.Mass => "g", _ => "pieces" };
}
