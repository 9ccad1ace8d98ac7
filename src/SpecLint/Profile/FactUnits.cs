using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>Units of facts in a book: money in the currency of its bar.</summary>
internal static class FactUnits
{
    /// <summary>The unit as people write it.</summary>
    public static string Words(Fact fact, bool solid, Settings settings) => fact == Fact.Cost ? CurrencyOf(settings) : Say.Unit(fact, solid);

    /// <summary>The unit of outputs: UCUM, for money the ISO 4217 code.</summary>
    public static string Code(Fact fact, bool solid, Settings settings) => fact == Fact.Cost ? CurrencyOf(settings) : FactNames.Unit(fact, solid);

    /// <summary>The currency of a bar; its general sign where none is given.</summary>
    public static string CurrencyOf(Settings settings) => settings.Bar is { Costs.Currency: { IsGiven: true } currency } ? currency.Value : FactNames.Currency;
}
