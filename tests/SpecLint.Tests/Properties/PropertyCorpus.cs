using System.Text;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Service;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Many generated books with the harm findings on them and what the verdict answers: two builds that answer alike decide alike on
/// them. The words of a finding, and findings of taste, are left out.
/// </summary>
internal static class PropertyCorpus
{
    /// <summary>The answers on each of some books, one text a book.</summary>
    public static string[] Answers(int books)
    {
        string[] answers = new string[books];
        Parallel.For(0, books, i => answers[i] = Answer(i));
        return answers;
    }

    private static string Answer(int i)
    {
        // The seeds as they are first, then changed.
        var book = i < PropertySeeds.All.Count ? PropertySeeds.All[i] : PropertyRun.BookOf(-i);
        var text = new StringBuilder();
        try
        {
            var result = book.Check();
            foreach (var finding in result.Findings.Flat().Where(f => f.Rule.Safety && f.Caution is not null && f.Level >= Level.Warning)) text.AppendLine($"{finding.Level} {finding.Rule.Id} {finding.Subject} {finding.Path} {finding.Key}");
            var verdicts = Verdicts.Of(result);
            foreach (var recipe in result.Book.Recipes)
            {
                var verdict = verdicts.Of(recipe);
                text.AppendLine($"{recipe.Id}: {verdict.Answer} {verdict.Days} {verdict.DaysFrom} {verdict.StorageCelsius}");
            }

            if (result.Book.Menus is not [var menu, ..]) return text.ToString();
            foreach (var lot in LineCheck.Of(verdicts, menu, result.Book.Stocks).Lots) text.AppendLine($"{lot.Id}: {lot.Readiness} {lot.UseBy}");
        }
        catch (Exception fault)
        {
            text.AppendLine(fault.GetType().Name);
        }

        return text.ToString();
    }
}
