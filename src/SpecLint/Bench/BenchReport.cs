using System.Text.Encodings.Web;
using System.Text.Json;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.RecipeText;
using SpecLint.Reports;
using SpecLint.Rules;
using SpecLint.Rules.Service;
using SpecLint.Service;

namespace SpecLint.Bench;

/// <summary>
/// What a screen shows of a reading, as one JSON object: each line with what was understood, the figures with ranges and bands, the
/// findings with their line, what to measure, the verdict. All sentences are those of the reports.
/// </summary>
public sealed class BenchReport
{
    private static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>
    /// For no more lines that are not known something near is looked up, and not while
    /// somebody types: each takes a walk through all names.
    /// </summary>
    private const int MostLookedUp = 12;

    private readonly Utf8JsonWriter json;
    private readonly BenchReading reading;
    private readonly ProfileSet profiles;
    private readonly LinkedBook book;
    private readonly DisplayUnits units;
    private int lookedUp;

    private BenchReport(Utf8JsonWriter json, BenchReading reading)
    {
        this.json = json;
        this.reading = reading;
        profiles = reading.Result.Profiles;
        book = reading.Result.Book;
        units = reading.Entry.Units.Keeping(book);
    }

    /// <summary>Writes a reading.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="reading">The reading.</param>
    public static void Write(Stream to, BenchReading reading)
    {
        using var json = new Utf8JsonWriter(to, Options);
        new BenchReport(json, reading).Write();
    }

    private void Write()
    {
        json.WriteStartObject();
        json.WriteStartArray("recipes");
        foreach (var recipe in reading.Recipes) json.WriteStringValue(JsonOutput.WellFormed(recipe.Name));
        json.WriteEndArray();
        if (reading.File is { } file)
        {
            json.WriteString("path", JsonOutput.WellFormed(file.Path));
            json.WriteString("file", file.TextOf(new Reading.TextSpan(0, file.Utf8.Length)));
        }

        WriteLines();
        if (reading.Recipe is { } recipe1) WriteRecipe(recipe1);
        WriteFindings();
        json.WriteString("closing", ReportWords.Closing);
        json.WriteEndObject();
    }

    private void WriteLines()
    {
        json.WriteStartArray("lines");
        foreach (var line in reading.Written?.Lines ?? [])
        {
            json.WriteStartObject();
            json.WriteNumber("line", line.Number);
            json.WriteString("kind", line.Kind.ToString().ToLowerInvariant());
            json.WriteString("written", JsonOutput.WellFormed(line.Written.Trim()));
            json.WriteString("certainty", CertaintyOf(line).ToString().ToLowerInvariant());
            json.WriteGiven("because", BecauseOf(line));
            switch (line.Kind)
            {
                case WrittenLineKind.Ingredient: WriteIngredient(line); break;
                case WrittenLineKind.Method: WriteSteps(reading.StepsOf(line.Number)); break;
                case WrittenLineKind.Detail: WriteDetail(line.Detail!); break;
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private void WriteSteps(IReadOnlyList<WrittenStep> steps)
    {
        json.WriteString("reads", string.Join("; ", steps.Select(WordsOf)));
        json.WriteGiven("glass", steps.FirstOrDefault(s => s.Glass.Length > 0)?.Glass);
    }

    private void WriteDetail(WrittenDetail detail)
    {
        json.WriteString("about", detail.Kind.ToString());
        if (detail.Because.Length == 0) json.WriteGiven("value", detail.Text);
    }

    private Certainty CertaintyOf(WrittenLine line) =>
        line.Kind == WrittenLineKind.Method && reading.StepsOf(line.Number).Count == 0 ? Certainty.Unclear : line.Certainty;

    private string BecauseOf(WrittenLine line) =>
        line.Kind == WrittenLineKind.Method && reading.StepsOf(line.Number).Count == 0
            ? "no step of the trade is read in it"
            : line.Because;

    private void WriteIngredient(WrittenLine line)
    {
        json.WriteString("role", line.Role.ToString().ToLowerInvariant());
        json.WriteGiven("amount", line.Quantity is { } quantity ? StepWords.Written(quantity, units) : line.Amount);
        json.WriteGiven("itemWritten", line.ItemWritten);
        if (line.Item.Answer == NameAnswer.Resolved)
        {
            json.WriteString("item", line.Item.Id);
            json.WriteString("name", JsonOutput.WellFormed(NameOf(line.Item.Id)));
        }

        if (line.Item.Answer == NameAnswer.Resolved) return;
        json.WriteStartArray("choices");
        foreach (string id in ChoicesOf(line)) WriteChoice(id);
        json.WriteEndArray();
    }

    private IEnumerable<string> ChoicesOf(WrittenLine line)
    {
        if (line.Item.Choices.Count > 0) return line.Item.Choices;
        if (line.Item.Id.Length > 0) return [line.Item.Id];
        if (reading.Entry.Quick || ++lookedUp > MostLookedUp) return [];
        string[] words = line.ItemWritten.Split([' '], StringSplitOptions.RemoveEmptyEntries);
        const int most = 4;
        var found = ItemSearch.Of(profiles, words, null, most);
        if (found.Count == 0 && words.Length > 1) found = ItemSearch.Of(profiles, [words[words.Length - 1]], null, most);
        return found.Where(f => f.Item.File is not Drink).Select(f => f.Item.Id);
    }

    private void WriteChoice(string id)
    {
        json.WriteStartObject();
        json.WriteString("item", id);
        json.WriteString("name", JsonOutput.WellFormed(NameOf(id)));
        json.WriteEndObject();
    }

    private string NameOf(string id) => book.Resolve(id) is { ByProduct: null } item ? item.File.Name.Or(id) : id.Replace('-', ' ');

    private static string WordsOf(WrittenStep step)
    {
        string text = step.Verb.Id.Replace('-', ' ');
        if (step.Ice.Length > 0)
            text += step.Ice == "none"
                ? ", no ice"
                : $", {step.Ice.Replace('-', ' ')}{(step.Ice.EndsWith("ice", StringComparison.Ordinal) ? "" : " ice")}";
        if (step.At.Length > 0) text += $", at {step.At}";
        if (step.To.Length > 0) text += $", to {step.To}";
        if (step.For.Length > 0) text += $", {step.For}";
        if (step.Until.Length > 0) text += $", until {step.Until}";
        if (step.Glass.Length > 0) text += $", into {step.Glass.Replace('-', ' ')}";
        else if (step.Into.Length > 0) text += $", into {step.Into}";
        return text;
    }

    private void WriteRecipe(Recipe recipe)
    {
        var profile = profiles.Of(recipe);
        json.WriteString("kind", ReportWords.KeyOf(recipe.Kind));
        json.WriteString("id", JsonOutput.WellFormed(recipe.Id));
        json.WriteGiven("name", recipe.Name.Or(""));
        json.WriteString(
            "basis",
            recipe is Drink
                ? "Contents as served; alcohol and energy a serve"
                : profile.IsSolid ? "Contents per 100 g, as made" : "Contents as made; alcohol and energy per 100 mL");
        var style = (recipe as Drink)?.KnownStyle;
        json.WriteGiven("style", style?.Name);
        WriteFigures(recipe, profile, style);
        WriteCost(recipe, profile);
        if (recipe is Drink drink) WriteGlass(drink, profile);
        WriteVerdict(recipe);
        WriteAllergens(profile);
    }

    private void WriteFigures(Recipe recipe, RecipeProfile profile, Style? style)
    {
        json.WriteStartArray("figures");
        for (int i = 0; i < FactNames.Count; i++)
        {
            var fact = (Fact)i;
            if (!ProfileReport.IsMeant(fact, recipe) || (fact == Fact.Cost && profiles.Prices.IsEmpty)) continue;
            var value = ProfileReport.ValueOf(fact, profile, reading.Verdicts);
            json.WriteStartObject();
            json.WriteString("fact", FactNames.Name(fact));
            json.WriteString("label", ProfileReport.LabelOf(fact));
            if (!ProfileReport.IsShown(value))
            {
                json.WriteString("open", JsonOutput.WellFormed(units.Sentence(ProfileReport.ReasonOf(value))));
                json.WriteEndObject();
                continue;
            }

            json.WriteString(
                "text",
                fact == Fact.Cost
                    ? Money.Of(value).Words(FactUnits.CurrencyOf(book.Settings))
                    : units.FactOf(fact, value, profile.IsSolid));
            json.WriteFinite("value", value.Value);
            json.WriteFinite("low", value.Low);
            json.WriteFinite("high", value.High);
            json.WriteString("unit", FactUnits.Code(fact, profile.IsSolid, book.Settings));
            json.WriteGiven("from", value.From is "computed" or "" ? "" : value.From);
            if (style?.Usual(fact) is { } usual) WriteBand("usual", fact, usual, style.UsualInShort);
            if (style?.Seen(fact) is { } seen) WriteBand("seen", fact, seen, style.SeenInShort);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>What it costs, line by line, as the command's report on costs says it; nothing where the book has no prices.</summary>
    private void WriteCost(Recipe recipe, RecipeProfile profile)
    {
        if (profiles.Prices.IsEmpty) return;
        var cost = profile.Cost;
        string currency = FactUnits.CurrencyOf(book.Settings);
        decimal share = 1 / CostReport.Serves(recipe);
        json.WriteStartObject("cost");
        json.WriteString("per", recipe is Drink ? "a serve" : "the recipe");
        json.WriteString("text", cost.Whole.Times(share).Words(currency));
        WriteTexts("open", cost.Open);
        json.WriteStartArray("lines");
        foreach (var line in cost.Lines)
        {
            json.WriteStartObject();
            json.WriteString("name", JsonOutput.WellFormed(NameOf(line.Line.Item.Or("?"))));
            json.WriteGiven("text", line.IsKnown ? line.Cost.Times(share).Words(currency) : "");
            json.WriteString("from", JsonOutput.WellFormed(line.IsKnown ? line.From : line.OpenBecause));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("leftOut", CostReport.LeftOut);
        json.WriteEndObject();
    }

    private void WriteBand(string name, Fact fact, Band band, string source)
    {
        json.WriteStartObject(name);
        json.WriteFinite("low", band.Low);
        json.WriteFinite("high", band.High);
        string unit = Say.Unit(fact);
        string ends = units.Ends((band.Low + band.High) / 2, band.Low, band.High, unit);
        string shown = units.With((band.Low + band.High) / 2, unit);
        int blank = shown.IndexOf(' ');
        json.WriteString("text", blank < 0 ? ends : ends + shown.Substring(blank));
        json.WriteString("source", source);
        json.WriteEndObject();
    }

    private void WriteGlass(Drink drink, RecipeProfile profile)
    {
        if (GlassFill.Of(new RecipeContext(book, profiles, [], drink, profile), drink) is not { } glass) return;
        json.WriteStartObject("glass");
        json.WriteString("name", JsonOutput.WellFormed(glass.Name.Trim('`').Replace('-', ' ')));
        json.WriteBoolean("house", glass.IsHouse);
        WriteTrace("brim", glass.Brim);
        json.WriteFinite("washLine", glass.WashLine);
        if (!double.IsNaN(glass.WashLine)) json.WriteString("washText", units.With(glass.WashLine, "mL"));
        WriteTrace("fill", glass.Fill);
        json.WriteFinite("ice", glass.Ice);
        json.WriteFinite("foam", glass.Foam);
        json.WriteString("holds", units.Sentence(glass.Words(profile.Get(Fact.ServedVolume))));
        json.WriteString("source", glass.Source);
        json.WriteEndObject();
    }

    private void WriteTrace(string name, Trace trace)
    {
        json.WriteStartObject(name);
        json.WriteFinite("value", trace.Typical);
        json.WriteFinite("low", trace.Low);
        json.WriteFinite("high", trace.High);
        json.WriteString("text", units.Range(trace.Typical, trace.Low, trace.High, "mL"));
        json.WriteEndObject();
    }

    private void WriteVerdict(Recipe recipe)
    {
        var verdict = reading.Verdicts.Of(recipe);
        json.WriteStartObject("verdict");
        json.WriteString("answer", verdict.Answer switch { Readiness.No => "no", Readiness.If => "if", _ => "ready" });
        string what = recipe is Drink ? "DO NOT SERVE" : "DO NOT USE";
        json.WriteString(
            "headline",
            verdict.Answer switch
            {
                Readiness.No => verdict.IsForbidden ? what : what + " as it is written",
                Readiness.If => "First",
                _ => "",
            });
        WriteTexts("reasons", verdict.Reasons.Select(units.Spoken));
        WriteTexts("conditions", verdict.Conditions.Select(units.Spoken));
        if (recipe is Prep prep) json.WriteString("keeping", CardPage.Keeping(prep, verdict, units));
        json.WriteEndObject();
    }

    private void WriteAllergens(RecipeProfile profile)
    {
        json.WriteStartObject("allergens");
        WriteTexts("contains", profile.Allergens.Contained(book.Settings));
        WriteTexts("mayContain", profile.Allergens.Possible(book.Settings));
        WriteTexts("notKnownOf", ProfileReport.NotKnownOf(profile.Allergens).Select(NameOf));
        json.WriteEndObject();
    }

    private void WriteTexts(string name, IEnumerable<string> texts) => BenchOutputs.WriteTexts(json, name, texts);

    private void WriteFindings()
    {
        json.WriteStartArray("findings");
        foreach (var finding in reading.Findings.OrderByDescending(IsHarm).ThenByDescending(f => f.Level)) WriteFinding(finding, isOwn: true);
        json.WriteEndArray();
        json.WriteStartArray("findingsBelow");
        foreach (var finding in reading.FindingsBelow.OrderByDescending(f => f.Level)) WriteFinding(finding, isOwn: false);
        json.WriteEndArray();
    }

    private static bool IsHarm(Finding finding) => (finding.Rule.Safety && finding.Level == Level.Error) || finding.Folded.Any(IsHarm);

    private void WriteFinding(Finding finding, bool isOwn)
    {
        json.WriteStartObject();
        if (isOwn) json.WriteNumber("line", reading.LineOf(finding.Place));
        else json.WriteString("of", JsonOutput.WellFormed(NameOf(finding.Subject)));
        json.WriteString("rule", finding.Rule.Id);
        json.WriteString("name", finding.Rule.Name);
        json.WriteString("level", ReportWords.Of(finding.Level));
        json.WriteBoolean("harm", finding.Rule.Safety);
        json.WriteString("answer", ReportWords.Of(finding.Answer));
        json.WriteString("message", JsonOutput.WellFormed(units.Sentence(finding.Message)));
        json.WriteGiven("advice", units.Sentence(finding.Advice));
        json.WriteGiven("caution", finding.Caution is null ? "" : units.Sentence(finding.Caution));
        json.WriteString("fingerprint", finding.Fingerprint);
        json.WriteStartArray("sources");
        foreach (string source in finding.Evidence.Select(e => e.Source).OfType<string>().Distinct())
            json.WriteStringValue(JsonOutput.WellFormed(source));
        json.WriteEndArray();
        json.WriteStartArray("corrections");
        foreach (var correction in finding.Corrections.Where(_ => isOwn))
        {
            json.WriteStartObject();
            json.WriteString("grade", ReportWords.Of(correction.Grade));
            json.WriteString("description", JsonOutput.WellFormed(units.Sentence(correction.Description)));
            WriteTexts("edits", correction.Edits.Take(8).Select(TextReport.WordsOf));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (finding.Folded.Count > 0)
        {
            json.WriteStartArray("follows");
            foreach (var folded in finding.Folded) WriteFinding(folded, isOwn);
            json.WriteEndArray();
        }

        json.WriteEndObject();
    }
}
