using System.Text.RegularExpressions;
using SpecLint.Catalogue;

namespace SpecLint.Tests.BuiltIn;

/// <summary>Every row of the tables of law is read by a rule, or says why it is kept; and no error rests on what was not read.</summary>
public sealed partial class TableRowTests
{
    private static readonly Lazy<HashSet<string>> Literals = new(() =>
    {
        var found = new HashSet<string>(StringComparer.Ordinal);
        foreach (string file in Directory.EnumerateFiles(Repository.At("src", "SpecLint"), "*.cs", SearchOption.AllDirectories))
        {
            if (file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)) continue;
            foreach (Match match in Quoted().Matches(File.ReadAllText(file))) found.Add(match.Groups[1].Value);
        }

        return found;
    });

    [Fact]
    public void Every_row_of_limits_is_read_or_says_why_it_is_kept() =>
        Check("limits", Tables.NamesStartingWith("limits").SelectMany(t => RowsOf(t)).Where(r => !Literals.Value.Contains(r.Id)).Select(r => r.Id));

    [Fact]
    public void Every_row_of_labelling_is_read_or_says_why_it_is_kept() =>
        Check("labelling", RowsOf("labelling").Where(r => !Literals.Value.Contains(r.Id)).Select(r => r.Id));

    /// <summary>A name is read by SL7019, SL7020 or SL7022 when it is a category with a figure, or protected.</summary>
    [Fact]
    public void Every_row_of_names_is_read_or_says_why_it_is_kept() =>
        Check(
            "names",
            NameTable.All.Where(n => !Literals.Value.Contains(n.Id)
                && n.Kind != "protected"
                && (n.Kind != "category" || (double.IsNaN(n.StrengthAtLeast) && double.IsNaN(n.SugarAtLeast))))
                .Select(n => n.Id));

    /// <summary>
    /// A hazard is read when a rule names it, an entry of the catalogue is or brings it, a plant of the table holds it, or it is
    /// looked for by its names.
    /// </summary>
    [Fact]
    public void Every_row_of_hazards_is_read_or_says_why_it_is_kept()
    {
        var brought = new HashSet<string>(BuiltInCatalogue.Ids.SelectMany(i => new[] { i, BuiltInCatalogue.Find(i)!.Hazard.Or("") }), StringComparer.Ordinal);
        var rows = RowsOf("hazards");
        var held = new HashSet<string>(
            rows.SelectMany(r => r.Row.TryGet("content", out var content) ? content.Items.Select(c => c.Text("substance")) : []),
            StringComparer.Ordinal);
        Check("hazards", rows.Where(r => !Literals.Value.Contains(r.Id)
            && !brought.Contains(r.Id)
            && !held.Contains(r.Id)
            && !held.Contains(r.Row.Text("name").ToLowerInvariant())
            && HazardTable.Find(r.Id) is not ({ IsNotFood: true } or { IsNamedInProse: true })).Select(r => r.Id));
    }

    /// <summary>What is marked as read names something that can be read: not memory, press, a blog or a free encyclopaedia.</summary>
    [Fact]
    public void Nothing_marked_as_read_rests_on_memory_press_or_a_blog()
    {
        var faults = new List<string>();
        foreach (string table in Tables.NamesStartingWith("").Where(t => t is not "life"))
        {
            using var document = Tables.Open(table);
            Walk(table, document.Root, faults);
        }

        foreach (string id in BuiltInCatalogue.Ids)
        {
            var entry = BuiltInCatalogue.Find(id)!;
            foreach (var (path, value) in entry.Values)
            {
                if (value.Mark == Mark.Read && Unread().IsMatch(value.Source ?? "") && !ReadOn().IsMatch(value.Source ?? ""))
                    faults.Add($"{id}/{path}: {value.Source}");
            }

            if (entry.Allergens is { Mark: Mark.Read } allergens && Unread().IsMatch(allergens.Source ?? "")) faults.Add($"{id}/allergens: {allergens.Source}");
        }

        Assert.Equal([], faults);
    }

    private static void Walk(string path, TableValue element, List<string> faults)
    {
        if (element.IsList)
        {
            foreach (var child in element.Items) Walk(path, child, faults);
        }
        else if (element.IsObject)
        {
            string here = element.Text("id").Length > 0 ? $"{path}/{element.Text("id")}" : path;
            string source = element.Text("source");
            if (element.Text("mark") == "read" && Unread().IsMatch(source) && !ReadOn().IsMatch(source)) faults.Add($"{here}: {source}");
            foreach (var property in element.Properties) Walk(here, property.Value, faults);
        }
    }

    private static List<(string Id, TableValue Row)> RowsOf(string table) => [.. Tables.Rows(Tables.Open(table)).Select(r => (r.Text("id"), r))];

    private static void Check(string table, IEnumerable<string> unread)
    {
        var kept = File.ReadLines(Repository.At("tests", "SpecLint.Tests", "Catalogue", "kept-rows.csv")).Skip(1)
            .Select(l => l.Split(',', 3)).Where(c => c[0] == table && c[2].Trim('"').Length > 20).Select(c => c[1]).ToHashSet(StringComparer.Ordinal);
        var found = unread.ToHashSet(StringComparer.Ordinal);
        Assert.Equal([], found.Where(id => !kept.Contains(id)).OrderBy(id => id, StringComparer.Ordinal));

        // A row that a rule has learnt to read, or that is gone, leaves the list.
        Assert.Equal([], kept.Where(id => !found.Contains(id)).OrderBy(id => id, StringComparer.Ordinal));
    }

    [GeneratedRegex("\"([a-z0-9][a-z0-9-]*)\"")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"\bpress\b(?!\.)|wikipedia|\bblog|course page|not kept|as recalled|as reported", RegexOptions.IgnoreCase)]
    private static partial Regex Unread();

    [GeneratedRegex(@"read 20\d\d")]
    private static partial Regex ReadOn();
}
