using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>An allergen of a recipe, and how it came in.</summary>
/// <param name="Token">The substance, e.g. <c>celery</c>.</param>
/// <param name="Certain">Whether it is contained; else it may be.</param>
/// <param name="Part">The line of the recipe that brings it.</param>
/// <param name="Through">Ids from the line's item to the ingredient that holds it.</param>
/// <param name="ExemptIn">Jurisdictions that exempt it in that ingredient.</param>
public sealed record AllergenOrigin(string Token, bool Certain, Part Part, IReadOnlyList<string> Through, IReadOnlyList<string> ExemptIn)
{
    /// <summary>Whether it counts in a jurisdiction.</summary>
    public bool CountsIn(string jurisdiction) => !ExemptIn.Contains(jurisdiction);
}

/// <summary>An item whose allergens are not known.</summary>
/// <param name="Part">The line that brings it.</param>
/// <param name="Through">Ids from the line's item to the ingredient.</param>
public sealed record UnknownAllergens(Part Part, IReadOnlyList<string> Through);

/// <summary>Allergens of a recipe through its whole tree: parts, garnish, rim, washes and finings, and the preparations in them.</summary>
public sealed class AllergenProfile
{
    private static readonly string[] NoExemption = [];

    private AllergenProfile(IReadOnlyList<AllergenOrigin> origins, IReadOnlyList<UnknownAllergens> unknown)
    {
        Origins = origins;
        Unknown = unknown;
    }

    /// <summary>Every allergen with its way in, in the order of the lines.</summary>
    public IReadOnlyList<AllergenOrigin> Origins { get; }

    /// <summary>Items whose allergens are not known.</summary>
    public IReadOnlyList<UnknownAllergens> Unknown { get; }

    /// <summary>Tokens that are contained and count in at least one of the jurisdictions, sorted.</summary>
    public IReadOnlyList<string> Contained(Settings settings) => Tokens(settings, certain: true);

    /// <summary>Tokens that may be contained (and are not contained for certain), sorted.</summary>
    public IReadOnlyList<string> Possible(Settings settings) => [.. Tokens(settings, certain: false).Except(Contained(settings))];

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
                    if (ingredient?.Allergens is not { } statement)
                    {
                        (unknown ??= []).Add(new UnknownAllergens(part, [part.Item.Id]));
                        break;
                    }

                    if (statement.Contains.Count + statement.MayContain.Count > 0)
                    {
                        origins ??= [];
                        string[] through = [part.Item.Id];
                        foreach (string token in statement.Contains) origins.Add(new AllergenOrigin(token, true, part, through, ExemptionsOf(statement, token)));
                        foreach (string token in statement.MayContain) origins.Add(new AllergenOrigin(token, false, part, through, ExemptionsOf(statement, token)));
                    }

                    break;
                case Recipe recipe:
                    if (set.TryBefore(recipe, profile) is not { } inner) break;
                    foreach (var origin in inner.Allergens.Origins)
                        (origins ??= []).Add(origin with { Part = part, Through = [part.Item.Id, .. origin.Through] });
                    foreach (var item in inner.Allergens.Unknown)
                        (unknown ??= []).Add(new UnknownAllergens(part, [part.Item.Id, .. item.Through]));
                    break;
            }
        }

        return new AllergenProfile(origins is null ? [] : origins, unknown is null ? [] : unknown);
    }

    private static IReadOnlyList<string> ExemptionsOf(AllergenStatement statement, string token)
    {
        List<string>? exempt = null;
        foreach (var exemption in statement.Exempt)
        {
            if (exemption.Allergen == token) (exempt ??= []).AddRange(exemption.In);
        }

        return exempt is null ? NoExemption : exempt;
    }

    private List<string> Tokens(Settings settings, bool certain)
    {
        var tokens = new List<string>();
        foreach (var origin in Origins)
        {
            if (origin.Certain != certain || tokens.Contains(origin.Token)) continue;
            foreach (string jurisdiction in settings.Jurisdictions)
            {
                if (!origin.CountsIn(jurisdiction)) continue;
                tokens.Add(origin.Token);
                break;
            }
        }

        tokens.Sort(StringComparer.Ordinal);
        return tokens;
    }
}
