using SpecLint.Changes;
using SpecLint.Findings;

namespace SpecLint.Tests.Properties;

/// <summary>Correction: no correction that is applied adds an allergen or a harm finding.</summary>
public sealed class CorrectionHarmTests
{
    [Fact]
    public void No_correction_adds_an_allergen_or_a_harm_finding() => PropertyRun.Holds(PropertyRun.Cases(1200), null, one =>
    {
        var input = one.Book.Input();
        var before = Checker.Check(input);
        var had = new HarmOf(before);
        foreach (var finding in before.Findings.Flat().Where(f => f.Corrections.Any(c => c.Edits.Count > 0)))
        {
            var made = Corrector.Apply(input, new CorrectionChoice { Rules = new HashSet<string>([finding.Rule.Id], StringComparer.Ordinal) });
            var after = made.After;

            // One that changes words alone may bring to light what was true before; it says so, and stays.
            bool words = made.Outcomes.Any(o => o.IsMade && o.Correction.KeepsTheThing);
            foreach (var ((subject, rule), level) in new HarmOf(after).All.OrderBy(f => f.Of))
            {
                if (!words && !had.Has(subject, rule)) return $"{finding.Rule.Id} on {finding.Subject} brings {level} {rule} on {subject}";
            }

            foreach (var recipe in before.Book.Recipes)
            {
                if (after.Book.Recipes.FirstOrDefault(r => r.Source.Path == recipe.Source.Path) is not { } same) continue;
                var more = after.Profiles.Of(same).Allergens
                    .Contained(after.Book.Settings)
                    .Except(before.Profiles.Of(recipe).Allergens.Contained(before.Book.Settings))
                    .ToList();
                if (more.Count > 0) return $"{finding.Rule.Id} on {finding.Subject} adds {more[0]} to {recipe.Id}";
            }
        }

        return null;
    });
}
