using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.RegularExpressions;
using Json.Schema;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tool;

/// <summary>Runs the schemas of the house by JsonSchema.Net, and says what they find in our words, at our places.</summary>
/// <remarks>
/// Only the verdict is taken from the library: its sentences speak of subschemas, its places are pointers without lines.
/// Mentioning its types costs start-up time, so that nothing else of the tool does.
/// </remarks>
internal sealed class HouseSchemas : IHouseSchemaCheck
{
    private const int MostProblems = 50;

    private static readonly JsonDocumentOptions Lenient = new()
    {
        AllowTrailingCommas = true,
        CommentHandling = JsonCommentHandling.Skip,
        MaxDepth = JsonTree.DeepestNesting,
    };

    static HouseSchemas() => SchemaEngine.Initialize(null);

    private readonly Dictionary<FileKind, HouseSchema> schemas = [];
    private readonly TimeSpan budget;

    /// <param name="budget">How long a schema may take over one file; 5 s where none is given. A schema can be written, or
    /// mistakenly be, so that a short text takes for ever: a pattern that backtracks, say.</param>
    public HouseSchemas(TimeSpan? budget = null) => this.budget = budget ?? TimeSpan.FromSeconds(5);

    /// <summary>
    /// The dialects and meta-schemas of the library, which it loads when its assembly is. The native tool would do so at every start,
    /// at a tenth of its time over one file, so that there the start is left out (<c>JsonSchema.Net.Substitutions.xml</c>) and
    /// made up for here; where it has been done, this does nothing.
    /// </summary>
    private static class SchemaEngine
    {
        [UnsafeAccessor(UnsafeAccessorKind.StaticMethod)]
        public static extern void Initialize([UnsafeAccessorType("Json.Schema.__ModuleInitialization, JsonSchema.Net")] object? of);
    }

    /// <summary>Takes a schema of the house.</summary>
    /// <param name="kind">The kind of file that it is for.</param>
    /// <param name="source">Its text.</param>
    /// <returns>Why it cannot be used, in one sentence; <see langword="null"/> where it can.</returns>
    public string? Add(FileKind kind, SourceFile source)
    {
        var problems = new List<ReadingProblem>();
        var tree = JsonTree.Parse(source, problems);
        if (problems.Count > 0)
        {
            var at = source.PositionOf(problems[0].Span.Start);
            return string.Create(
                CultureInfo.InvariantCulture,
                $"The schema {source.Path} cannot be read (line {at.Line}, column {at.Column}): {problems[0].Message}");
        }

        if (SchemaCost.Trouble(tree) is { } cost) return $"The schema {source.Path} cannot be used: {cost}.";
        try
        {
            // A registry of its own: two books in one process must not meet.
            var schema = JsonSchema.FromText(Utf8(source), new BuildOptions { SchemaRegistry = new SchemaRegistry() }, null, Lenient);
            using var nothing = JsonDocument.Parse("{}");
            var empty = nothing.RootElement.Clone();
            if (!WithinBudget(() => schema.Evaluate(empty), out _))
                return $"The schema {source.Path} cannot be used: it takes too long even over an empty file.";
            schemas[kind] = new HouseSchema(schema, tree);
            return null;
        }
        catch (Exception unusable) when (unusable is not OutOfMemoryException)
        {
            string reason = unusable is RefResolutionException ? "it refers to something outside of it" : "it is no JSON Schema that can be run";
            return $"The schema {source.Path} cannot be used: {reason}.";
        }
    }

    /// <inheritdoc/>
    public IReadOnlyList<ReadingProblem> Check(BookFile file)
    {
        if (!schemas.TryGetValue(file.Kind, out var house) || file.Tree is not { IsWhole: true } tree) return [];
        if (house.TookTooLong) return [];
        try
        {
            JsonElement text;
            using (var document = JsonDocument.Parse(file.Source.Utf8[file.Source.ByteOrderMarkLength..], Lenient))
                text = document.RootElement.Clone();
            EvaluationResults? results;
            try
            {
                if (!WithinBudget(
                    () => house.Schema.Evaluate(text, new EvaluationOptions { OutputFormat = OutputFormat.Hierarchical }), out results))
                    return [GivenUp(house, file)];
            }
            catch (RegexMatchTimeoutException)
            {
                return [GivenUp(house, file)];
            }

            if (results is null || results.IsValid) return [];
            var problems = new List<ReadingProblem>();
            new Walk(tree, house.Tree, problems).Visit(results);
            problems.Sort((a, b) =>
                a.Span.Start != b.Span.Start
                    ? a.Span.Start.CompareTo(b.Span.Start)
                    : string.CompareOrdinal(a.Message, b.Message));
            return problems;
        }
        catch (Exception failed) when (failed is JsonException or InvalidOperationException or JsonSchemaException
            or RefResolutionException or ArgumentException)
        {
            return
            [
                new ReadingProblem(
                    ReadingProblemKind.HouseSchema,
                    file.Head.Span,
                    "",
                    "The schema of the house could not be run on this file.",
                    "Check the schema with a small file; nothing of it was checked here."),
            ];
        }
    }

    /// <summary>It is not run again: what it costs is paid once, whatever the number of files.</summary>
    private ReadingProblem GivenUp(HouseSchema house, BookFile file)
    {
        house.TookTooLong = true;
        return new ReadingProblem(
            ReadingProblemKind.HouseSchema,
            file.Head.Span,
            "",
            "The schema of the house takes too long over this file. It was stopped after some seconds, and is not run on further files.",
            "Look for a pattern with a repetition within a repetition, such as (a+)+.");
    }

    /// <summary>Evaluates on a thread of its own, and leaves it behind where it takes too long: the engine cannot be stopped.</summary>
    private bool WithinBudget(Func<EvaluationResults> evaluate, out EvaluationResults? results)
    {
        EvaluationResults? made = null;
        System.Runtime.ExceptionServices.ExceptionDispatchInfo? fault = null;
        var worker = new Thread(() =>
        {
            try
            {
                made = evaluate();
            }
#pragma warning disable CA1031 // Whatever it is, it belongs to the thread that waits.
            catch (Exception e)
#pragma warning restore CA1031
            {
                fault = System.Runtime.ExceptionServices.ExceptionDispatchInfo.Capture(e);
            }
        })
        {
            IsBackground = true,
        };
        worker.Start();
        bool ended = worker.Join(budget);
        if (ended) fault?.Throw();
        results = ended ? made : null;
        return ended;
    }

    private static string Utf8(SourceFile source) => System.Text.Encoding.UTF8.GetString(source.Utf8.Span[source.ByteOrderMarkLength..]);

    private sealed record HouseSchema(JsonSchema Schema, JsonTree Tree)
    {
        /// <summary>Whether it was given up.</summary>
        public bool TookTooLong { get => Volatile.Read(ref tookTooLong); set => Volatile.Write(ref tookTooLong, value); }

        private bool tookTooLong;
    }

    private sealed class Walk(JsonTree file, JsonTree schema, List<ReadingProblem> problems)
    {
        public void Visit(EvaluationResults result)
        {
            if (result.IsValid || problems.Count >= MostProblems) return;
            var place = Resolve(file.Root, result.InstanceLocation.ToString());
            var rule = Resolve(schema.Root, Fragment(result.SchemaLocation));
            var said = new HashSet<string>(StringComparer.Ordinal);
            foreach (var (keyword, _) in result.Errors ?? [])
            {
                if (said.Add(keyword)) Say(place, rule, keyword);
            }

            if (result.Details is null) return;
            string own = result.EvaluationPath.ToString();
            foreach (var group in result.Details.GroupBy(detail => KeywordBelow(own, detail.EvaluationPath.ToString()), StringComparer.Ordinal))
            {
                switch (group.Key)
                {
                    // Branches: those that fail say nothing by themselves, the whole does.
                    case "anyOf" or "oneOf":
                        int fitting = group.Count(detail => detail.IsValid);
                        bool holds = group.Key == "anyOf" ? fitting > 0 : fitting == 1;
                        if (!holds && said.Add(group.Key)) Say(place, rule, group.Key);
                        break;
                    case "not":
                        if (group.Any(detail => detail.IsValid) && said.Add(group.Key)) Say(place, rule, group.Key);
                        break;
                    case "if" or "contains" or "propertyNames":
                        if (group.Key == "propertyNames" && group.Any(detail => !detail.IsValid) && said.Add(group.Key)) Say(place, rule, group.Key);
                        break;
                    default:
                        foreach (var detail in group) Visit(detail);
                        break;
                }
            }
        }

        private void Say(JsonNode place, JsonNode rule, string keyword)
        {
            if (!place.Exists || problems.Count >= MostProblems) return;
            rule.TryGetProperty(System.Text.Encoding.UTF8.GetBytes(keyword), out var limit);
            string what = Describe(place);
            string shown = Shorten(place.Kind is JsonKind.Object or JsonKind.Array ? "" : place.GetString());
            string asked = limit.Exists ? Shorten(limit.GetString()) : "";
            switch (keyword)
            {
                case "required":
                    foreach (var name in limit.Items)
                    {
                        if (place.TryGetProperty(System.Text.Encoding.UTF8.GetBytes(name.GetString()), out _)) continue;
                        string missing = place.Parent.Exists ? $"`{name.GetString()}` of {what}" : $"`{name.GetString()}`";
                        Add(
                            place, $"{missing} is missing.", Advice(rule, "The schema of the house asks for it."),
                            place.Path.Length > 0 ? place.Path + "." + name.GetString() : name.GetString());
                    }

                    return;
                case "":
                    Add(place, $"{what} is not wanted.", "The schema of the house does not allow it.", atName: true);
                    return;
                case "enum":
                    Add(place, $"{what} is `{shown}`.", Advice(rule, $"The schema of the house allows: {Shorten(Join(limit))}."));
                    return;
                case "const":
                    Add(place, $"{what} is `{shown}`.", Advice(rule, $"The schema of the house allows only `{asked}`."));
                    return;
                case "type":
                    Add(
                        place, $"{what} is of another type than the schema of the house asks for.",
                        Advice(rule, $"It asks for: {(limit.Kind == JsonKind.Array ? Join(limit) : asked)}."));
                    return;
                case "pattern" or "format":
                    Add(
                        place, $"{what} is written otherwise than the schema of the house asks for: `{shown}`.",
                        Advice(rule, $"It asks for the {keyword} `{asked}`."));
                    return;
                case "minimum" or "exclusiveMinimum":
                    Add(
                        place,
                        $"{what} is {shown}, too little for the schema of the house.",
                        Advice(rule, keyword == "minimum" ? $"It asks for at least {asked}." : $"It asks for more than {asked}."));
                    return;
                case "maximum" or "exclusiveMaximum":
                    Add(
                        place,
                        $"{what} is {shown}, too much for the schema of the house.",
                        Advice(rule, keyword == "maximum" ? $"It allows {asked} at most." : $"It allows less than {asked}."));
                    return;
                case "minLength" or "minItems" or "minProperties":
                    Add(place, $"{what} is shorter than the schema of the house asks for.", Advice(rule, $"It asks for at least {asked}."));
                    return;
                case "maxLength" or "maxItems" or "maxProperties":
                    Add(place, $"{what} is longer than the schema of the house allows.", Advice(rule, $"It allows {asked} at most."));
                    return;
                case "anyOf" or "oneOf":
                    Add(
                        place,
                        $"{what} fits none of the ways, or more than the one way, that the schema of the house allows.",
                        Advice(rule, "Compare it with a file of the house that passes."));
                    return;
                case "contains" or "minContains" or "maxContains":
                    Add(
                        place, $"{what} lacks an item that the schema of the house asks for, or has too many of them.",
                        Advice(rule, "Compare it with a file of the house that passes."));
                    return;
                default:
                    Add(
                        place, $"{what} does not keep to `{keyword}` of the schema of the house.",
                        Advice(rule, "Compare it with a file of the house that passes."));
                    return;
            }
        }

        private void Add(JsonNode place, string message, string advice, string? path = null, bool atName = false)
        {
            if (problems.Count >= MostProblems) return;
            bool container = place.Kind is JsonKind.Object or JsonKind.Array;
            var span = (atName || container) && place.HasName
                ? place.NameSpan
                : container && !place.Parent.Exists ? new TextSpan(place.Span.Start, 1) : place.Span;
            problems.Add(new ReadingProblem(
                ReadingProblemKind.HouseSchema, span, path ?? place.Path, char.ToUpperInvariant(message[0]) + message[1..], advice));
        }

        /// <summary>The author's own words, where the schema has some.</summary>
        private static string Advice(JsonNode rule, string otherwise)
        {
            if (!rule.TryGetProperty("description"u8, out var own) || own.Kind != JsonKind.String) return otherwise;
            string text = own.GetString().Trim();
            return text.Length == 0 ? otherwise : $"{otherwise} The house says: {Shorten(text.TrimEnd('.'))}.";
        }

        private static string Describe(JsonNode place) => PlaceName.Of(place);

        private static string Join(JsonNode list)
        {
            var words = new List<string>();
            foreach (var item in list.Items) words.Add(item.GetString());
            return string.Join(", ", words);
        }

        private static string Shorten(string text) => text.Length <= 120 ? text : text[..120] + "…";

        private static string Fragment(Uri? location)
        {
            if (location is null) return "";
            string address = location.OriginalString;
            int sharp = address.IndexOf('#', StringComparison.Ordinal);
            return sharp < 0 ? "" : Uri.UnescapeDataString(address[(sharp + 1)..]);
        }

        /// <summary>The keyword by which a result hangs below another: the part of its path behind the other's.</summary>
        private static string KeywordBelow(string own, string below)
        {
            if (!below.StartsWith(own, StringComparison.Ordinal) || below.Length <= own.Length + 1) return "";
            string rest = below[(own.Length + 1)..];
            int end = rest.IndexOf('/', StringComparison.Ordinal);
            return end < 0 ? rest : rest[..end];
        }

        private static JsonNode Resolve(JsonNode from, string pointer)
        {
            var node = from;
            foreach (string part in pointer.Split('/').Skip(1))
            {
                string name = part.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);
                if (node.Kind == JsonKind.Array)
                {
                    if (!int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out int index)) return default;
                    node = node.FirstChild;
                    for (; index > 0 && node.Exists; index--) node = node.Next;
                }
                else if (!node.TryGetProperty(System.Text.Encoding.UTF8.GetBytes(name), out node))
                {
                    return default;
                }
            }

            return node;
        }
    }
}
