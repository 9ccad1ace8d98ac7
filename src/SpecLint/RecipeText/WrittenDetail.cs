using SpecLint.Reading;

namespace SpecLint.RecipeText;

/// <summary>What a line says of the recipe as a whole.</summary>
public enum DetailKind
{
    /// <summary>Style of a drink.</summary>
    Style,

    /// <summary>Glass of a drink.</summary>
    Glass,

    /// <summary>How many drinks the amounts make.</summary>
    Serves,

    /// <summary>Family of a preparation.</summary>
    Family,

    /// <summary>What a preparation comes to.</summary>
    Yield,

    /// <summary>How a preparation is kept.</summary>
    Keep,

    /// <summary>What a preparation stands in for.</summary>
    StandsInFor,

    /// <summary>The drink that a preparation is a batch of.</summary>
    BatchOf,

    /// <summary>What was measured.</summary>
    Measured,

    /// <summary>Allergens that are declared.</summary>
    Allergens,

    /// <summary>A remark.</summary>
    Note,
}

/// <summary>A line that says something of the recipe as a whole: <c>makes 475 g</c>, <c>keep at 4 °C in a bottle for 2 d</c>.</summary>
/// <param name="Kind">What it is about.</param>
public sealed record WrittenDetail(DetailKind Kind)
{
    /// <summary>A word, an id or a text; empty where the line gives quantities.</summary>
    public string Text { get; init; } = "";

    /// <summary>Tokens of allergens.</summary>
    public FixedList<string> Tokens { get; init; } = [];

    /// <summary>The amount of a yield, as written; empty where there is none.</summary>
    public string Amount { get; init; } = "";

    /// <summary>Number of serves; NaN where there is none.</summary>
    public double Count { get; init; } = double.NaN;

    /// <summary>Storage temperature, as written.</summary>
    public string At { get; init; } = "";

    /// <summary>Time that it is kept for, as written.</summary>
    public string For { get; init; } = "";

    /// <summary>pH that was read; NaN where there is none.</summary>
    public double Ph { get; init; } = double.NaN;

    /// <summary>°Brix that was read; NaN where there is none.</summary>
    public double Brix { get; init; } = double.NaN;

    /// <summary>Day of a reading; <see langword="null"/> where it does not say.</summary>
    public CalendarDate? On { get; init; }

    /// <summary>Fingerprint of the recipe that a reading is of; empty where it does not say.</summary>
    public string Of { get; init; } = "";

    /// <summary>What is not understood of it; empty where all is.</summary>
    public string Because { get; init; } = "";
}
