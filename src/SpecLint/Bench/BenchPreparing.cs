using System.Globalization;
using System.Text.Json;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Changes;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.RecipeText;
using SpecLint.Reports;
using SpecLint.Science;
using SpecLint.Service;

namespace SpecLint.Bench;

/// <summary>
/// Writes the lines of a preparation from a few figures: an acid-adjusted juice, a syrup, a saline, something dried, the batch of a
/// drink; and a reading into a recipe. What is not known is left out of the lines: the check then asks for it.
/// </summary>
public static class BenchPreparing
{
    /// <summary>Powders by the acid that they are, in the order in which they are written.</summary>
    private static readonly (Component Acid, string Item)[] Powders =
        [(Component.Citric, "citric-acid"), (Component.Malic, "malic-acid"), (Component.Tartaric, "tartaric-acid")];

    /// <summary>An acid with a smaller share of the acids of the model is left out, %.</summary>
    private const double LeastShare = 3;

    /// <summary>Writes the lines of a preparation, as JSON of <c>text</c> and <c>why</c> (why not, where it cannot).</summary>
    /// <param name="book">The book.</param>
    /// <param name="entry">What is being written: the drink of a batch.</param>
    /// <param name="request">
    /// The request as JSON: <c>kind</c> (<c>sour</c>, <c>syrup</c>, <c>saline</c>, <c>dried</c>, <c>batch</c>) and its figures, each a text as typed.
    /// </param>
    public static string Prepare(BenchBook book, BenchEntry entry, string request)
    {
        using var document = JsonDocument.Parse(request);
        var form = new Form(document.RootElement, new NameResolver(book.Book));
        string text = form.Text("kind") switch
        {
            "sour" => Sour(book, form),
            "syrup" => Syrup(book, form),
            "saline" => Saline(book, form),
            "dried" => Dried(book, form),
            "batch" => Batch(book, entry, form),
            _ => "",
        };
        return BenchOutputs.Write(new BenchEdit(form.Why.Length > 0 ? "" : text, "", form.Why));
    }

    /// <summary>Writes a reading into what is being written, stamped with the recipe as it stands.</summary>
    /// <param name="book">The book.</param>
    /// <param name="entry">What is being written.</param>
    /// <param name="ph">pH; NaN where none was read.</param>
    /// <param name="brix">°Brix; NaN where none was read.</param>
    public static BenchEdit Record(BenchBook book, BenchEntry entry, double ph, double brix)
    {
        bool isPh = ph is > 0 and < 14, isBrix = brix is > 0 and < 100;
        if (!isPh && !isBrix) return new BenchEdit(entry.Text, entry.Path, "Give a pH from 0 to 14 or a °Brix from 0 to 100.");
        var reading = book.Read(entry with { Quick = true });
        if (reading.Recipe is not Prep prep) return new BenchEdit(entry.Text, entry.Path, "Only a preparation takes a reading.");
        if (entry.IsFile)
        {
            var values = new List<(string, string)>();
            if (isPh) values.Add(("ph", Number(ph)));
            if (isBrix) values.Add(("brix", Number(brix)));
            return ReadingRecorder.Record(prep, reading.Result.Book, values, book.On) is { } file
                ? new BenchEdit(BenchEdits.TextOf(file), entry.Path, "")
                : new BenchEdit(entry.Text, entry.Path, "The file is not whole.");
        }

        var said = new List<string>();
        if (isPh) said.Add($"pH {Number(ph)}");
        if (isBrix) said.Add($"{Number(brix)} °Bx");
        string row = $"measured: {string.Join(", ", said)}, {book.On}, {RecipeFingerprint.Of(prep, reading.Result.Book)}";
        var rows = BenchEdits.RowsOf(entry.Text).ToList();
        int there = reading.Written?.Lines.FirstOrDefault(l => l.Detail is { Kind: DetailKind.Measured })?.Number ?? 0;
        if (there > 0) rows[there - 1] = row;
        else rows.Add(row);
        return new BenchEdit(string.Join("\n", rows), "", "");
    }

    private static string Sour(BenchBook book, Form form)
    {
        string juice = form.Item("item"), like = form.Item("like");
        double grams = form.Number("grams", 1e6);
        if (form.Why.Length > 0) return "";
        if (book.Profiles.MaterialOf(like) is not { } model) return form.Refuse($"what {like} is made of is not known");
        double all = Solving.AcidsOf(model.PerGram);
        var powders = new List<string>();
        foreach (var (acid, item) in Powders)
        {
            if (100 * model.PerGram[(int)acid] / all >= LeastShare) powders.Add(item);
        }

        if (powders.Count == 0) return form.Refuse($"{like} has none of the acids that are sold as powders");
        string start = string.Join("\n", (string[])[
            $"Soured {NameOf(book, juice)}",
            $"{Number(grams)} g {NameOf(book, juice)}",
            .. powders.Select(p => $"{Number(Math.Max(1, Math.Round(grams * 0.02)))} g {NameOf(book, p)}"),
            "Stir until dissolved, fine strain into a bottle",
            "family: acid-adjusted juice",
            $"like: {NameOf(book, like)}"]);
        return Solved(book, start, new AdjustRequest { Like = like, Keep = [juice] }, form);
    }

    private static string Syrup(BenchBook book, Form form)
    {
        string sugar = form.Item("item");
        double grams = form.Number("grams", 1e6);
        if (form.Why.Length > 0) return "";
        bool byRatio = form.Text("ratio").Length > 0;
        double brix = byRatio ? double.NaN : form.Text("brix").Length > 0 ? form.Number("brix", 85) : double.NaN;
        double water = byRatio ? WaterByRatio(form) : double.IsNaN(brix) ? double.NaN : WaterByBrix(book, sugar, brix, form);
        if (double.IsNaN(water) && form.Why.Length == 0) form.Refuse("give a ratio or a °Brix");
        if (form.Why.Length > 0) return "";
        string start = string.Join("\n", (string[])[
            byRatio
                ? $"{NameOf(book, sugar)} syrup {form.Text("ratio").Replace(":", " to ")}"
                : $"{NameOf(book, sugar)} syrup {form.Text("brix")} Bx",
            $"{Number(grams)} g {NameOf(book, sugar)}",
            $"{Number(Math.Round(grams * water, 1))} g water",
            "Stir until dissolved",
            "family: syrup"]);
        if (byRatio) return start;
        return Solved(book, start, new AdjustRequest { Targets = [new AdjustTarget(Fact.Brix, brix, brix)], Keep = [sugar] }, form);
    }

    /// <summary>Water to one of sugar, by weight; NaN where the ratio cannot be read.</summary>
    private static double WaterByRatio(Form form)
    {
        string[] ends = form.Text("ratio").Split(':');
        if (ends.Length == 2 && Form.TryNumber(ends[0], out double s) && Form.TryNumber(ends[1], out double w) && s > 0 && w > 0) return w / s;
        form.Refuse("the ratio is written as 2:1");
        return double.NaN;
    }

    /// <summary>Water to one of what sweetens, by weight: °Brix is g of solids in 100 g. NaN where it holds too much water itself.</summary>
    private static double WaterByBrix(BenchBook book, string sugar, double brix, Form form)
    {
        if (book.Profiles.MaterialOf(sugar) is not { } sweet || (sweet.Unknown & (Unknowns.Composition | Unknowns.Water)) != 0)
        {
            form.Refuse($"how much water {sugar} holds is not known");
            return double.NaN;
        }

        double solids = 1 - sweet.PerGram[(int)Component.Water], water = (solids * 100 / brix) - 1;
        if (water > 0) return water;
        form.Refuse($"{NameOf(book, sugar)} alone has no more than {Say.Number(100 * solids, 0)} % of solids");
        return double.NaN;
    }

    private static string Saline(BenchBook book, Form form)
    {
        string salt = form.Item("item");
        double grams = form.Number("grams", 1e6), percent = form.Number("percent", 26);
        if (form.Why.Length > 0) return "";
        double share = Math.Round(grams * percent / 100, 1);
        return string.Join(
            "\n", $"Saline {Number(percent)} %", $"{Number(share)} g {NameOf(book, salt)}", $"{Number(grams - share)} g water",
            "Stir until dissolved", "family: saline");
    }

    private static string Dried(BenchBook book, Form form)
    {
        string item = form.Item("item");
        double grams = form.Number("grams", 1e6), percent = form.Number("percent", 95);
        if (form.Why.Length > 0) return "";
        if (book.Profiles.MaterialOf(item) is not { } fresh || (fresh.Unknown & (Unknowns.Composition | Unknowns.Water)) != 0)
            return form.Refuse($"how much water {item} holds is not known");
        double water = fresh.PerGram[(int)Component.Water], left = grams * (1 - water) / (1 - (percent / 100));
        if (!(left < grams)) return form.Refuse($"{NameOf(book, item)} holds {Say.Number(100 * water, 0)} % of water, no more than is to be left");
        string mass = Number(Math.Round(left, left < 20 ? 1 : 0));
        string at = form.Text("at").Length > 0 ? $" at {Number(form.Number("at", 120))} °C" : "";
        return form.Why.Length > 0
            ? ""
            : string.Join(
                "\n", $"Dried {NameOf(book, item)}", $"{Number(grams)} g {NameOf(book, item)}",
                $"Dehydrate{at} until it weighs {mass} g", "family: dried", $"makes {mass} g");
    }

    private static string Batch(BenchBook book, BenchEntry entry, Form form)
    {
        double serves = form.Number("serves", 10_000);
        if (form.Why.Length > 0) return "";
        var reading = book.Read(entry);
        if (reading.Recipe is not Drink drink) return form.Refuse("a batch is made of a drink");
        var size = new ScaleRequest { Serves = serves, Poured = form.Text("poured") == "true" };
        if (ScalePlan.Of(reading.Verdicts, drink, size, out string why) is not { } plan) return form.Refuse(why);
        var rows = new List<string> { $"{drink.Name.Or(drink.Id)} batch" };
        rows.AddRange(plan.Lines.Select(l => $"{LineCheckReport.LineOf(l, DisplayUnits.Metric)} {NameOf(book, l.Item)}"));
        if (plan.Water > 0) rows.Add($"{Number(plan.Water)} ml water");
        rows.Add("Stir");
        rows.Add("family: batch");
        rows.Add($"batch of: {drink.Id}");
        if (!double.IsNaN(plan.Volume)) rows.Add($"makes {Number(Math.Round(plan.Volume))} ml");
        rows.AddRange(plan.Remarks.Select(r => $"note: {r}"));
        return string.Join("\n", rows);
    }

    /// <summary>Lines whose amounts are solved for a target.</summary>
    private static string Solved(BenchBook book, string start, AdjustRequest request, Form form)
    {
        var entry = new BenchEntry(start) { Quick = true };
        var reading = book.Read(entry);
        if (reading.Recipe is not { } recipe) return form.Refuse("it cannot be written");
        if (Adjuster.Of(reading.Input, reading.Result, recipe, request, out string why) is not { } adjustment) return form.Refuse(why);
        return BenchEdits.AsLines(book, entry, reading, adjustment.File) ?? BenchEdits.TextOf(adjustment.File);
    }

    private static string NameOf(BenchBook book, string id) => book.Book.Resolve(id) is { } item ? BenchEdits.NameFor(book, item) : id;

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>The figures of a form, as typed; what is wrong with one is said once.</summary>
    private sealed class Form(JsonElement root, NameResolver names)
    {
        /// <summary>What is wrong; empty where nothing is.</summary>
        public string Why { get; private set; } = "";

        public static bool TryNumber(string text, out double number) =>
            double.TryParse(text.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number);

        public string Text(string name) =>
            root.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString()!.Trim() : "";

        public string Item(string name)
        {
            if (names.Resolve(Text(name)) is { Answer: NameAnswer.Resolved } meant) return meant.Id;
            return Refuse(Text(name).Length == 0 ? "say what goes in" : $"{Text(name)} is not known, or it can mean several things");
        }

        public double Number(string name, double most)
        {
            if (TryNumber(Text(name), out double number) && number > 0 && number <= most) return number;
            Refuse($"'{Text(name)}' is not a number from 0 to {most.ToString(CultureInfo.InvariantCulture)}");
            return double.NaN;
        }

        public string Refuse(string why)
        {
            if (Why.Length == 0) Why = char.ToUpperInvariant(why[0]) + why.Substring(1) + ".";
            return "";
        }
    }
}
