using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>A line of a recipe, resolved and weighed.</summary>
public sealed class Part
{
    /// <summary>The line.</summary>
    public required Line Line { get; init; }

    /// <summary>What its item resolves to; <see langword="null"/> where it resolves to nothing.</summary>
    public required Item? Item { get; init; }

    /// <summary>What it is made of; <see langword="null"/> where it resolves to nothing.</summary>
    public required Material? Material { get; init; }

    /// <summary>Mass: typical, low, high, g; NaN where it cannot be had.</summary>
    public Trace Grams { get; init; } = new(double.NaN, double.NaN, double.NaN);

    /// <summary>Volume at 20 °C, mL; NaN where it cannot be had.</summary>
    public double Millilitres { get; init; } = double.NaN;

    /// <summary>When it goes in.</summary>
    public PartPhase Phase { get; init; }

    /// <summary>Whether its mass is known.</summary>
    public bool IsWeighed => !double.IsNaN(Grams.Typical);
}

/// <summary>When a part goes into the drink or preparation.</summary>
public enum PartPhase
{
    /// <summary>Into the mix.</summary>
    Mix,

    /// <summary>After the technique.</summary>
    Top,

    /// <summary>Not into the liquid: garnish, rim, rinse.</summary>
    Beside,

    /// <summary>Into the mix, and taken out again (fining, wash, strained solids).</summary>
    TakenOut,
}
