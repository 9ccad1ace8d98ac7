namespace SpecLint.Mutants;

/// <summary>The kinds of mistakes, and those that nobody can see in a file.</summary>
internal static partial class Defects
{
    /// <summary>All kinds.</summary>
    public static IReadOnlyList<Defect> All { get; } = [.. Amounts(), .. Shares(), .. AcidAndSugar(), .. Strength(), .. Balance(), .. Batches(), .. Service(), .. Keeping(), .. Labels(), .. Book(), .. SystemsOfUnits(), .. Exchanges(), .. Makings()];

    /// <summary>Kinds that stay unseen.</summary>
    public static IReadOnlyList<Unseen> Unseen { get; } =
    [
        new(10, "a bar spoon of another size", "every size of spoon is a valid size; only that none is stated is seen (kind 11)"),
        new(37, "a dilution that says neither of the mix nor of the whole", "the format has no such figure: dilution is computed from the technique"),
        new(42, "strength added up without contraction", "the strength is computed from density tables; a figure from simple addition differs by less than a label may"),
        new(94, "a well-known drink that has moved away from its published amounts", "a house's own version is no mistake, and the published list is no part of the program"),
        new(100, "amounts that drifted by converting to and fro", "the file keeps one amount; what it was before is not in it"),
    ];

    /// <summary>Places where a kind would be no mistake, so that it is not put there.</summary>
    public static IReadOnlyList<Unseen> LeftOut { get; } =
    [
        new(82, "an ingredient whose allergen the drink declares already", "it hides nothing from the guest"),
        new(93, "a second batch of a drink", "a batch is used by serving its drink, whatever its size"),
    ];

    private static Defect D(int number, string name, string rules, Func<Draft, bool> apply) => new(number, name, rules.Split(' '), apply);

    private static bool With<T>(T? one, Func<T, bool> then)
        where T : class => one is not null && then(one);

    private static bool Do(Action then)
    {
        then();
        return true;
    }

    /// <summary>A text as it stands on a card, or as the id that is made of it.</summary>
    private static string AsItem(Draft d, string text) => d.Lottery.Below(2) == 0 ? text : Catalogue.BuiltInCatalogue.Slug(text);
}
