using SpecLint.Book;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// What is uncertain of an ingredient, as inputs that vary independently of each other: the strength; the dry matter, with which all
/// solids rise and fall; the share of sugar in it; which sugars; acid, pH and salt. Each end is a composition that adds up.
/// </summary>
internal sealed class EntryVariations
{
    private static readonly Component[] Solids =
    [
        Component.Sucrose, Component.Glucose, Component.Fructose, Component.Lactose, Component.Maltose, Component.Dextrin,
        Component.Glycerol, Component.Sorbitol, Component.Xylitol, Component.Erythritol, Component.Maltitol, Component.Allulose,
        Component.Protein, Component.Fat, Component.Fibre,
    ];

    private static readonly Component[] SugarComponents =
        [Component.Sucrose, Component.Glucose, Component.Fructose, Component.Lactose, Component.Maltose, Component.Dextrin];
    private static readonly Component[] Disaccharides = [Component.Sucrose, Component.Lactose, Component.Maltose, Component.Dextrin];
    private static readonly Component[] Monosaccharides = [Component.Glucose, Component.Fructose];
    private static readonly Component[] Polyols =
        [Component.Glycerol, Component.Sorbitol, Component.Xylitol, Component.Erythritol, Component.Maltitol, Component.Allulose];

    private static readonly Component[] Acids =
    [
        Component.Citric, Component.Malic, Component.Tartaric, Component.Lactic, Component.Acetic, Component.Phosphoric, Component.Succinic,
        Component.Ascorbic, Component.Oxalic, Component.Fumaric, Component.Quinic, Component.Gluconic, Component.Benzoic, Component.Sorbic,
    ];

    private static readonly Component[] Anions = [Component.CarbonDioxide, Component.Chloride, Component.Sulphate];
    private static readonly Component[] Metals = [Component.Sodium, Component.Potassium, Component.Calcium, Component.Magnesium];
    private static readonly Catalogue.Limit LabelTolerance = Catalogue.Limits.Of("strength-tolerance");
    private static readonly Catalogue.Limit AlcoholFree = Catalogue.Limits.Of("declare-strength-from");

    /// <summary>How much of the spread of the titratable acidity the pH explains at most; judged, no source.</summary>
    private const double MostCorrelation = 0.8;

    private readonly Ingredient ingredient;
    private readonly IReadOnlyDictionary<string, SourcedValue> values;
    private readonly EntryComposition typical;
    private readonly double[] nominal;
    private readonly List<UncertainInput> inputs = [];

    private EntryVariations(Ingredient ingredient, EntryComposition typical, double[] nominal)
    {
        this.ingredient = ingredient;
        values = ingredient.Values;
        this.typical = typical;
        this.nominal = nominal;
    }

    /// <summary>The inputs of an ingredient.</summary>
    /// <param name="ingredient">With what it inherits.</param>
    /// <param name="typical">Its typical values.</param>
    /// <param name="nominal">Masses in one gram that they come to.</param>
    public static UncertainInput[] Of(Ingredient ingredient, EntryComposition typical, double[] nominal)
    {
        var of = new EntryVariations(ingredient, typical, nominal);
        of.VaryAll();
        return [.. of.inputs];
    }

    private void VaryAll()
    {
        Vary("strength", StrengthWay(), static (e, by) => e.Strength = Math.Max(0, Math.Min(100, e.Strength + by)));
        var solids = SolidsWay();
        Vary("solids", solids, static (e, by) => ScaleSolids(e, by));
        VarySugars(solids);
        Vary("polyols", Within(TotalWay(Polyols)), static (e, by) => Scale(e, Polyols, by));
        if (double.IsNaN(typical.Ph) && typical.IonsAreBound && Total(Metals) > 0) VarySalt();
        else if (double.IsNaN(typical.Titratable) || double.IsNaN(typical.Ph)) Vary("acid", TotalWay(Acids), static (e, by) => Scale(e, Acids, by));
        VaryPh();
        Vary("salt", Way("salt"), static (e, by) => e.Contents[(int)Component.SodiumChloride] = Math.Max(0, e.Contents[(int)Component.SodiumChloride] + by));
        if (!double.IsNaN(typical.Extract) && Catalogue.ExtractTable.Find(ingredient.IngredientKind.OrNone().Id) is { } extract)
            Vary("extract", new Ends((extract.Typical - extract.Low) / 10, (extract.High - extract.Typical) / 10), static (e, by) => e.Extract += by);
        if (double.IsNaN(typical.Solids) && double.IsNaN(typical.Water)) Vary("density", Way("density"), static (e, by) => e.Density += by);
    }

    /// <summary>
    /// The pH of a lot is that of its acids and of the minerals that hold them: where it lies higher, more of the same acids is held, and less
    /// is left to titrate. The acids differ by what the titratable acidity differs beyond that.
    /// </summary>
    private void VaryPh()
    {
        int before = inputs.Count;
        Vary("pH", Way("ph"), HoldAcids);
        if (double.IsNaN(typical.Titratable) || double.IsNaN(typical.Ph)) return;
        var all = Way("titratableAcidity");
        var explained = inputs.Count > before ? TitrationMovedBy(inputs[before]).AtMost(all.Times(MostCorrelation)) : default;
        Vary("titratable acidity", all.Beyond(explained), static (e, by) => e.Titratable = Math.Max(0, e.Titratable + by));
    }

    /// <summary>Moves the pH of a composition and leaves its acids what they are; where they alone are not so sour, the titratable acidity stays.</summary>
    private void HoldAcids(EntryComposition of, double by)
    {
        of.Ph += by;
        double basis = BasisOfNominal();
        var sour = (double[])nominal.Clone();
        sour[(int)Component.Chloride] = typical.Contents[(int)Component.Chloride] / basis;
        if (double.IsNaN(of.Titratable) || Juice.PotassiumForPh(sour, new Ph(of.Ph), Celsius.Reference) is null) return;
        foreach (var c in Acids) of.Contents[(int)c] = nominal[(int)c] * basis;
        of.Titratable = double.NaN;
    }

    /// <summary>How far the pH moves the titratable acidity, g in the basis: it falls where the pH rises.</summary>
    private Ends TitrationMovedBy(UncertainInput ph)
    {
        var moved = (double[])nominal.Clone();
        ph.Changes.AddTo(moved, 1);
        for (int c = 0; c < moved.Length; c++) moved[c] = Math.Max(0, moved[c]);
        double change = Math.Abs(Titrated(moved) - Titrated(nominal)) * BasisOfNominal() * Propagation.Coverage;
        return new Ends(change * ph.Up, change * ph.Down);

        static double Titrated(double[] grams) => AcidBase.TitratableAcidity(grams, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)?.Value ?? 0;
    }

    /// <summary>Grams of the composition in its basis, by a part that nothing moves.</summary>
    private double BasisOfNominal()
    {
        foreach (var c in Solids)
        {
            if (typical.Contents[(int)c] > 0 && nominal[(int)c] > 0) return typical.Contents[(int)c] / nominal[(int)c];
        }

        return typical.PerVolume && !double.IsNaN(typical.Density) ? 100 * typical.Density : 100;
    }

    /// <summary>Of a salt, metal and anions vary together: it stays a salt.</summary>
    private void VarySalt()
    {
        double metals = Total(Metals);
        Vary("salt content", TotalWay(Metals), (e, by) =>
        {
            double factor = Math.Max(0, 1 + (by / metals));
            foreach (var c in Metals) e.Contents[(int)c] *= factor;
            foreach (var c in Acids) e.Contents[(int)c] *= factor;
            foreach (var c in Anions) e.Contents[(int)c] *= factor;
        });
    }

    /// <summary>The share of sugar in the dry matter beyond what the dry matter itself explains, and which sugars they are.</summary>
    private void VarySugars(Ends solids)
    {
        double sugars = Total(SugarComponents);
        if (sugars <= 0) return;
        var all = TotalWay(SugarComponents);
        var explained = double.IsNaN(typical.Solids) ? default : solids.Times(sugars / Math.Max(typical.Solids, sugars));
        Vary("sugar", Within(all.Beyond(explained)), static (e, by) => Scale(e, SugarComponents, by));
        double doubles = Total(Disaccharides), singles = Total(Monosaccharides);
        if (doubles <= 0 || singles <= 0) return;
        var split = TotalWay(Disaccharides).Beyond(explained.Times(doubles / sugars));
        Vary("kind of sugar", new Ends(split.Down, Math.Min(split.Up, singles)), static (e, by) =>
        {
            Scale(e, Disaccharides, by);
            Scale(e, Monosaccharides, -by);
        });
    }

    /// <summary>The dry matter, by its own range or that of the water.</summary>
    private Ends SolidsWay()
    {
        if (values.TryGetValue("solids", out var solids)) return Ends.Of(solids);
        return !typical.PerVolume && values.TryGetValue("water", out var water) ? new Ends(water.High - water.Typical, water.Typical - water.Low) : default;
    }

    /// <summary>More of one content takes the place of other solids, as long as there are such: the dry matter stays.</summary>
    private Ends Within(Ends ends)
    {
        if (double.IsNaN(typical.Solids)) return ends;
        double contents = 0;
        foreach (double g in typical.Contents) contents += g;
        return new Ends(ends.Down, Math.Min(ends.Up, Math.Max(0, typical.Solids - contents)));
    }

    /// <summary>A strength that is given without a range is that of a label, with what the law allows it to differ.</summary>
    private Ends StrengthWay()
    {
        var way = Way("strength");
        return way == default && typical.Strength > AlcoholFree.Value ? new Ends(LabelTolerance.Value, LabelTolerance.Value) : way;
    }

    private Ends Way(string path) => values.TryGetValue(path, out var v) ? Ends.Of(v) : default;

    private double Total(Component[] components)
    {
        double sum = 0;
        foreach (var c in components) sum += typical.Contents[(int)c];
        return sum;
    }

    /// <summary>Ends of a sum of contents, each with its own range: independent ranges add by squares (JCGM 100:2008, 5.1.2).</summary>
    private Ends TotalWay(Component[] components)
    {
        double down = 0, up = 0;
        foreach (var (path, component) in EntryContents.Paths)
        {
            if (Array.IndexOf(components, component) < 0 || !values.TryGetValue(path, out var v)) continue;
            down += (v.Typical - v.Low) * (v.Typical - v.Low);
            up += (v.High - v.Typical) * (v.High - v.Typical);
        }

        return new Ends(Math.Sqrt(down), Math.Sqrt(up));
    }

    /// <summary>Adds an input whose ends are the compositions with the value moved down and up.</summary>
    private void Vary(string name, Ends ends, Action<EntryComposition, double> move)
    {
        if (!(ends.Down > 0) && !(ends.Up > 0)) return;
        double[] low = Moved(-ends.Down), high = Moved(ends.Up);
        double downNorm = Distance(low, nominal), upNorm = Distance(high, nominal);
        if (upNorm == 0 && downNorm == 0) return;

        // One unit of the input is the whole way from typical to the end that lies farther.
        bool useUp = upNorm >= downNorm;
        double norm = useUp ? upNorm : downNorm;
        var vector = new double[Components.Count];
        for (int c = 0; c < vector.Length; c++) vector[c] = useUp ? high[c] - nominal[c] : nominal[c] - low[c];
        double up = upNorm / norm / Propagation.Coverage, down = downNorm / norm / Propagation.Coverage;
        inputs.Add(new UncertainInput($"{ingredient.Id}: {name}", SparseMasses.Of(vector), up, down));

        double[] Moved(double by)
        {
            if (by == 0) return nominal;
            var moved = typical.Copy();
            move(moved, by);
            return moved.Compose().PerGram;
        }
    }

    private static void ScaleSolids(EntryComposition of, double by)
    {
        if (double.IsNaN(of.Solids))
        {
            double dry = 100 - of.Water;
            of.Water = Math.Max(0, Math.Min(100, of.Water - by));
            if (dry > 0) ScaleAll(of, (dry + by) / dry);
            return;
        }

        double was = of.Solids;
        of.Solids = Math.Max(0, of.PerVolume ? was + by : Math.Min(100, was + by));
        if (was > 0) ScaleAll(of, of.Solids / was);
    }

    private static void ScaleAll(EntryComposition of, double factor)
    {
        foreach (var c in Solids) of.Contents[(int)c] *= Math.Max(0, factor);
    }

    private static void Scale(EntryComposition of, Component[] components, double by)
    {
        double sum = 0;
        foreach (var c in components) sum += of.Contents[(int)c];
        if (sum <= 0) return;
        foreach (var c in components) of.Contents[(int)c] *= Math.Max(0, 1 + (by / sum));
    }

    private static double Distance(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++) sum += (a[i] - b[i]) * (a[i] - b[i]);
        return Math.Sqrt(sum);
    }

    /// <summary>How far a value reaches below and above its typical one, to the ends of about 95 %.</summary>
    private readonly record struct Ends(double Down, double Up)
    {
        public static Ends Of(SourcedValue value) => new(value.Typical - value.Low, value.High - value.Typical);

        public Ends Times(double factor) => new(Down * factor, Up * factor);

        public Ends AtMost(Ends other) => new(Math.Min(Down, other.Down), Math.Min(Up, other.Up));

        /// <summary>What is left when a part of the spread is explained by something else.</summary>
        public Ends Beyond(Ends explained) => new(Left(Down, explained.Down), Left(Up, explained.Up));

        private static double Left(double whole, double part) => whole <= part ? 0 : Math.Sqrt((whole * whole) - (part * part));
    }
}
