using System.Globalization;
using System.Text;
using SpecLint.Reading;

namespace SpecLint.Tool;

/// <summary>Whether the references of a schema lead round in a circle, or multiply, before anything of a file is looked at.</summary>
internal sealed class SchemaCost
{
    private const long MostPaths = 1_000_000;
    private const int DeepestReferences = 500;

    /// <summary>Keywords whose subschemas look at the same value as their own schema.</summary>
    private static readonly HashSet<string> InPlace = new(StringComparer.Ordinal)
    {
        "allOf", "anyOf", "oneOf", "not", "if", "then", "else", "dependentSchemas",
    };

    private readonly JsonNode root;
    private readonly Dictionary<int, long> paths = [];
    private readonly HashSet<int> open = [];
    private readonly Dictionary<string, JsonNode> anchors = new(StringComparer.Ordinal);
    private bool isCircle;

    private SchemaCost(JsonNode root) => this.root = root;

    /// <summary>Why a schema would take for ever, to follow "cannot be used: "; <see langword="null"/> where it would not.</summary>
    public static string? Trouble(JsonTree tree)
    {
        var cost = new SchemaCost(tree.Root);
        cost.FindAnchors(tree.Root);
        long worst = 0;
        Each(tree.Root, node => worst = Math.Max(worst, cost.Count(node)));
        if (cost.isCircle) return "its references lead round in a circle, or are nested hundreds deep";
        return worst > MostPaths ? "its references multiply: it would be run over one value more than a million times" : null;
    }

    /// <summary>Number of schemas that are run over one value where this one is run over it.</summary>
    private long Count(JsonNode schema)
    {
        if (schema.Kind != JsonKind.Object) return 1;
        int key = schema.Index;
        if (paths.TryGetValue(key, out long known)) return known;
        if (open.Count > DeepestReferences || !open.Add(key))
        {
            isCircle = true;
            return 1;
        }

        long count = 1;
        foreach (var member in schema.Properties)
        {
            string name = member.Name;
            if (name is "$ref" or "$dynamicRef")
            {
                if (member.Kind == JsonKind.String && Target(member.GetString()) is { Exists: true } target) count += Count(target);
            }
            else if (InPlace.Contains(name))
            {
                if (member.Kind == JsonKind.Array || name == "dependentSchemas")
                {
                    for (var part = member.FirstChild; part.Exists; part = part.Next) count += Count(part);
                }
                else
                {
                    count += Count(member);
                }
            }

            if (count > MostPaths) break;
        }

        open.Remove(key);
        return paths[key] = Math.Min(count, MostPaths + 1);
    }

    private JsonNode Target(string reference)
    {
        if (reference.Length == 0 || reference[0] != '#') return default;
        string fragment = Uri.UnescapeDataString(reference[1..]);
        if (fragment.Length == 0) return root;
        if (fragment[0] != '/') return anchors.TryGetValue(fragment, out var anchor) ? anchor : default;
        var node = root;
        foreach (string part in fragment.Split('/').Skip(1))
        {
            string name = part.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);
            if (node.Kind == JsonKind.Array)
            {
                if (!int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out int index)) return default;
                node = node.FirstChild;
                for (; index > 0 && node.Exists; index--) node = node.Next;
            }
            else if (!node.TryGetProperty(Encoding.UTF8.GetBytes(name), out node))
            {
                return default;
            }

            if (!node.Exists) return default;
        }

        return node;
    }

    private void FindAnchors(JsonNode node) => Each(node, n =>
    {
        foreach (string keyword in (ReadOnlySpan<string>)["$anchor", "$dynamicAnchor"])
        {
            if (n.TryGetProperty(Encoding.UTF8.GetBytes(keyword), out var name) && name.Kind == JsonKind.String) anchors.TryAdd(name.GetString(), n);
        }
    });

    private static void Each(JsonNode node, Action<JsonNode> act)
    {
        var waiting = new Stack<JsonNode>([node]);
        while (waiting.Count > 0)
        {
            var next = waiting.Pop();
            if (next.Kind == JsonKind.Object) act(next);
            for (var child = next.FirstChild; child.Exists; child = child.Next) waiting.Push(child);
        }
    }
}
