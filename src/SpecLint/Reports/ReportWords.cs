using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Rules;

namespace SpecLint.Reports;

/// <summary>The words that all reports share.</summary>
public static class ReportWords
{
    /// <summary>What every report ends with, whether or not it found anything.</summary>
    public const string Closing = "SpecLint replaces neither the local food code nor a trained person: where they ask for more, follow them.";

    /// <summary>A level's name (SARIF 2.1.0, section 3.27.10).</summary>
    public static string Of(Level level) => LevelNames.Of(level);

    /// <summary>What a check answered.</summary>
    public static string Of(Answer answer) => answer == Answer.Broken ? "broken" : "notShown";

    /// <summary>A grade's name.</summary>
    public static string Of(CorrectionGrade grade) => grade == CorrectionGrade.Assured ? "assured" : "proposed";

    /// <summary>A kind of file, in one word of the bar.</summary>
    public static string Of(FileKind kind) => kind switch
    {
        FileKind.Bar => "bar",
        FileKind.Drink => "drink",
        FileKind.Prep => "preparation",
        FileKind.Ingredient => "ingredient",
        FileKind.Menu => "menu",
        FileKind.Prices => "price list",
        _ => "stock",
    };

    /// <summary>A kind of file as its ending names it.</summary>
    public static string KeyOf(FileKind kind) => kind switch { FileKind.Prep => "prep", FileKind.Prices => "prices", _ => Of(kind) };

    /// <summary>What the rules of a family are about.</summary>
    public static string Of(RuleFamily family) => FamilyNames.Of(family);

    /// <summary>How far a value can be trusted.</summary>
    public static string Of(Mark mark) => mark switch
    {
        Mark.House => "house",
        Mark.Read => "read",
        Mark.CommonPractice => "common practice",
        Mark.Computed => "computed",
        _ => "memory",
    };

    /// <summary>A number and the noun it counts.</summary>
    public static string Count(int number, string one, string many) => number == 1 ? $"1 {one}" : $"{number} {many}";
}
