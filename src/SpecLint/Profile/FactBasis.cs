using SpecLint.Book;
using SpecLint.Linking;

namespace SpecLint.Profile;

/// <summary>What the facts of a recipe are read off.</summary>
internal sealed record FactBasis
{
    /// <summary>The recipe.</summary>
    public required Recipe Recipe { get; init; }

    /// <summary>The book, for its meters.</summary>
    public required LinkedBook Book { get; init; }

    /// <summary>The lines.</summary>
    public required FixedList<Part> Parts { get; init; }

    /// <summary>The mix: of a drink before ice and tops, of a preparation as made.</summary>
    public required Composed Mix { get; init; }

    /// <summary>As served; of a preparation the mix.</summary>
    public required Mix Served { get; init; }

    /// <summary>As the amounts alone give it, where a reading has moved the mix.</summary>
    public Composed? Unfitted { get; init; }

    /// <summary>The one part that it consists of, unchanged; <see langword="null"/> where there are several.</summary>
    public Part? OnlyPart { get; init; }

    /// <summary>What was measured of it.</summary>
    public Measurement? Reading { get; init; }

    /// <summary>How a drink is chilled.</summary>
    public TechniqueKind Technique { get; init; }

    /// <summary>What that does; <see langword="null"/> where it is not known.</summary>
    public Chilling? Chill { get; init; }

    /// <summary>Whether it is a solid.</summary>
    public bool IsSolid { get; init; }

    /// <summary>Serves of a drink.</summary>
    public double Serves { get; init; } = 1;

    /// <summary>Whether it is a drink.</summary>
    public bool IsDrink => Recipe is Drink;

    /// <summary>Whether it is not known how much water the technique adds.</summary>
    public bool DilutionIsOpen => IsDrink && Chill is null && Technique != TechniqueKind.NoIce;
}
