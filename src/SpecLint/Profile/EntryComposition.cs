using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// The composition of an ingredient by mass, from what its entry gives. It is one thing: the parts add up to the whole. Strength and
/// dry matter come first; other solids are the dry matter less the contents, water is what then fills the basis (100 g, or the volume
/// of 100 mL by the model of mixtures), and the density follows. A density that is given in place of the dry matter tells the other
/// solids; without either a drink has the extract that is usual for its kind.
/// </summary>
internal sealed class EntryComposition
{
    /// <summary>g/mL of ethanol at 20 °C (OIML R 22, 1975).</summary>
    private const double EthanolDensity = 0.78924;

    /// <summary>Sodium chloride of a gram of sodium: 58.443 to 22.990.</summary>
    private const double ChloridePerSodium = 2.542;

    /// <summary>g/mol.</summary>
    private const double ChlorideMolarMass = 35.453;

    /// <summary>g/mol.</summary>
    private const double PotassiumMolarMass = 39.098;

    private const int Rounds = 12;

    /// <summary>
    /// Of leaves, stalks and roots: celery 5.7 to 6.0, parsley 5.7 to 6.0, chives 5.2 to 6.3, spinach 5.5 to 6.8 (FDA/CFSAN, Approximate
    /// pH of Foods).
    /// </summary>
    private static readonly Ph TissuePh = new(6);

    private static readonly Component[] Ions =
        [Component.Sodium, Component.Potassium, Component.Calcium, Component.Magnesium, Component.Chloride, Component.Sulphate];

    /// <summary>Reads the typical values of an ingredient.</summary>
    /// <param name="ingredient">With what it inherits.</param>
    /// <param name="state">Its state.</param>
    public EntryComposition(Ingredient ingredient, MaterialState state)
    {
        var values = ingredient.Values;
        var kind = ingredient.IngredientKind.OrNone();
        State = state;
        PerVolume = ingredient.PerHundredMillilitres.Or(false);
        IonsAreBound = kind.BindsIons;
        foreach (var (path, component) in EntryContents.Paths) Contents[(int)component] = Math.Max(0, Of(path, 0));
        Strength = Math.Max(0, Math.Min(100, Of("strength", 0)));
        Solids = Of("solids", double.NaN);
        Water = Of("water", double.NaN);
        if (double.IsNaN(Solids) && !double.IsNaN(Water) && !PerVolume && Strength <= 0) Solids = Math.Max(0, 100 - Water);
        Density = Of("density", double.NaN);
        Ph = Of("ph", double.NaN);
        Titratable = Of("titratableAcidity", double.NaN);
        bool nothingSaysHowMuch = double.IsNaN(Solids) && double.IsNaN(Water) && double.IsNaN(Density);
        Extract = state == MaterialState.Liquid && nothingSaysHowMuch && ExtractTable.Find(kind.Id) is { } extract
            ? extract.Typical / 10
            : double.NaN;

        double Of(string path, double fallback) => values.TryGetValue(path, out var v) ? v.Typical : fallback;
    }

    private EntryComposition(EntryComposition from)
    {
        from.Contents.CopyTo(Contents, 0);
        (State, PerVolume, IonsAreBound) = (from.State, from.PerVolume, from.IonsAreBound);
        (Strength, Solids, Water, Density) = (from.Strength, from.Solids, from.Water, from.Density);
        (Ph, Titratable, Extract) = (from.Ph, from.Titratable, from.Extract);
    }

    /// <summary>Contents by component, g in the basis: 100 g or 100 mL.</summary>
    public double[] Contents { get; } = new double[Components.Count];

    /// <summary>State at room temperature.</summary>
    public MaterialState State { get; }

    /// <summary>Whether its ions are listed with what holds them: salts, acids, preservatives, waters.</summary>
    public bool IonsAreBound { get; }

    /// <summary>Whether the basis is 100 mL.</summary>
    public bool PerVolume { get; }

    /// <summary>% vol.</summary>
    public double Strength { get; set; }

    /// <summary>All dry matter, ethanol aside, g in the basis; NaN where it is not given.</summary>
    public double Solids { get; set; }

    /// <summary>Water, g in the basis; NaN where it is not given.</summary>
    public double Water { get; set; }

    /// <summary>g/mL; NaN where it is not given.</summary>
    public double Density { get; set; }

    /// <summary>pH; NaN where it is not given.</summary>
    public double Ph { get; set; }

    /// <summary>g in the basis as anhydrous citric acid to pH 8.1; NaN where it is not given.</summary>
    public double Titratable { get; set; }

    /// <summary>Dry matter other than sugar, g in the basis, where only the kind tells it; NaN else.</summary>
    public double Extract { get; set; }

    /// <summary>The same, to be changed.</summary>
    public EntryComposition Copy() => new(this);

    /// <summary>Masses in one gram, and the density in g/mL; NaN where that cannot be had.</summary>
    public (double[] PerGram, double Density) Compose()
    {
        var grams = (double[])Contents.Clone();
        BindFreeIons(grams);
        double density = double.IsNaN(Density) || State == MaterialState.Powder ? 1 : Density;
        for (int round = 0; round < Rounds; round++)
        {
            grams[(int)Component.Ethanol] = Strength / 100 * EthanolDensity * (PerVolume ? 100 : 100 / density);
            Fill(grams, density);
            bool moved = Titrate(grams);
            if (round == 0) moved |= AddNeutralSalt(grams);
            double next = State == MaterialState.Liquid ? Mixture.Density(grams, Celsius.Reference)?.GramsPerMillilitre ?? double.NaN : double.NaN;
            bool isSettled = double.IsNaN(next) || Math.Abs(next - density) < 1e-9;
            if (isSettled && !moved) break;
            if (!double.IsNaN(next)) density = next;
        }

        double total = Sum(grams);
        if (!(total > 0))
        {
            Array.Clear(grams, 0, grams.Length);
            grams[(int)Component.OtherInsoluble] = 1;
            return (grams, Density);
        }

        for (int c = 0; c < grams.Length; c++) grams[c] /= total;
        double computed = State == MaterialState.Liquid ? Mixture.Density(grams, Celsius.Reference)?.GramsPerMillilitre ?? Density : Density;
        return (grams, computed);
    }

    /// <summary>
    /// Ions that are analysed without a pH and the anions that hold them are no free base. They hold the acids that were analysed with them, to the pH
    /// of living tissue; what is left counts as neutral salts. What the anions of a salt leave over is held by those that have no field (glutamate,
    /// sulphite, traces in rock salt): it counts as chloride.
    /// </summary>
    private void BindFreeIons(double[] grams)
    {
        if (!double.IsNaN(Ph)) return;
        double free = IonsAreBound
            ? AcidBase.Unbalanced(grams)
            : Math.Max(0, ChargeOfMetals(grams) - (grams[(int)Component.Chloride] / ChlorideMolarMass) - ChargeOfAcids(grams));
        grams[(int)Component.Chloride] += free * ChlorideMolarMass;
    }

    /// <summary>Charge that the acids alone have at the pH of living tissue, mol.</summary>
    private static double ChargeOfAcids(double[] grams)
    {
        Span<double> acids = stackalloc double[Components.Count];
        acids.Clear();
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) acids[(int)c] = grams[(int)c];
        return AcidBase.Equivalents(acids, TissuePh) ?? 0;
    }

    /// <summary>Charge of the metals, mol.</summary>
    private static double ChargeOfMetals(double[] grams) =>
        (grams[(int)Component.Sodium] / 22.990)
            + (grams[(int)Component.Potassium] / PotassiumMolarMass)
            + (2 * grams[(int)Component.Calcium] / 40.078)
            + (2 * grams[(int)Component.Magnesium] / 24.305);

    /// <summary>Potassium that was analysed beyond what the pH asks for: anions without a field hold it, which count as chloride.</summary>
    private bool AddNeutralSalt(double[] grams)
    {
        double surplus = double.IsNaN(Ph) || IonsAreBound ? 0 : (Contents[(int)Component.Potassium] - grams[(int)Component.Potassium]) / PotassiumMolarMass;
        if (surplus <= 0) return false;
        grams[(int)Component.Chloride] += surplus * ChlorideMolarMass;
        grams[(int)Component.Potassium] = Contents[(int)Component.Potassium];
        return true;
    }

    /// <summary>Other solids and water, so that the whole fills the basis.</summary>
    private void Fill(double[] grams, double density)
    {
        bool liquid = State == MaterialState.Liquid;
        int other = (int)(liquid ? Component.OtherDissolved : Component.OtherInsoluble);
        grams[(int)Component.Water] = grams[(int)Component.OtherDissolved] = grams[(int)Component.OtherInsoluble] = 0;
        double known = Sum(grams), ethanol = grams[(int)Component.Ethanol], contents = known - ethanol;
        double basis = PerVolume ? 100 * density : 100;
        if (!double.IsNaN(Solids))
        {
            grams[other] = Math.Max(0, Solids - contents);
            FillWater(grams, basis, liquid);
        }
        else if (!double.IsNaN(Water))
        {
            grams[(int)Component.Water] = Math.Min(Water, Math.Max(0, basis - known));
            grams[other] = Math.Max(0, basis - known - grams[(int)Component.Water]);
        }
        else if (!double.IsNaN(Density) && liquid)
        {
            FillByDensity(grams, PerVolume ? 100 * Density : 100);
        }
        else if (liquid)
        {
            double extract = double.IsNaN(Extract) ? 0 : Extract * (PerVolume ? 1 : 1 / density);
            grams[other] = Math.Max(0, extract - (contents - Sugars(grams)));
            FillWater(grams, basis, liquid);
        }
        else
        {
            grams[(int)Component.Water] = known > 0 ? Math.Max(0, basis - known) : 0;
            grams[other] = known > 0 ? 0 : basis;
        }
    }

    /// <summary>Water by difference: of 100 mL of a liquid by volume, else by mass.</summary>
    private void FillWater(double[] grams, double basis, bool liquid)
    {
        int water = (int)Component.Water;
        double rest = basis - Sum(grams);
        grams[water] = Math.Max(0, rest);
        if (!PerVolume || !liquid) return;
        for (int i = 0; i < Rounds; i++)
        {
            if (Mixture.Volume(grams, Celsius.Reference) is not { } volume) return;
            double miss = 100 - volume.Value;
            grams[water] = Math.Max(0, grams[water] + miss);
            if (Math.Abs(miss) < 1e-7) return;
        }
    }

    /// <summary>Water and other solids that together have the mass and the volume which the density gives.</summary>
    private void FillByDensity(double[] grams, double basis)
    {
        int water = (int)Component.Water, other = (int)Component.OtherDissolved;
        double rest = Math.Max(0, basis - Sum(grams)), low = 0, high = rest;
        for (int i = 0; i < 40; i++)
        {
            grams[other] = (low + high) / 2;
            grams[water] = rest - grams[other];
            double density = Mixture.Density(grams, Celsius.Reference)?.GramsPerMillilitre ?? double.PositiveInfinity;
            if (density < Density) low = grams[other];
            else high = grams[other];
        }

        // A density that is too low for the contents tells nothing of other solids: the contents stand.
        grams[other] = low;
        grams[water] = rest - low;
        if (low <= 0) FillWater(grams, basis, liquid: true);
    }

    /// <summary>Sets acids and strong ions so that the model gives the pH and titratable acidity that are given; whether they still move.</summary>
    private bool Titrate(double[] grams)
    {
        if (double.IsNaN(Ph)) return false;
        var ph = new Ph(Ph);
        double before = grams[(int)Component.Potassium], acids = Acids(grams);
        if (!double.IsNaN(Titratable))
        {
            Span<double> shares = stackalloc double[Components.Count];
            for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) shares[(int)c] = grams[(int)c];
            if (acids <= 0) shares[(int)Component.Citric] = 1;
            if (!Juice.TryBackOut(grams, shares, ph, new Grams(Titratable), Celsius.Reference)) SetPotassium(grams, ph);
        }
        else
        {
            SetPotassium(grams, ph);
        }

        return Math.Abs(grams[(int)Component.Potassium] - before) + Math.Abs(Acids(grams) - acids) > 1e-7;
    }

    /// <summary>Strong ions by the pH; where the acids that are given do not explain it, they count as neutral salts.</summary>
    private static void SetPotassium(double[] grams, Ph ph)
    {
        if (Juice.PotassiumForPh(grams, ph, Celsius.Reference) is { } potassium)
        {
            grams[(int)Component.Potassium] = potassium.Value;
            return;
        }

        grams[(int)Component.SodiumChloride] += ChloridePerSodium * grams[(int)Component.Sodium];
        grams[(int)Component.OtherDissolved] += grams[(int)Component.Potassium];
        grams[(int)Component.Potassium] = grams[(int)Component.Sodium] = 0;
    }

    private static double Sugars(double[] grams) => Sum(grams, Components.FirstSugar, Components.LastSugar);

    private static double Acids(double[] grams) => Sum(grams, Components.FirstAcid, Components.LastAcid);

    private static double Sum(double[] grams, Component first, Component last)
    {
        double sum = 0;
        for (var c = first; c <= last; c++) sum += grams[(int)c];
        return sum;
    }

    private static double Sum(double[] grams)
    {
        double sum = 0;
        foreach (double g in grams) sum += g;
        return sum;
    }
}
