using System.Text.Json;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor.Features;

/// <summary>What can be done about a finding: its corrections, each with its effect; to accept it; to write the file that is missing.</summary>
internal sealed class ActionFeature(Session session) : Feature(session)
{
    /// <summary>Days for which an acceptance is proposed: a season, after which somebody looks again.</summary>
    private const int DaysAccepted = 90;

    /// <summary>Kind of an action that writes something anew (Language Server Protocol 3.17, CodeActionKind).</summary>
    private const string Rewrite = "refactor.rewrite";

    public override IReadOnlyList<string> Methods => ["textDocument/codeAction", "codeAction/resolve"];

    public override void WriteCapability(Utf8JsonWriter json, Client client)
    {
        json.WriteStartObject("codeActionProvider");
        json.WriteStartArray("codeActionKinds");
        json.WriteStringValue("quickfix");
        json.WriteStringValue(Rewrite);
        json.WriteEndArray();
        json.WriteBoolean("resolveProvider", true);
        json.WriteEndObject();
    }

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        if (method == "codeAction/resolve")
        {
            Resolve(json, parameters);
            return;
        }

        json.WriteStartArray("result");
        var range = parameters.GetProperty("range");
        LinePosition from = Lsp.PositionOf(range.GetProperty("start")), to = Lsp.PositionOf(range.GetProperty("end"));
        if (Session.Find(Lsp.AddressIn(parameters)) is (var book, var file))
        {
            Session.CheckNow(book, file);
            var here = book.Live.FindingsIn(file.Source.Path).Flat()
                .Where(f => f.Place.File.Path == file.Source.Path && Meets(f.Place, from, to)).ToList();
            foreach (var finding in here)
            {
                foreach (var correction in finding.Corrections) Correct(json, book, finding, correction);
            }

            foreach (var finding in here) Create(json, book, finding);
            if (file is Recipe recipe && SolveActions.IsPlaceOf(recipe, p => Meets(p, from, to))) Solve(json, book, recipe);
            foreach (var finding in here.DistinctBy(f => f.Rule.Id)) Accept(json, book, file, finding);
        }

        json.WriteEndArray();
    }

    private static bool Meets(Place place, LinePosition from, LinePosition to) => Compare(place.Start, to) <= 0 && Compare(from, place.End) <= 0;

    private static int Compare(LinePosition a, LinePosition b) => a.Line != b.Line ? a.Line.CompareTo(b.Line) : a.Column.CompareTo(b.Column);

    private void Correct(Utf8JsonWriter json, OpenBook book, Finding finding, Correction correction)
    {
        bool assured = correction.Grade == CorrectionGrade.Assured;
        string effect = CorrectionEffect.Of(book, correction);
        string title = $"{(assured ? "" : "Proposed: ")}{correction.Description.TrimEnd('.')}{(effect.Length > 0 ? $" ({effect})" : "")}";
        Begin(json, book, finding, title, isPreferred: assured);
        WriteEdits(json, book, correction.Edits);
        json.WriteEndObject();
    }

    /// <summary>
    /// Targets of the recipe's own that it does not reach. Solving takes longer than offering: where the editor asks for the edit once
    /// one is chosen, it is solved then.
    /// </summary>
    private void Solve(Utf8JsonWriter json, OpenBook book, Recipe recipe)
    {
        foreach (var action in SolveActions.For(book, recipe))
        {
            IReadOnlyList<TextEdit>? edits = null;
            if (!Session.Client.ResolvesActions)
            {
                try
                {
                    edits = SolveActions.Solve(book, recipe, action);
                }
                catch (RequestException)
                {
                    // What cannot be reached is not offered.
                    continue;
                }
            }

            WriteSolve(json, book, recipe, action, edits);
        }
    }

    private void Resolve(Utf8JsonWriter json, JsonElement chosen)
    {
        json.WritePropertyName("result");
        var data = chosen.At("data");
        if (data.ValueKind != JsonValueKind.Object)
        {
            chosen.WriteTo(json);
            return;
        }

        string solve = Lsp.TextOf(data, "solve");
        if (Session.Find(Lsp.TextOf(data, "uri")) is not (var book, Recipe recipe)) throw new RequestException("The action needs an open recipe.");
        var action = SolveActions.For(book, recipe).FirstOrDefault(a => a.Id == solve) ?? throw new RequestException("The recipe has changed since.");
        WriteSolve(json, book, recipe, action, SolveActions.Solve(book, recipe, action));
    }

    private void WriteSolve(Utf8JsonWriter json, OpenBook book, Recipe recipe, SolveAction action, IReadOnlyList<TextEdit>? edits)
    {
        json.WriteStartObject();
        json.WriteString("title", DisplayText.Escape(action.Title));
        json.WriteString("kind", Rewrite);
        json.WriteStartObject("data");
        json.WriteString("uri", Session.AddressOf(book, recipe.Source));
        json.WriteString("solve", action.Id);
        json.WriteEndObject();
        if (edits is not null) WriteEdits(json, book, edits);
        json.WriteEndObject();
    }

    private void Begin(Utf8JsonWriter json, OpenBook book, Finding finding, string title, bool isPreferred)
    {
        json.WriteStartObject();
        json.WriteString("title", DisplayText.Escape(title));
        json.WriteString("kind", "quickfix");
        if (isPreferred) json.WriteBoolean("isPreferred", true);
        json.WriteStartArray("diagnostics");
        Session.Publisher.Write(json, book, finding);
        json.WriteEndArray();
    }

    private void WriteEdits(Utf8JsonWriter json, OpenBook book, IReadOnlyList<TextEdit> edits)
    {
        json.WriteStartObject("edit");
        json.WriteStartObject("changes");
        foreach (var inFile in edits.GroupBy(e => Session.AddressOf(book, e.Place.File), StringComparer.Ordinal))
        {
            json.WriteStartArray(inFile.Key);
            foreach (var edit in inFile) json.Edit(edit);
            json.WriteEndArray();
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>Accepting a finding leaves its reason to be written: without one, nothing is accepted.</summary>
    private void Accept(Utf8JsonWriter json, OpenBook book, BookFile file, Finding finding)
    {
        if (file.Accept.Any(a => a.Rule.IsGiven && a.Rule.Value == finding.Rule.Id)) return;
        var until = book.Day.AddDays(DaysAccepted);
        if (FileEdits.AddToArray(file, "accept", $"{{ \"rule\": \"{finding.Rule.Id}\", \"because\": \"\", \"until\": \"{until}\" }}")
            is not { } edit) return;
        Begin(json, book, finding, $"Accept {finding.Rule.Id} until {until}: write the reason", isPreferred: false);
        WriteEdits(json, book, [edit]);
        json.WriteEndObject();
    }

    private void Create(Utf8JsonWriter json, OpenBook book, Finding finding)
    {
        if (!Session.Client.CreatesFiles || finding.Rule.Id != "SL9001") return;
        string id = finding.Place.File.TextOf(finding.Place.Span).Trim('"');
        if (!FileKinds.IsId(id)) return;
        string name = char.ToUpperInvariant(id[0]) + id[1..].Replace('-', ' ');
        foreach (var (kind, what) in new[] { (FileKind.Ingredient, "ingredient"), (FileKind.Prep, "preparation") })
        {
            string folder = Path.GetDirectoryName(book.FullPath(finding.Place.File.Path))!;
            string address = new Uri(Path.Combine(folder, id + FileKinds.EndingOf(kind))).AbsoluteUri;
            Begin(json, book, finding, $"Write a file for the {what} `{id}`", isPreferred: false);
            json.WriteStartObject("edit");
            json.WriteStartArray("documentChanges");
            json.WriteStartObject();
            json.WriteString("kind", "create");
            json.WriteString("uri", address);
            json.WriteEndObject();
            json.WriteStartObject();
            json.WriteStartObject("textDocument");
            json.WriteString("uri", address);
            json.WriteNull("version");
            json.WriteEndObject();
            json.WriteStartArray("edits");
            var start = new Place(new SourceFile("", default), default);
            json.Edit(new TextEdit(start, NewFile.Of(book.Profiles, new NewFileRequest(kind, name, [])).Text));
            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteEndObject();
        }
    }
}
