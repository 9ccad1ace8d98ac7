using System.Globalization;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Tests.Support;
using Xunit.Abstractions;

namespace SpecLint.Tests.Profile;

/// <summary>No range leaves what its quantity can be: over every entry of the catalogue, and over entries mixed one to one.</summary>
public sealed class DomainTests(ITestOutputHelper output)
{
    private const int Pairs = 2000;
    private const int RandomPairs = 60_000;

    [Fact]
    public void Ranges_of_every_entry_are_possible() => None(BuiltInCatalogue.Ids.Select(id => new[] { id }));

    /// <summary>A fixed sample of the million pairs: each entry with others far from it in the list.</summary>
    [Fact]
    public void Ranges_of_mixed_entries_are_possible()
    {
        var ids = BuiltInCatalogue.Ids;
        None(Enumerable.Range(0, Pairs).Select(i => new[] { ids[i % ids.Count], ids[((i * 7919) + (i / ids.Count) + 1) % ids.Count] }));
    }

    /// <summary>Pairs drawn from all of the million; SPECLINT_SEED repeats a run.</summary>
    [LongFact]
    public void Ranges_of_pairs_at_random_are_possible()
    {
        int seed = int.TryParse(Environment.GetEnvironmentVariable("SPECLINT_SEED"), CultureInfo.InvariantCulture, out int given)
            ? given
            : Environment.TickCount;
        output.WriteLine($"SPECLINT_SEED={seed}, {RandomPairs} pairs");
        var random = new Random(seed);
        var ids = BuiltInCatalogue.Ids;
        var faults = new List<string>();
        for (int done = 0; done < RandomPairs; done += Pairs)
            faults.AddRange(Faults(Enumerable.Range(0, Pairs).Select(_ => new[] { ids[random.Next(ids.Count)], ids[random.Next(ids.Count)] })));
        Assert.True(faults.Count == 0, $"SPECLINT_SEED={seed}\n{string.Join("\n", faults)}");
    }

    private static void None(IEnumerable<string[]> mixes)
    {
        var faults = Faults(mixes);
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    private static List<string> Faults(IEnumerable<string[]> mixes)
    {
        var files = mixes.Select((items, i) => ($"mix-{i}.prep.json", $$"""{ "name": "{{string.Join(" and ", items)}}", "family": "other", "ingredients": [ {{string.Join(", ", items.Distinct().Select(m => $$"""{ "item": "{{m}}", "amount": "100 g" }"""))}} ] }"""))
            .ToArray();
        var (book, profiles) = Checker.Profile(Books.Input(files));
        var faults = new List<string>();
        foreach (var prep in book.Preps)
        {
            var profile = profiles.Of(prep);
            foreach (var fact in Enum.GetValues<Fact>())
            {
                var value = profile.Get(fact);
                if (value.IsKnown && Fault(fact, value, profile) is { } fault)
                    faults.Add($"{prep.Name.Value}: {FactNames.Name(fact)} {value.Value:0.####} ({value.Low:0.####} to {value.High:0.####}) {fault}");
            }
        }

        return faults;
    }

    private static string? Fault(Fact fact, FactValue value, RecipeProfile profile)
    {
        if (!double.IsFinite(value.Value) || !double.IsFinite(value.Low) || !double.IsFinite(value.High)) return "is not finite";
        if (value.Low > value.Value || value.High < value.Value) return "does not hold its value";
        var (least, most) = fact switch
        {
            Fact.Ph or Fact.MixPh => (0.0, 14.0),
            Fact.WaterActivity => (0.0, 1.0),
            Fact.Abv or Fact.MixAbv or Fact.Brix => (0.0, 100.0),

            // Pure ethanol freezes at −114 °C.
            Fact.FreezingPoint => (-114.1, 0.0),
            Fact.Temperature => (-114.1, 100.0),

            // Per 100 mL of a liquid no solute weighs more than the densest syrup; per 100 g no more than the whole.
            Fact.Sugar or Fact.Acid or Fact.AcidAnalysed or Fact.Salt => (0.0, profile.IsSolid ? 300.0 : 200.0),
            Fact.Density => (0.7, 2.72),
            _ => (0.0, double.PositiveInfinity),
        };
        return value.Low < least || value.High > most ? $"leaves {least} to {most}" : null;
    }
}
