using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.RecipeText;

/// <summary>A row of a list of prices as somebody wrote it, and what is understood of it.</summary>
/// <param name="Written">The item as written.</param>
/// <param name="Item">Id of the item; empty where it is not known.</param>
/// <param name="Price">What is paid; <see langword="null"/> where that is not certain.</param>
/// <param name="For">The size that it is paid for, as written.</param>
/// <param name="Yield">The share of it that can be used, as written; may be empty.</param>
/// <param name="On">The day of the price, as written; may be empty.</param>
/// <param name="From">Who sells it; may be empty.</param>
/// <param name="Unclear">What is not understood, in words; empty where all is.</param>
internal sealed record WrittenPrice(string Written, string Item, decimal? Price, string For, string Yield, string On, string From, string Unclear)
{
    /// <summary>Whether all of it is understood.</summary>
    public bool IsClear => Unclear.Length == 0;
}

/// <summary>Reads rows of a list of prices, and makes a price list of a book of those that are understood.</summary>
internal sealed class PriceRowReader(LinkedBook book)
{
    private readonly NameResolver names = new(book);
    private readonly Measures measures = Measures.For(book.Settings.Bar?.Measures);

    /// <summary>Reads a row.</summary>
    /// <param name="row">The cells as written; <see cref="WrittenPrice.Written"/> is the item.</param>
    /// <param name="money">The price as written.</param>
    public WrittenPrice Read(WrittenPrice row, string money)
    {
        var unclear = new List<string>();
        string item = FileKinds.IsId(row.Written) && book.Resolve(row.Written) is not null ? row.Written : "";
        if (item.Length == 0)
        {
            var meant = names.Resolve(row.Written);
            if (meant is { Answer: NameAnswer.Resolved, Piece.Length: 0 }) item = meant.Id;
            else unclear.Add(meant.Because.Length > 0 ? $"item: {meant.Because}" : "item: neither the book nor the catalogue knows it");
        }

        decimal? price = MoneyOf(money);
        if (price is null) unclear.Add("price: not a plain amount of money such as 24.90");
        if (!QuantityReader.TryRead(row.For, measures, out var quantity, out _)
            || quantity.Dimension is not (Dimension.Volume or Dimension.Mass or Dimension.Count)
            || !(quantity.Base > 0))
            unclear.Add("for: not a size such as 700 ml, 1 kg or 60 pieces");
        if (row.Yield.Length > 0
            && !(QuantityReader.TryRead(row.Yield, measures, out var share, out _)
                && share.Dimension is Dimension.PercentByMass or Dimension.PercentByVolume or Dimension.PercentMassInVolume
                    or Dimension.PercentOfUnknownBasis))
            unclear.Add("yield: not a percentage such as 60 % w/w");
        if (row.On.Length > 0 && CalendarDate.Parse(row.On) is null) unclear.Add("on: not a day written as YYYY-MM-DD");
        return row with { Item = item, Price = price, Unclear = string.Join("; ", unclear) };
    }

    /// <summary>The file of a price list with the rows that are understood.</summary>
    /// <param name="name">Name of the list.</param>
    /// <param name="on">The day of the prices that give none.</param>
    /// <param name="rows">The rows.</param>
    public static string FileOf(string name, CalendarDate on, IReadOnlyList<WrittenPrice> rows)
    {
        var text = new StringBuilder($"{{\n  \"$schema\": \"./schemas/prices.schema.json\",\n  \"name\": {Quoted(name)},\n  \"on\": "
            + $"\"{on}\",\n  \"prices\": [");
        string before = "\n";
        foreach (var row in rows.Where(r => r.IsClear))
        {
            text.Append(before)
                .Append($"    {{ \"item\": {Quoted(row.Item)}, \"price\": {row.Price!.Value.ToString(CultureInfo.InvariantCulture)}, "
                    + $"\"for\": {Quoted(row.For)}");
            if (row.Yield.Length > 0) text.Append($", \"yield\": {Quoted(row.Yield)}");
            if (row.On.Length > 0) text.Append($", \"on\": {Quoted(row.On)}");
            if (row.From.Length > 0) text.Append($", \"from\": {Quoted(row.From)}");
            text.Append(" }");
            before = ",\n";
        }

        return text.Append("\n  ]\n}\n").ToString();
    }

    /// <summary>
    /// Money as lists write it, with a point or a comma before the last two digits;
    /// <see langword="null"/> where that is not certain.
    /// </summary>
    private static decimal? MoneyOf(string text)
    {
        string plain = text.Trim().TrimStart('€', '£', '$').TrimEnd('€', '£', '$').Trim();
        int comma = plain.LastIndexOf(','), point = plain.LastIndexOf('.');
        if (comma >= 0 && point < 0 && plain.Length - comma is 2 or 3) plain = plain.Remove(comma, 1).Insert(comma, ".");
        else if (comma >= 0 && point > comma && plain.Length - point == 3) plain = plain.Replace(",", "");
        return decimal.TryParse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal money)
            && money is >= 0 and <= 1_000_000_000
            ? money
            : null;
    }

    private static string Quoted(string text) => "\"" + JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping) + "\"";
}
