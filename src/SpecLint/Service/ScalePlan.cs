using System.Globalization;
using System.Text;
using System.Text.Json;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules;

namespace SpecLint.Service;

/// <summary>The size that a recipe is wanted at: one of the three, more than 0.</summary>
public sealed record ScaleRequest
{
    /// <summary>Volume to make, mL; of a drink the volume of the batch.</summary>
    public double? Millilitres { get; init; }

    /// <summary>Mass to make, g; for preparations.</summary>
    public double? Grams { get; init; }

    /// <summary>Number of drinks, or of portions of a preparation that says how many it makes.</summary>
    public double? Serves { get; init; }

    /// <summary>Whether the batch of a drink is poured as it is, without ice: the water of the technique goes into it.</summary>
    public bool Poured { get; init; }
}

/// <summary>A line of a recipe at the new size.</summary>
/// <param name="Item">Id of the item.</param>
/// <param name="Exact">Amount at the exact factor: mL, g or pieces.</param>
/// <param name="Rounded">Amount rounded to the step of the tool that measures it.</param>
/// <param name="Dimension">Volume, mass or count.</param>
/// <param name="Unit">Unit in which it is written.</param>
/// <param name="Grams">Mass of the rounded amount, g; NaN where not known.</param>
/// <param name="Before">Amount in the recipe, as written.</param>
public sealed record ScalePlanLine(string Item, double Exact, double Rounded, Dimension Dimension, string Unit, double Grams, string Before)
{
    /// <summary>Change by rounding, as a share of the exact amount.</summary>
    public double Drift => Exact > 0 ? (Rounded / Exact) - 1 : 0;
}

/// <summary>A fact at the exact size and after rounding.</summary>
/// <param name="Fact">Which.</param>
/// <param name="Exact">Before rounding.</param>
/// <param name="Rounded">After it.</param>
public sealed record ScalePlanFact(Fact Fact, FactValue Exact, FactValue Rounded);

/// <summary>What the batch goes into.</summary>
/// <param name="Name">A vessel of the bar by id, or a common size in words.</param>
/// <param name="Capacity">Its volume, mL.</param>
/// <param name="Count">How many are needed.</param>
/// <param name="Headspace">Room left in each, % of its volume.</param>
/// <param name="IsOfTheBar">Whether it is in <c>bar.json</c>.</param>
public sealed record ScaleContainer(string Name, double Capacity, int Count, double Headspace, bool IsOfTheBar);

/// <summary>
/// A recipe at another size, as it is made with the tools of the bar: what goes in, what rounding does to the facts, what it
/// is kept in and for how long. A drink becomes a batch: its tops, floats, rims and garnish stay with each glass.
/// </summary>
public sealed class ScalePlan
{
    /// <summary>From this volume on a jug is used, mL; common practice, no source.</summary>
    private const double JugFrom = 200;
    private const double JugStep = 5;

    /// <summary>From this volume on a large jug is used, mL; common practice, no source.</summary>
    private const double LargeJugFrom = 2000;
    private const double LargeJugStep = 10;

    /// <summary>A syringe or pipette for what is too little for a jigger, mL; common practice, no source.</summary>
    private const double SyringeStep = 0.5;
    private const double DefaultJiggerStep = 2.5;
    private const double DefaultScaleStep = 1;
    private const double WaterDensity = 0.9982;
    private static readonly Limit WorthSaying = Limits.Of("guard-drift-worth-saying");
    private static readonly Limit FactLeast = Limits.Of("guard-plan-fact-least");
    private static readonly Limit WholeServes = Limits.Of("guard-whole-serves");

    /// <summary>Bottles and boxes that bars have, mL; common practice, no source.</summary>
    private static readonly double[] CommonSizes = [250, 500, 750, 1000, 1500, 2000, 3000, 5000, 10_000, 20_000];

    private static readonly Limit Headspace = Limits.Of("headspace-least");

    private static readonly Fact[] Compared = [Fact.MixVolume, Fact.Abv, Fact.Sugar, Fact.Acid, Fact.SugarAcidRatio, Fact.Brix, Fact.Ph, Fact.Salt];

    private ScalePlan()
    {
    }

    /// <summary>The recipe.</summary>
    public Recipe Recipe { get; private set; } = null!;

    /// <summary>What every amount is multiplied by, before rounding.</summary>
    public double Factor { get; private set; }

    /// <summary>Drinks or portions that it makes; NaN where the recipe does not say.</summary>
    public double Serves { get; private set; } = double.NaN;

    /// <summary>Whether the batch is poured as it is.</summary>
    public bool Poured { get; private set; }

    /// <summary>What goes into the batch; the dilution water is not among it.</summary>
    public IReadOnlyList<ScalePlanLine> Lines { get; private set; } = [];

    /// <summary>What is added to each glass: tops, floats, rims, garnish.</summary>
    public FixedList<Line> AtTheGlass { get; private set; } = [];

    /// <summary>Water to add to a batch that is poured, mL, rounded; 0 where there is none.</summary>
    public double Water { get; private set; }

    /// <summary>The range of the water that ice would have added, mL.</summary>
    public (double Low, double High) WaterRange { get; private set; }

    /// <summary>Volume made, mL; NaN where not known or for a solid.</summary>
    public double Volume { get; private set; } = double.NaN;

    /// <summary>Mass made, g; NaN where not known.</summary>
    public double Mass { get; private set; } = double.NaN;

    /// <summary>Volume of the batch that one drink takes, mL; NaN for a preparation.</summary>
    public double VolumeEach { get; private set; } = double.NaN;

    /// <summary>Whether it is a solid: facts are then per 100 g.</summary>
    public bool IsSolid { get; private set; }

    /// <summary>Facts before and after rounding, those that are known.</summary>
    public IReadOnlyList<ScalePlanFact> Facts { get; private set; } = [];

    /// <summary>What it goes into; <see langword="null"/> where its volume is not known.</summary>
    public ScaleContainer? Container { get; private set; }

    /// <summary>The verdict on the recipe: whether it may be made and kept at all.</summary>
    public Verdict Verdict { get; private set; } = null!;

    /// <summary>
    /// How long the batch keeps by the rules of keeping, the day made counted; open
    /// where it must not be used or no rule sets an end.
    /// </summary>
    public FactValue Life { get; private set; }

    /// <summary>
    /// Days that it may be kept: the least of <see cref="Life"/> and what the recipe states; NaN where there is no end or it must not be
    /// used.
    /// </summary>
    public double Days =>
        Verdict.IsForbidden || (double.IsNaN(StatedDays) && !Life.IsKnown)
            ? double.NaN
            : Life.IsKnown && !(Life.Value >= StatedDays) ? Life.Value : StatedDays;

    /// <summary>Days that the recipe states; NaN where it states none or is a drink.</summary>
    public double StatedDays { get; private set; } = double.NaN;

    /// <summary>What to mind, each in a sentence.</summary>
    public IReadOnlyList<string> Remarks { get; private set; } = [];

    /// <summary>Scales a recipe.</summary>
    /// <param name="verdicts">The verdicts of its checked book.</param>
    /// <param name="recipe">The recipe.</param>
    /// <param name="request">The size.</param>
    /// <param name="why">Why it cannot be scaled so, in words; empty where it can.</param>
    /// <returns>The plan, or <see langword="null"/>.</returns>
    public static ScalePlan? Of(Verdicts verdicts, Recipe recipe, ScaleRequest request, out string why)
    {
        var profiles = verdicts.Profiles;
        var profile = profiles.Of(recipe);
        why = "";
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix
                || part.Line.Optional
                || part.Line.Amount is { IsGiven: true, Value.Dimension: Dimension.Volume or Dimension.Mass or Dimension.Count })
                continue;
            why = $"the amount of {part.Line.Item.Or("a line")} cannot be scaled";
            return null;
        }

        var plan = new ScalePlan { Recipe = recipe, Poured = request.Poured, Verdict = verdicts.Of(recipe) };
        double factor = recipe is Drink drink
            ? plan.FactorOf(drink, profile, request, out why)
            : plan.FactorOf((Prep)recipe, profile, request, out why);
        if (why.Length > 0) return null;
        if (!(factor > 0) || double.IsInfinity(factor))
        {
            why = "what it makes now is not known, so no factor can be found";
            return null;
        }

        plan.Factor = factor;
        plan.Scale(profile, profiles.Book.Settings);
        plan.Work(profiles, profile);
        return plan;
    }

    private double FactorOf(Drink drink, RecipeProfile profile, ScaleRequest request, out string why)
    {
        why = "";
        double serves = drink.ServesOrOne;
        if (request.Serves is { } wanted)
        {
            Serves = wanted;
            return wanted / serves;
        }

        if (request.Millilitres is not { } volume)
        {
            why = "a batch of a drink is measured by volume: write --to with ml or l";
            return double.NaN;
        }

        double batch = VolumeOfBatch(profile);
        if (double.IsNaN(batch))
        {
            why = $"the volume of {drink.Id} is not known: {profile.UnknownBecause}";
            return double.NaN;
        }

        double factor = volume / batch;
        Serves = factor * serves;
        return factor;
    }

    private double FactorOf(Prep prep, RecipeProfile profile, ScaleRequest request, out string why)
    {
        why = "";
        if (request.Poured)
        {
            why = "--poured is for drinks: a preparation is made as it is written";
            return double.NaN;
        }

        if (request.Serves is { } wanted)
        {
            if (!prep.PortionCount.IsGiven || !(prep.PortionCount.Value > 0))
            {
                why = $"{prep.Id} does not say how many portions it makes (portions.count): write --to with an amount";
                return double.NaN;
            }

            Serves = wanted;
            return wanted / prep.PortionCount.Value;
        }

        double density = profile.Get(Fact.Density) is { IsKnown: true } d ? d.Value : double.NaN;
        double ml = double.NaN, grams = double.NaN;
        if (prep.Yield.IsGiven && prep.Yield.Value.Dimension == Dimension.Volume) ml = prep.Yield.Value.Base;
        if (prep.Yield.IsGiven && prep.Yield.Value.Dimension == Dimension.Mass) grams = prep.Yield.Value.Base;
        if (double.IsNaN(ml) && double.IsNaN(grams))
            grams = (profile.Unknown & (Unknowns.Mass | Unknowns.Composition)) == 0 ? profile.Mass : double.NaN;
        if (double.IsNaN(ml)) ml = grams / density;
        if (double.IsNaN(grams)) grams = ml * density;
        double factor = request.Millilitres is { } to ? to / ml : request.Grams!.Value / grams;
        if (double.IsNaN(factor))
            why = $"what {prep.Id} yields is not known by {(request.Millilitres is null ? "mass" : "volume")}: write --to in "
                + $"{(request.Millilitres is null ? "ml" : "g")}, or give the recipe a yield";
        if (prep.PortionCount.IsGiven) Serves = factor * prep.PortionCount.Value;
        return factor;
    }

    /// <summary>Volume of what would go into the batch at the size of the recipe, mL.</summary>
    private double VolumeOfBatch(RecipeProfile profile) =>
        (profile.Unknown & (Unknowns.Mass | Unknowns.Composition)) != 0
            ? double.NaN
            : profile.InputVolume * (1 + (Poured && profile.Chill is { } chill ? chill.Ratio.Typical : 0));

    private void Scale(RecipeProfile profile, Settings settings)
    {
        var lines = new List<ScalePlanLine>();
        var glass = new List<Line>();
        foreach (var part in profile.Parts)
        {
            bool inBatch = Recipe is Prep || (part.Phase == PartPhase.Mix && part.Line.Role is LineRole.Part);
            if (!inBatch)
            {
                glass.Add(part.Line);
                continue;
            }

            if (part.Line.Amount.IsGiven) lines.Add(LineOf(part, Factor, settings));
        }

        Lines = lines;
        AtTheGlass = FixedList.Of(glass);
        if (Poured && profile.Chill is { } chill && !double.IsNaN(profile.InputVolume))
        {
            double water = profile.InputVolume * Factor;
            Water = RoundVolume(water * chill.Ratio.Typical, settings);
            WaterRange = (water * chill.Ratio.Low, water * chill.Ratio.High);
        }
    }

    /// <summary>The lines of a recipe times a factor, rounded to the tools.</summary>
    internal static IReadOnlyList<ScalePlanLine> LinesAt(RecipeProfile profile, double factor, Settings settings)
    {
        var lines = new List<ScalePlanLine>();
        foreach (var part in profile.Parts)
        {
            if (part.Line.Amount.IsGiven) lines.Add(LineOf(part, factor, settings));
        }

        return lines;
    }

    private static ScalePlanLine LineOf(Part part, double factor, Settings settings)
    {
        var amount = part.Line.Amount.Value;
        double exact = amount.Base * factor, rounded = Round(exact, amount, settings);
        double grams = part.IsWeighed && amount.Base > 0 ? part.Grams.Typical * rounded / amount.Base : double.NaN;
        string unit = amount.Dimension switch { Dimension.Volume => "ml", Dimension.Mass => "g", _ => amount.Unit.Name };
        return new ScalePlanLine(part.Line.Item.Or(""), exact, rounded, amount.Dimension, unit, grams, Rounding.Words(amount.Base, amount));
    }

    private static double Round(double amount, Quantity like, Settings settings)
    {
        switch (like.Dimension)
        {
            case Dimension.Volume:
                return RoundVolume(amount, settings);
            case Dimension.Mass:
                double step = settings.Bar is { Scale.IsGiven: true } bar && bar.Scale.Value.Base > 0 ? bar.Scale.Value.Base : DefaultScaleStep;
                return ToStep(amount, amount >= 1000 * step ? 10 * step : step);
            case Dimension.Count:
                return ToStep(amount, 1);
            default:
                return amount;
        }
    }

    private static double RoundVolume(double amount, Settings settings)
    {
        double jigger = settings.Bar is { Jigger.IsGiven: true } bar && bar.Jigger.Value.Base > 0 ? bar.Jigger.Value.Base : DefaultJiggerStep;
        return ToStep(amount, amount >= LargeJugFrom ? LargeJugStep : amount >= JugFrom ? JugStep : amount >= 4 * jigger ? jigger : SyringeStep);
    }

    private static double ToStep(double amount, double step)
    {
        double steps = Math.Max(1, Math.Round(amount / step, MidpointRounding.AwayFromZero));

        // A step of 0.1 is no binary number: the product is brought back to it.
        return Math.Round(steps * step, 6);
    }

    private void Work(ProfileSet profiles, RecipeProfile before)
    {
        var book = profiles.Book;
        var measures = book.Settings.Measures;
        string exactId = FreeId(book, Recipe.Id + "-at-size"), roundedId = FreeId(book, Recipe.Id + "-as-made");
        var exact = (Prep)BookReader.Read(new SourceFile(exactId + ".prep.json", TextAt(book, before, rounded: false)), FileKind.Prep, measures);
        var rounded = (Prep)BookReader.Read(new SourceFile(roundedId + ".prep.json", TextAt(book, before, rounded: true)), FileKind.Prep, measures);
        foreach (var sized in new[] { exact, rounded })
        {
            sized.CarriesReadings = true;
            if (Recipe.Measured is null) sized.Measured = null;
        }

        var set = ProfileSet.Of(new LinkedBook([.. book.Files, exact, rounded], book.Settings, book.On), 1);
        RecipeProfile exactProfile = set.Of(exact), roundedProfile = set.Of(rounded);
        IsSolid = roundedProfile.IsSolid;
        if ((roundedProfile.Unknown & (Unknowns.Mass | Unknowns.Composition)) == 0) Mass = roundedProfile.Mass;
        var facts = new List<ScalePlanFact>();
        foreach (var fact in Compared)
        {
            FactValue a = exactProfile.Get(fact), b = roundedProfile.Get(fact);
            if (!a.IsKnown || !b.IsKnown || double.IsNaN(a.Value) || double.IsNaN(b.Value)) continue;
            if (fact == Fact.Brix && Recipe is Drink) continue;
            if (Math.Abs(a.Value) < FactLeast.Value && Math.Abs(b.Value) < FactLeast.Value) continue;
            if (fact == Fact.MixVolume && IsSolid) continue;
            facts.Add(new ScalePlanFact(fact, a, b));
        }

        Facts = facts;
        var made = roundedProfile.Get(Fact.MixVolume);
        if (made.IsKnown && !IsSolid) Volume = made.Value;
        if (Recipe is Prep { Yield: { IsGiven: true, Value.Dimension: Dimension.Volume } yield }) Volume = yield.Value.Base * Factor;
        if (Recipe is Prep { Yield: { IsGiven: true, Value.Dimension: Dimension.Mass } mass })
        {
            Mass = mass.Value.Base * Factor;
            var density = roundedProfile.Get(Fact.Density);
            if (density.IsKnown && !IsSolid) Volume = Mass / density.Value;
        }

        if (Recipe is Drink && Serves > 0) VolumeEach = Volume / Serves;
        Life = roundedProfile.Get(Fact.Life);
        if (Recipe is Prep prep)
        {
            // Rounding may shorten its life, never lengthen it.
            if (!Verdict.Life.IsKnown || !(Life.IsKnown && Life.Value <= Verdict.Life.Value)) Life = Verdict.Life;
            StatedDays = Storage.LeastDays(prep);
        }
        else if (Verdict.IsForbidden)
        {
            Life = Verdict.Life;
        }

        if (!double.IsNaN(Volume)) Container = ContainerFor(Volume, book.Settings.Bar);
        Remarks = MakeRemarks(before);
    }

    private static string FreeId(LinkedBook book, string id)
    {
        while (book.Resolve(id) is not null) id += "-x";
        return id;
    }

    /// <summary>The recipe at the new size as the text of a preparation, so that the very same engine works out its facts and its keeping.</summary>
    private byte[] TextAt(LinkedBook book, RecipeProfile profile, bool rounded) =>
        Recipe is Prep prep ? Rewrite(prep, rounded) : Batch((Drink)Recipe, profile, book.Settings.Bar, rounded);

    private byte[] Rewrite(Prep prep, bool rounded)
    {
        var edits = new List<(TextSpan Span, string Text)>();
        int next = 0;
        foreach (var line in prep.Ingredients)
        {
            if (!line.Amount.IsGiven || next >= Lines.Count) continue;
            var scaled = Lines[next++];
            edits.Add((line.Amount.Span, Quoted(rounded ? scaled.Rounded : scaled.Exact, scaled.Unit)));
        }

        void Multiply(Given<Quantity> amount)
        {
            if (amount.IsGiven && BaseUnit(amount.Value) is { } unit) edits.Add((amount.Span, Quoted(amount.Value.Base * Factor, unit)));
        }

        Multiply(prep.Yield);
        foreach (var left in prep.ByProducts) Multiply(left.Amount);
        if (prep.Measured is { } measured)
        {
            Multiply(measured.Mass);
            Multiply(measured.Volume);
        }

        edits.Sort((a, b) => a.Span.Start.CompareTo(b.Span.Start));
        var text = new MemoryStream();
        var source = prep.Source.Utf8.Span;
        int from = 0;
        foreach (var (span, replacement) in edits)
        {
            Append(text, source.Slice(from, span.Start - from));
            Append(text, Encoding.UTF8.GetBytes(replacement));
            from = span.Start + span.Length;
        }

        Append(text, source.Slice(from));
        return text.ToArray();
    }

    private static void Append(MemoryStream to, ReadOnlySpan<byte> bytes) => to.Write(bytes.ToArray(), 0, bytes.Length);

    private static string? BaseUnit(Quantity amount) => amount.Dimension switch { Dimension.Volume => "ml", Dimension.Mass => "g", _ => null };

    private static string Quoted(double amount, string unit) => $"\"{amount.ToString("0.######", CultureInfo.InvariantCulture)} {unit}\"";

    private byte[] Batch(Drink drink, RecipeProfile profile, Bar? bar, bool rounded)
    {
        var text = new MemoryStream();
        using (var json = new Utf8JsonWriter(text))
        {
            json.WriteStartObject();
            json.WriteString("name", drink.Id);
            json.WriteString("family", "batch");
            json.WriteString("batchOf", drink.Id);
            json.WriteStartArray("ingredients");
            foreach (var line in Lines)
            {
                json.WriteStartObject();
                json.WriteString("item", line.Item);
                json.WriteString("amount", Quoted(rounded ? line.Rounded : line.Exact, line.Unit).Trim('"'));
                json.WriteEndObject();
            }

            double water = rounded || profile.Chill is not { } chill ? Water : profile.InputVolume * Factor * chill.Ratio.Typical;
            if (Water > 0)
            {
                json.WriteStartObject();
                json.WriteString("item", "water");
                json.WriteString("amount", Quoted(water * WaterDensity, "g").Trim('"'));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("method");
            json.WriteStartObject();
            json.WriteString("do", "stir");
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteStartObject("keep");
            double cold = bar is { Fridge.IsGiven: true } ? bar.Fridge.Value.Base : 4;
            json.WriteString("at", cold.ToString("0.##", CultureInfo.InvariantCulture) + " °C");
            json.WriteString("in", "bottle");
            json.WriteEndObject();
            json.WriteEndObject();
        }

        return text.ToArray();
    }

    private static ScaleContainer ContainerFor(double volume, Bar? bar)
    {
        double fill = 1 - (Headspace.Value / 100);
        string name = "";
        double capacity = double.PositiveInfinity;
        foreach (var vessel in bar?.Vessels.Values ?? [])
        {
            if (!vessel.Capacity.IsGiven || vessel.Capacity.Value.Dimension != Dimension.Volume) continue;
            double size = vessel.Capacity.Value.Base;
            if (size * fill < volume || size >= capacity) continue;
            capacity = size;
            name = vessel.Id;
        }

        if (name.Length > 0) return new ScaleContainer(name, capacity, 1, 100 * (1 - (volume / capacity)), true);
        double largest = CommonSizes[CommonSizes.Length - 1];
        double common = Array.Find(CommonSizes, s => s * fill >= volume);
        if (common == 0) common = largest;
        int count = (int)Math.Max(1, Math.Ceiling(volume / (common * fill)));
        return new ScaleContainer($"{Say.Number(common / 1000)} l", common, count, 100 * (1 - (volume / count / common)), false);
    }

    private List<string> MakeRemarks(RecipeProfile profile)
    {
        var remarks = new List<string>();
        foreach (var line in Lines)
        {
            if (line.Dimension == Dimension.Count && Math.Abs(line.Exact - line.Rounded) > 1e-6)
                remarks.Add($"{line.Item}: {Say.Number(line.Exact, 2)} would be exact, whole ones make {Say.Number(line.Rounded, 0)} "
                    + $"({Signed(100 * line.Drift, 0)} %).");
            else if (Math.Abs(line.Drift) > WorthSaying.Value)
                remarks.Add($"{line.Item}: rounding changes it by {Signed(100 * line.Drift, 0)} %; weigh it, or make more at a time.");
        }

        bool juice = false, egg = false;
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Mix) continue;
            juice |= Substances.IsJuice(part.Material);
            egg |= Substances.IsEggWhite(part.Material) || Substances.IsYolkyEgg(part.Material);
        }

        if (Recipe is Drink)
        {
            if (Poured && profile.Chill is null) remarks.Add("No ice touches this drink, so no water is added.");
            if (Poured && (egg || profile.Technique is TechniqueKind.Shaken or TechniqueKind.Blended))
                remarks.Add("Shaking also beats in air, which no bottle holds: shake each drink hard without ice, or sell "
                    + "it as another drink.");
            if (Poured) remarks.Add("Chill the batch to serving temperature before it is poured; the water stands in for the ice, not for the cold.");
            if (juice) remarks.Add("Juice loses its freshness within hours: add it on the day, or per glass (common practice, no source).");
            if (egg)
                remarks.Add("Egg in a batch spoils it as egg does: "
                    + "add it per glass, or keep the batch cold and throw away what is left at closing.");
            if (Serves > 0 && Math.Abs(Serves - Math.Round(Serves)) > WholeServes.Value)
                remarks.Add($"It fills {Say.Number(Math.Floor(Serves), 0)} whole serves.");
        }
        else if (profile.Recipe.Measured is { Ph.IsGiven: true } or { Brix.IsGiven: true }
            or { Abv.IsGiven: true } or { WaterActivity.IsGiven: true })
        {
            remarks.Add("The readings of the recipe are of another lot: measure this one.");
        }

        return remarks;
    }

    internal static string Signed(double value, int decimals)
    {
        string text = Say.Number(value, decimals);
        return text.StartsWith("-", StringComparison.Ordinal) || text == "0" ? text : "+" + text;
    }
}
