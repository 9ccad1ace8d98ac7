using System.Runtime.CompilerServices;
using SpecLint.Book;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// What a recipe comes to: its parts weighed (<see cref="Weighing"/>), processed (<see cref="Processing"/>, <see cref="Serving"/>),
/// fitted to readings (<see cref="Fitting"/>), and its facts (<see cref="FactSheet"/>), which are worked out when first asked for.
/// </summary>
public sealed class RecipeProfile
{
    /// <summary>g/mL of ground salts and sugars; common practice, no source.</summary>
    private const double BulkDensityOfSolids = 0.85;

    private ProfileSet set;
    private FactBasis basis;
    private readonly FactSheet facts;
    private Material? material;
    private Costing? cost;
    private AllergenProfile? allergens;
    private KeepingState? keeping;
    private KeepingTerms? keepingTerms;
    private FixedList<HazardLoad>? hazardLoads;
    private FixedList<HazardLoad>? hazardTotals;
    private FixedList<(Ingredient Ingredient, FixedList<string> Through)>? leaves;
    private KnownPart? known;
    private FixedList<TreeLeaf>? tree;
    private StrongBox<FactValue>? computedPh;

    internal RecipeProfile(Recipe recipe, ProfileSet set, int wave, ProfileRoom? room = null)
    {
        Wave = wave;
        this.set = set;
        Parts = Weighing.PartsOf(recipe, set);
        var weighed = Weighing.Combine(recipe, Parts, room);
        InputMass = weighed.Mix.Total;
        InputVolume = Mixture.Volume(weighed.Mix.Grams, Celsius.Reference)?.Value ?? double.NaN;
        basis = recipe is Prep prep ? OfPrep(prep, weighed) : OfDrink((Drink)recipe, weighed);
        facts = new FactSheet(basis, this, room?.Facts ?? new FactStore());
    }

    /// <summary>The recipe.</summary>
    public Recipe Recipe => basis.Recipe;

    /// <summary>Its lines, resolved and weighed: ingredients, garnish, rim.</summary>
    public FixedList<Part> Parts { get; }

    /// <summary>How a drink is chilled.</summary>
    public TechniqueKind Technique => basis.Technique;

    /// <summary>The step that chills it.</summary>
    public Step? TechniqueStep { get; private set; }

    /// <summary>Dilution and temperature that the technique gives; <see langword="null"/> where they are not known.</summary>
    public Chilling? Chill => basis.Chill;

    /// <summary>Mass of all parts of the mix, g, before anything is taken out.</summary>
    public double InputMass { get; }

    /// <summary>Volume of all parts of the mix, mL; NaN where it cannot be had.</summary>
    public double InputVolume { get; }

    /// <summary>Whether it is a solid: facts are then per 100 g.</summary>
    public bool IsSolid => basis.IsSolid;

    /// <summary>What is not known of it.</summary>
    public Unknowns Unknown => basis.Mix.Lack.What;

    /// <summary>Why.</summary>
    public string UnknownBecause => basis.Mix.Lack.Because;

    /// <summary>Masses as made (a drink: as served), g, by component.</summary>
    public ReadOnlySpan<double> Grams => Served.Grams;

    /// <summary>Masses of the mix, before ice and tops, g, by component.</summary>
    public ReadOnlySpan<double> MixGrams => Mix.Grams;

    /// <summary>Mass as made (a drink: as served, all serves), g.</summary>
    public double Mass => Served.Total;

    /// <summary>Allergens through the whole tree.</summary>
    public AllergenProfile Allergens => allergens ??= AllergenProfile.Of(this, set);

    /// <summary>What it costs, by the price lists of the book as they are.</summary>
    public Costing Cost
    {
        get
        {
            var prices = set.Prices;
            if (cost is { } known && ReferenceEquals(known.Prices, prices)) return known;
            return cost = Costing.Of(this);
        }
    }

    /// <summary>How a preparation stands to the rules of keeping; <see langword="null"/> for a drink.</summary>
    internal KeepingState? Keeping => Recipe is Prep prep ? keeping ??= KeepingState.Of(prep, this, set) : null;

    /// <summary>How long a preparation keeps; <see langword="null"/> for a drink.</summary>
    internal KeepingTerms? KeepingTerms => Recipe is Prep prep ? keepingTerms ??= KeepingLife.TermsOf(prep, this, set) : null;

    /// <summary>What is hazardous in it, through the whole tree.</summary>
    internal FixedList<HazardLoad> HazardLoads => hazardLoads ??= HazardLoad.Of(this, set);

    /// <summary>The same, all lines together.</summary>
    internal FixedList<HazardLoad> HazardTotals => hazardTotals ??= HazardLoad.Together(HazardLoads);

    /// <summary>The ingredients that each line brings: see <see cref="RecipeTree.Of"/>.</summary>
    internal FixedList<TreeLeaf> Tree => tree ??= RecipeTree.LeavesByLine(this);

    /// <summary>What it is made of in the end: each ingredient once, with the first way to it.</summary>
    internal FixedList<(Ingredient Ingredient, FixedList<string> Through)> Leaves => leaves ??= RecipeTree.LeavesOf(this);

    /// <summary>The line that resolves to nothing, or brings a preparation with such a line; <see langword="null"/> where there is none.</summary>
    internal Part? Unresolved => Once(nameof(Unresolved), static profile =>
    {
        foreach (var part in profile.Parts)
        {
            if (part.Item is null) return part;
            if (part.Item.File is Recipe recipe && profile.Set.TryBefore(recipe, profile) is { Unresolved: not null }) return part;
        }

        return null;
    });

    /// <summary>Something that is worked out of the whole tree, once a recipe however many others it is part of.</summary>
    /// <param name="key">What it is.</param>
    /// <param name="work">Works it out; two threads may both do so.</param>
    internal Part? Once(string key, Func<RecipeProfile, Part?> work)
    {
        // A handful of keys at most, so that a chain of entries is the quickest to search and the smallest.
        for (var entry = Volatile.Read(ref known); entry is not null; entry = entry.Next)
        {
            if (entry.Key == key) return entry.Part;
        }

        var found = work(this);
        while (true)
        {
            var first = Volatile.Read(ref known);
            if (Interlocked.CompareExchange(ref known, new KnownPart(key, found, first), first) == first) return found;
        }
    }

    /// <summary>Profiles of a lower wave were made before; a recipe uses only those.</summary>
    internal int Wave { get; }

    /// <summary>Readings that what went in cannot give: the recipe does without them.</summary>
    internal FixedList<ImpossibleReading> ImpossibleReadings { get; private set; } = [];

    internal Mix Mix => basis.Mix.Mix;

    internal Mix Served => basis.Served;

    internal ProfileSet Set => set;

    /// <summary>The material of a preparation, for recipes that use it.</summary>
    internal Material Material => material ??= MakeMaterial();

    /// <summary>A fact.</summary>
    public FactValue Get(Fact fact) => fact == Fact.Cost ? Costing.FactOf(this) : facts.Get(fact);

    /// <summary>°Brix as the amounts give it, also where a measurement replaces it; open where it cannot be had.</summary>
    public FactValue ComputedBrix() => basis.Unfitted is { } amounts ? CompositionFacts.BrixOfAmounts(basis, amounts) : Get(Fact.Brix);

    /// <summary>The strength as the amounts give it, also where a measurement replaces it; open where it cannot be had.</summary>
    public FactValue ComputedAbv() => basis.Unfitted is { } amounts ? CompositionFacts.AbvOfAmounts(basis, amounts) : Get(Fact.Abv);

    /// <summary>The pH as the composition gives it, also where a measurement replaces it; open where it cannot be had.</summary>
    public FactValue ComputedPh() => (computedPh ??= new StrongBox<FactValue>(PhFacts.Computed(basis))).Value;

    /// <summary>The same with the minerals that no table gives, to hold a reading against.</summary>
    internal FactValue ComputedPhWithStrayIons() => PhFacts.ComputedWithStrayIons(basis, ComputedPh());

    /// <summary>The material of what is left of making it.</summary>
    internal Material ByProductMaterial(ByProduct left) => Extraction.Left(left, Parts, basis.Mix.Lack);

    /// <summary>
    /// The profile of a recipe that is the same but for what it declares (<see cref="Book.Recipe.Declaring"/>). Nothing of a profile
    /// rests on that, so that what was worked out of the one holds for the other.
    /// </summary>
    /// <param name="recipe">The recipe with the other declaration.</param>
    /// <param name="with">The profiles in which it is tried.</param>
    internal RecipeProfile Declaring(Recipe recipe, ProfileSet with)
    {
        recipe.Measured = Recipe.Measured;
        var copy = (RecipeProfile)MemberwiseClone();
        copy.set = with;
        copy.basis = basis with { Recipe = recipe, Book = with.Book };
        return copy;
    }

    private FactBasis OfDrink(Drink drink, Composed mix)
    {
        (var technique, TechniqueStep) = Techniques.Of(drink);
        var chill = Serving.Chill(mix, technique, TechniqueStep, drink, Parts);
        return new FactBasis
        {
            Recipe = drink,
            Book = set.Book,
            Parts = Parts,
            Mix = mix,
            Served = Serving.Of(mix.Mix, InputVolume, chill, Parts),
            Reading = drink.Measured,
            Technique = technique,
            Chill = chill,
            Serves = drink.ServesOrOne,
        };
    }

    private FactBasis OfPrep(Prep prep, Composed weighed)
    {
        var made = Processing.Of(prep, weighed);
        if (prep.Measured is { } reading)
        {
            ImpossibleReadings = ReadingBounds.Of(prep, reading, weighed, made, this);
            if (ImpossibleReadings.Count > 0) prep.Measured = ReadingBounds.Without(reading, ImpossibleReadings);
        }

        bool isMoved = Fitting.Moves(prep.Measured);
        var mix = isMoved ? Fitting.Of(made, prep.Measured!, Processing.Ferments(prep), set.Book) : made;
        return new FactBasis
        {
            Recipe = prep,
            Book = set.Book,
            Parts = Parts,
            Mix = mix,
            Served = mix.Mix,
            Unfitted = isMoved ? made : null,
            Reading = prep.Measured,
            OnlyPart = ReferenceEquals(made.Mix, weighed.Mix) && !Processing.Ferments(prep) ? OnlyPartOf(Parts) : null,
            IsSolid = Dryness.IsSolid(prep, mix.Mix, Parts),
        };
    }

    /// <summary>The one part that a recipe consists of, in one line or in several, nothing taken out; <see langword="null"/> where there are others.</summary>
    private static Part? OnlyPartOf(FixedList<Part> parts)
    {
        Part? only = null;
        foreach (var part in parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (part.Phase != PartPhase.Mix || !part.IsWeighed || (only is not null && only.Material != part.Material)) return null;
            only ??= part;
        }

        return only;
    }

    private Material MakeMaterial()
    {
        var state = IsSolid ? MaterialState.Powder : MaterialState.Liquid;
        double density = Mixture.Density(Mix.Grams, Celsius.Reference)?.GramsPerMillilitre ?? double.NaN;
        var kind = Recipe is Prep prep ? prep.Family.OrNone().Kind : ItemKind.Drink;
        Trace ph = new(double.NaN, double.NaN, double.NaN), measured = ph;
        var mix = Mix;
        if (basis.Reading is { Ph.IsGiven: true } reading)
        {
            double half = Meters.PhHalfWidth(reading, set.Book);
            ph = new Trace(reading.Ph.Value.Value, reading.Ph.Value.Value - half, reading.Ph.Value.Value + half);
            if (!IsSolid) mix = Fitting.ToPh(mix, ph.Typical);
        }
        else if (basis.OnlyPart is { Material: { } only })
        {
            // What consists of one thing has the pH and the density of that thing, also as a part of something else.
            if (!IsSolid) ph = only.Ph;
            measured = only.MeasuredDensity;
            if (!double.IsNaN(only.Density)) density = only.Density;

            // Leaves or spices alone are still what is strained out of the next liquid.
            if (only is { State: MaterialState.Solid, Kind.IsBotanical: true } && !kind.IsKnown)
            {
                state = only.State;
                kind = only.Kind;
            }
        }

        return mix.ToMaterial(Recipe.Id, double.IsNaN(density) && IsSolid ? BulkDensityOfSolids : density, state, kind, basis.Mix.Lack, ph, measured);
    }

    /// <summary>A part that was looked for once.</summary>
    private sealed record KnownPart(string Key, Part? Part, KnownPart? Next);
}
