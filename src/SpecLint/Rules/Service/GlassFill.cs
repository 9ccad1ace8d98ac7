using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Balance;

namespace SpecLint.Rules.Service;

/// <summary>The glass of a drink, and what is in it: liquid, the ice that it carries, foam.</summary>
internal sealed class GlassFill
{
    private static readonly Limit Displaced = Limits.Of("ice-floating-displacement");
    private static readonly Limit IceLeast = Limits.Of("glass-ice-least");
    private static readonly Limit IceBlock = Limits.Of("glass-ice-block");
    private static readonly Limit EggFoam = Limits.Of("egg-foam-volume");
    private static readonly Limit EggWhite = Limits.Of("egg-white-foam");

    private GlassFill(string name) => Name = name;

    /// <summary>The glass, in words.</summary>
    public string Name { get; }

    /// <summary>Whether the bar states its size.</summary>
    public bool IsHouse { get; private init; }

    /// <summary>Volume to the brim, mL: low, typical, high.</summary>
    public Trace Brim { get; private init; }

    /// <summary>Volume to the wash line, mL; NaN where the bar states none.</summary>
    public double WashLine { get; private init; }

    /// <summary>Whether it is a stemmed glass for what is served up: of one name they are made in many sizes.</summary>
    public bool IsUp { get; private init; }

    /// <summary>Whether there is ice in it.</summary>
    public bool IsIced { get; private init; }

    /// <summary>mL of liquid that the least ice displaces.</summary>
    public double Ice { get; private init; }

    /// <summary>mL of foam.</summary>
    public double Foam { get; private init; }

    /// <summary>Source of the size.</summary>
    public string Source { get; private init; } = "";

    /// <summary>Liquid, foam and displacement, mL: typical, low, high.</summary>
    public Trace Fill { get; private init; }

    /// <summary>Place of the glass in bar.json, where it is one of the bar's.</summary>
    public TextSpan? HouseSpan { get; private init; }

    /// <summary>The glass in bar.json as a further place; none where it is not one of the bar's.</summary>
    public IReadOnlyList<RelatedPlace> SeeHouse(Settings settings) =>
        HouseSpan is { } span ? [new RelatedPlace(settings.Bar!.At(span), "the glass")] : [];

    /// <summary>Its volume as evidence.</summary>
    public Evidence BrimProof => new("brim", Brim.Typical, Brim.Low, Brim.High, "mL", Source);

    /// <summary>The glass of a drink with what is in it; <see langword="null"/> where the glass or the volume is not known.</summary>
    public static GlassFill? Of(RecipeContext context, Drink drink) =>
        drink.Glass.IsGiven ? Of(context.Profile, drink, drink.GlassWritten, context.Settings) : null;

    /// <summary>A drink in a glass; <see langword="null"/> where the glass or the volume is not known.</summary>
    /// <param name="profile">The drink's profile.</param>
    /// <param name="drink">The drink.</param>
    /// <param name="glass">The glass, by an id of the bar or of the table.</param>
    /// <param name="settings">Settings, for the glasses of the bar.</param>
    public static GlassFill? Of(RecipeProfile profile, Drink drink, string glass, Settings settings)
    {
        var served = profile.Get(Fact.ServedVolume);
        if (!served.IsKnown) return null;
        var type = GlassType.Of(glass) is { IsKnown: true } known ? known : null;
        Glass? house = null;
        bool own = settings.Bar is { } bar && bar.Glasses.TryGetValue(glass, out house) && house.Brim.IsGiven;
        if (!own && type is null) return null;
        var brim = own
            ? new Trace(house!.Brim.Value.Base, house.Brim.Value.BaseLow, house.Brim.Value.BaseHigh)
            : new Trace(type!.BrimTypical, type.BrimLow, type.BrimHigh);
        var (iced, block) = IceOf(profile, drink);
        double ice = iced ? Displaced.Value * (block ? IceBlock.Value : IceLeast.Value / 100 * brim.Typical) : 0;
        bool foams = profile.Technique is TechniqueKind.Shaken or TechniqueKind.Blended
            && Builds.Grams(profile, Substances.IsEggWhite) / drink.ServesOrOne >= EggWhite.Value;
        double foam = foams ? served.Value * EggFoam.Value / 100 : 0;
        return new GlassFill(own ? $"`{glass}`" : type!.Name.ToLowerInvariant())
        {
            IsHouse = own,
            IsUp = !own && type!.IsUp,
            Brim = brim,
            WashLine = own && house!.WashLine.IsGiven ? house.WashLine.Value.Base : double.NaN,
            IsIced = iced,
            Ice = ice,
            Foam = foam,
            Source = own ? "bar.json" : type!.Source,
            HouseSpan = own ? house!.Span : null,
            Fill = new Trace(served.Value + foam + ice, served.Low + foam + ice, served.High + foam + ice),
        };
    }

    /// <summary>What is in it, in words.</summary>
    public string Words(FactValue served)
    {
        string words = $"{Say.Fact(Fact.ServedVolume, served)} of liquid";
        if (Foam > 0) words += $", {Say.Number(Foam, 0)} mL of foam";
        if (Ice > 0) words += $"{(Foam > 0 ? " and" : ", and")} at least {Say.Number(Ice, 0)} mL that its ice displaces";
        return words;
    }

    /// <summary>Whether ice stands in the glass, and whether it is one block.</summary>
    internal static (bool Iced, bool Block) IceOf(RecipeProfile profile, Drink drink)
    {
        bool iced = profile.Technique is TechniqueKind.Built or TechniqueKind.Swizzled;
        bool block = iced && profile.TechniqueStep is { Ice.IsGiven: true } technique && technique.Ice.Value.IsBlock;
        foreach (var step in drink.Method)
        {
            if (!step.HasIce || step.Verb.LeavesIce || step.Verb.ClosesVessel || step == profile.TechniqueStep) continue;

            // What is strained afterwards was built on ice in a mixing glass.
            if (step.Verb.IcesGlass && !step.Verb.UsesStrainer && IsStrainedAfter(drink, step)) continue;
            iced = true;
            block = step.Ice.Value.IsBlock;
        }

        return (iced, block);
    }

    private static bool IsStrainedAfter(Drink drink, Step step)
    {
        foreach (var later in drink.Method)
        {
            if (later.Number > step.Number && later.Verb.UsesStrainer) return true;
        }

        return false;
    }
}
