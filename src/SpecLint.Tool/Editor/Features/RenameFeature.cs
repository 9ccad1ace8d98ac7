using System.Text.Json;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor.Features;

/// <summary>Gives a thing another id wherever it is named: in recipes, menus and stock; of a recipe or ingredient the file too.</summary>
internal sealed class RenameFeature(Session session) : Feature(session)
{
    public override IReadOnlyList<string> Methods => ["textDocument/prepareRename", "textDocument/rename"];

    public override void WriteCapability(Utf8JsonWriter json, Client client)
    {
        json.WriteStartObject("renameProvider");
        json.WriteBoolean("prepareProvider", true);
        json.WriteEndObject();
    }

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        var found = Session.At(parameters) is var (book, file, offset) && ReferenceFeature.ThingAt(file, offset) is { } thing
            ? (Book: book, File: file, Offset: offset, Thing: thing)
            : default;
        if (found.Book is null) throw new RequestException("There is no name here that could be changed.");
        var item = found.Thing.Kind == NamedKind.Item ? found.Book.Linked.Resolve(found.Thing.Id) : null;
        if (WhyNot(found.Book, found.Thing, item) is { } reason) throw new RequestException(reason);
        if (method == "textDocument/prepareRename")
        {
            var here = References.At(found.File, found.Offset)?.Place ?? found.File.At(found.File.Name.Span);
            json.WriteStartObject("result");
            json.Range("range", WithoutQuotes(here));
            json.WriteString("placeholder", found.Thing.Id);
            json.WriteEndObject();
            return;
        }

        Rename(json, found.Book, found.Thing, item, Lsp.TextOf(parameters, "newName"));
    }

    private void Rename(Utf8JsonWriter json, OpenBook book, Named thing, Item? item, string name)
    {
        if (thing.Kind is NamedKind.Item or NamedKind.Glass or NamedKind.Meter or NamedKind.Vessel && !FileKinds.IsId(name))
            throw new RequestException($"`{name}` is not an id. Use lower-case letters, digits and hyphens.");
        if (thing.Kind == NamedKind.Item && book.Linked.Resolve(name) is { } taken)
            throw new RequestException(taken.IsBuiltIn
                ? $"`{name}` is the id of an ingredient of the catalogue."
                : $"`{name}` is the id of {taken.File.Source.Path}.");
        if (thing.Kind != NamedKind.Item && References.Of(book, new Named(thing.Kind, name)).Any(p => p.MakesIt))
            throw new RequestException($"`{name}` is taken.");
        json.WriteStartObject("result");
        json.WriteStartArray("documentChanges");
        foreach (var inFile in References.Of(book, thing).GroupBy(p => p.Place.File))
        {
            json.WriteStartObject();
            json.WriteStartObject("textDocument");
            json.WriteString("uri", Session.AddressOf(book, inFile.Key));
            if (Session.Books.DocumentAt(book.FullPath(inFile.Key.Path)) is { } document) json.WriteNumber("version", document.Version);
            else json.WriteNull("version");
            json.WriteEndObject();
            json.WriteStartArray("edits");
            foreach (var place in inFile) json.Edit(new TextEdit(WithoutQuotes(place.Place), name));
            json.WriteEndArray();
            json.WriteEndObject();
        }

        if (item is { ByProduct: null })
        {
            string old = book.FullPath(item.File.Source.Path);
            json.WriteStartObject();
            json.WriteString("kind", "rename");
            json.WriteString("oldUri", Session.AddressOf(book, item.File.Source));
            json.WriteString("newUri", new Uri(Path.Combine(Path.GetDirectoryName(old)!, name + FileKinds.EndingOf(item.File.Kind))).AbsoluteUri);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private string? WhyNot(OpenBook book, Named thing, Item? item) => thing.Kind switch
    {
        NamedKind.Rule => "The id of a rule cannot be changed.",
        NamedKind.Item when item is null => $"`{thing.Id}` is in no file of the book.",
        NamedKind.Item when item.IsBuiltIn => $"`{thing.Id}` is in the catalogue. Name another item, or write a file for your own.",
        NamedKind.Item when item.ByProduct is null && !Session.Client.RenamesFiles =>
            "This editor does not rename files for a server, so the file's name cannot be changed with its id.",
        NamedKind.Item => null,
        _ => References.Of(book, thing).Any(p => p.MakesIt) ? null : $"`{thing.Id}` is made nowhere in the book.",
    };

    private static Place WithoutQuotes(Place place)
    {
        var text = place.File.Utf8.Span;
        return text[place.Span.Start] == (byte)'"'
            ? new Place(place.File, new TextSpan(place.Span.Start + 1, Math.Max(0, place.Span.Length - 2)))
            : place;
    }
}
