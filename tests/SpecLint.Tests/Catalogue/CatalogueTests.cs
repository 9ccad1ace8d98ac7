using System.Globalization;
using System.Text;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Science;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.BuiltIn;

/// <summary>Every entry of the built-in catalogue is read by the reader of a bar's own files and agrees with the science.</summary>
public sealed class CatalogueTests
{
    private const double DensityShare = 0.01;
    private const double EnergyShare = 0.05;
    private const double EnergyFloorKilocalories = 1;
    private const double PhDistance = 0.3;
    private const double MassDistance = 1.5;

    private static IEnumerable<Ingredient> Entries => BuiltInCatalogue.Ids.Select(id => BuiltInCatalogue.Find(id)!);

    [Fact]
    public void There_are_at_least_four_hundred_entries() => Assert.True(BuiltInCatalogue.Ids.Count >= 400);

    [Fact]
    public void Every_entry_reads_without_a_problem() =>
        None(Entries, e => e.Problems.Count > 0 ? string.Join("; ", e.Problems.Select(p => p.Message)) : null);

    [Fact]
    public void Every_value_has_its_mark_and_its_source() =>
        None(Entries, e => e.Values.Where(v => v.Value.Mark == Mark.House || string.IsNullOrWhiteSpace(v.Value.Source)).Select(v => v.Key).FirstOrDefault());

    [Fact]
    public void Every_range_holds_its_typical_value() =>
        None(Entries, e => e.Values.Where(v => v.Value.Low > v.Value.Typical || v.Value.Typical > v.Value.High).Select(v => v.Key).FirstOrDefault());

    [Fact]
    public void Every_entry_says_its_allergens_and_animal_origin() =>
        None(Entries, e => e.Allergens is null ? "allergens" : e.Animal.IsGiven ? null : "animal");

    [Fact]
    public void Every_allergen_token_is_in_the_table()
    {
        var tokens = new HashSet<string>(StringComparer.Ordinal);
        using var table = Tables.Open("allergens");
        foreach (var row in Tables.Rows(table)) tokens.UnionWith(row.Texts("tokens"));
        None(Entries, e => e.Allergens?.Contains.Concat(e.Allergens.MayContain).FirstOrDefault(t => !tokens.Contains(t) && !AllergenTable.IsToken(t)));
    }

    /// <summary>The index that stands beside the entries holds what they say.</summary>
    [Fact]
    public void Index_of_synonyms_is_up_to_date()
    {
        var lines = BuiltInCatalogue.CollectAliases().Select(a => $"  \"{a.Key}\": \"{a.Value}\"");
        Golden.Check(Repository.At("src", "SpecLint", "Catalogue", "aliases.json"), "{\n" + string.Join(",\n", lines) + "\n}\n");
    }

    [Fact]
    public void Names_and_synonyms_are_used_once()
    {
        var owners = new Dictionary<string, string>(StringComparer.Ordinal);
        var clashes = new List<string>();
        foreach (var entry in Entries)
        {
            var own = entry.Aliases.Select(a => BuiltInCatalogue.Slug(a.Value))
                .Append(BuiltInCatalogue.Slug(entry.Name.Value))
                .Append(entry.Id)
                .ToHashSet(StringComparer.Ordinal);
            foreach (string slug in own)
            {
                if (owners.TryGetValue(slug, out string? other)) clashes.Add($"{slug}: {other} and {entry.Id}");
                else owners.Add(slug, entry.Id);
            }
        }

        Assert.Equal([], clashes);
    }

    [Fact]
    public void Contents_come_to_no_more_than_the_whole() =>
        None(Entries, e =>
        {
            double basis = Basis(e);
            double sum = Contents(e).Sum() + Value(e, "water");
            return double.IsNaN(basis) || sum <= basis + MassDistance ? null : $"{sum:0.00} g in {basis:0.00} g";
        });

    /// <summary>Density against the mass balance of the mixture (OIML R 22, ICUMSA SPS-4, apparent volumes), within 1 %.</summary>
    [Fact]
    public void Densities_agree_with_the_mixture() =>
        None(Entries, e =>
        {
            if (!e.Values.TryGetValue("density", out var density) || e.Open.ContainsKey("density")) return null;
            var material = MaterialBuilder.Of(e, isBuiltIn: true);
            if (material.State != MaterialState.Liquid) return null;
            double[] grams = material.PerGram.ToArray();
            if (Mixture.Density(grams, Celsius.Reference) is not { } computed) return null;
            double share = Math.Abs((computed.GramsPerMillilitre / density.Typical) - 1);
            return share <= DensityShare ? null : $"given {density.Typical:0.000}, computed {computed.GramsPerMillilitre:0.000} g/mL";
        });

    /// <summary>Energy against the factors of Regulation (EU) 1169/2011, Annex XIV, within 5 % or a reason.</summary>
    [Fact]
    public void Energies_agree_with_the_legal_factors() =>
        None(Entries, e =>
        {
            if (!e.Values.TryGetValue("energy", out var energy) || e.Open.ContainsKey("energy") || e.Open.ContainsKey("composition")) return null;
            double[] grams = new double[Components.Count];
            Fill(e, grams);
            double computed = FoodEnergyModel.Of(grams)?.Kilocalories ?? double.NaN;
            double distance = Math.Abs(computed - energy.Typical);
            return double.IsNaN(computed) || distance <= Math.Max(EnergyFloorKilocalories, EnergyShare * energy.Typical)
                ? null
                : $"given {energy.Typical:0.0}, computed {computed:0.0} kcal";
        });

    /// <summary>pH of the material as the acid model computes it against the pH given, within 0.3 or an open mark with a reason.</summary>
    [Fact]
    public void Acidities_agree_with_the_acid_model() =>
        None(Entries, e =>
        {
            if (!e.Values.TryGetValue("ph", out var ph) || e.Open.ContainsKey("ph") || !e.Values.ContainsKey("titratableAcidity")) return null;
            if (AcidBase.Ph(MaterialBuilder.Of(e, isBuiltIn: true).PerGram, Celsius.Reference) is not { } computed) return null;
            return Math.Abs(computed.Value - ph.Typical) <= PhDistance ? null : $"given {ph.Typical:0.00}, computed {computed.Value:0.00}";
        });

    /// <summary>
    /// Sugars, water, potassium, pH and titratable acidity against food-composition data; the source is named in each row of
    /// composition.csv.
    /// </summary>
    [Fact]
    public void Juices_and_fruit_agree_with_food_composition_data()
    {
        var misses = new List<string>();
        int rows = 0;
        foreach (string line in File.ReadLines(Repository.At("tests", "SpecLint.Tests", "Catalogue", "composition.csv")).Skip(1))
        {
            string[] cells = line.Split(',', 6);
            var entry = BuiltInCatalogue.Find(cells[0])!;
            double low = double.Parse(cells[3], CultureInfo.InvariantCulture), high = double.Parse(cells[4], CultureInfo.InvariantCulture);
            var (typical, from, to) = cells[1] switch
            {
                "sugar" => Sum(entry, "sugars.", "sugars.dextrin"),
                "ph" => Range(entry, "ph"),
                "titratable" => Range(entry, "titratableAcidity"),
                "water" => Range(entry, "water"),
                _ => Range(entry, "potassium", 1000),
            };
            if (double.IsNaN(typical)) continue;
            rows++;

            // Ranges must meet; a source with one figure must lie in the entry's range, a fifth to each side allowed for variety.
            if (to < low * 0.8 || from > high * 1.2) misses.Add($"{cells[0]} {cells[1]}: entry {from:0.00}–{to:0.00}, source {low}–{high}");
        }

        Assert.Equal([], misses);
        Assert.True(rows >= 40, $"only {rows} rows were compared");
    }

    [Fact]
    public void Catalogue_page_is_up_to_date()
    {
        var text = new StringBuilder("# The catalogue\n\nThe built-in ingredients, one line each; `speclint profile ID` prints an entry "
            + "with its sources. Generated.\n\n");
        text.Append(MarksInWords());
        foreach (var kind in Entries.GroupBy(e => e.IngredientKind.Or(ItemKind.Other).Id).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"\n## {kind.Key}\n\n| id | name | strength | sugar | acid | allergens |\n| --- | --- | --- | --- | --- | --- |\n");
            foreach (var e in kind)
            {
                string unit = e.PerHundredMillilitres.Or(false) ? "g/100 mL" : "g/100 g";
                double sugar = Sum(e, "sugars.").Typical, acid = e.Values.TryGetValue("titratableAcidity", out var t) ? t.Typical : Sum(e, "acids.").Typical;
                string strength = e.Values.TryGetValue("strength", out var s) && s.Typical > 0 ? $"{Say.Number(s.Typical)} % vol" : "";
                text.Append($"| {e.Id} | {e.Name.Value} | {strength} | {Amount(sugar, unit)} | {Amount(acid, unit)} | "
                    + $"{string.Join(", ", e.Allergens?.Contains ?? [])} |\n");
            }
        }

        Golden.Check(Repository.At("rules-docs", "catalogue.md"), text.ToString());
    }

    /// <summary>The README says how much of the catalogue is from memory, to the whole per cent.</summary>
    [Fact]
    public void The_readme_says_how_many_values_are_from_memory()
    {
        var marks = Marks();
        int share = (int)Math.Round(100.0 * marks[Mark.Memory] / marks.Values.Sum());
        Assert.Contains($"{share} % of its values are from memory", File.ReadAllText(Repository.At("README.md")), StringComparison.Ordinal);
    }

    private static string MarksInWords()
    {
        var marks = Marks();
        int all = marks.Values.Sum();
        string Share(Mark mark) =>
            $"{marks.GetValueOrDefault(mark)} "
                + $"({(100.0 * marks.GetValueOrDefault(mark) / all).ToString("0", CultureInfo.InvariantCulture)} %)";
        return $"Of its {all} values {Share(Mark.Read)} were read in a source, {Share(Mark.Computed)} are computed from others, {Share(Mark.CommonPractice)} are common practice, and {Share(Mark.Memory)} are from memory: recalled, not read again, to be verified. "
            + "A value from memory never carries an error-level finding. Lives, opened and unopened, are values of a class of goods: "
            + "the label of the bottle in hand replaces them. Sources and licences stand in [sources.md](sources.md).\n";
    }

    /// <summary>How many values of the catalogue have each mark, with those that an entry inherits.</summary>
    private static Dictionary<Mark, int> Marks() =>
        Entries.SelectMany(e => e.Values.Values).GroupBy(v => v.Mark).ToDictionary(g => g.Key, g => g.Count());

    private static string Amount(double value, string unit) => double.IsNaN(value) || value < 0.005 ? "" : $"{Say.Number(value, 2)} {unit}";

    private static void None(IEnumerable<Ingredient> entries, Func<Ingredient, string?> fault) =>
        Assert.Equal([], entries.Select(e => (e.Id, Fault: fault(e))).Where(f => f.Fault is not null).Select(f => $"{f.Id}: {f.Fault}"));

    private static double Basis(Ingredient e) =>
        !e.PerHundredMillilitres.Or(false) ? 100 : e.Values.TryGetValue("density", out var d) ? 100 * d.Typical : double.NaN;

    private static double Value(Ingredient e, string path) => e.Values.TryGetValue(path, out var v) ? v.Typical : 0;

    private static (double Typical, double Low, double High) Range(Ingredient e, string path, double factor = 1) =>
        e.Values.TryGetValue(path, out var v) ? (v.Typical * factor, v.Low * factor, v.High * factor) : (double.NaN, double.NaN, double.NaN);

    private static (double Typical, double Low, double High) Sum(Ingredient e, string prefix, string except = "")
    {
        double typical = 0, low = 0, high = 0;
        bool any = false;
        foreach (var (path, value) in e.Values)
        {
            if (!path.StartsWith(prefix, StringComparison.Ordinal) || path == except) continue;
            any = true;
            typical += value.Typical;
            low += value.Low;
            high += value.High;
        }

        return any ? (typical, low, high) : (double.NaN, double.NaN, double.NaN);
    }

    private static IEnumerable<double> Contents(Ingredient e)
    {
        double[] grams = new double[Components.Count];
        Fill(e, grams);
        return grams;
    }

    private static void Fill(Ingredient e, double[] grams)
    {
        foreach (var (path, component) in EntryContents.Paths) grams[(int)component] = Value(e, path);
        double density = e.Values.TryGetValue("density", out var d) ? d.Typical : 1;
        grams[(int)Component.Ethanol] = Value(e, "strength") * 0.78924 / (e.PerHundredMillilitres.Or(false) ? 1 : density);
    }
}
