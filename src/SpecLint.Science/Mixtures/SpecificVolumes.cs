namespace SpecLint.Science;

/// <summary>
/// Apparent specific volumes of solutes in water, mL/g: φ = a + b w + c w², w the share of all solutes in solutes and water,
/// beyond the last measured w as that of sucrose goes on (to 80 %).
/// φ moves with temperature as that of sucrose does.
/// </summary>
internal readonly struct SpecificVolumes
{
    // Fitted to densities at 20 °C of the CRC Handbook, 102nd ed. 2021, Concentrative Properties of Aqueous Solutions;
    // largest deviation of the density, g/mL: glucose 0.0002, fructose 0.0001, maltose 0.0008, lactose 0.0003, glycerol 0.0002,
    // mannitol (for sugar alcohols) 0.0003, citric 0.0001, lactic 0.0008, acetic 0.005, phosphoric 0.0004, salt 0.0001.
    private static readonly Curve[] Curves = MakeCurves();

    private readonly double w;
    private readonly double t;

    // What every component asks for, worked out once a composition.
    private readonly double sucrose;
    private readonly double sucroseAt20;
    private readonly double shift;

    /// <param name="w">Share of all solutes in solutes and water.</param>
    /// <param name="t">Temperature, °C.</param>
    public SpecificVolumes(double w, double t)
    {
        this.w = w;
        this.t = t;
        var inRange = Math.Min(w, SugarWater.HighestMassFraction);
        sucroseAt20 = SugarWater.ApparentVolume(inRange, 20);
        sucrose = t == 20 ? sucroseAt20 : SugarWater.ApparentVolume(inRange, t);
        shift = t == 20 ? 0 : SugarWater.ApparentVolume(0.1, t) - SugarWater.ApparentVolume(0.1, 20);
    }

    /// <summary>Adds the volume of each component but water and ethanol to that of the two.</summary>
    /// <param name="volume">Volume of water and ethanol, mL.</param>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <returns>mL.</returns>
    public double AddTo(double volume, ReadOnlySpan<double> grams)
    {
        var curves = Curves;
        for (var i = (int)Component.Sucrose; i < grams.Length; i++)
        {
            if (!(grams[i] > 0))
                continue;
            volume += grams[i] * Of(in curves[i], i);
        }

        return volume;
    }

    /// <summary>The apparent specific volume of a component other than water and ethanol, mL/g.</summary>
    public double Of(Component component) => Of(in Curves[(int)component], (int)component);

    private double Of(in Curve curve, int component) => curve.Kind switch
    {
        Kind.Sucrose => sucrose,
        Kind.Solute => w <= curve.Last ? curve.A + (w * (curve.B + (w * curve.C))) + shift : curve.AtLast + shift + sucroseAt20 - curve.SucroseAtLast,
        Kind.Dry => 1000 / (curve.A - (curve.B * t)),
        Kind.Ion => shift,
        _ => throw new InvalidOperationException($"{(Component)component} has no specific volume."),
    };

    private static Curve[] MakeCurves()
    {
        var curves = new Curve[Components.Count];
        foreach (var component in new[] { Component.Sucrose, Component.Dextrin, Component.OtherDissolved })
            curves[(int)component] = new Curve { Kind = Kind.Sucrose };
        Add(Component.Glucose, 0.61839, 0.02851, 0, 0.58);
        Add(Component.Fructose, 0.60941, 0.03042, 0, 0.48);
        Add(Component.Maltose, 0.62034, -0.01597, 0.04797, 0.60);
        Add(Component.Lactose, 0.60258, 0.05624, 0, 0.16);
        Add(Component.Glycerol, 0.77477, -0.01633, 0.03476, 1);
        Add(Component.Sorbitol, 0.65321, 0.02111, 0, 0.15);
        // Partial molar volumes at infinite dilution, 86.8 and 102.1 cm³/mol (Kiyosawa, Bull. Chem. Soc. Jpn. 64:42, 1991), rising as that of mannitol does.
        Add(Component.Erythritol, 0.711, 0.021, 0, 0.40);
        Add(Component.Xylitol, 0.671, 0.021, 0, 0.60);
        // No table was found: as maltose, and as fructose.
        Add(Component.Maltitol, 0.62034, -0.01597, 0.04797, 0.60);
        Add(Component.Allulose, 0.60941, 0.03042, 0, 0.48);
        Add(Component.Citric, 0.59551, 0.0116, 0, 0.18);
        Add(Component.Lactic, 0.78428, -0.00612, 0.03974, 0.80);
        Add(Component.Acetic, 0.87085, -0.00196, 0.08088, 1);
        Add(Component.Phosphoric, 0.47457, 0.0415, 0, 0.40);
        // Lange and Sinks 1930, specific gravity of malic acid solutions, 10 to 40 %.
        Add(Component.Malic, 0.600, 0.090, 0, 0.40);
        // Partial molar volumes at infinite dilution from memory: tartaric 83.5, succinic 82.5, ascorbic 106 cm³/mol.
        Add(Component.Tartaric, 0.556, 0, 0, 0);
        Add(Component.Succinic, 0.699, 0, 0, 0);
        Add(Component.Ascorbic, 0.602, 0, 0, 0);
        // No source: as citric acid. They are present in grams a litre at most.
        foreach (var component in new[] { Component.Oxalic, Component.Fumaric, Component.Quinic, Component.Gluconic, Component.Benzoic, Component.Sorbic })
            Add(component, 0.59551, 0, 0, 0);
        // 33.9 cm³/mol, from memory.
        Add(Component.CarbonDioxide, 0.770, 0, 0, 0);
        Add(Component.SodiumChloride, 0.29086, 0.36072, -0.34561, 0.26);
        // Ions: what temperature does; their volume is that of the salts they come to, see SaltEffects.
        foreach (var ion in new[] { Component.Sulphate, Component.Sodium, Component.Potassium, Component.Calcium, Component.Magnesium, Component.Chloride })
            curves[(int)ion] = new Curve { Kind = Kind.Ion };
        // Choi and Okos 1986, densities of pure food components, kg/m³ and their fall by °C.
        AddDry(Component.Protein, 1329.9, 0.5184);
        AddDry(Component.Fat, 925.59, 0.41757);
        AddDry(Component.Fibre, 1311.5, 0.36589);
        AddDry(Component.OtherInsoluble, 1599.1, 0.31046);
        return curves;

        void Add(Component component, double a, double b, double c, double last) => curves[(int)component] = new Curve
        {
            Kind = Kind.Solute,
            A = a,
            B = b,
            C = c,
            Last = last,
            AtLast = a + (last * (b + (last * c))),
            SucroseAtLast = SugarWater.ApparentVolume(last, 20),
        };

        void AddDry(Component component, double density, double fall) => curves[(int)component] = new Curve { Kind = Kind.Dry, A = density, B = fall };
    }

    private enum Kind : byte
    {
        None,
        Sucrose,
        Solute,
        Ion,
        Dry,
    }

    /// <summary>φ = A + B w + C w² up to the last measured w, at 20 °C; of what does not dissolve the density, A − B t.</summary>
    private readonly struct Curve
    {
        public double A { get; init; }

        public double B { get; init; }

        public double C { get; init; }

        public double Last { get; init; }

        public double AtLast { get; init; }

        public double SucroseAtLast { get; init; }

        public Kind Kind { get; init; }
    }
}
