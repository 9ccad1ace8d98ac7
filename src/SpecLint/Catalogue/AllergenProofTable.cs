namespace SpecLint.Catalogue;

/// <summary>What an ingredient states of itself that proves an allergen.</summary>
/// <param name="Content">The property of a content; empty where the row is about none.</param>
/// <param name="Animal">The origin in an animal; empty where the row is about none.</param>
/// <param name="Kind">The kind; <see langword="null"/> where the row is about none.</param>
/// <param name="Tokens">The allergens, of which a list has to name one.</param>
/// <param name="What">What it is, in words.</param>
/// <param name="Mark">How far to trust it.</param>
internal sealed record AllergenProof(string Content, string Animal, ItemKind? Kind, FixedList<string> Tokens, string What, Mark Mark);

/// <summary>The proofs of allergens (<c>allergen-proofs.json</c>).</summary>
internal static class AllergenProofTable
{
    private static readonly Lazy<FixedList<AllergenProof>> Rows = new(Load);

    /// <summary>All rows.</summary>
    public static FixedList<AllergenProof> All => Rows.Value;

    private static FixedList<AllergenProof> Load()
    {
        using var document = Tables.Open("allergen-proofs");
        return [.. Tables.Rows(document).Select(static row => new AllergenProof(
            row.Text("content"), row.Text("animal"), row.TryGet("kind", out _) ? ItemKind.Of(row.Text("kind")) : null,
            row.Texts("tokens"), row.Text("what"), row.Mark()))];
    }
}
