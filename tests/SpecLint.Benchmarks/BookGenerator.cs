using System.Globalization;
using System.Text;
using SpecLint.Catalogue;

namespace SpecLint.Benchmarks;

/// <summary>
/// Makes books of any size, the same for the same seed: four fifths drinks, one fifth preparations, three levels deep
/// (syrups and soured juices; cordials and infusions of those; batches of both). Amounts are drawn around those of the
/// trade, so that most recipes are clean and some are not, as in a real book.
/// </summary>
public sealed class BookGenerator(int recipes, ulong seed)
{
    private static readonly string[] Styles = ["shaken-sour", "stirred", "built", "highball"];
    private static readonly string[] Glasses = ["coupe", "nick-and-nora", "rocks", "highball"];

    /// <summary>Notes as bars write them: one or two sentences, some with foods, some with amounts.</summary>
    private static readonly string[] Notes =
    [
        "Pressed at three each afternoon for that evening, strained twice and kept cold in the well until the last order.",
        "Stirred on ice to order; nothing is diluted in the bottle, so taste it after thirty seconds before it goes out.",
        "Same strength as lime, so it drops into any sour. Clouds on the second day; that is the juice, shake it.",
        "Three parts honey to one of water by weight, always on the scale, and never warmer than a hand can bear.",
        "Use 5 ml less in August when the fruit is sweet, and taste it against the bottle of last week before service.",
        "Cut the peel wide and express it over the glass, then drop it in with the skin side up.",
        "From Ballymarsh Fruit Farm, picked in July, frozen loose in 1 kg bags; thaw one overnight in the fridge.",
        "Dust with crushed pistachio only for guests who ask for it, and tell them that it is a nut.",
        "Shake hard for twelve seconds with two large cubes and a cracked one, then strain through the fine sieve into a cold glass.",
        "Pot still gin carries it best, with juniper, dillseed and lemon peel in front; the well pour is too thin here.",
        "No heat, so that it stays white. Lift the fat after a night in the freezer, then pass it through a coffee filter.",
        "Write the date on the tape, put the older bottle in front, and discard what is left after service on Sunday.",
    ];

    private readonly string[] spirits = OfKind("spirit");
    private readonly string[] liqueurs = OfKind("liqueur");
    private readonly string[] juices = OfKind("juice");
    private readonly string[] bitters = OfKind("bitters");
    private readonly string[] herbs = OfKind("herb");
    private ulong state = seed;

    /// <summary>Whether each recipe has a note; everything else is the same with and without.</summary>
    public bool WritesNotes { get; init; }

    /// <summary>Name and text of each file.</summary>
    public IEnumerable<(string Path, byte[] Text)> Files()
    {
        yield return ("bar.json", Encoding.UTF8.GetBytes("""
            { "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "measures": { "dash": "0.8 ml", "drop": "0.05 ml" },
              "tools": { "scale": "0.1 g", "jigger": "2.5 ml", "fridge": "4 °C" } }
            """));
        int preps = recipes / 5;
        int first = Math.Max(1, preps / 2), second = Math.Max(1, preps / 3);
        for (int i = 0; i < preps; i++)
        {
            string text = i < first ? Base(i) : i < first + second ? Middle(i, first) : Top(i, first, second);
            yield return ($"preparations/{i % 97:00}/prep-{i}.prep.json", Encoding.UTF8.GetBytes(text));
        }

        for (int i = 0; i < recipes - preps; i++)
            yield return ($"drinks/{i % 97:00}/drink-{i}.drink.json", Encoding.UTF8.GetBytes(Drink(i, preps)));
    }

    /// <summary>Writes the book into a folder; returns the number of bytes.</summary>
    public long WriteTo(string folder)
    {
        long bytes = 0;
        foreach (var (path, text) in Files())
        {
            string full = Path.Combine(folder, path);
            Directory.CreateDirectory(Path.GetDirectoryName(full)!);
            File.WriteAllBytes(full, text);
            bytes += text.Length;
        }

        return bytes;
    }

    private static string[] OfKind(string kind) =>
        [.. BuiltInCatalogue.Ids.Where(id => BuiltInCatalogue.Find(id)!.IngredientKind.Or(Vocabulary.ItemKind.None).Id == kind)];

    private string Base(int i)
    {
        if (i % 2 == 0)
        {
            int sugar = 500 + (50 * Next(5));
            return Prep(i, "syrup", [("white-sugar", $"{sugar} g"), ("water", $"{1000 - sugar} g")], "stir", "1000 g", "\"sugar\": \"" + (sugar / 10) + " % w/w\"");
        }

        int acid = 20 + Next(30);
        return Prep(i, "acid-adjusted-juice", [(Pick(juices), $"{1000 - acid} g"), ("citric-acid", $"{acid} g")], "stir", "1000 g", null);
    }

    private string Middle(int i, int first) => i % 2 == 0
        ? Prep(i, "cordial", [($"prep-{Next(first)}", "500 ml"), (Pick(juices), "400 ml"), ("malic-acid", $"{5 + Next(10)} g")], "stir", null, null)
        : Prep(i, "infusion", [(Pick(spirits), "700 ml"), (Pick(herbs), $"{5 + Next(20)} g"), ($"prep-{Next(first)}", "50 ml")], "infuse", null, null);

    private string Top(int i, int first, int second) =>
        Prep(i, "batch", [(Pick(spirits), $"{400 + (10 * Next(30))} ml"), ($"prep-{first + Next(second)}", "200 ml"), ($"prep-{Next(first)}", "150 ml"), ("water", $"{100 + Next(100)} ml")], "stir", null, null);

    private string Prep(int i, string family, (string Item, string Amount)[] lines, string step, string? yield, string? target)
    {
        var text = new StringBuilder();
        text.Append("{\n  \"name\": \"Preparation ").Append(i).Append("\",\n  \"family\": \"").Append(family).Append("\",\n  \"ingredients\": [\n");
        AppendLines(text, lines);
        text.Append("  ],\n  \"method\": [ { \"do\": \"").Append(step).Append("\" }, { \"do\": \"fine-strain\", \"into\": \"bottle\" } ],\n");
        if (yield is not null) text.Append("  \"yield\": \"").Append(yield).Append("\",\n");
        if (target is not null) text.Append("  \"target\": { ").Append(target).Append(" },\n");
        if (Next(2) == 0) text.Append("  \"measured\": { \"ph\": ").Append((2.2 + (0.1 * Next(20))).ToString("0.0", CultureInfo.InvariantCulture)).Append(", \"on\": \"2026-11-20\" },\n");
        text.Append("  \"keep\": { \"at\": \"4 °C\", \"in\": \"bottle\", \"for\": \"").Append(1 + Next(7)).Append(" d\" },\n");
        AppendNote(text, i);
        text.Append("  \"declares\": { \"allergens\": [] }\n}\n");
        return text.ToString();
    }

    private string Drink(int i, int preps)
    {
        int style = Next(Styles.Length);
        var lines = new List<(string Item, string Amount)> { (Pick(spirits), $"{30 + (5 * Next(7))} ml") };
        if (Next(3) == 0) lines.Add((Pick(liqueurs), $"{10 + (5 * Next(3))} ml"));
        if (style is 0 or 3) lines.Add((Pick(juices), $"{15 + (5 * Next(4))} ml"));
        if (preps > 0) lines.Add(($"prep-{Next(preps)}", $"{15 + (5 * Next(4))} ml"));
        if (Next(2) == 0) lines.Add((Pick(bitters), $"{1 + Next(3)} dashes"));
        if (style == 3) lines.Add(("soda-water", "90 ml"));
        var text = new StringBuilder();
        text.Append("{\n  \"name\": \"Drink ").Append(i).Append("\",\n  \"style\": \"").Append(Styles[style]).Append("\",\n  \"ingredients\": [\n");
        AppendLines(text, lines);
        text.Append("  ],\n  \"method\": [ ").Append(style switch
        {
            0 => "{ \"do\": \"shake\", \"ice\": \"cubed\", \"for\": \"12 s\" }, { \"do\": \"strain\" }",
            1 => "{ \"do\": \"stir\", \"ice\": \"cubed\", \"for\": \"30 s\" }, { \"do\": \"strain\" }",
            2 => "{ \"do\": \"build\", \"ice\": \"cubed\" }",
            _ => "{ \"do\": \"shake\", \"ice\": \"cubed\", \"for\": \"8 s\" }, { \"do\": \"strain\" }, { \"do\": \"top\", \"item\": \"soda-water\" }",
        }).Append(" ],\n  \"glass\": \"").Append(Glasses[style]).Append("\",\n");
        if (Next(2) == 0) text.Append("  \"garnish\": [ { \"item\": \"").Append(Pick(herbs)).Append("\", \"amount\": \"1 sprig\" } ],\n");
        text.Append("  \"serves\": 1,\n");
        AppendNote(text, i);
        text.Append("  \"declares\": { \"allergens\": [], \"abv\": \"").Append(10 + Next(18)).Append(" % v/v\" }\n}\n");
        return text.ToString();
    }

    private void AppendNote(StringBuilder text, int i)
    {
        if (WritesNotes) text.Append("  \"notes\": \"").Append(Notes[i % Notes.Length]).Append("\",\n");
    }

    private static void AppendLines(StringBuilder text, IReadOnlyList<(string Item, string Amount)> lines)
    {
        for (int i = 0; i < lines.Count; i++)
        {
            text.Append("    { \"item\": \"").Append(lines[i].Item).Append("\", \"amount\": \"").Append(lines[i].Amount)
                .Append(i + 1 < lines.Count ? "\" },\n" : "\" }\n");
        }
    }

    private string Pick(string[] from) => from[Next(from.Length)];

    /// <summary>splitmix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014): the same on every runtime.</summary>
    private int Next(int below)
    {
        ulong z = state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return (int)((z ^ (z >> 31)) % (ulong)below);
    }
}
