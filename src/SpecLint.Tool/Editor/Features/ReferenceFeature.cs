using System.Text.Json;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor.Features;

/// <summary>Where a thing is made, and all places that name it.</summary>
internal sealed class ReferenceFeature(Session session) : Feature(session)
{
    public override IReadOnlyList<string> Methods => ["textDocument/definition", "textDocument/references", "textDocument/documentHighlight"];

    public override void WriteCapability(Utf8JsonWriter json, Client client)
    {
        json.WriteBoolean("definitionProvider", true);
        json.WriteBoolean("referencesProvider", true);
        json.WriteBoolean("documentHighlightProvider", true);
    }

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        json.WriteStartArray("result");
        if (Session.At(parameters) is var (book, file, offset) && ThingAt(file, offset) is { } thing)
        {
            var places = method switch
            {
                "textDocument/definition" => MadeAt(book, thing),
                "textDocument/documentHighlight" => References.In(file).Where(p => p.Thing == thing).Select(p => p.Place),
                _ =>
                    (parameters.Says("context", "includeDeclaration")
                        ? MadeAt(book, thing)
                        : []).Concat(References.Of(book, thing).Where(p => !p.MakesIt).Select(p => p.Place)),
            };
            foreach (var place in places.Distinct())
            {
                if (method != "textDocument/documentHighlight")
                {
                    json.Location(Session.AddressOf(book, place.File), place);
                    continue;
                }

                json.WriteStartObject();
                json.Range("range", place);
                json.WriteEndObject();
            }
        }

        json.WriteEndArray();
    }

    /// <summary>The thing that is named at a place; at the name of a file, what the file is about.</summary>
    public static Named? ThingAt(BookFile file, int offset)
    {
        if (References.At(file, offset) is { } place) return place.Thing;
        bool atName = file is Recipe or Ingredient && file.Name.IsGiven && file.Name.Span.Start <= offset && offset <= file.Name.Span.End;
        return atName ? new Named(NamedKind.Item, file.Id) : null;
    }

    /// <summary>Where a thing is made; of the catalogue nowhere in the book.</summary>
    public static IEnumerable<Place> MadeAt(OpenBook book, Named thing)
    {
        if (thing.Kind != NamedKind.Item)
            return References.Of(book, thing)
                .Where(p => p.MakesIt || thing.Kind == NamedKind.Rule && p.Place.File == book.Linked.Settings.Bar?.Source)
                .Select(p => p.Place);
        return book.Linked.Resolve(thing.Id) switch
        {
            { IsBuiltIn: false, ByProduct: { } left } item => [item.File.At(left.Id.Span)],
            { IsBuiltIn: false } item => [item.File.Head],
            _ => [],
        };
    }
}
