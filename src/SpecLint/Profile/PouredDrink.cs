using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// What is poured into one drink, before ice, and which group of drinks it is made up like. A line of amounts can be tried in
/// the place of what is written.
/// </summary>
internal sealed class PouredDrink
{
    /// <summary>
    /// g of acid in 100 g from which a part is as sour as lemon or lime; the share of dairy, purée and so on from which a drink is one of
    /// them.
    /// </summary>
    private static readonly Limit Sharp = Limits.Of("amount-sour-juice");
    private static readonly Limit Creamy = Limits.Of("group-creamy");
    private static readonly Limit Thick = Limits.Of("group-puree");
    private static readonly Limit Lengthened = Limits.Of("group-long");
    private static readonly Limit Soured = Limits.Of("group-sour");
    private static readonly Limit Juicy = Limits.Of("group-fruity");
    private static readonly Limit MostAlcohol = Limits.Of("alcohol-per-serve");
    private static readonly Limit LeastAlcohol = Limits.Of("group-alcohol");
    private static readonly Limit OfWine = Limits.Of("group-aperitif");

    private readonly List<Part> parts;
    private readonly double serves;

    private PouredDrink(List<Part> parts, double serves)
    {
        this.parts = parts;
        this.serves = serves;
        Facts = With(static _ => 1);
        Group = GroupOf(static _ => 1);
    }

    /// <summary>The parts that are poured.</summary>
    public IReadOnlyList<Part> Parts => parts;

    /// <summary>
    /// % vol, g of sugar and g of titratable acid in 100 mL, and g of sugar and of acid per g of ethanol, and of sugar per g of acid, of
    /// one drink as poured; in the order of <see cref="DrinkGroup.Facts"/>.
    /// </summary>
    public double[] Facts { get; }

    /// <summary>Id of the group.</summary>
    public string Group { get; }

    /// <summary>The drink; <see langword="null"/> where a part is not weighed or not known, or it has no alcohol, or is poured ready from a batch.</summary>
    public static PouredDrink? Of(RecipeProfile profile)
    {
        if (profile.Recipe is not Drink drink) return null;
        var poured = new List<Part>();
        bool alcohol = false;
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (part.Item?.File is Prep prep && prep.Family.OrNone().IsReadyDrink) return null;
            if (part.Material is not { } material
                || !part.IsWeighed
                || (material.Unknown & (Unknowns.Strength | Unknowns.Sugar | Unknowns.Composition | Unknowns.Water)) != 0)
                return null;
            if (part.Phase == PartPhase.TakenOut || material.Kind.IsIce) continue;
            poured.Add(part);
            alcohol |= material.Of(Component.Ethanol) > 0.04;
        }

        if (poured.Count < 2 || !alcohol) return null;
        var of = new PouredDrink(poured, drink.ServesOrOne);
        return of.EthanolWith(static _ => 1) >= LeastAlcohol.Value ? of : null;
    }

    /// <summary>The facts with each part multiplied by a factor.</summary>
    public double[] With(Func<Part, double> factor)
    {
        Span<double> grams = stackalloc double[Components.Count];
        grams.Clear();
        foreach (var part in parts)
        {
            double mass = part.Grams.Typical * factor(part) / serves;
            var per = part.Material!.PerGram;
            for (int i = 0; i < grams.Length; i++) grams[i] += mass * per[i];
        }

        double volume = Solving.VolumeOf(grams);
        double ethanol = grams[(int)Component.Ethanol], sugar = Solving.SugarOf(grams), acid = Solving.Titratable(grams);
        return [Solving.Strength(grams), 100 * sugar / volume, 100 * acid / volume, sugar / ethanol, acid / ethanol, sugar / acid];
    }

    /// <summary>Grams of ethanol in a serve with each part multiplied by a factor.</summary>
    private double EthanolWith(Func<Part, double> factor)
    {
        double sum = 0;
        foreach (var part in parts) sum += part.Grams.Typical * factor(part) / serves * part.Material!.Of(Component.Ethanol);
        return sum;
    }

    /// <summary>Whether all facts with each part multiplied by a factor are usual in a group, and it is still of the group.</summary>
    public bool Holds(DrinkGroup group, Func<Part, double> factor)
    {
        if (GroupOf(factor) != group.Id || EthanolWith(factor) > Math.Max(EthanolWith(static _ => 1), MostAlcohol.Value)) return false;
        double[] facts = With(factor);
        for (int i = 0; i < facts.Length; i++)
        {
            if (group.Usual[i] is { } band && !(facts[i] >= band.Low && facts[i] <= band.High)) return false;
        }

        return true;
    }

    /// <summary>The group with each part multiplied by a factor.</summary>
    public string GroupOf(Func<Part, double> factor)
    {
        double all = 0, creamy = 0, thick = 0, lengthened = 0, sharp = 0, juicy = 0, wine = 0, strong = 0;
        foreach (var part in parts)
        {
            var material = part.Material!;
            var kind = material.Kind;
            double millilitres = (double.IsNaN(part.Millilitres) ? part.Grams.Typical : part.Millilitres) * factor(part);
            all += millilitres;
            double ethanol = material.Of(Component.Ethanol), sugar = Solving.SugarOf(material.PerGram);
            if (kind.IsDairy
                || (kind.IsEgg && material.Of(Component.Fat) >= 0.04)
                || (ethanol > 0.05 && material.Of(Component.Fat) >= 0.04))
                creamy += millilitres;
            else if (kind.IsPuree) thick += millilitres;
            else if (kind.Lengthens || kind.IsWater || kind.IsBrew || material.Of(Component.CarbonDioxide) > 0) lengthened += millilitres;
            else if (100 * Solving.AcidsOf(material.PerGram) >= Sharp.Value) sharp += millilitres;
            else if (kind.IsJuice || (ethanol < 0.005 && sugar < 0.3 && !kind.IsEgg)) juicy += millilitres;
            else if (ethanol > 0.2 && sugar < 0.1) strong += millilitres;
            else if (ethanol > 0.04 && !kind.IsLiqueur) wine += millilitres;
        }

        double of(double part) => 100 * part / all;
        if (of(creamy) >= Creamy.Value) return "creamy";
        if (of(thick) >= Thick.Value) return "puree";
        if (of(lengthened) >= Lengthened.Value) return "long";
        if (of(sharp) >= Soured.Value) return "sour";
        if (of(juicy) >= Juicy.Value) return "fruity";
        return of(wine) >= OfWine.Value && wine > strong ? "aperitif" : "spirit-forward";
    }
}
