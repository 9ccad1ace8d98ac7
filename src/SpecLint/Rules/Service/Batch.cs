using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Rules.Service;

/// <summary>A batch beside the drink that it is a batch of.</summary>
internal sealed class Batch
{
    private readonly List<(Part OfDrink, Part OfBatch, double Factor)> pairs = [];

    private Batch(Drink drink, RecipeProfile profile)
    {
        Drink = drink;
        DrinkProfile = profile;
    }

    /// <summary>% vol from which alcohol holds what would need cold; common practice, the threshold of the tables of keeping.</summary>
    private const double Holding = 20;

    /// <summary>Whether the alcohol of a batch with juice, milk, egg or a brew no longer holds it once so much water is added.</summary>
    public static bool LosesItsHold(RecipeContext context, double millilitres)
    {
        var abv = context.Fact(Fact.Abv);
        double volume = context.Profile.InputVolume;
        return abv.IsKnown
            && !double.IsNaN(volume)
            && !(abv.High < Holding)
            && !(abv.Low * volume / (volume + millilitres) >= Holding)
            && HoldsFood(context);
    }

    /// <summary>Whether a part of it would need cold by itself.</summary>
    public static bool HoldsFood(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Beside
                && part.Material is { Kind: { IsFood: true } or { IsBrew: true } or { IsPerishableBrew: true } })
                return true;
        }

        return false;
    }

    /// <summary>The drink.</summary>
    public Drink Drink { get; }

    /// <summary>What the drink comes to.</summary>
    public RecipeProfile DrinkProfile { get; }

    /// <summary>Parts that both have, with how many times the drink's amount the batch holds; water left out.</summary>
    public IReadOnlyList<(Part OfDrink, Part OfBatch, double Factor)> Pairs => pairs;

    /// <summary>How many drinks the batch makes, by the middle of its larger parts; NaN where no part is shared.</summary>
    public double Factor { get; private set; } = double.NaN;

    /// <summary>The batch of a preparation; <see langword="null"/> where it is none or its drink is not in the book.</summary>
    public static Batch? Of(RecipeContext context, Prep prep)
    {
        if (!prep.BatchOf.IsGiven || context.Book.Resolve(prep.BatchOf.Value)?.File is not Drink drink) return null;
        var profile = context.Profiles.Of(drink);
        var batch = new Batch(drink, profile);
        double serves = drink.ServesOrOne;
        var factors = new List<double>();
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || part.Item is null || Substances.IsWater(part.Material)) continue;
            if (Find(context.Profile, part.Item.Id) is not { IsWeighed: true } twin) continue;
            double factor = twin.Grams.Typical / (part.Grams.Typical / serves);

            // Of nothing in the drink, every amount in the batch is countless times as much: that line has a finding of its own.
            if (double.IsNaN(factor) || double.IsInfinity(factor)) continue;
            batch.pairs.Add((part, twin, factor));
            if (!IsSeasoning(part)) factors.Add(factor);
        }

        if (factors.Count > 0)
        {
            factors.Sort();
            batch.Factor = factors[factors.Count / 2];
            if (factors.Count % 2 == 0) batch.Factor = (factors[(factors.Count / 2) - 1] + factors[factors.Count / 2]) / 2;
            if (batch.Factor == 0) batch.Factor = double.NaN;
        }

        return batch;
    }

    /// <summary>Whether a part seasons: bitters, salt, or an amount in dashes, drops or sprays.</summary>
    public static bool IsSeasoning(Part part) =>
        Substances.IsBitters(part.Material)
        || Substances.IsSalt(part.Material)
        || (part.Line.Amount.IsGiven && part.Line.Amount.Value.Unit.Name is "dash" or "drop" or "dropper" or "spray" or "pinch");

    /// <summary>The part of a recipe that an item makes, of the mix.</summary>
    public static Part? Find(RecipeProfile profile, string id)
    {
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Mix && part.Item?.Id == id) return part;
        }

        return null;
    }

    /// <summary>
    /// Water written into a preparation: its line and its volume over the rest, in per cent; the line is <see langword="null"/> where there
    /// is none.
    /// </summary>
    public static (Part? Line, double Percent) Water(RecipeProfile profile)
    {
        Part? line = null;
        double water = 0, rest = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || double.IsNaN(part.Millilitres)) continue;
            if (Substances.IsWater(part.Material))
            {
                line ??= part;
                water += part.Millilitres;
            }
            else
            {
                rest += part.Millilitres;
            }
        }

        return (line, rest > 0 ? 100 * water / rest : 0);
    }

    /// <summary>Whether a preparation is a batch of drinks.</summary>
    public static bool Is(Prep prep) => prep.Family.OrNone().IsBatch || prep.BatchOf.IsGiven;

    /// <summary>Whether it is poured as it is.</summary>
    public static bool IsPouredStraight(Prep prep) => prep.Family.OrNone().IsPouredStraight;
}
