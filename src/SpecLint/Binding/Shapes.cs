using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Binding;

/// <summary>What a value of a file can be.</summary>
public enum ValueForm
{
    /// <summary>A text that is not empty.</summary>
    Text,

    /// <summary>A text that matches a small pattern of its own (<see cref="ValueShape.Pattern"/>).</summary>
    Pattern,

    /// <summary>An id: lower-case letters and digits, parts joined by hyphens.</summary>
    Id,

    /// <summary>One word of a list.</summary>
    Word,

    /// <summary>A day, <c>YYYY-MM-DD</c>.</summary>
    Date,

    /// <summary>A quantity, or a bare number where the property has a unit of its own.</summary>
    Quantity,

    /// <summary>A number.</summary>
    Number,

    /// <summary><c>true</c> or <c>false</c>.</summary>
    Flag,

    /// <summary>A text or a list of texts.</summary>
    TextOrTexts,

    /// <summary>A text or a number.</summary>
    TextOrNumber,

    /// <summary>A list.</summary>
    List,

    /// <summary>An object with known properties.</summary>
    Object,

    /// <summary>An object whose names are free.</summary>
    Map,

    /// <summary>A value of an ingredient: a quantity, or an object with value, range, mark and source.</summary>
    Sourced,

    /// <summary>One word of a list, or an object that holds such a word and says more about it.</summary>
    WordOrObject,
}

/// <summary>Names that an object with free names accepts.</summary>
public enum KeyForm
{
    /// <summary>Ids.</summary>
    Id,

    /// <summary>Ids of rules, <c>SL1234</c>, or of a house's own, <c>HR1234</c>.</summary>
    RuleId,

    /// <summary>Names of the kinds of file.</summary>
    FileKind,

    /// <summary>Words for units.</summary>
    UnitWord,

    /// <summary>Names in camelCase, parts joined by points.</summary>
    PropertyPath,
}

/// <summary>What a value can be, with its limits.</summary>
public sealed class ValueShape
{
    /// <summary>The form.</summary>
    public required ValueForm Form { get; init; }

    /// <summary>Name of the definition in the published schemas, where it is shared.</summary>
    public string? Definition { get; init; }

    /// <summary>Of <see cref="ValueForm.Word"/>: the words.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Of quantities: what they may measure.</summary>
    public IReadOnlyList<Dimension> Dimensions { get; init; } = [];

    /// <summary>Of quantities: the unit that a bare number has; <see langword="null"/> where a unit must be written.</summary>
    public Unit? BareUnit { get; init; }

    /// <summary>Least number.</summary>
    public double Least { get; init; } = double.NegativeInfinity;

    /// <summary>Whether <see cref="Least"/> itself is too little.</summary>
    public bool AboveLeast { get; init; }

    /// <summary>Greatest number.</summary>
    public double Most { get; init; } = double.PositiveInfinity;

    /// <summary>Of lists and maps: their items.</summary>
    public ValueShape? Item { get; init; }

    /// <summary>Of lists: the least number of items.</summary>
    public int LeastItems { get; init; }

    /// <summary>Of objects: their shape.</summary>
    public ObjectShape? Object { get; init; }

    /// <summary>Of maps: the names that they accept.</summary>
    public KeyForm Keys { get; init; }

    /// <summary>Of <see cref="ValueForm.Pattern"/>: the pattern (ECMA-262).</summary>
    public string? Pattern { get; init; }

    /// <summary>Of <see cref="ValueForm.Pattern"/>: the same as a check.</summary>
    internal Func<string, bool>? Matches { get; init; }

    /// <summary>What it is, with an article, for sentences: <c>a volume or a mass, such as `45 ml`</c>.</summary>
    public required string Noun { get; init; }
}

/// <summary>A property that an object may have.</summary>
public sealed class PropertyShape
{
    internal PropertyShape(string name, ValueShape value, string description, string[] examples, bool required)
    {
        Name = name;
        Value = value;
        Description = description;
        Examples = examples;
        Required = required;
        Utf8Name = System.Text.Encoding.UTF8.GetBytes(name);
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>What its value can be.</summary>
    public ValueShape Value { get; }

    /// <summary>What it means, in plain words.</summary>
    public string Description { get; }

    /// <summary>Example values, as JSON.</summary>
    public IReadOnlyList<string> Examples { get; }

    /// <summary>Whether it must be given.</summary>
    public bool Required { get; }

    internal byte[] Utf8Name { get; }

    /// <summary>Number in its shape, from 0.</summary>
    internal int Index { get; set; } = -1;
}

/// <summary>An object with known properties.</summary>
public sealed class ObjectShape
{
    private readonly int[] slots;

    internal ObjectShape(string noun, params PropertyShape[] properties)
    {
        Noun = noun;
        All = properties;
        int size = 8;
        while (size < properties.Length * 4) size *= 2;
        slots = new int[size];
        for (int i = 0; i < properties.Length; i++)
        {
            // A property that two shapes share stands at the same number in both.
            if (properties[i].Index >= 0 && properties[i].Index != i) throw new InvalidOperationException(properties[i].Name);
            properties[i].Index = i;
            int slot = Hash(properties[i].Utf8Name) & (size - 1);
            while (slots[slot] != 0) slot = (slot + 1) & (size - 1);
            slots[slot] = i + 1;
        }
    }

    /// <summary>What it is, with an article: <c>an ingredient line</c>.</summary>
    public string Noun { get; }

    /// <summary>Its properties, in the order in which people write them.</summary>
    public IReadOnlyList<PropertyShape> Properties => All;

    /// <summary>Names of which at least one must be given; empty where there is no such choice.</summary>
    public IReadOnlyList<string> AtLeastOneOf { get; init; } = [];

    internal PropertyShape[] All { get; }

    /// <summary>Number of a property, or -1.</summary>
    internal int IndexOf(ReadOnlySpan<byte> name)
    {
        for (int slot = Hash(name) & (slots.Length - 1); slots[slot] != 0; slot = (slot + 1) & (slots.Length - 1))
        {
            int index = slots[slot] - 1;
            if (name.SequenceEqual(All[index].Utf8Name)) return index;
        }

        return -1;
    }

    /// <summary>The property of a name, or <see langword="null"/>.</summary>
    public PropertyShape? Find(string name)
    {
        int index = IndexOf(System.Text.Encoding.UTF8.GetBytes(name));
        return index < 0 ? null : All[index];
    }

    private static int Hash(ReadOnlySpan<byte> name) =>
        name.IsEmpty ? 0 : (name.Length * 31) + (name[0] * 7) + (name[name.Length - 1] * 13) + name[name.Length / 2];
}

/// <summary>The shapes of the files of a book: the one source of the binder, of the published schemas and of an editor's help.</summary>
internal static class FileShapes
{
    /// <summary>The substances that the laws on allergens name, as tokens.</summary>
    public static IReadOnlyList<string> AllergenTokens { get; } =
    [
        "wheat", "rye", "barley", "oats", "crustacean", "egg", "fish", "peanut", "soybean", "milk", "almond", "hazelnut", "walnut", "cashew",
        "pecan", "brazil-nut", "pistachio", "macadamia", "pine-nut", "chestnut", "coconut", "celery", "mustard", "sesame", "sulphites",
        "lupin", "mollusc", "buckwheat",
    ];

    /// <summary>
    /// Codes of the jurisdictions: the European Union and its members, the countries whose rules are known (ISO 3166-1), and the
    /// nations and states with rules of their own (ISO 3166-2). <c>UK</c> is read as GB, <c>XI</c> as Northern Ireland.
    /// </summary>
    public static IReadOnlyList<string> JurisdictionCodes { get; } =
    [
        "EU", "GB", "US", "CA", "AU", "NZ", "AT", "BE", "BG", "HR", "CY", "CZ", "DK", "EE", "FI", "FR", "DE", "GR", "HU", "IE", "IT", "LV",
        "LT", "LU", "MT", "NL", "PL", "PT", "RO", "SK", "SI", "ES", "SE",
        "NO", "IS", "LI", "CH", "JP", "GB-ENG", "GB-SCT", "GB-WLS", "GB-NIR", "XI", "US-NY", "US-CA",
    ];

    /// <summary>Kinds of ingredient.</summary>
    public static IReadOnlyList<string> IngredientKinds => ItemKind.Words;

    /// <summary>Families of preparation.</summary>
    public static IReadOnlyList<string> PrepFamilies => Family.Words;

    /// <summary>Names of the kinds of file, as in their endings.</summary>
    public static IReadOnlyList<string> KindNames { get; } = ["bar", "drink", "prep", "ingredient", "menu", "stock", "prices"];

    /// <summary>The shape of a kind of file.</summary>
    public static ObjectShape Of(FileKind kind) => kind switch
    {
        FileKind.Bar => BarShape.Shape,
        FileKind.Drink => DrinkShape.Shape,
        FileKind.Prep => PrepShape.Shape,
        FileKind.Ingredient => IngredientShape.Shape,
        FileKind.Menu => MenuShape.Shape,
        FileKind.Prices => PricesShape.Shape,
        _ => StockShape.Shape,
    };
}

/// <summary>Values that shapes are made of.</summary>
internal static class ShapeValues
{
    internal static readonly string[] Roles = ["top", "rinse", "float", "rim", "wash", "fining", "muddle"];
    internal static readonly string[] Levels = ["error", "warning", "note", "none"];
    internal static readonly string[] Marks = ["read", "memory", "common practice", "computed", "house"];
    internal static readonly string[] Animals =
        ["none", "milk", "egg", "honey", "insect", "fish", "crustacean", "mollusc", "meat", "gelatine", "unknown"];
    internal static readonly string[] States = ["liquid", "solid", "powder", "gas"];
    internal static readonly string[] Bases = ["100 g", "100 ml"];

    internal static readonly string[] Asked =
    [
        "author", "date", "revision", "source", "style", "method", "glass", "garnish", "serves", "declares", "measured", "yield", "target",
        "keep", "portions", "notes",
    ];

    internal static readonly ValueShape Text = new() { Form = ValueForm.Text, Definition = "text", Noun = "a text" };
    internal static readonly ValueShape TextList = ListOf(Text);
    internal static readonly ValueShape Id = new() { Form = ValueForm.Id, Definition = "id", Noun = "an id such as `lime-juice`" };
    internal static readonly ValueShape Tag = new() { Form = ValueForm.Id, Definition = "word", Noun = "a word such as `dry-shake`" };
    internal static readonly ValueShape Date = new() { Form = ValueForm.Date, Definition = "date", Noun = "a date such as `2026-11-25`" };
    internal static readonly ValueShape Flag = new() { Form = ValueForm.Flag, Definition = "flag", Noun = "true or false" };
    internal static readonly ValueShape TextOrTexts =
        new() { Form = ValueForm.TextOrTexts, Definition = "texts", Noun = "a text or a list of texts" };
    internal static readonly ValueShape TextOrNumber =
        new() { Form = ValueForm.TextOrNumber, Definition = "textOrNumber", Noun = "a text or a number" };
    internal static readonly ValueShape Count = new()
    {
        Form = ValueForm.Number,
        Definition = "count",
        Noun = "a number above 0",
        Least = 0,
        AboveLeast = true,
    };
    internal static readonly ValueShape Covers = new() { Form = ValueForm.Number, Definition = "covers", Noun = "a number from 0 up", Least = 0 };
    internal static readonly ValueShape Money = new()
    {
        Form = ValueForm.Number,
        Definition = "money",
        Noun = "an amount of money from 0 up, such as 24.9",
        Least = 0,
        Most = 1e9,
    };
    internal static readonly ValueShape Currency = new()
    {
        Form = ValueForm.Pattern,
        Definition = "currency",
        Noun = "the ISO 4217 code of a currency such as `EUR`",
        Pattern = "^[A-Z]{3}$",
        Matches = static text => text.Length == 3 && text.All(c => c is >= 'A' and <= 'Z'),
    };

    internal static readonly ValueShape RuleId = new()
    {
        Form = ValueForm.Pattern,
        Definition = "ruleId",
        Noun = "the id of a rule such as `SL3004`",
        Pattern = "^[A-Z]{2}[0-9]{4}$",
        Matches = IsRuleId,
    };

    internal static readonly ValueShape ReadingOf = new()
    {
        Form = ValueForm.Pattern,
        Definition = "readingOf",
        Noun = "a fingerprint that `speclint record` writes",
        Pattern = "^r[0-9]+-[0-9a-f]{16}$",
        Matches = FingerprintForm.IsOne,
    };

    internal static readonly ValueShape Amount = Quantity(
        "amount", "an amount such as `45 ml`, `20 g` or `2 dashes`", Dimension.Volume, Dimension.Mass, Dimension.Count, Dimension.Part);
    internal static readonly ValueShape Volume = Quantity("volume", "a volume such as `150 ml`", Dimension.Volume);
    internal static readonly ValueShape Mass = Quantity("mass", "a mass such as `20 g`", Dimension.Mass);
    internal static readonly ValueShape Temperature = Quantity("temperature", "a temperature such as `4 °C`", Dimension.Temperature);
    internal static readonly ValueShape Duration = Quantity("duration", "a length of time such as `12 s` or `2 d`", Dimension.Duration);
    internal static readonly ValueShape Percentage = Quantity(
        "percentage", "a percentage with its basis, such as `7 % w/w`", Dimension.PercentByMass, Dimension.PercentMassInVolume,
        Dimension.PercentByVolume, Dimension.PercentOfUnknownBasis);
    internal static readonly ValueShape Strength = Quantity(
        "strength", "a strength such as `40 % v/v`", Dimension.PercentByVolume, Dimension.Proof, Dimension.PercentOfUnknownBasis);
    internal static readonly ValueShape Pressure = Quantity("pressure", "a pressure such as `2.5 bar`", Dimension.Pressure);
    internal static readonly ValueShape Energy = Quantity("energy", "an energy such as `180 kcal`", Dimension.Energy);
    internal static readonly ValueShape Density = Quantity("density", "a density such as `1.035 g/ml`", Dimension.Density);
    internal static readonly ValueShape Purity = Quantity(
        "purity", "a share by mass such as `88 % w/w`", Dimension.PercentByMass, Dimension.PercentOfUnknownBasis);
    internal static readonly ValueShape VolumeOrMass = Quantity(
        "measureSize", "a volume, a mass or a number of pieces, such as `0.8 ml`", Dimension.Volume, Dimension.Mass, Dimension.Count);
    internal static readonly ValueShape Limit = Quantity(
        "limit",
        "a quantity such as `24 g`",
        [
            Dimension.Volume, Dimension.Mass, Dimension.Count, Dimension.Temperature, Dimension.Duration, Dimension.PercentByMass,
            Dimension.PercentMassInVolume, Dimension.PercentByVolume, Dimension.PercentOfUnknownBasis, Dimension.Density, Dimension.Pressure,
            Dimension.Energy, Dimension.Brix, Dimension.Proof,
        ],
        UnitWords.Number,
        double.NegativeInfinity,
        double.PositiveInfinity);

    internal static readonly ValueShape Ph = Quantity("ph", "a pH such as 3.4", [], UnitWords.Number, 0, 14);
    internal static readonly ValueShape WaterActivity =
        Quantity("waterActivity", "a water activity from 0 to 1, such as 0.85", [], UnitWords.Number, 0, 1);
    internal static readonly ValueShape Brix = Quantity("brix", "dissolved solids in °Brix, such as 50", [Dimension.Brix], UnitWords.Brix, 0, 100);
    internal static readonly ValueShape Uncertainty = new()
    {
        Form = ValueForm.Number,
        Definition = "uncertainty",
        Noun = "a number above 0",
        Least = 0,
        AboveLeast = true,
    };

    internal static readonly ValueShape Allergens = ListOf(Words("allergen", "an allergen", FileShapes.AllergenTokens));
    internal static readonly ValueShape Jurisdictions = ListOf(Words("jurisdiction", "the code of a country, or EU", FileShapes.JurisdictionCodes));

    private static readonly Dictionary<ValueShape, ValueShape> SourcedShapes = [];

    internal static bool IsRuleId(string text)
    {
        if (text.Length != 6 || text[0] is < 'A' or > 'Z' || text[1] is < 'A' or > 'Z') return false;
        for (int i = 2; i < 6; i++)
        {
            if (text[i] is < '0' or > '9') return false;
        }

        return true;
    }

    internal static ValueShape ListOf(ValueShape item, int least = 0) => new()
    {
        Form = ValueForm.List,
        Item = item,
        LeastItems = least,
        Noun = "a list",
    };

    internal static ValueShape MapOf(KeyForm keys, ValueShape item) => new() { Form = ValueForm.Map, Keys = keys, Item = item, Noun = "an object" };

    internal static ValueShape ObjectOf(ObjectShape shape, string? definition = null) => new()
    {
        Form = ValueForm.Object,
        Object = shape,
        Definition = definition,
        Noun = shape.Noun + ", an object",
    };

    internal static ValueShape Words(string definition, string noun, IReadOnlyList<string> words) => new()
    {
        Form = ValueForm.Word,
        Words = words,
        Definition = definition,
        Noun = noun,
    };

    internal static ValueShape Quantity(string definition, string noun, params Dimension[] dimensions) => new()
    {
        Form = ValueForm.Quantity,
        Definition = definition,
        Noun = noun,
        Dimensions = dimensions,
    };

    internal static ValueShape Quantity(string definition, string noun, Dimension[] dimensions, Unit bare, double least, double most) => new()
    {
        Form = ValueForm.Quantity,
        Definition = definition,
        Noun = noun,
        Dimensions = dimensions,
        BareUnit = bare,
        Least = least,
        Most = most,
    };

    internal static ValueShape Sourced(ValueShape quantity)
    {
        lock (SourcedShapes)
        {
            if (!SourcedShapes.TryGetValue(quantity, out var shape)) SourcedShapes.Add(quantity, shape = MakeSourced(quantity));
            return shape;
        }
    }

    private static ValueShape MakeSourced(ValueShape quantity) => new()
    {
        Form = ValueForm.Sourced,
        Definition = quantity.Definition + "Value",
        Noun = quantity.Noun,
        Item = quantity,
        Object = SourcedShape.Around(quantity),
        Dimensions = quantity.Dimensions,
        BareUnit = quantity.BareUnit,
        Least = quantity.Least,
        Most = quantity.Most,
    };

    internal static PropertyShape Must(
        string name, ValueShape value, string description, params string[] examples) =>
            new(name, value, description, examples, required: true);

    internal static PropertyShape May(
        string name, ValueShape value, string description, params string[] examples) =>
            new(name, value, description, examples, required: false);

    internal static PropertyShape SchemaAddress(FileKind kind) => May(
        "$schema",
        Text,
        "Address of the schema, for an editor: relative to this file.",
        $"\"./schemas/{FileShapes.KindNames[(int)kind]}.schema.json\"");
}
