using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>A preparation beside what it stands in for: acids by share, sugar, salt and pH.</summary>
internal sealed class StandIn
{
    /// <summary>Titratable acidity of either may differ by so many %.</summary>
    public static readonly Limit Titratable = Limits.Of("stands-in-titratable");

    /// <summary>The share of one acid of all acids may differ by so many points.</summary>
    public static readonly Limit Share = Limits.Of("stands-in-acid-share");

    /// <summary>Sugar may differ by so much, g per 100 mL.</summary>
    public static readonly Limit Sweet = Limits.Of("stands-in-sugar");

    /// <summary>Salt may be over by so much, g per 100 mL.</summary>
    public static readonly Limit Salty = Limits.Of("stands-in-salt");

    /// <summary>pH may differ by so much.</summary>
    public static readonly Limit Sourness = Limits.Of("stands-in-ph");

    private StandIn(string name, Material model, FactValue acid, FactValue ph)
    {
        Name = name;
        Model = model;
        Acid = acid;
        Ph = ph;
    }

    /// <summary>What it stands in for, by its id.</summary>
    public string Name { get; }

    /// <summary>What that is made of.</summary>
    public Material Model { get; }

    /// <summary>Titratable acidity of the preparation, g per 100 mL.</summary>
    public FactValue Acid { get; }

    /// <summary>pH of the preparation.</summary>
    public FactValue Ph { get; }

    /// <summary>Titratable acidity of the model, g per 100 mL.</summary>
    public double ModelAcid { get; private init; }

    /// <summary>The acid whose share differs most.</summary>
    public Component Furthest { get; private init; }

    /// <summary>Its share of all acids in the preparation and in the model, % by mass.</summary>
    public (double Here, double There) Shares { get; private init; }

    /// <summary>Sugar of the two, g per 100 mL.</summary>
    public (double Here, double There) Sugar { get; private init; }

    /// <summary>Salt of the two, g per 100 mL.</summary>
    public (double Here, double There) Salt { get; private init; }

    /// <summary>Whether the acids are those of the model, by their shares.</summary>
    public bool SharesHold => Math.Abs(Shares.Here - Shares.There) <= Share.Value;

    /// <summary>Whether it is as sweet.</summary>
    public bool SugarHolds => Math.Abs(Sugar.Here - Sugar.There) <= Sweet.Value;

    /// <summary>Whether it is no saltier.</summary>
    public bool SaltHolds => Salt.Here - Salt.There <= Salty.Value;

    /// <summary>Whether the ranges of pH come near each other, or one is not known.</summary>
    public bool PhHolds =>
        !Ph.IsKnown
            || double.IsNaN(Model.Ph.Typical)
            || (Ph.Low <= Model.Ph.High + Sourness.Value && Ph.High >= Model.Ph.Low - Sourness.Value);

    /// <summary>Whether it titrates to as much.</summary>
    public bool TotalHolds => Acid.Low <= ModelAcid * (1 + (Titratable.Value / 100)) && Acid.High >= ModelAcid * (1 - (Titratable.Value / 100));

    /// <summary>Whether it goes for the other in all of it.</summary>
    public bool Holds => TotalHolds && SharesHold && SugarHolds && SaltHolds && PhHolds;

    /// <summary>The comparison; <see langword="null"/> where the preparation stands in for nothing, or one of the two is not known.</summary>
    public static StandIn? Of(RecipeProfile profile, ProfileSet profiles)
    {
        return profile.Recipe is Prep { Target.StandsInFor: { IsGiven: true } named } ? Of(profile, profiles, named.Value) : null;
    }

    /// <summary>The comparison with an item; <see langword="null"/> where one of the two is a solid, a drink or not known.</summary>
    public static StandIn? Of(RecipeProfile profile, ProfileSet profiles, string id)
    {
        if (profile.Recipe is not Prep || profile.IsSolid) return null;
        if (profiles.MaterialOf(id) is not { } model || (model.Unknown & (Unknowns.Acid | Unknowns.Composition | Unknowns.Water)) != 0) return null;
        var acid = profile.Get(Fact.Acid);
        double per = Solving.AcidPerVolume(model.PerGram);
        if (!acid.IsKnown || double.IsNaN(per) || per <= 0) return null;
        var (furthest, here, there) = FurthestShare(profile.Grams, model.PerGram);
        return new StandIn(id, model, acid, profile.Get(Fact.Ph))
        {
            ModelAcid = per,
            Furthest = furthest,
            Shares = (here, there),
            Sugar = (Solving.SugarPerVolume(profile.Grams), Solving.SugarPerVolume(model.PerGram)),
            Salt = (Solving.SaltPerVolume(profile.Grams), Solving.SaltPerVolume(model.PerGram)),
        };
    }

    /// <summary>The name of an acid.</summary>
    public static string AcidName(Component acid) => acid.ToString().ToLowerInvariant() + " acid";

    private static (Component Acid, double Here, double There) FurthestShare(ReadOnlySpan<double> mine, ReadOnlySpan<double> other)
    {
        double all = Solving.AcidsOf(mine), model = Solving.AcidsOf(other);
        var furthest = Component.Citric;
        double here = 0, there = 0;
        if (all <= 0 || model <= 0) return (furthest, here, there);
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++)
        {
            double a = 100 * mine[(int)c] / all, b = 100 * other[(int)c] / model;
            if (Math.Abs(a - b) > Math.Abs(here - there)) (furthest, here, there) = (c, a, b);
        }

        return (furthest, here, there);
    }
}
