using SpecLint.Book;
using static SpecLint.Binding.ShapeValues;

namespace SpecLint.Binding;

/// <summary>A value of an ingredient with its range and source.</summary>
internal static class SourcedShape
{
    public const int Value = 0;
    public const int Range = 1;
    public const int Mark = 2;
    public const int Source = 3;
    public const int Note = 4;

    /// <summary>The shape around a quantity.</summary>
    public static ObjectShape Around(ValueShape quantity) => new(
        "a value with its source",
        May("value", quantity, "The typical value.", Examples(quantity).Value),
        May("range", quantity, "The range that holds about 95 % of what is bought; alone, its middle counts as typical.", Examples(quantity).Range),
        May(
            "mark",
            Words("mark", "how far a value can be trusted", Marks),
            "How far it can be trusted: read in the source, from memory, common practice, computed, or the house's own.",
            "\"read\""),
        May("source", Text, "Where it comes from.", "\"data sheet of the supplier, 2026-10\""),
        May("note", Text, "A remark on it.", "\"varies with the season\""))
    {
        AtLeastOneOf = ["value", "range"],
    };

    private static (string Value, string Range) Examples(ValueShape quantity) => quantity.Definition switch
    {
        "mass" => ("\"4.6 g\"", "\"4.2–5.1 g\""),
        "volume" => ("\"28 ml\"", "\"15–60 ml\""),
        "density" => ("\"1.035 g/ml\"", "\"1.02–1.05 g/ml\""),
        "strength" => ("\"40 % v/v\"", "\"38–43 % v/v\""),
        "purity" => ("\"88 % w/w\"", "\"87–89 % w/w\""),
        "energy" => ("\"25 kcal\"", "\"20–30 kcal\""),
        "duration" => ("\"3 d\"", "\"2–4 d\""),
        "temperature" => ("\"4 °C\"", "\"2–5 °C\""),
        _ => ("2.35", "\"2.2–2.5\""),
    };
}

/// <summary><c>*.ingredient.json</c>.</summary>
internal static class IngredientShape
{
    public static readonly PropertyShape Schema = SchemaAddress(FileKind.Ingredient);
    public static readonly PropertyShape Name = Must("name", Text, "Name of the ingredient.", "\"Lime juice, fresh\"");
    public static readonly PropertyShape Aliases =
        May("aliases", ListOf(Text), "Other names and spellings of the trade.", """["fresh lime juice"]""");
    public static readonly PropertyShape Kind = May(
        "kind", Words("kind", "a kind of ingredient", FileShapes.IngredientKinds),
        "What kind of thing it is. Required, unless `like` names an ingredient to take it from.", "\"juice\"");
    public static readonly PropertyShape Like = May(
        "like", Id, "Id of an ingredient from which every property that is not given here is taken.", "\"orange-juice\"");
    public static readonly PropertyShape State = May(
        "state", Words("state", "a state of matter", States), "Liquid, solid, powder or gas; by its kind where it is not given.",
        "\"liquid\"");
    public static readonly PropertyShape Per = May(
        "per", Words("basis", "the basis of the contents", Bases),
        "Whether the contents below are per 100 g or per 100 ml; 100 g where it is not given.", "\"100 ml\"");
    public static readonly PropertyShape Strength = May("strength", Sourced(ShapeValues.Strength), "Strength.", "\"40 % v/v\"");
    public static readonly PropertyShape Density = May(
        "density", Sourced(ShapeValues.Density), "Density at 20 °C; of a powder, as it falls.", "\"1.035 g/ml\"");
    public static readonly PropertyShape Ph = May("ph", Sourced(ShapeValues.Ph), "pH.", "2.35");
    public static readonly PropertyShape TitratableAcidity = May(
        "titratableAcidity",
        Sourced(Mass),
        "Acid as titrated to pH 8.1, as citric acid, in the basis; kept apart from the acids analysed.",
        "\"5.8 g\"");
    public static readonly PropertyShape Water = May("water", Sourced(Mass), "Water in the basis.", "\"90 g\"");
    public static readonly PropertyShape Solids = May("solids", Sourced(Mass), "All dry matter in the basis, ethanol aside.", "\"10 g\"");
    public static readonly PropertyShape Sugars = May(
        "sugars",
        ObjectOf(Contents("the sugars", "sucrose", "glucose", "fructose", "lactose", "maltose", "dextrin", "allulose")),
        "Sugars in the basis, each by name.",
        """{ "glucose": "1.1 g", "fructose": "1.2 g" }""");
    public static readonly PropertyShape Polyols = May(
        "polyols",
        ObjectOf(Contents("the polyols", "glycerol", "sorbitol", "xylitol", "erythritol", "maltitol")),
        "Sugar alcohols in the basis, each by name.",
        """{ "glycerol": "0.8 g" }""");
    public static readonly PropertyShape Acids = May(
        "acids",
        ObjectOf(Contents(
            "the acids", "citric", "malic", "tartaric", "lactic", "acetic", "phosphoric", "succinic", "ascorbic", "oxalic", "fumaric",
            "quinic", "gluconic", "benzoic", "sorbic")),
        "Acids in the basis, each by name.",
        """{ "citric": "4.6 g", "malic": "0.4 g" }""");

    public static readonly PropertyShape CarbonDioxide = May("carbonDioxide", Sourced(Mass), "Carbon dioxide in the basis.", "\"0.6 g\"");
    public static readonly PropertyShape Salt = May("salt", Sourced(Mass), "Salt, as sodium chloride, in the basis.", "\"0.9 g\"");
    public static readonly PropertyShape Sodium = May("sodium", Sourced(Mass), "Sodium in the basis that is not counted as salt.", "\"2 mg\"");
    public static readonly PropertyShape Potassium = May("potassium", Sourced(Mass), "Potassium in the basis.", "\"110 mg\"");
    public static readonly PropertyShape Calcium = May(
        "calcium", Sourced(Mass), "Calcium in the basis; of juices and fruit it counts with potassium and stays out.", "\"12 g\"");
    public static readonly PropertyShape Magnesium = May(
        "magnesium", Sourced(Mass), "Magnesium in the basis; of juices and fruit it counts with potassium and stays out.", "\"9.9 g\"");
    public static readonly PropertyShape Chloride =
        May("chloride", Sourced(Mass), "Chloride in the basis that is not counted as salt.", "\"47.5 g\"");
    public static readonly PropertyShape Sulphate = May("sulphate", Sourced(Mass), "Sulphate in the basis.", "\"39 g\"");
    public static readonly PropertyShape Protein = May("protein", Sourced(Mass), "Protein in the basis.", "\"0.4 g\"");
    public static readonly PropertyShape Fat = May("fat", Sourced(Mass), "Fat in the basis.", "\"0.1 g\"");
    public static readonly PropertyShape Fibre = May("fibre", Sourced(Mass), "Fibre in the basis.", "\"0.3 g\"");
    public static readonly PropertyShape Energy = May("energy", Sourced(ShapeValues.Energy), "Energy in the basis.", "\"25 kcal\"");
    public static readonly PropertyShape Caffeine = May("caffeine", Sourced(Mass), "Caffeine in the basis.", "\"40 mg\"");
    public static readonly PropertyShape Quinine = May("quinine", Sourced(Mass), "Quinine in the basis.", "\"7 mg\"");
    public static readonly PropertyShape Sulphite = May("sulphite", Sourced(Mass), "Sulphites in the basis, as sulphur dioxide.", "\"12 mg\"");
    public static readonly PropertyShape Purity = May(
        "purity", Sourced(ShapeValues.Purity), "Purity of a bought acid and the like; the contents above count it already.", "\"88 % w/w\"");
    public static readonly PropertyShape Form = May("form", Text, "Hydrate, solution, powder.", "\"monohydrate\"");
    public static readonly PropertyShape Piece = May("piece", Sourced(Mass), "Mass of one piece: an egg, leaf, wedge, sprig.", "\"33 g\"");
    public static readonly PropertyShape Yields = May("yields", Sourced(Volume), "Juice that one piece yields.", "\"28 ml\"");
    public static readonly PropertyShape Allergens = May(
        "allergens",
        ObjectOf(AllergenShape.Shape),
        "What it contains of the substances that the laws on allergens name. Not given means not known.",
        """{ "contains": ["celery"], "mayContain": ["mustard"] }""");
    public static readonly PropertyShape Animal = May(
        "animal", Words("animal", "an origin in an animal", Animals), "Whether it comes from an animal, and from which.", "\"none\"",
        "\"egg\"");
    public static readonly PropertyShape Hazard = May("hazard", Id, "Id of its entry in the table of hazards, if it has one.", "\"tonka-bean\"");
    public static readonly PropertyShape Life = May("life", ObjectOf(LifeShape.Shape), "How long it keeps.", """{ "opened": "3 d", "at": "4 °C" }""");
    public static readonly PropertyShape KeepsCold = May("keepsCold", Flag, "Whether it must be kept cold once opened or prepared.", "true");
    public static readonly PropertyShape MarkProperty = May(
        "mark", Words("mark", "how far a value can be trusted", Marks),
        "How far the values of this file can be trusted that do not say it themselves.", "\"house\"");
    public static readonly PropertyShape Source = May(
        "source", Text, "Where the values of this file come from that do not say it themselves.", "\"data sheet of the supplier, 2026-10\"");
    public static readonly PropertyShape Open = May(
        "open", MapOf(KeyForm.PropertyPath, Text), "Properties that are not given, each with the reason.",
        """{ "ph": "not measured yet" }""");
    public static readonly PropertyShape Accept = AcceptanceShape.Property();
    public static readonly PropertyShape Notes = May("notes", TextOrTexts, "Remarks, as one text or as a list.", "\"Squeezed to order.\"");

    public static readonly ObjectShape Shape = new(
        "an ingredient",
        Schema,
        Name,
        Aliases,
        Kind,
        Like,
        State,
        Per,
        Strength,
        Density,
        Ph,
        TitratableAcidity,
        Water,
        Solids,
        Sugars,
        Polyols,
        Acids,
        CarbonDioxide,
        Salt,
        Sodium,
        Potassium,
        Calcium,
        Magnesium,
        Chloride,
        Sulphate,
        Protein,
        Fat,
        Fibre,
        Energy,
        Caffeine,
        Quinine,
        Sulphite,
        Purity,
        Form,
        Piece,
        Yields,
        Allergens,
        Animal,
        Hazard,
        Life,
        KeepsCold,
        MarkProperty,
        Source,
        Open,
        Accept,
        Notes)
    {
        AtLeastOneOf = ["kind", "like"],
    };

    private static ObjectShape Contents(string noun, params string[] names) =>
        new(
            noun,
            [.. names.Select(name => May(
                name,
                Sourced(Mass),
                char.ToUpperInvariant(name[0]) + name.Substring(1) + (noun == "the acids" ? " acid" : "") + " in the basis.",
                "\"1.2 g\""))]);
}

/// <summary><c>allergens</c> of an ingredient.</summary>
internal static class AllergenShape
{
    public static readonly PropertyShape Contains = May(
        "contains", Allergens, "The substances that it contains; an empty list says that none is known.", """["celery"]""", "[]");
    public static readonly PropertyShape MayContain =
        May("mayContain", Allergens, "The substances that it may contain by accident.", """["mustard"]""");
    public static readonly PropertyShape Exempt = May(
        "exempt",
        ListOf(ObjectOf(ExemptionShape.Shape)),
        "Substances that it comes from, but that a law exempts in it.",
        """[{ "allergen": "wheat", "in": ["EU", "GB"], "because": "cereals used for making alcoholic distillates" }]""");

    public static readonly PropertyShape MarkProperty = May(
        "mark", Words("mark", "how far a value can be trusted", Marks), "How far this can be trusted.", "\"read\"");
    public static readonly PropertyShape Source = May("source", Text, "Where it comes from.", "\"data sheet of the supplier, 2026-10\"");

    public static readonly ObjectShape Shape = new("the allergens of an ingredient", Contains, MayContain, Exempt, MarkProperty, Source);
}

/// <summary>An exemption.</summary>
internal static class ExemptionShape
{
    public static readonly PropertyShape Allergen = Must(
        "allergen", Words("allergen", "an allergen", FileShapes.AllergenTokens), "The substance.", "\"wheat\"");
    public static readonly PropertyShape In = May("in", Jurisdictions, "Where it is exempt.", """["EU", "GB"]""");
    public static readonly PropertyShape Because =
        May("because", Text, "The reason that the law gives.", "\"cereals used for making alcoholic distillates\"");
    public static readonly PropertyShape Source = May("source", Text, "The law.", "\"Regulation (EU) No 1169/2011, Annex II\"");

    public static readonly ObjectShape Shape = new("an exemption", Allergen, In, Because, Source);
}

/// <summary><c>life</c> of an ingredient.</summary>
internal static class LifeShape
{
    public static readonly PropertyShape Unopened = May("unopened", Sourced(Duration), "How long it keeps unopened.", "\"365 d\"");
    public static readonly PropertyShape Opened = May("opened", Sourced(Duration), "How long it keeps once opened.", "\"3 d\"");
    public static readonly PropertyShape At = May("at", Sourced(Temperature), "The temperature at which it keeps so long.", "\"4 °C\"");

    public static readonly ObjectShape Shape = new("the life of an ingredient", Unopened, Opened, At);
}

/// <summary><c>*.menu.json</c>.</summary>
internal static class MenuShape
{
    public static readonly PropertyShape Drink = Must("drink", Id, "Id of the drink.", "\"low-tide\"");
    public static readonly PropertyShape EntryName = May("name", Text, "Its name on the menu, where that differs.", "\"Low Tide\"");
    public static readonly PropertyShape Words = May("words", Text, "What the guest reads of it.", "\"Gin, soured cucumber, honey\"");
    public static readonly PropertyShape Covers = May("covers", ShapeValues.Covers, "How many are expected to be served.", "30");
    public static readonly PropertyShape Claims = May("claims", ListOf(Tag), "What the menu claims of it, in single words.", """["vegan"]""");
    public static readonly PropertyShape EntryNotes = May("notes", TextOrTexts, "Remarks, as one text or as a list.", "\"Sunday only.\"");
    public static readonly ObjectShape Entry = new("a drink on the menu", Drink, EntryName, Words, Covers, Claims, EntryNotes);

    public static readonly PropertyShape Schema = SchemaAddress(FileKind.Menu);
    public static readonly PropertyShape Name = Must("name", Text, "Name of the menu.", "\"Tonight\"");
    public static readonly PropertyShape Drinks = Must(
        "drinks", ListOf(ObjectOf(Entry)), "The drinks on sale.",
        """[{ "drink": "low-tide", "words": "Gin, soured cucumber, honey", "covers": 30 }]""");
    public static readonly PropertyShape Accept = AcceptanceShape.Property();
    public static readonly PropertyShape Notes = May("notes", TextOrTexts, "Remarks, as one text or as a list.", "\"Winter.\"");

    public static readonly ObjectShape Shape = new("a menu", Schema, Name, Drinks, Accept, Notes);
}

/// <summary><c>*.stock.json</c>.</summary>
internal static class StockShape
{
    public static readonly PropertyShape From = Must("from", Date, "Day it went into the freezer.", "\"2026-11-01\"");
    public static readonly PropertyShape To = May("to", Date, "Day it was taken out; not given while it is frozen.", "\"2026-11-20\"");
    public static readonly ObjectShape FrozenTime = new("a time in the freezer", From, To);

    public static readonly PropertyShape Item = Must("item", Id, "Id of the preparation or ingredient.", "\"sour-cucumber\"");
    public static readonly PropertyShape Made = May("made", Date, "Day it was made.", "\"2026-11-24\"");
    public static readonly PropertyShape Opened = May("opened", Date, "Day it was opened.", "\"2026-11-24\"");
    public static readonly PropertyShape UseBy = May("useBy", Date, "Use-by day on its label.", "\"2026-11-26\"");
    public static readonly PropertyShape Amount = May("amount", ShapeValues.Amount, "How much is left.", "\"1.2 l\"");
    public static readonly PropertyShape At = May("at", Temperature, "Temperature at which it is kept, as measured.", "\"3 °C\"");
    public static readonly PropertyShape In = May("in", Text, "What it is kept in.", "\"bottle\"");
    public static readonly PropertyShape Measured = MeasurementShape.Property();
    public static readonly PropertyShape LotCode = May("lot", TextOrNumber, "Code of the lot.", "\"24-2\"");
    public static readonly PropertyShape MadeFrom = May(
        "madeFrom",
        ListOf(Text),
        "Codes of the lots that it was made from: its last day is no later than theirs, and a lot that turns out bad is followed to it.",
        """["EW-1124"]""");
    public static readonly PropertyShape By = May("by", Text, "Initials of the person who made or opened it.", "\"MQ\"");
    public static readonly PropertyShape Frozen = May(
        "frozen", ListOf(ObjectOf(FrozenTime)), "Times in the freezer.", """[{ "from": "2026-11-01", "to": "2026-11-20" }]""");
    public static readonly PropertyShape Note = May("note", Text, "A remark on it.", "\"second shelf\"");
    public static readonly ObjectShape LotShape =
        new("a lot", Item, Made, Opened, UseBy, Amount, At, In, Measured, LotCode, MadeFrom, By, Frozen, Note);

    public static readonly PropertyShape Schema = SchemaAddress(FileKind.Stock);
    public static readonly PropertyShape Name = May("name", Text, "Name of the place or list.", "\"Back bar refrigerator\"");
    public static readonly PropertyShape On = Must("on", Date, "Day on which this was in the house.", "\"2026-11-25\"");
    public static readonly PropertyShape Lots = Must(
        "lots", ListOf(ObjectOf(LotShape)), "The lots.",
        """[{ "item": "sour-cucumber", "made": "2026-11-24", "amount": "1.2 l", "at": "3 °C" }]""");
    public static readonly PropertyShape Accept = AcceptanceShape.Property();
    public static readonly PropertyShape Notes = May("notes", TextOrTexts, "Remarks, as one text or as a list.", "\"Counted before service.\"");

    public static readonly ObjectShape Shape = new("a stock file", Schema, Name, On, Lots, Accept, Notes);
}

/// <summary><c>*.prices.json</c>.</summary>
internal static class PricesShape
{
    public static readonly PropertyShape Item = Must("item", Id, "Id of the item: an ingredient of the book or the catalogue.", "\"fogbank-gin\"");
    public static readonly PropertyShape Paid = Must("price", Money, "What is paid for the size, without tax, in the currency of bar.json.", "24.9");
    public static readonly PropertyShape For =
        Must("for", VolumeOrMass, "The size that is bought for it.", "\"700 ml\"", "\"60 pieces\"", "\"1 kg\"");
    public static readonly PropertyShape Yield = May(
        "yield",
        Percentage,
        "Share of what is bought that can be used, as the house weighs it; it comes before the table of trimmings.",
        "\"60 % w/w\"",
        "\"55–65 % w/w\"");
    public static readonly PropertyShape PriceOn = May("on", Date, "Day of the price, where it is not that of the list.", "\"2026-11-02\"");
    public static readonly PropertyShape PriceFrom = May("from", Text, "The supplier, where it is not that of the list.", "\"Quay Market\"");
    public static readonly PropertyShape Note = May("note", Text, "A remark on it.", "\"case of six\"");
    public static readonly ObjectShape PriceShape = new("a price", Item, Paid, For, Yield, PriceOn, PriceFrom, Note);

    public static readonly PropertyShape Schema = SchemaAddress(FileKind.Prices);
    public static readonly PropertyShape Name = May("name", Text, "Name of the list.", "\"Autumn prices\"");
    public static readonly PropertyShape On = May("on", Date, "Day of the prices.", "\"2026-10-01\"");
    public static readonly PropertyShape From = May("from", Text, "The supplier.", "\"Quay Drinks\"");
    public static readonly PropertyShape Prices = Must(
        "prices", ListOf(ObjectOf(PriceShape)), "The prices.", """[{ "item": "fogbank-gin", "price": 24.9, "for": "700 ml" }]""");
    public static readonly PropertyShape Accept = AcceptanceShape.Property();
    public static readonly PropertyShape Notes = May("notes", TextOrTexts, "Remarks, as one text or as a list.", "\"Net of the yearly discount.\"");

    public static readonly ObjectShape Shape = new("a price list", Schema, Name, On, From, Prices, Accept, Notes);
}

/// <summary><c>bar.json</c>.</summary>
internal static class BarShape
{
    public static readonly PropertyShape MeterPh =
        May("ph", Uncertainty, "Uncertainty of its pH, half the width that holds 95 % of readings.", "0.05");
    public static readonly PropertyShape MeterBrix =
        May("brix", Uncertainty, "Uncertainty of its °Brix, half the width that holds 95 % of readings.", "0.2");
    public static readonly PropertyShape Calibrated = May("calibrated", Date, "Day of its last calibration.", "\"2026-11-25\"");
    public static readonly ObjectShape MeterShape = new("a meter", MeterPh, MeterBrix, Calibrated);

    public static readonly PropertyShape Scale = May("scale", Mass, "Step of the scale.", "\"1 g\"", "\"0.1 g\"");
    public static readonly PropertyShape Jigger = May("jigger", Volume, "Step of the jigger.", "\"2.5 ml\"");
    public static readonly PropertyShape Fridge = May("fridge", Temperature, "Temperature of the refrigerator, as measured.", "\"4 °C\"");
    public static readonly PropertyShape Freezer = May("freezer", Temperature, "Temperature of the freezer, as measured.", "\"-18 °C\"");
    public static readonly PropertyShape Meters = May(
        "meters", MapOf(KeyForm.Id, ObjectOf(MeterShape, "meter")), "The meters, by id.",
        """{ "bar-meter": { "ph": 0.05, "calibrated": "2026-11-25" } }""");
    public static readonly ObjectShape ToolsShape = new("the tools", Scale, Jigger, Fridge, Freezer, Meters);

    public static readonly PropertyShape Brim = May("brim", Volume, "Volume to the brim.", "\"150 ml\"");
    public static readonly PropertyShape WashLine = May("washLine", Volume, "Volume to the wash line.", "\"130 ml\"");
    public static readonly PropertyShape GlassName = May("name", Text, "Its name.", "\"Small coupe\"");
    public static readonly PropertyShape GlassNotes = May("notes", TextOrTexts, "Remarks, as one text or as a list.", "\"Six left.\"");
    public static readonly ObjectShape GlassShape = new("a glass", Brim, WashLine, GlassName, GlassNotes);

    public static readonly PropertyShape Capacity = May("capacity", Volume, "Its volume to the brim.", "\"1 l\"");
    public static readonly PropertyShape Rating = May("rating", Pressure, "Pressure that it is rated for.", "\"6 bar\"");
    public static readonly ObjectShape VesselShape = new("a vessel", Capacity, Rating);

    public static readonly PropertyShape Schema = SchemaAddress(FileKind.Bar);
    public static readonly PropertyShape Name = Must("name", Text, "Name of the bar.", "\"The Saltmarsh Room\"");
    public static readonly PropertyShape Jurisdictions = May(
        "jurisdictions",
        ShapeValues.Jurisdictions,
        "Countries whose rules hold (ISO 3166 codes), or EU. A member state brings the rules of the EU with it.",
        """["IE"]""");
    public static readonly PropertyShape Measures = May(
        "measures", MapOf(KeyForm.UnitWord, VolumeOrMass), "What a trade measure comes to in this house.",
        """{ "dash": "0.8 ml", "barspoon": "5 ml", "oz": "30 ml" }""");
    public static readonly PropertyShape Tools = May(
        "tools", ObjectOf(ToolsShape), "Scale, jigger, refrigerator, freezer and meters.",
        """{ "scale": "1 g", "jigger": "2.5 ml", "fridge": "4 °C" }""");
    public static readonly PropertyShape Glasses = May(
        "glasses", MapOf(KeyForm.Id, ObjectOf(GlassShape, "glass")), "The glasses of the house, by id.",
        """{ "small-coupe": { "brim": "150 ml", "washLine": "130 ml" } }""");
    public static readonly PropertyShape Vessels = May(
        "vessels", MapOf(KeyForm.Id, ObjectOf(VesselShape, "vessel")), "Bottles, kegs and tubs, by id.",
        """{ "keg": { "capacity": "9 l", "rating": "6 bar" } }""");
    public static readonly PropertyShape Limits = May(
        "limits", MapOf(KeyForm.PropertyPath, Limit), "House limits, by name.", """{ "alcoholPerServe": "24 g" }""");
    public static readonly PropertyShape Currency = Must("currency", ShapeValues.Currency, "Currency of all prices, an ISO 4217 code.", "\"EUR\"");
    public static readonly PropertyShape MostPerServe = May("mostPerServe", Money, "The most that one serve of a drink may cost to make.", "2.4");
    public static readonly PropertyShape PricesHold = May("pricesHold", Duration, "How long a price counts as current.", "\"180 d\"");
    public static readonly ObjectShape CostsShape = new("the costs", Currency, MostPerServe, PricesHold);
    public static readonly PropertyShape Costs = May(
        "costs", ObjectOf(CostsShape), "Currency, and what the house allows of costs and prices.",
        """{ "currency": "EUR", "mostPerServe": 2.4, "pricesHold": "180 d" }""");
    public static readonly PropertyShape Level =
        Must("level", Words("levelWord", "a level: error, warning, note or none", Levels), "The level.", "\"none\"");
    public static readonly PropertyShape LevelBecause = May(
        "because", Text, "The reason, in words that the next person understands.", "\"The supplier's assay is on file.\"");
    public static readonly PropertyShape LevelUntil = May("until", Date, "The last day of it, at most a year ahead.", "\"2027-03-31\"");
    public static readonly ObjectShape LevelShape = new("a level with its reason", Level, LevelBecause, LevelUntil);
    public static readonly ValueShape LevelValue = new()
    {
        Form = ValueForm.WordOrObject,
        Definition = "level",
        Noun = "a level (error, warning, note or none), or an object with level, because and until",
        Item = Level.Value,
        Object = LevelShape,
    };

    public static readonly PropertyShape Rules = May(
        "rules",
        MapOf(KeyForm.RuleId, LevelValue),
        "Levels of rules, where they differ from the built-in ones. Lowering a rule that guards against harm takes a reason and a last "
            + "day at most a year ahead.",
        """{ "SL3004": "note" }""",
        """{ "SL5013": { "level": "none", "because": "The supplier's assay is on file.", "until": "2027-03-31" } }""");
    public static readonly PropertyShape Schemas = May(
        "schemas", MapOf(KeyForm.FileKind, Text), "Schemas of the house, by kind of file; a path from the root of the book.",
        """{ "drink": "house-drink.schema.json" }""");
    public static readonly PropertyShape Files = May(
        "files", ListOf(Text), "Patterns of the files to read, where they are not all.", """["specs/**/*.json"]""");
    public static readonly PropertyShape LeaveOut = May("leaveOut", ListOf(Text), "Patterns of files to leave out.", """["drafts/**"]""");
    public static readonly PropertyShape Asks = May(
        "asks", ListOf(Words("asked", "a property of recipes", Asked)), "Properties that every recipe of the house must give.",
        """["author", "date"]""");
    public static readonly PropertyShape AsOf = May(
        "asOf",
        Date,
        "For an example book only: the day that it is set on, which stands in for today where --on gives no day. Every run says so. The "
            + "book of a bar that is open leaves it out.",
        "\"2026-11-25\"");
    public static readonly PropertyShape Accept = AcceptanceShape.Property();
    public static readonly PropertyShape Notes = May("notes", TextOrTexts, "Remarks, as one text or as a list.", "\"Open Tuesday to Sunday.\"");

    public static readonly ObjectShape Shape = new(
        "a bar",
        Schema,
        Name,
        Jurisdictions,
        Measures,
        Tools,
        Glasses,
        Vessels,
        Limits,
        Costs,
        Rules,
        Schemas,
        Files,
        LeaveOut,
        Asks,
        AsOf,
        Accept,
        Notes);
}
