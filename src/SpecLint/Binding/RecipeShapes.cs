using SpecLint.Book;
using static SpecLint.Binding.ShapeValues;

namespace SpecLint.Binding;

/// <summary><c>accept</c>.</summary>
internal static class AcceptanceShape
{
    public static readonly PropertyShape Rule = Must("rule", RuleId, "The rule whose finding is accepted.", "\"SL3004\"");
    public static readonly PropertyShape Because = May(
        "because", Text, "The reason, in words that the next person understands. Without one, nothing is accepted.",
        "\"House style: served bone dry.\"");
    public static readonly PropertyShape Until =
        May("until", Date, "The last day on which it is accepted; rules of safety require it.", "\"2027-03-31\"");

    public static readonly ObjectShape Shape = new("an accepted finding", Rule, Because, Until);

    public static PropertyShape Property() => May(
        "accept",
        ListOf(ObjectOf(Shape, "accepted")),
        "Findings about this file that are known and accepted, each with its reason.",
        """[{ "rule": "SL3004", "because": "House style: served bone dry." }]""");
}

/// <summary>A line of a recipe.</summary>
internal static class LineShape
{
    public static readonly PropertyShape Item = Must(
        "item",
        Id,
        "Id of the ingredient or preparation: the name of its file without the ending, or an entry of the catalogue.",
        "\"lime-juice\"");
    public static readonly PropertyShape Amount = Must(
        "amount", ShapeValues.Amount, "How much: a number, fraction or range, and a unit.", "\"45 ml\"", "\"3/4 oz\"", "\"2 dashes\"",
        "\"20–25 g\"");
    public static readonly PropertyShape Share =
        May("share", Percentage, "Its share of the whole, with the basis of the percentage.", "\"5.3 % w/w\"");
    public static readonly PropertyShape Role = May(
        "role",
        Words("role", "a role", Roles),
        "How it goes in, where it is not a plain part of the mix: a top, rinse, float, rim, a wash or fining that is strained out, or muddled.",
        "\"top\"",
        "\"rinse\"");

    public static readonly PropertyShape Optional =
        May("optional", Flag, "Whether it may be left out. An optional part still counts for allergens.", "true");
    public static readonly PropertyShape Note = May("note", Text, "A remark on this line.", "\"measure after straining\"");

    public static readonly ObjectShape Shape = new("an ingredient line", Item, Amount, Share, Role, Optional, Note);

    /// <summary>A line of a garnish or rim, whose amount may be left out.</summary>
    public static readonly ObjectShape Loose = new(
        "a garnish line",
        Item,
        May("amount", ShapeValues.Amount, "How much: a number and a unit or piece.", "\"1 sprig\"", "\"2 leaves\""),
        Share,
        Role,
        Optional,
        Note);
}

/// <summary>A step of the method.</summary>
internal static class StepShape
{
    public static readonly PropertyShape Do = Must(
        "do", Tag, "What is done, in one word, lower case with hyphens.", "\"shake\"", "\"dry-shake\"", "\"strain\"", "\"heat\"");
    public static readonly PropertyShape Item =
        May("item", Id, "The one item that the step acts on; without it, all that is in the vessel.", "\"egg-white\"");
    public static readonly PropertyShape Items =
        May("items", ListOf(Id, least: 1), "The items that the step acts on.", """["cucumber", "citric-acid"]""");
    public static readonly PropertyShape Ice = May("ice", Text, "Kind of ice.", "\"cubed\"", "\"crushed\"", "\"none\"");
    public static readonly PropertyShape For = May("for", Duration, "How long.", "\"12 s\"", "\"9 h\"");
    public static readonly PropertyShape At = May("at", Temperature, "The temperature at which it is held.", "\"57 °C\"");
    public static readonly PropertyShape To = May("to", Temperature, "The temperature to which it is brought.", "\"72 °C\"");
    public static readonly PropertyShape Until = May("until", Text, "The end point in words.", "\"dissolved\"", "\"brittle\"");
    public static readonly PropertyShape Into = May("into", Text, "Where it goes.", "\"small coupe\"");
    public static readonly PropertyShape Vessel = May("vessel", Text, "The vessel it happens in, by id or in words.", "\"mixing glass\"");
    public static readonly PropertyShape Amount = May("amount", ShapeValues.Amount, "An amount that the step names.", "\"30 ml\"");
    public static readonly PropertyShape Speed = May("speed", Text, "Speed of a machine.", "\"6\"", "\"high\"");
    public static readonly PropertyShape Note = May("note", Text, "A remark on this step.", "\"open the lid away from you\"");

    public static readonly ObjectShape Shape = new("a step", Do, Item, Items, Ice, For, At, To, Until, Into, Vessel, Amount, Speed, Note);
}

/// <summary><c>declares</c>.</summary>
internal static class DeclarationShape
{
    public static readonly PropertyShape Allergens = May(
        "allergens",
        ShapeValues.Allergens,
        "The allergens that are declared, by substance (almond, not nuts). "
            + "An empty list declares that none is known to be present; no list declares nothing.",
        """["egg", "milk"]""",
        "[]");

    public static readonly PropertyShape MayContain =
        May("mayContain", ShapeValues.Allergens, "Allergens that may get in by accident.", """["celery"]""");
    public static readonly PropertyShape Abv = May("abv", Strength, "The strength that is declared.", "\"15 % v/v\"");
    public static readonly PropertyShape Alcohol = May("alcohol", Mass, "Grams of alcohol in a serve.", "\"14 g\"");
    public static readonly PropertyShape Energy = May("energy", ShapeValues.Energy, "Energy of a serve.", "\"180 kcal\"");
    public static readonly PropertyShape Claims =
        May("claims", ListOf(Tag), "What is claimed of it, in single words.", """["vegan", "low-alcohol"]""");
    public static readonly PropertyShape Advisory = May(
        "advisory", ListOf(Text), "Warnings that the guest reads, in full sentences.", """["Contains raw egg."]""");

    public static readonly ObjectShape Shape = new("a declaration", Allergens, MayContain, Abv, Alcohol, Energy, Claims, Advisory);

    public static PropertyShape Property() =>
        May(
            "declares", ObjectOf(Shape, "declaration"), "What the guest is told: allergens, strength, claims.",
            """{ "allergens": [], "abv": "15 % v/v" }""");
}

/// <summary><c>measured</c>.</summary>
internal static class MeasurementShape
{
    public static readonly PropertyShape Ph = May("ph", ShapeValues.Ph, "pH as read from the meter.", "2.4");
    public static readonly PropertyShape Brix =
        May("brix", ShapeValues.Brix, "Reading of the refractometer, °Brix. Alcohol and acid disturb it.", "8.9");
    public static readonly PropertyShape Abv = May("abv", Strength, "Strength as measured.", "\"21.5 % v/v\"");
    public static readonly PropertyShape WaterActivity =
        May("waterActivity", ShapeValues.WaterActivity, "Water activity as measured, from 0 to 1.", "0.86");
    public static readonly PropertyShape TitratableAcidity = May(
        "titratableAcidity", Percentage, "Acid as titrated to pH 8.1, as citric acid, with the basis of the percentage.", "\"6.1 % w/v\"");
    public static readonly PropertyShape Temperature = May("temperature", ShapeValues.Temperature, "Temperature at the measurement.", "\"3 °C\"");
    public static readonly PropertyShape Mass = May("mass", ShapeValues.Mass, "Mass of what was made.", "\"475 g\"");
    public static readonly PropertyShape Volume = May("volume", ShapeValues.Volume, "Volume of what was made.", "\"430 ml\"");
    public static readonly PropertyShape On = May("on", Date, "Day of the measurement.", "\"2026-11-20\"");
    public static readonly PropertyShape Meter = May("meter", Id, "Id of the meter, as in bar.json under tools.", "\"bar-meter\"");

    public static readonly PropertyShape Of = May(
        "of",
        ReadingOf,
        "What was measured: the fingerprint of amounts and method, which `speclint record` writes. Once they change, the "
            + "readings no longer count.",
        "\"r1-6f1c0a2be93d4475\"");
    public static readonly PropertyShape Revision = May("revision", TextOrNumber, "Revision of the recipe that was measured.", "3");

    public static readonly ObjectShape Shape = new(
        "a measurement", Ph, Brix, Abv, WaterActivity, TitratableAcidity, Temperature, Mass, Volume, On, Meter, Of, Revision);

    public static PropertyShape Property() => May(
        "measured",
        ObjectOf(Shape, "measurement"),
        "What was measured. A measured value takes the place of a computed one.",
        """{ "ph": 2.4, "brix": 8.9, "on": "2026-11-20" }""");
}

/// <summary><c>*.drink.json</c>.</summary>
internal static class DrinkShape
{
    public static readonly PropertyShape Schema = SchemaAddress(FileKind.Drink);
    public static readonly PropertyShape Name = Must("name", Text, "Name of the drink, as people say it.", "\"Low Tide\"");
    public static readonly PropertyShape Style = May(
        "style", Tag, "Style of the drink; rules of balance compare it with its kin.", "\"shaken-sour\"", "\"stirred\"");
    public static readonly PropertyShape Ingredients = Must(
        "ingredients",
        ListOf(ObjectOf(LineShape.Shape, "line"), least: 1),
        "What goes in, in the order of the spec.",
        """[{ "item": "gin", "amount": "45 ml" }]""");

    public static readonly PropertyShape Method = May(
        "method",
        ListOf(ObjectOf(StepShape.Shape, "step")),
        "How it is made, step by step.",
        """[{ "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" }]""");

    public static readonly PropertyShape Glass = May("glass", Id, "Id of the glass, from bar.json or the built-in types.", "\"small-coupe\"");
    public static readonly PropertyShape Garnish = May(
        "garnish", ListOf(ObjectOf(LineShape.Loose, "looseLine")), "What goes on or beside it. A garnish counts for allergens.",
        """[{ "item": "dill", "amount": "1 sprig" }]""");
    public static readonly PropertyShape Rim = May(
        "rim", ListOf(ObjectOf(LineShape.Loose, "looseLine")), "What goes on the rim of the glass.", """[{ "item": "celery-salt" }]""");
    public static readonly PropertyShape Serves = May("serves", Count, "How many drinks the amounts make; 1 where it is not given.", "1", "6");
    public static readonly PropertyShape Declares = DeclarationShape.Property();
    public static readonly PropertyShape Measured = MeasurementShape.Property();
    public static readonly PropertyShape Author = May("author", Text, "Who wrote it.", "\"M. Quill\"");
    public static readonly PropertyShape Date = May("date", ShapeValues.Date, "Day of this version.", "\"2026-11-20\"");
    public static readonly PropertyShape Revision = May("revision", TextOrNumber, "Number or name of this version.", "3", "\"3b\"");
    public static readonly PropertyShape Source = May("source", Text, "Where the recipe comes from.", "\"house\"");
    public static readonly PropertyShape Supersedes = May("supersedes", Id, "Id of the recipe that this one replaces.", "\"high-tide\"");
    public static readonly PropertyShape Accept = AcceptanceShape.Property();
    public static readonly PropertyShape Notes = May(
        "notes", TextOrTexts, "Remarks, as one text or as a list.", "\"Tastes best with the cucumber of the day.\"");

    public static readonly ObjectShape Shape = new(
        "a drink",
        Schema,
        Name,
        Style,
        Ingredients,
        Method,
        Glass,
        Garnish,
        Rim,
        Serves,
        Declares,
        Measured,
        Author,
        Date,
        Revision,
        Source,
        Supersedes,
        Accept,
        Notes);
}

/// <summary><c>target</c> of a preparation.</summary>
internal static class TargetShape
{
    public static readonly PropertyShape Acid = May(
        "acid", Percentage, "Titratable acid to reach, as citric acid, with the basis of the percentage.", "\"7 % w/w\"");
    public static readonly PropertyShape Sugar = May("sugar", Percentage, "Sugar to reach, with the basis of the percentage.", "\"50 % w/w\"");
    public static readonly PropertyShape Brix = May("brix", ShapeValues.Brix, "Dissolved solids to reach, °Brix.", "50", "\"50 °Bx\"");
    public static readonly PropertyShape Ph = May("ph", ShapeValues.Ph, "pH to reach.", "3.4");
    public static readonly PropertyShape Abv = May("abv", Strength, "Strength to reach.", "\"20 % v/v\"");
    public static readonly PropertyShape Salt = May("salt", Percentage, "Salt to reach, with the basis of the percentage.", "\"20 % w/w\"");
    public static readonly PropertyShape WaterActivity =
        May("waterActivity", ShapeValues.WaterActivity, "Water activity to reach, from 0 to 1.", "0.85");
    public static readonly PropertyShape Pressure = May("pressure", ShapeValues.Pressure, "Pressure to reach in a closed vessel.", "\"2.5 bar\"");
    public static readonly PropertyShape StandsInFor =
        May("standsInFor", Id, "Id of the item that it stands in for, measure for measure.", "\"lime-juice\"");

    public static readonly ObjectShape Shape = new("a target", Acid, Sugar, Brix, Ph, Abv, Salt, WaterActivity, Pressure, StandsInFor);
}

/// <summary><c>keep</c> of a preparation.</summary>
internal static class KeepingShape
{
    public static readonly PropertyShape At = May("at", Temperature, "Storage temperature.", "\"4 °C\"", "\"-18 °C\"");
    public static readonly PropertyShape In = May("in", Text, "What it is kept in, by id or in words.", "\"bottle\"", "\"vacuum bag\"");
    public static readonly PropertyShape For = May("for", Duration, "How long it keeps, from the day it was made.", "\"2 d\"", "\"3 weeks\"");
    public static readonly PropertyShape Sealed = May("sealed", Flag, "Whether it is sealed from air.", "true");
    public static readonly PropertyShape Capacity = May("capacity", Volume, "Volume of the vessel.", "\"750 ml\"");
    public static readonly PropertyShape Rating = May("rating", Pressure, "Pressure that the vessel is rated for.", "\"6 bar\"");
    public static readonly PropertyShape Gas = May("gas", Text, "Gas above it.", "\"nitrogen\"");
    public static readonly PropertyShape Claim = May("claim", Text, "What is said of its keeping, in words.", "\"keeps for the season\"");

    public static readonly ObjectShape Shape = new("a way of keeping", At, In, For, Sealed, Capacity, Rating, Gas, Claim);
}

/// <summary>A by-product.</summary>
internal static class ByProductShape
{
    public static readonly PropertyShape ProductId = Must("id", Id, "Its id, by which other recipes use it.", "\"cucumber-pulp\"");
    public static readonly PropertyShape Amount = May("amount", ShapeValues.Amount, "How much is left.", "\"160 g\"");
    public static readonly PropertyShape Note = May("note", Text, "A remark on it.", "\"press once more\"");

    public static readonly ObjectShape Shape = new("a by-product", ProductId, Amount, Note);
}

/// <summary><c>portions</c>.</summary>
internal static class PortionsShape
{
    public static readonly PropertyShape Count = May("count", ShapeValues.Count, "How many portions it is filled into.", "10");
    public static readonly PropertyShape Each = May("each", ShapeValues.Amount, "Size of one portion.", "\"90 ml\"");

    public static readonly ObjectShape Shape = new("the portions", Count, Each);
}

/// <summary><c>*.prep.json</c>.</summary>
internal static class PrepShape
{
    public static readonly PropertyShape Schema = SchemaAddress(FileKind.Prep);
    public static readonly PropertyShape Name = Must("name", Text, "Name of the preparation, as it stands on its label.", "\"Sour cucumber\"");
    public static readonly PropertyShape Family = Must(
        "family", Words("family", "a family of preparations", FileShapes.PrepFamilies), "Its family; rules of making and keeping go by it.",
        "\"acid-adjusted-juice\"", "\"syrup\"");
    public static readonly PropertyShape Ingredients = Must(
        "ingredients",
        ListOf(ObjectOf(LineShape.Shape, "line"), least: 1),
        "What goes in, in the order of the recipe.",
        """[{ "item": "cucumber-juice", "amount": "440 g", "share": "92.6 % w/w" }]""");

    public static readonly PropertyShape Method = May(
        "method",
        ListOf(ObjectOf(StepShape.Shape, "step")),
        "How it is made, step by step. A step that matters for keeping says its temperature and time.",
        """[{ "do": "stir", "until": "dissolved" }, { "do": "heat", "to": "72 °C", "for": "15 s" }]""");

    public static readonly PropertyShape Yield = May("yield", ShapeValues.Amount, "What it comes to, after losses.", "\"475 g\"", "\"1.2 l\"");
    public static readonly PropertyShape Target = May(
        "target", ObjectOf(TargetShape.Shape), "What it is made to reach.", """{ "acid": "7 % w/w", "standsInFor": "lime-juice" }""");
    public static readonly PropertyShape Measured = MeasurementShape.Property();
    public static readonly PropertyShape Keep = May(
        "keep", ObjectOf(KeepingShape.Shape), "How it is kept, and how long.", """{ "at": "4 °C", "in": "bottle", "for": "2 d" }""");
    public static readonly PropertyShape ByProducts = May(
        "byProducts", ListOf(ObjectOf(ByProductShape.Shape)), "What is left of making it and used elsewhere, each with an id of its own.",
        """[{ "id": "cucumber-pulp", "amount": "160 g" }]""");
    public static readonly PropertyShape BatchOf = May("batchOf", Id, "Id of the drink that it is a batch of.", "\"low-tide\"");
    public static readonly PropertyShape Portions = May(
        "portions", ObjectOf(PortionsShape.Shape), "The portions it is filled into.", """{ "count": 10, "each": "90 ml" }""");
    public static readonly PropertyShape Declares = DeclarationShape.Property();
    public static readonly PropertyShape Author = May("author", Text, "Who wrote it.", "\"M. Quill\"");
    public static readonly PropertyShape Date = May("date", ShapeValues.Date, "Day of this version.", "\"2026-11-20\"");
    public static readonly PropertyShape Revision = May("revision", TextOrNumber, "Number or name of this version.", "3", "\"3b\"");
    public static readonly PropertyShape Source = May("source", Text, "Where the recipe comes from.", "\"house\"");
    public static readonly PropertyShape Supersedes = May("supersedes", Id, "Id of the recipe that this one replaces.", "\"sour-cucumber-1\"");
    public static readonly PropertyShape Accept = AcceptanceShape.Property();
    public static readonly PropertyShape Notes =
        May("notes", TextOrTexts, "Remarks, as one text or as a list.", "\"Juice the cucumbers with their skin.\"");

    public static readonly ObjectShape Shape = new(
        "a preparation",
        Schema,
        Name,
        Family,
        Ingredients,
        Method,
        Yield,
        Target,
        Measured,
        Keep,
        ByProducts,
        BatchOf,
        Portions,
        Declares,
        Author,
        Date,
        Revision,
        Source,
        Supersedes,
        Accept,
        Notes);
}
