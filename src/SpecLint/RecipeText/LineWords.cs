namespace SpecLint.RecipeText;

/// <summary>Words with which a line of a recipe begins, and what they say of it.</summary>
internal static class LineWords
{
    /// <summary>Words before what fills the glass.</summary>
    public static readonly string[] Top =
    [
        "top it up with", "fill to top with", "fill to the top with", "fill glass with", "top up with", "top off with",
        "fill up with", "top with", "fill with", "top up", "top off", "top",
    ];

    /// <summary>Words before a garnish.</summary>
    public static readonly string[] Garnish = ["garnish with", "garnished with", "garnish:", "garnish"];

    /// <summary>Words before what is laid on the drink.</summary>
    public static readonly string[] Float = ["float with", "float:", "float"];

    /// <summary>Words before any ingredient.</summary>
    public static readonly string[] Add = ["add", "plus", "and"];

    /// <summary>Words before an amount that is not exact.</summary>
    public static readonly string[] About = ["about", "approx.", "approx", "approximately", "around", "circa", "ca.", "scant", "nearly"];

    /// <summary>Words before a fruit whose juice is meant.</summary>
    public static readonly string[] JuiceOf = ["juice of", "juice from", "juice"];

    /// <summary>Words behind an item that is filled up with.</summary>
    public static readonly string[] ToTop = ["to top", "to fill", "to top up", "for topping"];

    /// <summary>Words behind an item that is laid on the drink.</summary>
    public static readonly string[] ToFloat = ["to float", "floated on top", "for the float"];

    /// <summary>Words behind an item that goes onto the finished drink.</summary>
    public static readonly string[] ToFinish =
    [
        "to finish", "to garnish", "to serve", "to decorate", "to dust", "for garnish", "for garnishing", "for the garnish",
        "as garnish", "for dusting", "for decoration",
    ];

    /// <summary>Words around an item whose amount is left to the maker.</summary>
    public static readonly string[] ToTaste = ["to taste", "as needed", "as required", "if needed", "ad lib", "q.s."];

    /// <summary>Takes the first of some words off the front of a text.</summary>
    public static bool TakeFront(ref string text, string[] words)
    {
        foreach (string word in words)
        {
            if (!text.StartsWith(word, StringComparison.OrdinalIgnoreCase)) continue;
            string rest = text.Substring(word.Length);
            bool ends = word[word.Length - 1] is ':' or '.' || rest.Length == 0 || rest[0] is ' ' or ':';
            rest = rest.TrimStart(' ', ':');
            if (!ends || rest.Length == 0) continue;
            text = rest;
            return true;
        }

        return false;
    }

    /// <summary>Takes the first of some words off the end of a text.</summary>
    public static bool TakeEnd(ref string text, string[] words)
    {
        foreach (string word in words)
        {
            if (!text.EndsWith(word, StringComparison.OrdinalIgnoreCase) || text.Length <= word.Length + 1) continue;
            string rest = text.Substring(0, text.Length - word.Length);
            if (rest[rest.Length - 1] is not (' ' or '(' or ',')) continue;
            text = rest.TrimEnd(' ', ',', '(', '-', '–', '—');
            return text.Length > 0;
        }

        return false;
    }
}
