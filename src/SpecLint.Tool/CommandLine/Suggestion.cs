using System.CommandLine;
using SpecLint.Reading;

namespace SpecLint.Tool;

/// <summary>"Did you mean …?" for the words of the command line.</summary>
internal static class Suggestion
{
    /// <summary>A question with the nearest of some words, to follow a sentence; empty where none is near.</summary>
    public static string For(string written, IEnumerable<string> words) =>
        NearestName.Of(written, words) is { } near ? $" Did you mean {near}?" : "";

    /// <summary>Makes an option take one of a few words, and say so in plain words where it is given another.</summary>
    public static void TakesOneOf(this Option<string> option, params string[] words) => TakesOneOf((Option)option, words);

    /// <inheritdoc cref="TakesOneOf(Option{string}, string[])"/>
    public static void MayTakeOneOf(this Option<string?> option, params string[] words) => TakesOneOf((Option)option, words);

    private static void TakesOneOf(Option option, string[] words)
    {
        option.CompletionSources.Add(words);
        option.Validators.Add(result =>
        {
            foreach (var token in result.Tokens)
            {
                if (!words.Contains(token.Value))
                    result.AddError($"{option.Name} takes {ListOf(words)}, not '{token.Value}'.{For(token.Value, words)}");
            }
        });
    }

    private static string ListOf(string[] words) => words.Length == 1 ? words[0] : string.Join(", ", words[..^1]) + " or " + words[^1];
}
