using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Profile;

/// <summary>An allergen of a recipe, and how it came in.</summary>
/// <param name="Token">The substance, e.g. <c>celery</c>.</param>
/// <param name="Certain">Whether it is contained; else it may be.</param>
/// <param name="Part">The line of the recipe that brings it.</param>
/// <param name="Through">Ids from the line's item to the ingredient that holds it.</param>
/// <param name="ExemptIn">Jurisdictions that exempt it in that ingredient.</param>
/// <param name="Mark">How far to trust what the ingredient says of its allergens.</param>
public sealed record AllergenOrigin(string Token, bool Certain, Part Part, FixedList<string> Through, FixedList<string> ExemptIn, Mark Mark)
{
    /// <summary>Whether it counts in a jurisdiction.</summary>
    public bool CountsIn(string jurisdiction) => !ExemptIn.Contains(jurisdiction);
}

/// <summary>An item whose allergens are not known.</summary>
/// <param name="Part">The line that brings it.</param>
/// <param name="Through">Ids from the line's item to the ingredient.</param>
public sealed record UnknownAllergens(Part Part, FixedList<string> Through);

/// <summary>How an allergen stands in a recipe.</summary>
public enum Presence
{
    /// <summary>It is contained.</summary>
    Contained,

    /// <summary>It is listed from an amount on (sulphites), and whether that is reached is not shown.</summary>
    NotShown,

    /// <summary>A part may contain it.</summary>
    Possible,
}

/// <summary>An allergen that a jurisdiction asks to declare.</summary>
/// <param name="Token">The substance.</param>
/// <param name="Presence">How it stands in the recipe.</param>
/// <param name="Origin">The way in; of several the first that is certain.</param>
/// <param name="Category">The category in the law of the first jurisdiction that asks.</param>
/// <param name="In">All jurisdictions that ask.</param>
public sealed record FoundAllergen(string Token, Presence Presence, AllergenOrigin Origin, AllergenCategory Category, FixedList<string> In);

/// <summary>Allergens of a recipe through its whole tree: parts, garnish, rim, washes and finings, and the preparations in them.</summary>
public sealed class AllergenProfile
{
    private static readonly string[] NoExemption = [];

    private readonly RecipeProfile profile;
    private FixedList<FoundAllergen>? found;
    private FixedList<AllergenOrigin>? originsTogether;
    private FixedList<UnknownAllergens>? unknownTogether;

    private AllergenProfile(RecipeProfile profile, FixedList<AllergenOrigin> origins, FixedList<UnknownAllergens> unknown)
    {
        this.profile = profile;
        Origins = origins;
        Unknown = unknown;
    }

    /// <summary>Every allergen with its way in, in the order of the lines.</summary>
    public FixedList<AllergenOrigin> Origins { get; }

    /// <summary>Items whose allergens are not known.</summary>
    public FixedList<UnknownAllergens> Unknown { get; }

    /// <summary>Every allergen of every ingredient once, by the first line that brings it.</summary>
    private FixedList<AllergenOrigin> OriginsTogether => originsTogether ??= Once(Origins, static o => (o.Token, o.Certain, o.Through[o.Through.Count - 1]));

    /// <summary>Every item whose allergens are not known once.</summary>
    private FixedList<UnknownAllergens> UnknownTogether => unknownTogether ??= Once(Unknown, static u => u.Through[u.Through.Count - 1]);

    private static FixedList<T> Once<T, TKey>(FixedList<T> all, Func<T, TKey> keyOf)
    {
        if (all.Count < 2) return all;
        var known = new HashSet<TKey>();
        var kept = new List<T>(all.Count);
        foreach (var one in all)
        {
            if (known.Add(keyOf(one))) kept.Add(one);
        }

        return kept.Count == all.Count ? all : FixedList.Of(kept);
    }

    /// <summary>Tokens that are contained and count in at least one of the jurisdictions, sorted.</summary>
    public FixedList<string> Contained(Settings settings) => FixedList.Of(Tokens(settings, certain: true));

    /// <summary>Tokens that may be contained (and are not contained for certain), sorted.</summary>
    public FixedList<string> Possible(Settings settings) => [.. Tokens(settings, certain: false).Except(Contained(settings))];

    /// <summary>
    /// What the jurisdictions of the bar ask to declare, each substance once, in the order of the lines. What they do not
    /// list, exempt in that ingredient, or list only from an amount on that the recipe stays under, is left out.
    /// </summary>
    public FixedList<FoundAllergen> Found => found ??= FoundIn(profile.Set.Book.Settings.Jurisdictions);

    /// <summary>What one jurisdiction asks to declare (one of <see cref="Settings.AllJurisdictions"/>; of others nothing is known).</summary>
    public FixedList<FoundAllergen> DeclarableIn(string jurisdiction) => FoundIn([jurisdiction]);

    private FixedList<FoundAllergen> FoundIn(FixedList<string> jurisdictions)
    {
        if (Origins.Count == 0) return [];
        List<FoundAllergen>? all = null;
        foreach (var origin in Origins)
        {
            int known = -1;
            for (int i = 0; i < (all?.Count ?? 0); i++)
            {
                if (all![i].Token == origin.Token) known = i;
            }

            if (known >= 0 && !IsSurer(origin, all![known])) continue;
            AllergenCategory? first = null;
            List<string>? asking = null;
            var presence = Presence.Possible;
            foreach (string jurisdiction in jurisdictions)
            {
                if (!origin.CountsIn(jurisdiction) || AllergenTable.Of(jurisdiction, origin.Token) is not { } category) continue;
                var here = origin.Certain ? Presence.Contained : Presence.Possible;
                if (origin.Certain && !double.IsNaN(category.Threshold))
                {
                    var reach = Reached(origin.Token, category);
                    if (reach == Reach.No) continue;
                    if (reach == Reach.NotShown) here = Presence.NotShown;
                }

                // Of several laws the one that certainly asks stands first, and those that only may ask are left out beside it.
                if (first is not null && here > presence) continue;
                if (first is null || here < presence)
                {
                    first = category;
                    presence = here;
                    asking = null;
                }

                (asking ??= []).Add(jurisdiction);
            }

            if (first is null) continue;
            var one = new FoundAllergen(origin.Token, presence, origin, first, FixedList.Of(asking!));
            if (known >= 0 && presence > all![known].Presence) continue;
            if (known >= 0) all![known] = one;
            else (all ??= []).Add(one);
        }

        return all is null ? [] : FixedList.Of(all);
    }

    /// <summary>
    /// Whether a further way in says more than the one already found: for certain where that one was possible, or read where that one was
    /// recalled.
    /// </summary>
    private static bool IsSurer(AllergenOrigin origin, FoundAllergen known) =>
        origin.Certain && (known.Presence == Presence.Possible || (known.Origin.Mark == Mark.Memory && origin.Mark != Mark.Memory));

    private enum Reach
    {
        Yes,
        No,
        NotShown,
    }

    /// <summary>
    /// Whether what is contained reaches the amount from which it is listed. A garnish is eaten as it is, so that no
    /// dilution helps it; an ingredient whose amount is not stated leaves it open.
    /// </summary>
    private Reach Reached(string token, AllergenCategory category)
    {
        bool open = false, inside = false;
        foreach (var origin in Origins)
        {
            if (origin.Token != token || !origin.Certain) continue;
            if (origin.Part.Phase == PartPhase.Beside)
            {
                if (origin.Part.Line.Role != LineRole.Rinse) return Reach.Yes;
                continue;
            }

            inside = true;
            string leaf = origin.Through[origin.Through.Count - 1];
            open |= profile.Set.MaterialOf(leaf)?.Ingredient is not { } ingredient || !ingredient.Values.ContainsKey("sulphite");
        }

        if (!inside) return Reach.No;
        var sulphite = profile.Get(Fact.Sulphite);
        if (sulphite.IsKnown && category.Counts(sulphite.Low)) return Reach.Yes;
        if (open || !sulphite.IsKnown) return Reach.NotShown;
        return category.Counts(sulphite.High) ? Reach.NotShown : Reach.No;
    }

    internal static AllergenProfile Of(RecipeProfile profile, ProfileSet set)
    {
        List<AllergenOrigin>? origins = null;
        List<UnknownAllergens>? unknown = null;
        foreach (var part in profile.Parts)
        {
            switch (part.Item?.File)
            {
                case Ingredient:
                    var ingredient = part.Material?.Ingredient;
                    if (ingredient?.Allergens is not { SaysWhatItContains: true }) (unknown ??= []).Add(new UnknownAllergens(part, [part.Item.Id]));
                    if (ingredient?.Allergens is not { } statement) break;

                    if (statement.Contains.Count + statement.MayContain.Count > 0)
                    {
                        origins ??= [];
                        string[] through = [part.Item.Id];
                        foreach (string token in statement.Contains)
                            origins.Add(new AllergenOrigin(token, true, part, through, ExemptionsOf(statement, token), statement.Mark));
                        foreach (string token in statement.MayContain)
                            origins.Add(new AllergenOrigin(token, false, part, through, ExemptionsOf(statement, token), statement.Mark));
                    }

                    break;
                case Recipe recipe:
                    if (set.TryBefore(recipe, profile) is not { } inner)
                    {
                        // A drink as a part, or a member of a cycle.
                        (unknown ??= []).Add(new UnknownAllergens(part, [part.Item.Id]));
                        break;
                    }

                    // Each thing once a line, by the first way to it: the ways double with each level, the things do not.
                    foreach (var origin in inner.Allergens.OriginsTogether)
                        (origins ??= []).Add(origin with { Part = part, Through = [part.Item.Id, .. origin.Through] });
                    foreach (var item in inner.Allergens.UnknownTogether)
                        (unknown ??= []).Add(new UnknownAllergens(part, [part.Item.Id, .. item.Through]));
                    break;
                case null when part.Line.Item.IsGiven || part.Line.ItemText.IsGiven:
                    (unknown ??= []).Add(new UnknownAllergens(part, [part.Line.Item.Or(part.Line.ItemText.Or(""))]));
                    break;
            }
        }

        return new AllergenProfile(profile, origins is null ? [] : FixedList.Of(origins), unknown is null ? [] : FixedList.Of(unknown));
    }

    private static FixedList<string> ExemptionsOf(AllergenStatement statement, string token)
    {
        List<string>? exempt = null;
        foreach (var exemption in statement.Exempt)
        {
            if (exemption.Allergen == token) (exempt ??= []).AddRange(exemption.In);
        }

        return exempt is null ? NoExemption : FixedList.Of(exempt);
    }

    private List<string> Tokens(Settings settings, bool certain)
    {
        var tokens = new List<string>();
        foreach (var origin in Origins)
        {
            if (origin.Certain != certain || tokens.Contains(origin.Token)) continue;
            if (Counts(settings, origin.Token, origin.ExemptIn)) tokens.Add(origin.Token);
        }

        tokens.Sort(StringComparer.Ordinal);
        return tokens;
    }

    /// <summary>
    /// Tokens that an ingredient contains or may contain and that count in at least one of the jurisdictions, as they do in a recipe with
    /// it.
    /// </summary>
    internal static IEnumerable<string> TokensOf(AllergenStatement statement, Settings settings) => statement.Contains.Concat(statement.MayContain)
        .Where(token => Counts(settings, token, ExemptionsOf(statement, token)));

    /// <summary>Whether a token counts in one of the jurisdictions.</summary>
    private static bool Counts(Settings settings, string token, FixedList<string> exemptIn)
    {
        // Coconut and chestnut are words that no list in force asks for; buckwheat counts only where it is listed.
        if (token is "coconut" or "chestnut" or "buckwheat" && !IsListed(settings, token)) return false;
        foreach (string jurisdiction in settings.Jurisdictions)
        {
            if (!exemptIn.Contains(jurisdiction)) return true;
        }

        return false;
    }

    private static bool IsListed(Settings settings, string token)
    {
        foreach (string jurisdiction in settings.Jurisdictions)
        {
            if (AllergenTable.Of(jurisdiction, token) is not null) return true;
        }

        return false;
    }
}
