using SpecLint.Catalogue;

namespace SpecLint.Rules.Labels;

/// <summary>A clause of a text: what is asked of it is worked out once, however often it says "add".</summary>
internal struct TextClause
{
    private static readonly char[] Ends = ['.', ';', ':', '!', '?', ','];

    private int from;
    private int to;
    private int quietFrom;
    private int quietTo;
    private int ruledOutFrom;
    private int restoredFrom;

    /// <summary>
    /// Whether it rules out what it names at a place: "do not finish with cream", "in place of cream", but not "in place of cream
    /// add".
    /// </summary>
    public readonly bool RulesOut(int at) => ruledOutFrom <= at && restoredFrom > at;

    /// <summary>The clause of a text that holds a place.</summary>
    public static TextClause At(string text, int at)
    {
        int from = at == 0 ? 0 : text.LastIndexOfAny(Ends, at - 1) + 1, end = text.IndexOfAny(Ends, at);
        int to = end < 0 ? text.Length : end;
        int ruledOut = Phrases.FirstEnd(text, from, to, TextWords.RulingOut);
        int restored = ruledOut < to ? Phrases.FirstEnd(text, ruledOut, to, TextWords.Restoring) : int.MaxValue;
        if (ruledOut < to && Phrases.FirstEnd(text, from, to, TextWords.Replacing) == ruledOut)
            restored = Math.Min(restored, Phrases.First(text, ruledOut, to, TextWords.Using, out _));
        return new TextClause { from = from, to = to, ruledOutFrom = ruledOut, restoredFrom = restored };
    }

    /// <summary>Whether a place of the text is in it.</summary>
    public readonly bool Holds(int at) => at >= from && at < to;

    /// <summary>The first hazard that is named from a place to the end of the clause, or to a bracket.</summary>
    public NamedHazard? NamedIn(string text, int at, Func<Hazard, bool> isSuch)
    {
        if ((at >= quietFrom && at < quietTo) || at >= to) return null;
        int bracket = text.IndexOf('(', at, to - at), end = bracket < 0 ? to : bracket;
        var named = HazardNames.InName(text, at, end, isSuch);
        if (named is null) (quietFrom, quietTo) = (at, end);
        return named;
    }
}
