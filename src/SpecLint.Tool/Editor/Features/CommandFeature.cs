using System.Text.Json;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Reports;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor.Features;

/// <summary>
/// Commands about a recipe. Each gives back <c>{ title, language, text }</c>, which the editor shows as a document of its own;
/// nothing is written.
/// </summary>
internal sealed class CommandFeature(Session session) : Feature(session)
{
    private const string Profile = "speclint.profile", Compare = "speclint.compare", Card = "speclint.card";

    /// <summary>The commands, with what a person reads.</summary>
    public static readonly IReadOnlyList<(string Command, string Title)> Commands =
        [(Profile, "Profile"), (Compare, "Compare with the last commit"), (Card, "Spec card")];

    public override IReadOnlyList<string> Methods => ["workspace/executeCommand"];

    public override void WriteCapability(Utf8JsonWriter json, Client client)
    {
        json.WriteStartObject("executeCommandProvider");
        json.WriteStartArray("commands");
        foreach (var (command, _) in Commands) json.WriteStringValue(command);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        string command = Lsp.TextOf(parameters, "command");
        var arguments = parameters.At("arguments");
        string address = arguments.ValueKind == JsonValueKind.Array && arguments.GetArrayLength() > 0 ? arguments[0].GetString() ?? "" : "";
        if (Session.Find(address) is not (var book, Recipe recipe)) throw new RequestException("The command needs the address of an open recipe.");
        Session.Publisher.Publish(book, book.Settle());
        var text = new StringWriter { NewLine = "\n" };
        string language = "markdown", name = recipe.Name.Or(recipe.Id);
        switch (command)
        {
            case Profile:
                text.Write(ItemMarkdown.Of(new Item(recipe.Id, recipe, null, IsBuiltIn: false), book.Profiles, book.Verdicts, DisplayUnits.Metric));
                break;
            case Compare:
                var old = Checker.Check(new BookInput(GitBook.Read(book.Root, "HEAD"), book.Day) { HouseSchemas = book.Linked.HouseSchemas });
                var now = Checker.Check(new BookInput(
                    [.. book.Linked.Files.Select(f => f.Source)], book.Day)
                {
                    HouseSchemas = book.Linked.HouseSchemas,
                    Earlier = old.Book,
                });
                ComparisonReport.WriteMarkdown(text, Comparison.Of(old, now), DisplayUnits.Metric);
                break;
            case Card:
                language = "html";
                CardPage.WriteCards(text, book.Verdicts, [recipe], CardPaper.A4, DisplayUnits.Metric, Shell.Version);
                break;
            default:
                throw new RequestException($"{command} is not a command of this server.");
        }

        json.WriteStartObject("result");
        json.WriteString("title", $"{name}: {Commands.First(c => c.Command == command).Title}");
        json.WriteString("language", language);
        json.WriteString("text", text.ToString());
        json.WriteEndObject();
    }
}
