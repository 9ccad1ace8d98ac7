using System.Text.Json;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Labels;

namespace SpecLint.Service;

/// <summary>What the label of a lot says.</summary>
/// <param name="Lot">The lot, checked.</param>
/// <param name="Contains">Allergens, by substance, that count where the bar is.</param>
/// <param name="MayContain">Allergens that may be in it.</param>
/// <param name="NotKnownOf">Items whose allergens are not known.</param>
/// <param name="Strength">Strength, % vol; open where it cannot be worked out or there is none.</param>
/// <param name="StorageCelsius">Storage temperature, °C; NaN where not known.</param>
/// <param name="StoredIn">Vessel, in words; empty where not given.</param>
/// <param name="Advisories">Texts that the recipe or the law where the bar is asks for.</param>
public sealed record LotLabel(
    LotCheck Lot, IReadOnlyList<string> Contains, IReadOnlyList<string> MayContain, IReadOnlyList<string> NotKnownOf,
    FactValue Strength, double StorageCelsius, string StoredIn, IReadOnlyList<string> Advisories)
{
    private static readonly LabelRule RawEgg = LabellingTable.Of("raw-egg-general");
    private static readonly LabelRule RawEggUs = LabellingTable.Of("raw-egg-advisory");
    private static readonly LabelRule Honey = LabellingTable.Of("honey-infants");
    private static readonly LabelRule Grapefruit = LabellingTable.Of("grapefruit-medicines");
    private static readonly LabelRule Quinine = LabellingTable.Of("quinine-name");
    private static readonly LabelRule QuinineUs = LabellingTable.Of("quinine-name-us");

    /// <summary>The labels of the lots of a stock file, in their order.</summary>
    /// <param name="verdicts">The verdicts of the checked book.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="bought">Whether bought things that were opened get a label too, or only what the house made.</param>
    public static IReadOnlyList<LotLabel> Of(Verdicts verdicts, Stock stock, bool bought)
    {
        var labels = new List<LotLabel>();
        foreach (var lot in stock.Lots)
        {
            var check = LotCheck.Of(lot, stock, verdicts);
            if (check.Item is null || (!bought && !(check.Item.File is Prep || lot.Made.IsGiven))) continue;
            labels.Add(Of(check, verdicts.Profiles));
        }

        return labels;
    }

    /// <summary>The labels of what has just been made, with no stock file: as if each were a lot of one.</summary>
    /// <param name="verdicts">The verdicts of the checked book.</param>
    /// <param name="made">Preparations with the day on which they were made.</param>
    /// <param name="by">Initials of who made them; <see langword="null"/> to leave room for them.</param>
    public static IReadOnlyList<LotLabel> OfMade(Verdicts verdicts, IReadOnlyList<(Prep Prep, CalendarDate On)> made, string? by)
    {
        var profiles = verdicts.Profiles;
        var text = new MemoryStream();
        using (var json = new Utf8JsonWriter(text))
        {
            json.WriteStartObject();
            json.WriteString("on", profiles.Book.On.ToString());
            json.WriteStartArray("lots");
            foreach (var (prep, day) in made)
            {
                json.WriteStartObject();
                json.WriteString("item", prep.Id);
                json.WriteString("made", day.ToString());
                if (!string.IsNullOrWhiteSpace(by)) json.WriteString("by", by);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        var stock = (Stock)BookReader.Read(new SourceFile("made.stock.json", text.ToArray()), FileKind.Stock, profiles.Book.Settings.Measures);
        return Of(verdicts, stock, bought: false);
    }

    private static LotLabel Of(LotCheck lot, ProfileSet profiles)
    {
        var settings = profiles.Book.Settings;
        var advisories = new List<string>();
        double at = lot.Lot.At is { IsGiven: true, Value.Dimension: Dimension.Temperature } stands ? stands.Value.Base : double.NaN;
        string storedIn = lot.Lot.In.Or(Vessel.None).Id;
        if (lot.Item!.File is Recipe recipe)
        {
            var profile = profiles.Of(recipe);
            var prep = recipe as Prep;
            if (lot.Verdict is { StorageCelsius: var asked } && !double.IsNaN(asked)) at = asked;
            if (storedIn.Length == 0 && prep?.Keep is { In.IsGiven: true } keep) storedIn = keep.In.Value.Id;
            advisories.AddRange(AdvisoriesOf(recipe, profiles));
            var strength = lot.Item.ByProduct is null && !profile.IsSolid ? profile.Get(Fact.Abv) : FactValue.Open("it is a solid");
            return new LotLabel(
                lot, profile.Allergens.Contained(settings), profile.Allergens.Possible(settings),
                [.. profile.Allergens.Unknown.Select(u => u.Through[u.Through.Count - 1]).Distinct()], strength, at, storedIn, advisories);
        }

        var ingredient = profiles.MaterialOf(lot.Id)!.Ingredient!;
        AskFor(advisories, ingredient, settings);
        var abv = ingredient.Values.TryGetValue("strength", out var given)
            ? new FactValue(given.Typical, given.Low, given.High, "label", null)
            : FactValue.Open("none is given");
        return new LotLabel(
            lot,
            Counting(ingredient.Allergens?.Contains ?? [], ingredient, settings),
            Counting(ingredient.Allergens?.MayContain ?? [], ingredient, settings),
            ingredient.Allergens is not { SaysWhatItContains: true } ? [lot.Id] : [],
            abv, at, storedIn, advisories);
    }

    /// <summary>Texts for the guest that a recipe declares, or that the law where the bar is asks for by what goes into it.</summary>
    internal static IReadOnlyList<string> AdvisoriesOf(Recipe recipe, ProfileSet profiles)
    {
        var advisories = new List<string>();
        foreach (var text in recipe.Declares?.Advisory ?? [])
        {
            if (text.IsGiven) advisories.Add(text.Value);
        }

        foreach (var leaf in RecipeTree.Of(profiles.Of(recipe))) AskFor(advisories, leaf.Ingredient, profiles.Book.Settings);
        return advisories;
    }

    internal static List<string> Counting(IReadOnlyList<string> tokens, Ingredient ingredient, Settings settings)
    {
        var counting = new List<string>();
        foreach (string token in tokens)
        {
            bool counts = settings.Jurisdictions.Any(j => !ingredient.Allergens!.Exempt.Any(e => e.Allergen == token && e.In.Contains(j)));
            if (counts && !counting.Contains(token)) counting.Add(token);
        }

        counting.Sort(StringComparer.Ordinal);
        return counting;
    }

    private static void AskFor(List<string> advisories, Ingredient ingredient, Settings settings)
    {
        if (RawEggUnsaid.IsRawEgg(ingredient)) Add(settings.JurisdictionIsStated && RawEggUs.AppliesIn(settings) ? RawEggUs : RawEgg);
        if (ingredient.IngredientKind.OrNone().IsHoney || ingredient.Animal.Or("") == "honey") Add(Honey);
        if (ingredient.Id.IndexOf("grapefruit", StringComparison.Ordinal) >= 0
            || ingredient.Id.IndexOf("pomelo", StringComparison.Ordinal) >= 0)
            Add(Grapefruit);
        if (ingredient.Values.TryGetValue("quinine", out var quinine) && quinine.Typical > 0)
        {
            Add(Quinine);
            Add(QuinineUs);
        }

        void Add(LabelRule law)
        {
            if (law.Text.Length > 0 && law.AppliesIn(settings) && !advisories.Contains(law.Text)) advisories.Add(law.Text);
        }
    }

    /// <summary>Whether the lot must not be used, or is to be used by an earlier day than its recipe says: check says why.</summary>
    public bool HasOpenFinding => Lot.Readiness == Readiness.No || Lot.Verdict is { Answer: Readiness.No };

    /// <summary>Strength in words; empty where there is none to speak of or it is not known.</summary>
    public string StrengthInWords => Strength.IsKnown && Strength.Value >= 0.05 ? $"{Say.Number(Strength.Value, 1)} % vol" : "";
}
