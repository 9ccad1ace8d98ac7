using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

[Rule("SL5027", "ferment-sealed", "A live ferment is sealed with sugar left to ferment", Level.Error, Safety = true, Needs = [Fact.Sugar])]
[Limit("ferment-carbonation", "Volumes")]
[Limit("ferment-sealed-pressure", "Pressure")]
[Limit("wild-ferment-time", "Wild")]
[Limit("yeast-sugar", "Sugar")]
[Limit("syrup-water-activity", "Activity")]
[Limit("food-code-cold-hold", "Cold")]
internal sealed partial class FermentSealed : PrepRule
{
    /// <summary>The warmest that a closed bottle is reckoned with, as the limit of pressure is.</summary>
    private static readonly Celsius Warm = new(30);

    public override void Check(RecipeContext context, Prep prep)
    {
        bool live = SpecialCases.IsFerment(prep, context.Profile);
        if (!(live || MayFerment(context, prep)) || IsStopped(prep)) return;
        bool isSealed = Storage.IsSealed(prep);
        if (!isSealed && !Storage.MayBeSealed(prep)) return;
        double litres = context.Profile.InputVolume / 1000;
        double gramsPerLitre = SugarLeft(context, prep, litres);
        if (double.IsNaN(gramsPerLitre)) return;

        // 1 g of glucose gives 0.489 g of carbon dioxide; what the ferment already holds at its own temperature comes on top.
        double rating = RatingOf(context, prep);
        double most = double.IsNaN(rating) ? Pressure.Value : rating;
        bool bursts = Bursts(GasHeld(prep, Usual), out double volumes, out var end, out bool over);

        // Where nothing says how cold it stood, it may hold more than at the temperature of a room.
        bool mayBeCold = !bursts && live && double.IsNaN(Coldest(prep));
        if (mayBeCold) bursts = Bursts(GasHeld(prep, 0), out volumes, out end, out over);
        if (!bursts) return;
        bool shown = isSealed && live && !mayBeCold;
        string stood = IsTimed(prep) ? $"at least {Say.With(Wild.Value, "h")}" : "a time that nothing states";
        string what = live ? "The ferment" : $"It stood warm for {stood} and may ferment by itself; it";
        string closed = isSealed ? "sealed" : "kept in a vessel not shown to be vented,";
        string cold = mayBeCold ? ", and nothing says at what temperature it fermented: cold, it holds more gas" : "";
        string pressure = end is { } e ? $"{Say.Number(e.GaugePressure.Value, 1)} bar" : "more than 9 bar";
        string limit = !double.IsNaN(rating) ? $"{Say.Number(most)} bar that the vessel is rated for"
            : over ? $"{Say.Number(most)} bar limit of a house bottle ({Pressure.Source})"
            : $"{Say.Number(Volumes.Value)} volumes of a house bottle ({Volumes.Source})";
        context.Report(new(Rule)
        {
            Answer = shown ? Answer.Broken : Answer.NotShown,
            AskedLevel = shown ? null : Level.Warning,
            At = new(prep.Keep is null ? context.File.Head : context.At(Storage.SealedSpan(prep)), Storage.SealedPath(prep)),
            Message = $"{what} is {closed} with up to {Say.Number(gramsPerLitre, 0)} g/L of sugar{cold}. If all of it ferments, it makes "
                + $"{Say.Number(volumes, 1)} volumes of carbon dioxide and {pressure} at 30 °C, above the {limit}.",
            Advice = (isSealed ? "" : "Write `sealed` under `keep`. ")
                + "Keep it cold with the cap loose, vent it daily, or move it to a keg with a relief valve rated for the pressure.",
            Caution = "A bursting bottle throws glass: wear eye protection, open it cold and covered, and never warm a sealed ferment. "
                + "The maker's rating of the vessel and local rules decide.",
            Evidence = [Proof.Of("sugar left", gramsPerLitre, "g/L"), Proof.Of("carbon dioxide", volumes, "1"), Proof.Of(Volumes),
                Proof.Of(Pressure)],
        });

        bool Bursts(double held, out double volumes, out LiveFerment? end, out bool over)
        {
            volumes = (gramsPerLitre * 0.489 / GasVolumes.GramsPerLitrePerVolume) + held;
            var closed = new double[Components.Count];
            closed[(int)Component.Water] = 1000;
            closed[(int)Component.Glucose] = gramsPerLitre;
            closed[(int)Component.CarbonDioxide] = held * GasVolumes.GramsPerLitrePerVolume;
            end = Carbonation.OfLiveFerment(closed, Warm);
            over = end is null || end.Value.GaugePressure.Value > most;
            return double.IsNaN(rating) ? over || volumes > Volumes.Value : over;
        }
    }

    /// <summary>Temperature at which a ferment stands where nothing says another, °C; common practice, no source.</summary>
    private const double Usual = 20;

    /// <summary>The temperature at which it last ferments, °C, the coldest of a range; NaN where none is stated.</summary>
    private static double Coldest(Prep prep)
    {
        double celsius = double.NaN;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Ferments && KeepingWords.WarmthOf(step) is { IsGiven: true } at) celsius = at.Value.BaseLow;
        }

        return celsius;
    }

    /// <summary>
    /// Volumes of carbon dioxide that the ferment holds when it is closed: saturated at the coldest it stood at, at the pressure of
    /// the air.
    /// </summary>
    private static double GasHeld(Prep prep, double otherwise)
    {
        double celsius = Coldest(prep) is var stated && double.IsNaN(stated) ? otherwise : stated;
        var cold = new Celsius(Math.Min(40, Math.Max(0, celsius)));
        return Carbonation.Volumes(new Science.Bar(Carbonation.Atmosphere), cold, new AlcoholByVolume(0), new GramsPerLitre(0))?.Value ?? 0;
    }

    /// <summary>
    /// Rated gauge pressure of the vessel, bar: as the file, the bar's own vessels or the table of vessels gives it; NaN where
    /// nothing does.
    /// </summary>
    private static double RatingOf(RecipeContext context, Prep prep)
    {
        if (prep.Keep is not { } keep) return double.NaN;
        if (keep.Rating is { IsGiven: true, Value.Dimension: Dimension.Pressure }) return keep.Rating.Value.BaseLow;
        if (!keep.In.IsGiven) return double.NaN;
        return context.Settings.Bar is { } bar
            && bar.Vessels.TryGetValue(keep.In.Value.Id, out var own)
            && own.Rating is { IsGiven: true, Value.Dimension: Dimension.Pressure }
            ? own.Rating.Value.BaseLow
            : keep.In.Value.Rated is { IsForPressure: true } type ? type.RatingBar : double.NaN;
    }

    private static double SugarLeft(RecipeContext context, Prep prep, double litres)
    {
        // Dissolved solids are mostly sugar; water weighs about as much as the drink.
        if (prep.Measured is { Brix.IsGiven: true } measured) return measured.Brix.Value.Base * 10;
        double sugar = 0;
        var grams = context.Profile.Grams;
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++)
        {
            if (c != Component.Lactose) sugar += grams[(int)c];
        }

        if (!(litres > 0)) return double.NaN;
        double left = sugar / litres;

        // What has become ethanol is no longer sugar: 1 g of glucose gives 0.511 g.
        if (prep.Measured is { Abv.IsGiven: true } strength) left -= strength.Abv.Value.Base * 7.8924 / 0.511;
        return Math.Max(0, left);
    }

    /// <summary>
    /// Whether yeasts that nobody pitched may be at work: fresh plants or honey in water with sugar that stand warm for days, not
    /// called a ferment, and then shut off from the air out of the cold.
    /// </summary>
    private static bool MayFerment(RecipeContext context, Prep prep)
    {
        var state = context.Profile.Keeping!;
        if (!(Storage.IsSealed(prep) || Storage.MayBeSealed(prep))
            || state.IsStrong
            || context.Profile.IsSolid
            || Storage.Celsius(prep, context.Settings) <= Cold.Value
            || (state.WaterActivity.IsKnown && state.WaterActivity.High <= Activity.Value)
            || (context.Fact(Fact.Sugar) is { IsKnown: true } sugar && sugar.High < Sugar.Value))
            return false;
        double hours = 0;
        foreach (var step in prep.Method) hours += WarmHours(step);
        if (!(hours >= Wild.Value)) return false;
        var wild = RecipeTree.First(context.Profile, IsWild, static inner => inner is Prep made && IsStopped(made));
        return wild is { Part.Phase: not PartPhase.Beside };
    }

    private static bool IsWild(Ingredient ingredient) =>
        ingredient.IngredientKind.OrNone() is { IsHoney: true } or { IsFreshPlant: true } or { IsJuice: true } or { IsPuree: true };

    /// <summary>Whether the times that the steps state come to the days in which wild yeasts take hold.</summary>
    private static bool IsTimed(Prep prep)
    {
        double hours = 0;
        foreach (var step in prep.Method) hours += WarmHours(step) is var stated && double.IsPositiveInfinity(stated) ? 0 : stated;
        return hours >= Wild.Value;
    }

    /// <summary>
    /// Hours that a step lets it stand out of the cold; infinite where it is steeped or stands and nothing says for how long.
    /// </summary>
    private static double WarmHours(Step step)
    {
        if (!(step.Verb.Extracts || step.Verb.Keeps) || step.Verb.Cools) return 0;
        if (KeepingWords.WarmthOf(step) is { IsGiven: true } at && at.Value.BaseHigh <= Cold.Value) return 0;
        if (step.For is { IsGiven: true, Value.Dimension: Dimension.Duration }) return step.For.Value.BaseHigh / 3600;
        return step.Verb.IsBrief || step.Verb.Heats ? 0 : double.PositiveInfinity;
    }

    private static bool IsStopped(Prep prep)
    {
        bool stopped = false;
        foreach (var step in prep.Method)
        {
            // What was boiled before it was inoculated still ferments.
            if (step.Verb.StopsFerment) stopped = true;
            else if (step.Verb.Ferments || WarmHours(step) >= Wild.Value) stopped = false;
        }

        return stopped;
    }
}
