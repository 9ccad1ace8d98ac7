using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Reports;

/// <summary>
/// How much of a recipe a cost is asked for: a serve of a drink and the whole of a preparation where nobody says, else so many serves of a
/// drink or so much of a preparation. A cost grows with the amount: what buying more saves is in the prices.
/// </summary>
public sealed class CostBatch
{
    private readonly double? serves;
    private readonly Quantity? amount;

    private CostBatch(double? serves, Quantity? amount)
    {
        this.serves = serves;
        this.amount = amount;
    }

    /// <summary>A serve of a drink, the whole of a preparation.</summary>
    public static CostBatch Usual { get; } = new(null, null);

    /// <summary>So many serves of a drink.</summary>
    /// <param name="count">How many, over 0 and at most 100,000.</param>
    public static CostBatch OfServes(double count) => new(count, null);

    /// <summary>So much of a preparation.</summary>
    /// <param name="amount">A volume or a mass, over 0.</param>
    public static CostBatch OfAmount(Quantity amount) => new(null, amount);

    /// <summary>Whether it is a batch, and not what is usual.</summary>
    internal bool IsGiven => serves is not null || amount is not null;

    /// <summary>Why it cannot be had of a recipe, in words; empty where it can.</summary>
    /// <param name="profile">The profile of the recipe.</param>
    public string WhyNot(RecipeProfile profile) =>
        serves is not null && profile.Recipe is not Drink ? $"{profile.Recipe.Id} is not a drink, of which serves could be counted"
        : amount is not null && profile.Recipe is not Prep ? $"{profile.Recipe.Id} is not a preparation, of which an amount could be made"
        : double.IsNaN(Times(profile)) ? $"how much {profile.Recipe.Id} makes is not known"
        : "";

    /// <summary>What the cost of the whole recipe is multiplied by.</summary>
    internal decimal Factor(RecipeProfile profile) => Costing.Decimal(Times(profile));

    /// <summary>What the cost is of, in words: <c>a serve</c>, <c>40 serves</c>, <c>5 l</c>.</summary>
    internal string Words(Recipe recipe) =>
        amount is { } much ? Rounding.Words(much.Base, much)
        : serves is { } count ? $"{Say.Number(count, 1)} {(count == 1 ? "serve" : "serves")}"
        : recipe is Drink ? "a serve" : "the recipe";

    /// <summary>The same as a word for programs.</summary>
    internal string Key(Recipe recipe) => IsGiven ? "batch" : recipe is Drink ? "serve" : "recipe";

    private double Times(RecipeProfile profile)
    {
        if (amount is { } much)
        {
            double grams = much.Dimension == Dimension.Mass
                ? much.Base
                : profile.Get(Fact.Density) is { IsKnown: true } density ? much.Base * density.Value : double.NaN;
            return profile.Cost.MadeGrams > 0 ? grams / profile.Cost.MadeGrams : double.NaN;
        }

        return (serves ?? (profile.Recipe is Drink ? 1 : profile.Recipe.ServesOrOne)) / Math.Max(1e-6, Math.Min(1e6, profile.Recipe.ServesOrOne));
    }
}
