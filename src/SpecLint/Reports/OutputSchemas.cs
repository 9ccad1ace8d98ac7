using System.Text;
using System.Text.Json;

namespace SpecLint.Reports;

/// <summary>
/// The JSON Schemas (2020-12) of what the verbs write as JSON. Every object is closed, so that an output which says more than
/// its schema fails the tests; each schema stands alone.
/// </summary>
internal static class OutputSchemas
{
    private static readonly Shape Text = new(j => j.WriteString("type", "string"));
    private static readonly Shape Flag = new(j => j.WriteString("type", "boolean"));
    private static readonly Shape Number = new(j => j.WriteString("type", "number"));
    private static readonly Shape NoLess = new(j =>
    {
        j.WriteString("type", "number");
        j.WriteNumber("minimum", 0);
    });

    private static readonly Shape Count = new(j =>
    {
        j.WriteString("type", "integer");
        j.WriteNumber("minimum", 0);
    });

    private static readonly Shape Place = new(j =>
    {
        j.WriteString("type", "integer");
        j.WriteNumber("minimum", 1);
    });

    private static readonly Shape Day = Pattern("^[0-9]{4}-[0-9]{2}-[0-9]{2}$");
    private static readonly Shape Print = Pattern("^[0-9a-f]{32}$");
    private static readonly Shape Sum = Pattern("^[0-9]+\\.[0-9]{2,4}$");
    private static readonly Shape RuleId = Pattern("^[A-Z]{2}[1-9][0-9]{3}$");
    private static readonly Shape LevelName = Words("error", "warning", "note", "none");
    private static readonly Shape AnswerName = Words("ready", "if", "no");
    private static readonly Shape KindName = Words("drink", "prep");
    private static readonly Shape MarkName = Words("house", "read", "common practice", "computed", "memory");
    private static readonly Shape Texts = List(Text);
    private static readonly Shape Region = Ref("region");

    private static readonly Field[] RegionFields =
    [
        new("startLine", Place, "First line, from 1."),
        new("startColumn", Place, "First column, from 1, in UTF-16 units."),
        new("endLine", Place, "Last line."),
        new("endColumn", Place, "Column behind the last character."),
        new("byteOffset", Count, "Bytes before it."),
        new("byteLength", Count, "Bytes of it."),
    ];

    private static readonly Shape Amounts = Object(
        new("value", Number, "Typical value."),
        new("low", Number, "Low end of a range of about 95 %."),
        new("high", Number, "High end."),
        new("unit", Text, "Unit, in UCUM."),
        new("from", Text, "Where it comes from: computed, measured, or the part that decides it."),
        new("outsideTestedRange", Flag,
            "True where its model was not held against measurement there, so that the range is a guess; else left out.", false));

    private static readonly Shape Brief = Object(
        new("rule", RuleId, "Id of the rule."),
        new("level", LevelName, "Level."),
        new("subject", Text, "Id of what it is about."),
        new("file", Text, "File, relative to the root of the book."),
        new("region", Region, "Place in the file."),
        new("message", Text, "What is wrong."),
        new("fingerprint", Print, "By which it is known again."));

    private static readonly Shape Changes = List(Object(
        new("id", Text, "Id of the recipe."),
        new("kind", KindName, "Kind."),
        new("file", Text, "File, relative to the root of the book."),
        new("name", Text, "Name.", false),
        new("change", Words("added", "removed", "changed"), "What became of it."),
        new("fileChanged", Flag, "Whether its own file changed."),
        new("through", Texts, "Ids of the preparations and ingredients through which the change reaches it."),
        new("size", NoLess, "Size of the largest relative change.", false),
        new("facts", FactsOf(Object(
            new("unit", Text, "Unit, in UCUM."),
            new("before", Ref("known"), "Before the change.", false),
            new("after", Ref("known"), "After it.", false),
            new("crosses", List(RuleId), "Rules whose limit it crosses.", false),
            new("backWithin", List(RuleId), "Rules within whose limit it is again.", false))), "Facts that moved, by name."),
        new("allergens", Object(
            new("gained", Texts, "New ones."),
            new("lost", Texts, "Gone ones."),
            new("mayContainGained", Texts, "New ones that may be in it."),
            new("mayContainLost", Texts, "Gone ones that might have been in it.")), "What moves among the allergens."),
        new("keeping", Object(new("before", Text, "Before.", false), new("after", Text, "After.", false)), "What its label says of keeping.", false),
        new("new", List(Ref("finding")), "Findings that came."),
        new("gone", List(Ref("finding")), "Findings that went."),
        new("unchanged", Count, "Findings that stay.")));

    private static readonly (string Name, Field[] Fields)[] ChangeDefinitions =
    [
        ("region", RegionFields),
        ("known", [
            new("value", Number, "Typical value.", false), new("low", Number, "Low end of a range of about 95 %.", false),
            new("high", Number, "High end.", false),
            new("from", Text, "Where it comes from.", false), new("open", Text, "Why it cannot be had.", false),
        ]),
    ];

    private static readonly Field[] AdjustedFields =
    [
        new("id", Text, "Id of the recipe."),
        new("file", Text, "File, relative to the root of the book."),
        new("reached", Flag, "Whether every target is reached, to what the steps of the bar's tools allow."),
        new("changed", Flag, "Whether anything changes."),
        new("targets", List(Object(
            new("name", Text, "What it is."),
            new("unit", Text, "Its unit."),
            new("low", Number, "Least value asked for."),
            new("high", Number, "Largest value asked for."),
            new("before", Ref("known"), "Before.", false),
            new("after", Ref("known"), "After, recalculated from the changed recipe.", false),
            new("reached", Flag, "Whether it is reached."),
            new("inTheWay", Text, "What stands in the way.", false))), "The targets."),
        new("like", Object(
            new("id", Text, "Id of what it is to be like."),
            new("holds", Flag, "Whether it is."),
            new("words", Text, "By how much each figure differs."),
            new("inTheWay", Text, "What stands in the way.", false)), "How it stands to what it is to be like.", false),
        new("lines", List(Object(
            new("item", Text, "Id of the item after."),
            new("itemBefore", Text, "Id before; left out for a line that is added.", false),
            new("before", Text, "Amount before; left out for a line that is added.", false),
            new("after", Text, "Amount after."),
            new("mayChange", Flag, "Whether the search could change it."))), "The lines of the mix."),
        new("harm", Texts, "Allergens, hazards and findings of rules that guard against harm that the change brings."),
    ];

    private static Shape PutAside => Object(
        new("count", Count, "How many."),
        new("accepted", Count, "Those that files accept."),
        new("switchedOff", Count, "Those that bar.json switches off."),
        new("inBaseline", Count, "Those that stand in the baseline."),
        new("lowered", Count, "Beside these: findings that are shown at a level which bar.json lowers."),
        new("firstEnd", Day, "The day on which the first of them ends.", false),
        new("lastEnd", Day, "The day on which the last of them ends.", false),
        new("text", Text, "The same in words.", false));

    private static readonly Dictionary<string, Schema> All = new(StringComparer.Ordinal)
    {
        ["check"] = new("Findings of a check", "What `check --format json` writes.", Object(
            new("tool", Object(new("name", Words("SpecLint"), "Name."), new("version", Text, "Version.")), "What wrote it."),
            new("on", Day, "The day of the check."),
            new("part", Object(
                new("number", Count, "Which part, from 1."),
                new("of", Count, "How many parts there are."),
                new("book", Text, "By which `combine` knows the parts of one run.")), "Which part of the book it is, with `--part`.", false),
            new("files", Count, "Files looked at."),
            new("recipes", Count, "Recipes among them."),
            new("counts", Object(
                new("error", Count, "Errors."), new("warning", Count, "Warnings."), new("note", Count, "Notes."),
                new("accepted", Count, "Findings that are accepted."),
                new("acceptedSafety", Count, "Those of rules that guard against harm.")), "How many there are."),
            new("harmPutAside", PutAside, "Findings of rules that guard against harm which are put aside."),
            new("findings", List(Ref("finding")), "Findings, in total order."),
            new("accepted", List(Ref("finding")), "Accepted findings."),
            new("closing", Text, "To whom the findings defer.")))
        {
            Definitions = [("region", Object(RegionFields)), ("finding", Finding())],
        },
        ["profile"] = new("What recipes and ingredients come to", "What `profile --format json` writes: one object, or a list of them.",
            AnyOf(Ref("recipe"), Ref("ingredient"), List(AnyOf(Ref("recipe"), Ref("ingredient")))))
        {
            Definitions = [("recipe", Recipe()), ("ingredient", Ingredient())],
        },
        ["compare"] = new("What a change does to the drinks", "What `compare --format json` writes.", Object(
            new("counts", Object(
                new("recipes", Count, "Recipes that it reaches."), new("new", Count, "Findings that came."),
                new("gone", Count, "Findings that went."),
                new("newlyAccepted", Count, "Findings accepted since."), new("unchanged", Count, "Findings that stay.")), "How many there are."),
            new("recipes", Changes, "Recipes that it reaches, the largest change first."),
            new("new", List(Ref("finding")), "Findings that came."),
            new("gone", List(Ref("finding")), "Findings that went."),
            new("newlyAccepted", List(Ref("finding")), "Findings accepted since.")))
        {
            Definitions = [.. ChangeDefinitions.Select(d => (d.Name, Object(d.Fields))), ("finding", Brief)],
        },
        ["correct"] = new("What corrections come to", "What `correct --format json` writes.", Object(
            new("corrections", List(Object(
                new("rule", RuleId, "Id of the rule."),
                new("subject", Text, "Id of what it is about."),
                new("file", Text, "File, relative to the root of the book."),
                new("region", Region, "Place of the finding."),
                new("fingerprint", Print, "Of the finding."),
                new("grade", Words("assured", "proposed"), "Whether the drink stays the same."),
                new("description", Text, "What it does."),
                new("state", Words("made", "rightAlready", "findingStays", "bringsNew", "bringsHarm", "cannotBeMade"), "What became of it."),
                new("brings", List(Ref("finding")), "Findings that come with it."),
                new("adds", Texts, "Allergens and hazards that come with it, each with its recipe."))), "Corrections, in order."),
            new("files", List(Object(
                new("file", Text, "File, relative to the root of the book."),
                new("diff", Text, "Its difference, unified."))), "Files that change."),
            new("recipes", Changes, "Recipes that the corrections reach.")))
        {
            Definitions = [.. ChangeDefinitions.Select(d => (d.Name, Object(d.Fields))), ("finding", Brief)],
        },
        ["baseline"] = new("Baseline", "The file that `baseline` writes.", Object(
            new("version", new Shape(j => j.WriteNumber("const", 1)), "Version of the format."),
            new("fingerprints", Words(Findings.Fingerprints.Name), "How the fingerprints are made."),
            new("findings", List(Object(
                new("rule", RuleId, "Id of the rule."),
                new("level", LevelName, "Level."),
                new("subject", Text, "Id of what it is about."),
                new("file", Text, "File, relative to the root of the book."),
                new("message", Text, "What was wrong."),
                new("because", Text, "Why it may stay."),
                new("until", Day, "The last day on which it may.", false),
                new("fingerprint", Print, "By which it is known again."))), "Findings that may stay."))),
        ["linecheck"] = new("A line check", "What `linecheck --format json` writes.", Object(
            new("menu", Text, "Id of the menu."),
            new("on", Day, "The day."),
            new("counts", Object(
                new("ready", Count, "Drinks that can be served."),
                new("if", Count, "Once something is done."),
                new("no", Count, "That cannot be served.")), "How many there are."),
            new("harmPutAside", PutAside, "Findings of rules that guard against harm which are put aside.", false),
            new("drinks", List(Object(
                new("id", Text, "Id."),
                new("name", Text, "What the guest calls it."),
                new("answer", AnswerName, "Whether it can be served."),
                new("covers", NoLess, "Serves expected."),
                new("coversReady", NoLess, "Serves that what is ready makes."),
                new("because", Texts, "Why it cannot be served."),
                new("first", Texts, "What is to be done first."),
                new("lookFor", Texts, "What is easily seen and not in the stock."),
                new("allergens", Allergens(), "Allergens that count where the bar is."))), "Drinks, in the order of the menu."),
            new("make", List(Object(
                new("id", Text, "Id of the preparation."),
                new("times", NoLess, "How many times the recipe."),
                new("grams", NoLess, "Mass made, g."),
                new("millilitres", NoLess, "Volume made, mL.", false),
                new("shortGrams", NoLess, "Mass that is missing, g."),
                new("hours", NoLess, "Time that its method states, h."),
                new("useBy", Day, "Last day of what is made.", false),
                new("for", Texts, "What needs it."),
                new("credits", List(Object(
                    new("id", Text, "Id of the by-product."),
                    new("grams", NoLess, "Mass taken, g."))), "By-products that it leaves and that something else takes."),
                new("lines", List(Object(
                    new("item", Text, "Id."),
                    new("amount", NoLess, "Amount, rounded to the tools."),
                    new("unit", Text, "Unit."))), "What goes in."))), "What to make, in order."),
            new("get", List(Object(
                new("id", Text, "Id."),
                new("grams", NoLess, "Mass that is missing, g.", false),
                new("for", Texts, "What needs it."))), "What to get or to look for."),
            new("lots", List(Object(
                new("item", Text, "Id of what it is a lot of."),
                new("lot", Text, "Code of the lot.", false),
                new("file", Text, "Stock file, relative to the root of the book."),
                new("line", Place, "Line in it."),
                new("answer", AnswerName, "Whether it can be used."),
                new("made", Day, "Day made.", false),
                new("opened", Day, "Day opened.", false),
                new("useBy", Day, "Last day.", false),
                new("useByFrom", Text, "What sets it.", false),
                new("grams", NoLess, "Mass left, g.", false),
                new("throwAway", Flag, "Whether to throw it away."),
                new("because", Texts, "Why it cannot be used."),
                new("first", Texts, "What is to be done first."))), "Lots, in the order of the stock files."),
            new("caution", Text, "What this is not."))),
        ["scale"] = new("A recipe at another size", "What `scale --format json` writes.", Object(
            new("id", Text, "Id of the recipe."),
            new("kind", KindName, "Kind."),
            new("file", Text, "File, relative to the root of the book."),
            new("factor", NoLess, "What every amount is multiplied by."),
            new("serves", NoLess, "Drinks or portions.", false),
            new("poured", Flag, "Whether the batch is poured as it is."),
            new("answer", AnswerName, "Whether it may be made and used."),
            new("because", Texts, "Why not: open findings that guard against harm."),
            new("first", Texts, "What is to be shown or put right first."),
            new("lines", List(Object(
                new("item", Text, "Id."),
                new("amount", NoLess, "Amount, rounded to the tools."),
                new("exact", NoLess, "Amount before rounding."),
                new("unit", Text, "Unit of both."),
                new("grams", NoLess, "Mass of the rounded amount, g.", false),
                new("before", Text, "As the recipe writes it."))), "What goes in."),
            new("water", Object(
                new("amount", NoLess, "Water to add."),
                new("low", NoLess, "Low end of what ice would add."),
                new("high", NoLess, "High end."),
                new("unit", Words("mL"), "Unit.")), "Water for dilution.", false),
            new("atTheGlass", List(Object(
                new("item", Text, "Id."), new("amount", Text, "As the recipe writes it.", false),
                new("role", Words("garnish", "rim", "top", "rinse", "float", "muddle", "wash", "fining"),
                    "What it is for."))), "What is added to each glass."),
            new("volume", NoLess, "Volume made, mL.", false),
            new("mass", NoLess, "Mass made, g.", false),
            new("volumeEach", NoLess, "Volume of the batch a drink, mL.", false),
            new("facts", FactsOf(Object(
                new("exact", Number, "At the exact factor."), new("value", Number, "After rounding."),
                new("low", Number, "Low end of a range of about 95 %."),
                new("high", Number, "High end."), new("unit", Text, "Unit, in UCUM."))), "Facts before and after rounding."),
            new("container", Object(
                new("name", Text, "Vessel of the bar, or a common size."), new("capacity", NoLess, "Its volume, mL."),
                new("count", Place, "How many."),
                new("headspacePercent", Number, "Room left, %.")), "What it goes into.", false),
            new("keeps", Object(
                new("days", NoLess, "Days that it may be kept; left out where it must not be used.", false),
                new("from", Text, "What sets them.", false),
                new("statedDays", NoLess, "Days that the recipe states.", false)), "How long it keeps."),
            new("remarks", Texts, "What to mind."))),
        ["find"] = new("Items that a search found", "What `find --format json` writes.", Object(
            new("against", Text, "Id of what the others are compared with.", false),
            new("found", List(Object(
                new("id", Text, "Id."),
                new("name", Text, "Name."),
                new("called", Text, "The other name by which it was found.", false),
                new("kind", Text, "Kind of an ingredient, family of a preparation, drink, or by-product."),
                new("from", Words("book", "catalogue"), "Where it is."),
                new("file", Text, "File, of the book or of the catalogue."),
                new("per", Words("100 g", "100 mL"), "Basis of sugar and acid."),
                new("strength", NoLess, "Strength, % vol; left out where not known.", false),
                new("sugar", NoLess, "Sugar, g.", false),
                new("acid", Number, "Acid titratable to pH 8.1 as citric acid, g.", false),
                new("allergens", Texts, "Allergens that it contains."),
                new("allergensKnown", Flag, "Whether all of its allergens are known."),
                new("differs", Texts, "What differs from what it is compared with."))), "What was found, the best first."))),
        ["adjust"] = new("An adjusted recipe, or what could take the place of an item", "What `adjust --format json` writes.", AnyOf(
            Object([
                .. AdjustedFields,
                new("recipes", Changes, "What the change does to the recipes that it reaches."),
                new("diff", Text, "The change of the file, as a unified diff; empty where nothing changes.")]),
            Object(
                new("without", Text, "Id of the item that ran out."),
                new("substitutes", List(Object(
                    [
                        new("use", Text, "Id of what could take its place."),
                        new("name", Text, "Its name."),
                        new("from", Words("stock", "book", "catalogue"), "Where it is to be had."),
                        new("differs", Texts, "What differs from the item that ran out."),
                        .. AdjustedFields,
                    ])), "What was found, the best first."))))
        {
            Definitions = [.. ChangeDefinitions.Select(d => (d.Name, Object(d.Fields))), ("finding", Brief)],
        },
        ["costs"] = new("What recipes cost", "What `costs --format json` writes. Money is text with a decimal point, "
                + "so that no reader rounds it.", Object(
            new("currency", Text, "ISO 4217 code; ¤ where the bar gives none."),
            new("recipes", List(Object(
                new("id", Text, "Id of the recipe."),
                new("kind", KindName, "Kind."),
                new("per", Words("serve", "recipe", "batch"), "What the amounts of money are for."),
                new("batch", Text, "The batch asked for, in words.", false),
                new("cost", Sum, "What all that has a price costs."),
                new("low", Sum, "Low end of a range of about 95 %."),
                new("high", Sum, "High end."),
                new("trimmings", Sum, "What of it is paid for what is thrown away."),
                new("open", Texts, "Why a cost is open."),
                new("lines", List(Object(
                    new("item", Text, "Id of the item."),
                    new("cost", Sum, "Its cost; left out where it is open.", false),
                    new("low", Sum, "Low end.", false),
                    new("high", Sum, "High end.", false),
                    new("from", Text, "How it was worked out.", false),
                    new("open", Text, "Why it is open.", false))), "The lines."))), "The recipes."))),
        ["event"] = new("The plan of an event", "What `event --format json` writes.", Object(
            new("menu", Text, "Id of the menu."),
            new("on", Day, "Its day."),
            new("guests", Count, "Guests."),
            new("drinksEach", NoLess, "Drinks that a guest has."),
            new("ice", NoLess, "Ice, kg."),
            new("serves", List(Object(
                new("drink", Text, "Id of the drink."),
                new("share", NoLess, "Share of all serves, %."),
                new("serves", Count, "Serves."))), "Serves, in the order of the menu."),
            new("make", List(Object(
                new("prep", Text, "Id of the preparation."),
                new("station", Text, "Where it is made."),
                new("begin", Day, "Last day on which to begin."),
                new("hour", Text, "Time of that day."),
                new("ready", Day, "Day on which it is then ready."),
                new("earliest", Day, "First day on which it can be begun and still be good.", false),
                new("hours", NoLess, "What it takes, h."),
                new("times", NoLess, "How many times the recipe."),
                new("grams", NoLess, "What it makes, g."),
                new("millilitres", NoLess, "What it makes, mL; left out for a solid.", false),
                new("for", Texts, "Ids of what needs it."),
                new("mind", Text, "What stands in the way.", false))), "What to make, in the order of beginning."),
            new("buy", List(Object(
                new("item", Text, "Id of the item."),
                new("amount", NoLess, "How much, the reserve included."),
                new("unit", Words("ml", "g", "pieces"), "Its unit."),
                new("size", Text, "The size that is bought, or the fruit.", false),
                new("count", Count, "How many of them.", false),
                new("cases", Count, "Full cases among them.", false),
                new("cost", Sum, "What they cost.", false),
                new("for", Texts, "Ids of what needs it."))), "What to buy."),
            new("cannotServe", Texts, "What cannot be served as it is written."))),
        ["trace"] = new("The way of a lot", "What `trace --format json` writes.", Object(
            new("item", Text, "Id of what it is a lot of."),
            new("lot", Text, "Code of the lot.", false),
            new("since", Day, "Day made or opened.", false),
            new("lots", List(Object(
                new("item", Text, "Id of what it is a lot of."),
                new("lot", Text, "Code of the lot.", false),
                new("file", Text, "Stock file, relative to the root of the book."),
                new("line", Count, "Line in it."),
                new("since", Day, "Day made.", false),
                new("certain", Flag, "Whether it says that it was made from the lot; else it may have been."),
                new("through", Texts, "The way to it from the bad lot."))), "Lots that it reaches."),
            new("preps", TracedRecipes(), "Preparations that take from these lots."),
            new("drinks", TracedRecipes(), "Drinks that take from these lots."),
            new("caution", Text, "What to mind."))),
        ["labels"] = new("Labels of lots", "What `labels --format json` writes.", List(Object(
            new("item", Text, "Id."),
            new("name", Text, "Name."),
            new("made", Day, "Day made.", false),
            new("opened", Day, "Day opened.", false),
            new("useBy", Day, "Last day.", false),
            new("useByFrom", Text, "What sets it.", false),
            new("lot", Text, "Code of the lot.", false),
            new("by", Text, "Initials.", false),
            new("keepAtCelsius", Number, "Storage temperature, °C.", false),
            new("keepIn", Text, "Vessel.", false),
            new("strength", Object(
                new("value", NoLess, "Strength."),
                new("low", NoLess, "Low end."),
                new("high", NoLess, "High end."),
                new("unit", Words("%{vol}"), "Unit, in UCUM.")), "Strength.", false),
            new("allergens", Allergens(), "Allergens that count where the bar is."),
            new("advisories", Texts, "Texts that the recipe or the law asks for."),
            new("answer", AnswerName, "Whether it can be used."),
            new("because", Texts, "Why it cannot be used."),
            new("first", Texts, "What is to be done first.")))),
    };

    /// <summary>Verbs that have a schema, sorted.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. All.Keys.OrderBy(n => n, StringComparer.Ordinal)];

    /// <summary>The schema of a verb's JSON, with LF line ends.</summary>
    /// <param name="name">One of <see cref="Names"/>.</param>
    public static string Write(string name)
    {
        var schema = All[name];
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            json.WriteString("$id", "urn:speclint:output:" + name);
            json.WriteString("title", schema.Title);
            json.WriteString("description", schema.Description);
            schema.Root.Write(json);
            if (schema.Definitions.Count > 0)
            {
                json.WriteStartObject("$defs");
                foreach (var (definition, shape) in schema.Definitions)
                {
                    json.WritePropertyName(definition);
                    Write(json, shape);
                }

                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()).Replace("\r\n", "\n") + "\n";
    }

    private static Shape Finding() => Object(
        new("rule", RuleId, "Id of the rule."),
        new("name", Text, "Name of the mistake."),
        new("family", Text, "What rules like it are about."),
        new("level", LevelName, "Level."),
        new("answer", Words("broken", "notShown"), "Whether a limit is broken, or it is not shown that it holds."),
        new("subject", Text, "Id of what it is about."),
        new("file", Text, "File, relative to the root of the book."),
        new("region", Region, "Place in the file."),
        new("path", Text, "Way in the file by names.", false),
        new("message", Text, "What is wrong, and by how much."),
        new("advice", Text, "What to do.", false),
        new("caution", Text, "What to mind.", false),
        new("evidence", List(Object(
            new("name", Text, "What."),
            new("value", Number, "Number.", false),
            new("low", Number, "Low end of its range.", false),
            new("high", Number, "High end.", false),
            new("unit", Text, "Its unit.", false),
            new("text", Text, "In words.", false),
            new("source", Text, "Where it is printed.", false),
            new("file", Text, "Where it stands in the book.", false),
            new("region", Region, "Place there.", false))), "What it rests on.", false),
        new("related", List(Object(
            new("file", Text, "File."),
            new("region", Region, "Place."),
            new("message", Text, "What is there."))), "Other places.", false),
        new("corrections", List(Object(
            new("grade", Words("assured", "proposed"), "Whether the drink stays the same."),
            new("description", Text, "What it does."),
            new("edits", List(Object(
                new("file", Text, "File."),
                new("region", Region, "What is replaced."),
                new("newText", Text, "By what."))), "Edits."))), "What would put it right.", false),
        new("accepted", Object(
            new("because", Text, "Why."),
            new("until", Day, "The last day.", false),
            new("file", Text, "The file that accepts it, or bar.json where that switches its rule off."),
            new("region", Region, "Where it is accepted.")), "That it is accepted.", false),
        new("fingerprint", Print, "By which it is known again."),
        new("follows", List(Ref("finding")), "Findings that follow from it.", false));

    private static Shape Recipe() => Object(
        new("id", Text, "Id."),
        new("kind", KindName, "Kind."),
        new("file", Text, "File, relative to the root of the book."),
        new("facts", FactsOf(Amounts), "Facts by name: liquids at 20 °C; of a drink as served, of a preparation as made, of a solid per 100 g."),
        new("open", FactsOf(Text), "Facts that cannot be had, with the reason."),
        new("allergens", Object(
            new("contains", Texts, "Allergens that count where the bar is."),
            new("mayContain", Texts, "Those that may be in it."),
            new("notKnownOf", Texts, "Items whose allergens are not known."),
            new("origins", List(Object(
                new("allergen", Text, "Which."), new("certain", Flag, "Whether it is in it, or may be."),
                new("through", Texts, "The way from the recipe to what brings it."),
                new("exemptIn", Texts, "Where the law exempts it."))), "Where each comes from.")), "Allergens."));

    private static Shape Ingredient() => Object(
        new("id", Text, "Id."),
        new("kind", Words("ingredient"), "Kind."),
        new("file", Text, "File, of the book or of the catalogue."),
        new("name", Text, "Name.", false),
        new("ingredientKind", Text, "What it is.", false),
        new("like", Text, "What it inherits from.", false),
        new("per", Words("100 g", "100 mL"), "Basis of the contents."),
        new("values", Map(Object(
            new("value", Number, "Typical value."), new("low", Number, "Low end."), new("high", Number, "High end."),
            new("unit", Text, "Unit, in UCUM."),
            new("mark", MarkName, "How far it can be trusted."), new("source", Text, "Where it is printed.", false))), "Values by name."),
        new("open", Map(Text), "What is not given, with the reason."),
        new("allergens", Object(
            new("contains", Texts, "What is in it."),
            new("mayContain", Texts, "What may be in it."),
            new("exempt", List(Object(
                new("allergen", Text, "Which."), new("in", Texts, "Where."),
                new("because", Text, "Why.", false), new("source", Text, "By which law.", false))), "What the law exempts."),
            new("mark", MarkName, "How far it can be trusted."),
            new("source", Text, "Where it is printed.", false)), "Allergens.", false));

    private static Shape TracedRecipes() => List(Object(
        new("id", Text, "Id."), new("since", Day, "First day on which it may hold the lot.", false), new("through", Text, "Item by which it does.")));

    private static Shape Allergens() => Object(
        new("contains", Texts, "In it."), new("mayContain", Texts, "May be in it."), new("notKnownOf", Texts, "Items of which it is not known."));

    private static Shape Pattern(string pattern) => new(j =>
    {
        j.WriteString("type", "string");
        j.WriteString("pattern", pattern);
    });

    private static Shape Words(params string[] words) => new(j =>
    {
        j.WriteStartArray("enum");
        foreach (string word in words) j.WriteStringValue(word);
        j.WriteEndArray();
    });

    private static Shape List(Shape items) => new(j =>
    {
        j.WriteString("type", "array");
        j.WritePropertyName("items");
        Write(j, items);
    });

    private static Shape Map(Shape values) => new(j =>
    {
        j.WriteString("type", "object");
        j.WritePropertyName("additionalProperties");
        Write(j, values);
    });

    /// <summary>An object with names of facts.</summary>
    private static Shape FactsOf(Shape values) => new(j =>
    {
        j.WriteString("type", "object");
        j.WriteStartObject("propertyNames");
        Words([.. Enumerable.Range(0, FactNames.Count).Select(i => FactNames.Name((Fact)i))]).Write(j);
        j.WriteEndObject();
        j.WritePropertyName("additionalProperties");
        Write(j, values);
    });

    private static Shape Ref(string definition) => new(j => j.WriteString("$ref", "#/$defs/" + definition));

    private static Shape Object(params Field[] fields) => new(j =>
    {
        j.WriteString("type", "object");
        j.WriteStartObject("properties");
        foreach (var field in fields)
        {
            j.WriteStartObject(field.Name);
            j.WriteString("description", field.Description);
            field.Shape.Write(j);
            j.WriteEndObject();
        }

        j.WriteEndObject();
        j.WriteStartArray("required");
        foreach (var field in fields)
        {
            if (field.Required) j.WriteStringValue(field.Name);
        }

        j.WriteEndArray();
        j.WriteBoolean("additionalProperties", false);
    });

    private static Shape AnyOf(params Shape[] shapes) => new(j =>
    {
        j.WriteStartArray("anyOf");
        foreach (var shape in shapes) Write(j, shape);
        j.WriteEndArray();
    });

    private static void Write(Utf8JsonWriter json, Shape shape)
    {
        json.WriteStartObject();
        shape.Write(json);
        json.WriteEndObject();
    }

    /// <summary>What a value can be, as the members of its schema.</summary>
    private sealed record Shape(Action<Utf8JsonWriter> Write);

    private sealed record Field(string Name, Shape Shape, string Description, bool Required = true);

    private sealed record Schema(string Title, string Description, Shape Root)
    {
        public IReadOnlyList<(string Name, Shape Shape)> Definitions { get; init; } = [];
    }
}
