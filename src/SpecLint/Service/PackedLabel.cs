using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Service;

/// <summary>A piece of a text on a label.</summary>
/// <param name="Text">The piece.</param>
/// <param name="IsStrong">Whether it is emphasised.</param>
public readonly record struct LabelRun(string Text, bool IsStrong);

/// <summary>
/// The ingredients of a preparation for a label of food prepacked for direct sale: in descending order of mass as they go in, compound
/// ones with their own in brackets, the allergens emphasised (Reg (EU) 1169/2011, Art 18 and 21, Annex VII part E; in Great Britain the
/// regulations on food prepacked for direct sale ask for the same list). Only where the recipe knows enough; the local law decides.
/// </summary>
public sealed class PackedLabel
{
    /// <summary>What it says beside the labels: it does not replace the law.</summary>
    public const string Defers = "Ingredients as the recipe knows them. Whether and how the food may be sold prepacked, and what else "
        + "its label has to say, the local law decides: have the first label checked.";

    private const int DeepestBrackets = 4;

    private readonly ProfileSet profiles;
    private readonly List<LabelRun> runs = [];

    private PackedLabel(ProfileSet profiles) => this.profiles = profiles;

    /// <summary>The list of ingredients, without its heading.</summary>
    public IReadOnlyList<LabelRun> Ingredients => runs;

    /// <summary>The list of a label's preparation.</summary>
    /// <param name="label">The label.</param>
    /// <param name="profiles">The profiles of the book.</param>
    /// <param name="why">Why there can be none, in words; empty where there is one.</param>
    public static PackedLabel? Of(LotLabel label, ProfileSet profiles, out string why)
    {
        why = "";
        if (label.Lot.Item is not { ByProduct: null, File: Prep prep }) why = "only what the house makes can be labelled so";
        else if (label.Lot.Readiness == Readiness.No) why = "it must not be used";
        else if (label.Lot.UseBy is null) why = "no use-by date is set";
        else if (label.NotKnownOf.Count > 0) why = $"the allergens of {Say.List(label.NotKnownOf)} are not known";
        if (why.Length > 0) return null;
        var packed = new PackedLabel(profiles);
        why = packed.List(profiles.Of((Prep)label.Lot.Item!.File), 0);
        return why.Length == 0 ? packed : null;
    }

    private string List(RecipeProfile profile, int depth)
    {
        if (depth > DeepestBrackets) return "its preparations go too deep for a label";
        var inMix = new List<(Part Part, double Grams)>();
        var takenOut = new List<Part>();
        foreach (var part in profile.Parts)
        {
            if (part.Item is null) return $"{part.Line.Item.Or("a line")} is not known";
            if (part.Phase == PartPhase.TakenOut || part.Line.Role is LineRole.Wash or LineRole.Fining)
            {
                takenOut.Add(part);
                continue;
            }

            if (part.Phase == PartPhase.Beside) continue;
            if (!part.IsWeighed) return $"how much {part.Item.Id} weighs is not known";
            inMix.Add((part, part.Grams.Typical));
        }

        bool first = true;
        foreach (var (part, _) in inMix.OrderByDescending(p => p.Grams).ThenBy(p => p.Part.Line.Number))
        {
            if (!first) Add(", ", false);
            first = false;
            if (Name(part, depth) is { Length: > 0 } trouble) return trouble;
        }

        foreach (var part in takenOut)
        {
            Add(first ? "made with " : ", made with ", false);
            first = false;
            if (Name(part, depth) is { Length: > 0 } trouble) return trouble;
        }

        return first ? "it has no ingredients" : "";
    }

    private string Name(Part part, int depth)
    {
        var item = part.Item!;
        if (item.ByProduct is not null)
        {
            Add($"{item.Id.Replace('-', ' ')} (", false);
            string inner = List(profiles.Of((Prep)item.File), depth + 1);
            Add(")", false);
            return inner;
        }

        // A comma would part one ingredient into two.
        string name = item.File.Name.Or(item.Id).Replace(", ", " ");
        if (item.File is Prep prep)
        {
            Add($"{name} (", false);
            string inner = List(profiles.Of(prep), depth + 1);
            Add(")", false);
            return inner;
        }

        var ingredient = part.Material?.Ingredient;
        if (ingredient?.Allergens is not { SaysWhatItContains: true }) return $"the allergens of {item.Id} are not known";
        Emphasise(name, LotLabel.Counting(ingredient.Allergens.Contains, ingredient, profiles.Book.Settings));
        return "";
    }

    /// <summary>A name with the allergens in it emphasised; those that it does not name follow in brackets.</summary>
    private void Emphasise(string name, IReadOnlyList<string> allergens)
    {
        var missing = new List<string>();
        var spans = new List<(int Start, int Length)>();
        foreach (string token in allergens)
        {
            string word = token.Replace('-', ' ');
            int at = WordAt(name, word);
            if (at < 0) missing.Add(word);
            else spans.Add((at, word.Length));
        }

        int from = 0;
        foreach (var (start, length) in spans.OrderBy(s => s.Start))
        {
            if (start < from) continue;
            Add(name.Substring(from, start - from), false);
            Add(name.Substring(start, length).ToUpperInvariant(), true);
            from = start + length;
        }

        Add(name.Substring(from), false);
        if (missing.Count == 0) return;
        Add(" (", false);
        Add(string.Join(", ", missing).ToUpperInvariant(), true);
        Add(")", false);
    }

    /// <summary>Where a word stands in a name as a whole word; −1 where it does not.</summary>
    private static int WordAt(string name, string word)
    {
        for (int at = name.IndexOf(word, StringComparison.OrdinalIgnoreCase);
            at >= 0;
            at = name.IndexOf(word, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            bool begins = at == 0 || !char.IsLetter(name[at - 1]), ends = at + word.Length == name.Length || !char.IsLetter(name[at + word.Length]);
            if (begins && ends) return at;
        }

        return -1;
    }

    private void Add(string text, bool strong)
    {
        if (text.Length == 0) return;
        if (runs.Count > 0 && runs[runs.Count - 1].IsStrong == strong) runs[runs.Count - 1] = new LabelRun(runs[runs.Count - 1].Text + text, strong);
        else runs.Add(new LabelRun(text, strong));
    }
}
