using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Findings;

/// <summary>Evidence made of what rules commonly rest on.</summary>
public static class Proof
{
    /// <summary>A fact.</summary>
    public static Evidence Of(Fact fact, FactValue value, bool solid = false) =>
        new(FactNames.Name(fact), value.Value, value.Low, value.High, FactNames.Unit(fact, solid), Text: value.OpenBecause);

    /// <summary>A limit.</summary>
    public static Evidence Of(Limit limit) => new(limit.Id, limit.Value, limit.Value, limit.Value, limit.Unit, limit.Source);

    /// <summary>An amount of a line.</summary>
    public static Evidence Of(string name, Quantity amount, Place place) =>
        new(name, amount.Base, amount.BaseLow, amount.BaseHigh, amount.Unit.Name, Place: place);

    /// <summary>A plain number.</summary>
    public static Evidence Of(string name, double value, string unit, string? source = null) => new(name, value, value, value, unit, source);

    /// <summary>A text.</summary>
    public static Evidence Of(string name, string text, Place? place = null) =>
        new(name, double.NaN, double.NaN, double.NaN, "", Text: text, Place: place);
}

/// <summary>How a range stands to a limit (JCGM 106:2012, 8.3: guarded acceptance and rejection).</summary>
public enum Stand
{
    /// <summary>The whole range is on the good side.</summary>
    Holds,

    /// <summary>The whole range is on the other side.</summary>
    Broken,

    /// <summary>The range straddles the limit, or the fact is open.</summary>
    NotShown,
}

/// <summary>The three answers of a check.</summary>
public static class Check
{
    /// <summary>Holds a fact against an upper limit (the limit itself is good).</summary>
    public static Stand AtMost(FactValue fact, double limit) =>
        !fact.IsKnown ? Stand.NotShown : fact.High <= limit ? Stand.Holds : fact.Low > limit ? Stand.Broken : Stand.NotShown;

    /// <summary>Holds a fact against a lower limit (the limit itself is good).</summary>
    public static Stand AtLeast(FactValue fact, double limit) =>
        !fact.IsKnown ? Stand.NotShown : fact.Low >= limit ? Stand.Holds : fact.High < limit ? Stand.Broken : Stand.NotShown;

    /// <summary>Holds a fact against a band.</summary>
    public static Stand Within(FactValue fact, double low, double high)
    {
        var a = AtLeast(fact, low);
        var b = AtMost(fact, high);
        if (a == Stand.Broken || b == Stand.Broken) return Stand.Broken;
        return a == Stand.Holds && b == Stand.Holds ? Stand.Holds : Stand.NotShown;
    }
}
