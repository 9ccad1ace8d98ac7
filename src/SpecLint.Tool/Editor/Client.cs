using System.Text.Json;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor;

/// <summary>What the editor can do, and what it asks for, as it says in <c>initialize</c>.</summary>
internal sealed class Client
{
    /// <summary>An editor that says nothing.</summary>
    public static readonly Client Plain = new(default);

    public Client(JsonElement parameters)
    {
        var can = parameters.At("capabilities");
        PullsDiagnostics = can.At("textDocument", "diagnostic").ValueKind == JsonValueKind.Object;
        RefreshesDiagnostics = PullsDiagnostics && can.Says("workspace", "diagnostics", "refreshSupport");
        RegistersWatchers = can.Says("workspace", "didChangeWatchedFiles", "dynamicRegistration");
        TakesSnippets = can.Says("textDocument", "completion", "completionItem", "snippetSupport");
        RefreshesHints = can.Says("workspace", "inlayHint", "refreshSupport");
        var resolved = can.At("textDocument", "codeAction", "resolveSupport", "properties");
        ResolvesActions = resolved.ValueKind == JsonValueKind.Array && can.Says("textDocument", "codeAction", "dataSupport")
            && resolved.EnumerateArray().Any(static p => p.ValueKind == JsonValueKind.String && p.ValueEquals("edit"));
        var operations = can.At("workspace", "workspaceEdit", "resourceOperations");
        if (operations.ValueKind == JsonValueKind.Array && can.Says("workspace", "workspaceEdit", "documentChanges"))
        {
            foreach (var operation in operations.EnumerateArray())
            {
                if (operation.ValueKind != JsonValueKind.String) continue;
                if (operation.ValueEquals("rename")) RenamesFiles = true;
                if (operation.ValueEquals("create")) CreatesFiles = true;
            }
        }

        Take(parameters.At("initializationOptions"));
        Folders = FoldersIn(parameters);
    }

    /// <summary>Whether it asks for diagnostics instead of being sent them.</summary>
    public bool PullsDiagnostics { get; }

    /// <summary>Whether it can be told to ask again.</summary>
    public bool RefreshesDiagnostics { get; }

    /// <summary>Whether it watches files for a server that asks it to.</summary>
    public bool RegistersWatchers { get; }

    /// <summary>Whether completions may hold places to fill in.</summary>
    public bool TakesSnippets { get; }

    /// <summary>Whether inlay hints can be asked for again.</summary>
    public bool RefreshesHints { get; }

    /// <summary>Whether it asks for the edit of an action once the action is chosen.</summary>
    public bool ResolvesActions { get; }

    /// <summary>Whether an edit may rename files.</summary>
    public bool RenamesFiles { get; }

    /// <summary>Whether an edit may create files.</summary>
    public bool CreatesFiles { get; }

    /// <summary>Full paths of its folders.</summary>
    public IReadOnlyList<string> Folders { get; private set; }

    /// <summary>Whether the findings of the whole book are wanted before a file of it is opened.</summary>
    public bool WholeBook { get; private set; }

    /// <summary>Whether inlay hints are wanted.</summary>
    public bool InlayHints { get; private set; }

    /// <summary>Web address of the folder with the rule pages; <see langword="null"/> where none is given.</summary>
    public Uri? RulePages { get; private set; }

    /// <summary>Takes settings: <c>wholeBook</c>, <c>inlayHints</c>, <c>rulePages</c>.</summary>
    public void Take(JsonElement settings)
    {
        if (settings.ValueKind != JsonValueKind.Object) return;
        WholeBook = Flag(settings, "wholeBook", WholeBook);
        InlayHints = Flag(settings, "inlayHints", InlayHints);
        if (settings.At("rulePages") is { ValueKind: JsonValueKind.String } pages
            && Uri.TryCreate(pages.GetString(), UriKind.Absolute, out var address)
            && address.Scheme is "https" or "http")
            RulePages = address.AbsoluteUri.EndsWith('/') ? address : new Uri(address.AbsoluteUri + "/");
    }

    /// <summary>Takes folders that came and went (workspace/didChangeWorkspaceFolders).</summary>
    /// <returns>Full paths of those that came and of those that went.</returns>
    public (IReadOnlyList<string> Came, IReadOnlyList<string> Went) TakeFolders(JsonElement change)
    {
        List<string> came = PathsOf(change.At("added")), went = PathsOf(change.At("removed"));
        Folders = [.. Folders.Except(went, StringComparer.Ordinal).Union(came, StringComparer.Ordinal)];
        return (came, went);
    }

    private static List<string> PathsOf(JsonElement folders) => folders.ValueKind != JsonValueKind.Array ? []
        : [.. folders.EnumerateArray().Select(static f => f.At("uri")).Select(PathOf).OfType<string>()];

    private static string? PathOf(JsonElement address) => address.ValueKind == JsonValueKind.String ? Addresses.PathOf(address.GetString()!) : null;

    private static bool Flag(JsonElement settings, string name, bool before) => settings.At(name).ValueKind switch
    {
        JsonValueKind.True => true,
        JsonValueKind.False => false,
        _ => before,
    };

    private static List<string> FoldersIn(JsonElement parameters) =>
        parameters.At("workspaceFolders") is { ValueKind: JsonValueKind.Array } given ? PathsOf(given)
        : PathOf(parameters.At("rootUri")) is { } root ? [root] : [];
}
