using System.Text.Json;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Service;
using SpecLint.Tool.Editor.Protocol;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Editor.Features;

/// <summary>Figures beside the lines of a recipe, where the settings ask for them: what an item comes to, and its share of the whole.</summary>
internal sealed class HintFeature(Session session) : Feature(session)
{
    public override IReadOnlyList<string> Methods => ["textDocument/inlayHint"];

    public override void WriteCapability(Utf8JsonWriter json, Client client) => json.WriteBoolean("inlayHintProvider", true);

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        json.WriteStartArray("result");
        if (Session.Client.InlayHints && Session.Find(Lsp.AddressIn(parameters)) is (var book, Recipe recipe))
        {
            var range = parameters.GetProperty("range");
            int from = recipe.Source.OffsetOf(Lsp.PositionOf(range.GetProperty("start"))),
                to = recipe.Source.OffsetOf(Lsp.PositionOf(range.GetProperty("end")));
            var profile = book.Profiles.Of(recipe);
            foreach (var part in profile.Parts)
            {
                if (part.Line.Span.End < from || part.Line.Span.Start > to) continue;
                if (part.Item is { } item && part.Line.Item.IsGiven)
                    Hint(json, recipe, part.Line.Item.Span, ItemWords.MakeUp(MakeUp.Of(item, book.Profiles)));
                bool counts = part.Phase is Profile.PartPhase.Mix or Profile.PartPhase.TakenOut
                    && part.IsWeighed
                    && part.Line.Amount.IsGiven
                    && !part.Line.Share.IsGiven;
                if (counts && profile.InputMass > 0)
                    Hint(json, recipe, part.Line.Amount.Span, $"{Say.Number(100 * part.Grams.Typical / profile.InputMass, 1)} % w/w");
            }
        }

        json.WriteEndArray();
    }

    private static void Hint(Utf8JsonWriter json, BookFile file, TextSpan behind, string label)
    {
        if (label.Length == 0) return;
        json.WriteStartObject();
        json.Position("position", file.At(behind).End);
        json.WriteString("label", label);
        json.WriteBoolean("paddingLeft", true);
        json.WriteEndObject();
    }
}
