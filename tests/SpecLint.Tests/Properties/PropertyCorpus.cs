using System.Text;
using SpecLint.Findings;
using SpecLint.Service;

namespace SpecLint.Tests.Properties;

/// <summary>
/// Many generated books with the harm findings on them and what the verdict answers: two builds that answer alike decide alike on
/// them. Behind <see cref="Rest"/> come the words of findings, and the findings of taste.
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

    /// <summary>The answer on one book.</summary>
    public static string AnswerOf(int book) => Answer(book);

    /// <summary>Which harm finding that a seed expects it has not, or has beyond; <see langword="null"/> where all is as expected.</summary>
    public static string? UnlikeOf(int book)
    {
        try
        {
            return new PropertyCase(BookOf(book), null) { IsSeed = true }.Unlike(BookOf(book).Check());
        }
        catch (Exception fault)
        {
            return fault.GetType().Name;
        }
    }

    /// <summary>The part of an answer that is about harm.</summary>
    public static string Harm(string answer) => answer[..answer.IndexOf(Rest)];

    /// <summary>The name of the seed that a book is made of.</summary>
    public static string SeedOf(int i) => BookOf(i).Name;

    private const char Rest = '\u001d';

    // The seeds as they are first, then changed.
    private static PropertyBook BookOf(int i) => i < PropertySeeds.All.Count ? PropertySeeds.All[i] : PropertyRun.BookOf(-i);

    private static string Answer(int i)
    {
        var book = BookOf(i);
        StringBuilder text = new(), rest = new StringBuilder().Append(Rest);
        try
        {
            var result = book.Check();
            foreach (var finding in result.Findings.Flat().Where(f => f.Rule.Safety && f.Caution is not null && f.Level >= Level.Warning))
                text.AppendLine($"{finding.Level} {finding.Answer} {finding.Rule.Id} {finding.Subject} {finding.Path} {finding.Key}");
            foreach (var finding in result.Findings.Flat())
                rest.AppendLine($"{finding.Level} {finding.Rule.Id} {finding.Subject} {finding.Path} {finding.Message} "
                    + $"{finding.Advice} {string.Join("; ", finding.Corrections.Select(c => c.Description))} {string.Join("; ", finding.Evidence)} {finding.Caution} "
                    + $"{string.Join("; ", finding.Related.Select(r => r.Message))}");
            var verdicts = Verdicts.Of(result);
            foreach (var recipe in result.Book.Recipes)
            {
                var verdict = verdicts.Of(recipe);
                text.AppendLine($"{recipe.Id}: {verdict.Answer} {verdict.Days} {verdict.DaysFrom} {verdict.StorageCelsius} {verdict.Life.Value} {verdict.Life.From}");
                if (recipe is not SpecLint.Book.Prep prep) continue;
                var label = LotLabel.OfMade(verdicts, [(prep, SpecLint.Tests.Support.Books.On)], null)[0];
                text.AppendLine($"label: {label.HasOpenFinding} {label.Lot.Readiness} {label.Lot.UseBy} {string.Join(", ", label.Contains)}");
                rest.AppendLine($"{label.StrengthInWords} {string.Join("; ", label.Advisories)} {label.StoredIn}");
            }

            foreach (var stock in result.Book.Stocks)
            {
                foreach (var label in LotLabel.Of(verdicts, stock, bought: true)) text.AppendLine($"label: {label.Lot.Id} {string.Join(", ", label.Contains)}");
                foreach (var lot in stock.Lots)
                {
                    var of = LotCheck.Of(lot, stock, verdicts);
                    text.AppendLine($"{of.Id}: {of.Readiness} {of.UseBy} {of.ThrowAway}");
                    rest.AppendLine($"{of.UseByFrom} {string.Join("; ", of.Conditions)}");
                }
            }
        }
        catch (Exception fault)
        {
            text.AppendLine(fault.GetType().Name);
        }

        return text.Append(rest).ToString();
    }
}
