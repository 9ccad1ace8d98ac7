using SpecLint.Reading;
namespace SpecLint.Binding;

/// <summary>A value of a file, and what it can be there.</summary>
/// <param name="Node">The value.</param>
/// <param name="Property">
/// The property that it is the value of, or stands in the list of; <see langword="null"/> for a name of an object whose names are free.
/// </param>
/// <param name="Value">What it can be; <see langword="null"/> where nothing is known of it.</param>
/// <param name="Owner">The object that the property belongs to.</param>
public readonly record struct ShapedValue(JsonNode Node, PropertyShape? Property, ValueShape? Value, ObjectShape? Owner);

/// <summary>A tree read beside the shapes of its kind of file.</summary>
public static class ShapedTree
{
    /// <summary>All values of a tree, in the order of the text, each with its shape.</summary>
    /// <param name="tree">The tree.</param>
    /// <param name="shape">The shape of the outermost object.</param>
    public static IEnumerable<ShapedValue> Values(JsonTree tree, ObjectShape shape)
    {
        if (tree.Root.Kind != JsonKind.Object) yield break;
        var waiting = new Stack<ShapedValue>();
        PushProperties(waiting, tree.Root, shape);
        while (waiting.Count > 0)
        {
            var value = waiting.Pop();
            yield return value;
            if (value.Value is not { } known) continue;
            switch (value.Node.Kind)
            {
                case JsonKind.Object when known.Form == ValueForm.Map: PushMap(waiting, value, known); break;
                case JsonKind.Object when known.Object is { } inner: PushProperties(waiting, value.Node, inner); break;
                case JsonKind.Array: PushItems(waiting, value, ItemOf(known)); break;
            }
        }
    }

    /// <summary>What an item of a list can be.</summary>
    public static ValueShape? ItemOf(ValueShape list) =>
        list.Form == ValueForm.TextOrTexts ? ShapeValues.Text : list.Form == ValueForm.List ? list.Item : null;

    private static void PushProperties(Stack<ShapedValue> waiting, JsonNode node, ObjectShape shape)
    {
        foreach (var child in Reversed(node.Properties))
        {
            var property = shape.Find(child.Name);
            waiting.Push(new ShapedValue(child, property, property?.Value, shape));
        }
    }

    private static void PushMap(Stack<ShapedValue> waiting, ShapedValue map, ValueShape known)
    {
        foreach (var child in Reversed(map.Node.Properties)) waiting.Push(new ShapedValue(child, null, known.Item, null));
    }

    private static void PushItems(Stack<ShapedValue> waiting, ShapedValue list, ValueShape? item)
    {
        foreach (var child in Reversed(list.Node.Items)) waiting.Push(new ShapedValue(child, list.Property, item, list.Owner));
    }

    private static List<JsonNode> Reversed(JsonNode.Children children)
    {
        var list = new List<JsonNode>();
        foreach (var child in children) list.Add(child);
        list.Reverse();
        return list;
    }
}
