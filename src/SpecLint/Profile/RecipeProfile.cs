using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>What a recipe comes to: its parts weighed, its composition, its facts. Facts are worked out when first asked for.</summary>
public sealed class RecipeProfile
{
    private static readonly Limit NegligibleShare = Limits.Of("tolerance-negligible-share");
    private static readonly Limit ProteinBuffer = Limits.Of("tolerance-protein-buffer");
    private static readonly Limit StrayIons = Limits.Of("stray-ions");
    private static readonly Limit ComputedPhHalfWidth = Limits.Of("tolerance-ph-computed");

    private readonly ProfileSet set;
    private readonly Mix mix;
    private readonly Mix served;
    private readonly FactValue[] facts = new FactValue[FactNames.Count];
    private readonly Unknowns unknown;
    private readonly string unknownBecause;
    private readonly double serves;
    private int groupsDone;
    private Material? material;
    private AllergenProfile? allergens;
    private KeepingState? keeping;
    private KeepingTerms? keepingTerms;
    private FixedList<HazardLoad>? hazardLoads;
    private readonly Mix? unfitted;
    private readonly Unknowns unfittedUnknown;

    internal RecipeProfile(Recipe recipe, ProfileSet set, int wave)
    {
        Wave = wave;
        Recipe = recipe;
        this.set = set;
        serves = recipe is Drink { Serves.IsGiven: true } d && d.Serves.Value > 0 ? d.Serves.Value : 1;
        Parts = Weigh(recipe, set);
        (mix, unknown, unknownBecause) = Combine(recipe, Parts);
        InputMass = mix.Total;
        InputVolume = Mixture.Volume(mix.Grams, Celsius.Reference)?.Value ?? double.NaN;
        if (recipe is Drink drink)
        {
            (Technique, TechniqueStep) = Techniques.Of(drink);
            served = Serve(out var chill);
            Chill = chill;
        }
        else
        {
            var prep = (Prep)recipe;
            Process(prep, mix, set, ref unknown, ref unknownBecause, out unfitted, out unfittedUnknown);
            served = mix;
        }

        IsSolid = recipe is Prep p && IsSolidPrep(p, mix);
    }

    /// <summary>The recipe.</summary>
    public Recipe Recipe { get; }

    /// <summary>Its lines, resolved and weighed: ingredients, garnish, rim.</summary>
    public FixedList<Part> Parts { get; }

    /// <summary>How a drink is chilled.</summary>
    public TechniqueKind Technique { get; }

    /// <summary>The step that chills it.</summary>
    public Step? TechniqueStep { get; }

    /// <summary>Dilution and temperature that the technique gives; <see langword="null"/> where they are not known.</summary>
    public Chilling? Chill { get; }

    /// <summary>Mass of all parts of the mix, g, before anything is taken out.</summary>
    public double InputMass { get; }

    /// <summary>Volume of all parts of the mix, mL; NaN where it cannot be had.</summary>
    public double InputVolume { get; }

    /// <summary>Whether it is a solid: facts are then per 100 g.</summary>
    public bool IsSolid { get; }

    /// <summary>What is not known of it.</summary>
    public Unknowns Unknown => unknown;

    /// <summary>Why.</summary>
    public string UnknownBecause => unknownBecause;

    /// <summary>Masses as made (a drink: as served), g, by component.</summary>
    public ReadOnlySpan<double> Grams => served.Grams;

    /// <summary>Masses of the mix, before ice and tops, g, by component.</summary>
    public ReadOnlySpan<double> MixGrams => mix.Grams;

    /// <summary>Mass as made (a drink: as served, all serves), g.</summary>
    public double Mass => served.Total;

    /// <summary>Allergens through the whole tree.</summary>
    public AllergenProfile Allergens => allergens ??= AllergenProfile.Of(this, set);

    /// <summary>How a preparation stands to the rules of keeping; <see langword="null"/> for a drink.</summary>
    internal KeepingState? Keeping => Recipe is Prep prep ? keeping ??= KeepingState.Of(prep, this, set) : null;

    /// <summary>How long a preparation keeps; <see langword="null"/> for a drink.</summary>
    internal KeepingTerms? KeepingTerms => Recipe is Prep prep ? keepingTerms ??= KeepingLife.TermsOf(prep, this, set) : null;

    /// <summary>What is hazardous in it, through the whole tree.</summary>
    internal FixedList<HazardLoad> HazardLoads => hazardLoads ??= HazardLoad.Of(this, set);

    /// <summary>Profiles of a lower wave were made before; a recipe uses only those.</summary>
    internal int Wave { get; }

    internal Mix Mix => mix;

    internal Mix Served => served;

    internal ProfileSet Set => set;

    /// <summary>A fact.</summary>
    public FactValue Get(Fact fact)
    {
        int group = GroupOf(fact);
        if ((Volatile.Read(ref groupsDone) & (1 << group)) == 0)
        {
            // Two threads may both work it out; they get the same.
            lock (facts)
            {
                if ((groupsDone & (1 << group)) == 0)
                {
                    Work(group);
                    Volatile.Write(ref groupsDone, groupsDone | (1 << group));
                }
            }
        }

        return facts[(int)fact];
    }

    /// <summary>The material of a preparation, for recipes that use it.</summary>
    internal Material Material
    {
        get
        {
            if (material is not null) return material;
            var prep = Recipe as Prep;
            var state = IsSolid ? MaterialState.Powder : MaterialState.Liquid;
            var density = Mixture.Density(mix.Grams, Celsius.Reference);
            var ph = new Trace(double.NaN, double.NaN, double.NaN);
            if (Recipe.Measured is { Ph.IsGiven: true } measured)
            {
                double half = Meters.PhHalfWidth(measured, set.Book);
                ph = new Trace(measured.Ph.Value.Value, measured.Ph.Value.Value - half, measured.Ph.Value.Value + half);
                if (!IsSolid && Juice.PotassiumForPh(mix.Grams, new Ph(ph.Typical), Celsius.Reference) is { } potassium)
                {
                    var fitted = mix.Copy();
                    fitted.Replace(Component.Potassium, potassium.Value);
                    return material = fitted.ToMaterial(Recipe.Id, density?.GramsPerMillilitre ?? double.NaN, state, prep?.Family.Or("") ?? "drink", unknown, unknownBecause, ph);
                }
            }

            return material = mix.ToMaterial(Recipe.Id, density?.GramsPerMillilitre ?? (IsSolid ? BulkDensityOfSolids : double.NaN), state, prep?.Family.Or("") ?? "drink", unknown, unknownBecause, ph);
        }
    }

    /// <summary>g/mL of ground salts and sugars; common practice, no source.</summary>
    private const double BulkDensityOfSolids = 0.85;

    internal Material ByProductMaterial(ByProduct left)
    {
        string id = left.Id.Value;
        if (!left.Amount.IsGiven || left.Amount.Value.Dimension != Dimension.Mass || left.Amount.Value.Base <= 0)
            return ProfileSet.Nothing(id, "its amount is not given by mass");

        // Insoluble matter of the inputs goes to what is strained out; the rest of its mass is the liquid it holds.
        var inputs = new Mix();
        foreach (var part in Parts)
        {
            if (part.Phase is PartPhase.Mix or PartPhase.TakenOut && part.IsWeighed && part.Material is not null) inputs.Add(part.Material, part.Grams, part.Material.Id);
        }

        double solid = inputs.Of(Component.OtherInsoluble) + inputs.Of(Component.Fibre);
        double mass = left.Amount.Value.Base;
        double liquid = inputs.Total - solid;
        if (solid < 0.01 * mass || solid >= mass || liquid <= 0)
            return ProfileSet.Nothing(id, "what was strained out cannot be worked out from the parts");
        var pulp = inputs.Copy();
        double held = (mass - solid) / liquid;
        for (int c = 0; c < Components.Count; c++)
        {
            if ((Component)c is not (Component.OtherInsoluble or Component.Fibre)) pulp.Keep((Component)c, held);
        }

        return pulp.ToMaterial(id, double.NaN, MaterialState.Solid, "by-product", unknown, unknownBecause, new Trace(double.NaN, double.NaN, double.NaN));
    }

    private static FixedList<Part> Weigh(Recipe recipe, ProfileSet set)
    {
        var parts = new Part[LinkedBook.LinesOf(recipe).Count];
        HashSet<string>? topped = null;
        bool topsRest = false, strains = false;
        foreach (var step in recipe.Method)
        {
            if (!step.Do.IsGiven) continue;
            strains |= Techniques.Strains(step.Do.Value);
            if (!Techniques.Tops(step.Do.Value)) continue;
            topsRest |= step.Items.Count == 0;
            foreach (var item in step.Items) (topped ??= new HashSet<string>(StringComparer.Ordinal)).Add(item.Value);
        }

        int count = 0;
        foreach (var line in LinkedBook.LinesOf(recipe))
        {
            var item = line.Item.IsGiven ? set.Book.Resolve(line.Item.Value) : null;
            var material = item is null ? null : set.MaterialOfPart(item);
            var grams = new Trace(double.NaN, double.NaN, double.NaN);
            double millilitres = double.NaN;
            if (line.Amount.IsGiven)
            {
                (grams, millilitres, _) = Amounts.Weigh(line.Amount.Value, material ?? Unresolved, set.Book.Settings);
            }

            parts[count++] = new Part
            {
                Line = line,
                Item = item,
                Material = material,
                Grams = grams,
                Millilitres = millilitres,
                Phase = PhaseOf(recipe, line, material, topped, topsRest, strains),
            };
        }

        return parts;
    }

    private static readonly Material Unresolved = ProfileSet.Nothing("", "it is in no file of the book and not in the catalogue");

    private static PartPhase PhaseOf(Recipe recipe, Line line, Material? material, HashSet<string>? topped, bool topsRest, bool strains)
    {
        switch (line.Role)
        {
            case LineRole.Garnish or LineRole.Rim or LineRole.Rinse: return PartPhase.Beside;
            case LineRole.Top or LineRole.Float: return PartPhase.Top;
            case LineRole.Fining or LineRole.Wash: return PartPhase.TakenOut;
        }

        if (recipe is Drink)
        {
            if (line.Item.IsGiven && topped is not null && topped.Contains(line.Item.Value)) return PartPhase.Top;
            if (topsRest && material?.Kind is "soda" or "sparkling-wine" or "beer" or "cider") return PartPhase.Top;
            if (material?.Kind == "ice") return PartPhase.Beside;
        }

        return strains && material is { State: MaterialState.Solid } && MaterialBuilder.IsBotanical(material.Kind) ? PartPhase.TakenOut
            : line.Role == LineRole.Muddle ? PartPhase.TakenOut
            : PartPhase.Mix;
    }

    private static (Mix Mix, Unknowns Unknown, string Because) Combine(Recipe recipe, FixedList<Part> parts)
    {
        var unknown = Unknowns.None;
        List<string>? reasons = null;
        double weighed = 0, acids = 0;
        int inputs = 2;
        foreach (var part in parts)
        {
            if (part.Phase is not PartPhase.Mix || !part.IsWeighed) continue;
            weighed += part.Grams.Typical;
            if (part.Material is null) continue;
            acids += AcidShare(part.Material) * part.Grams.Typical;
            inputs += part.Material.Inputs.Length + 1;
        }

        var mix = new Mix(inputs);
        foreach (var part in parts)
        {
            if (part.Phase is not (PartPhase.Mix or PartPhase.TakenOut)) continue;
            string name = part.Line.Item.IsGiven ? part.Line.Item.Value : $"part {part.Line.Number}";
            if (!part.IsWeighed)
            {
                // A leaf or two in a drink weighs nothing that a fact could show.
                if (part.Phase == PartPhase.TakenOut && recipe is Drink) continue;
                if (part.Line.Amount.IsGiven && part.Material is not null && part.Line.Amount.Value.Dimension == Dimension.Count && MaterialBuilder.IsBotanical(part.Material.Kind)) continue;
                if ((unknown & Unknowns.Mass) == 0) (reasons ??= []).Add($"how much {name} weighs is not known");
                unknown |= Unknowns.Mass;
                continue;
            }

            var material = part.Material ?? Unresolved;
            bool negligible = weighed > 0 && part.Grams.Typical < weighed * NegligibleShare.Value / 100;
            var missing = negligible ? Unknowns.None
                : part.Phase == PartPhase.Mix ? material.Unknown
                : part.Grams.Typical > weighed * ExtractedShare.Value / 100 ? material.Unknown & (Unknowns.Ph | Unknowns.Acid | Unknowns.Sugar | Unknowns.Composition)
                : Unknowns.None;

            // A spirit's own pH says nothing of a sour: it counts where the part brings acid or protein that buffers.
            if ((missing & Unknowns.Ph) != 0 && !Buffers(material, part.Grams.Typical, acids)) missing &= ~Unknowns.Ph;
            if (missing != Unknowns.None)
            {
                unknown |= missing;
                (reasons ??= []).Add(part.Material is null ? $"{name} is not known" : material.UnknownBecause);
            }

            if (part.Phase == PartPhase.Mix) mix.Add(material, part.Grams, name);
            else Extract(mix, material, part, name);
        }

        return (mix, unknown, reasons is null ? "" : string.Join("; ", reasons.Distinct()));
    }

    private static readonly Limit ExtractedShare = Limits.Of("tolerance-extracted-share");
    private static readonly Limit BufferShare = Limits.Of("tolerance-buffer-share");

    private static double AcidShare(Material material)
    {
        double share = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) share += material.Of(c);
        return share;
    }

    private static bool Buffers(Material material, double grams, double acids) =>
        AcidShare(material) * grams > acids * BufferShare.Value / 100 || material.Of(Component.Protein) * 100 > ProteinBuffer.Value
        || (acids == 0 && material.Kind is not ("spirit" or "bitters" or "sugar" or "syrup" or "liqueur"));

    /// <summary>What a solid that is strained out leaves in the liquid: part of its juice. A wash leaves its water and what is dissolved.</summary>
    private static void Extract(Mix mix, Material material, Part part, string name)
    {
        if (part.Line.Role == LineRole.Fining) return;
        var juice = new double[Components.Count];
        double mass = 0;
        for (var c = Component.Water; c <= Component.Potassium; c++) mass += juice[(int)c] = material.Of(c);
        mass += juice[(int)Component.OtherDissolved] = material.Of(Component.OtherDissolved);
        if (mass <= 0) return;
        for (int c = 0; c < juice.Length; c++) juice[c] /= mass;
        var inputs = new UncertainInput[material.Inputs.Length];
        for (int i = 0; i < inputs.Length; i++)
        {
            var change = (double[])material.Inputs[i].PerGram.Clone();
            for (int c = 0; c < change.Length; c++) change[c] = juice[c] > 0 ? change[c] / mass : 0;
            inputs[i] = material.Inputs[i].With(change);
        }

        var liquor = new Material(material.Id, juice, inputs, 1, MaterialState.Liquid);
        double typical = part.Line.Role == LineRole.Wash ? 1 : ExtractionTypical.Value / 100, low = part.Line.Role == LineRole.Wash ? 0.8 : ExtractionLow.Value / 100;
        mix.Add(liquor, new Trace(part.Grams.Typical * mass * typical, part.Grams.Low * mass * low, part.Grams.High * mass), name);
    }

    private static readonly Limit ExtractionTypical = Limits.Of("tolerance-extraction-typical");
    private static readonly Limit ExtractionLow = Limits.Of("tolerance-extraction-low");

    private static void Process(Prep prep, Mix mix, ProfileSet set, ref Unknowns unknown, ref string because, out Mix? unfitted, out Unknowns unfittedUnknown)
    {
        string family = prep.Family.Or("");
        if (family is "fat-wash" or "milk-wash" or "clarification") mix.Keep(Component.Fat, 0);
        if (family is "milk-wash" or "clarification")
        {
            mix.Keep(Component.Protein, 0);
            mix.Keep(Component.OtherInsoluble, 0);
            mix.Keep(Component.Fibre, 0);
        }

        bool boils = Techniques.Has(prep, Techniques.BoilsDown), dries = Techniques.Has(prep, Techniques.Dries);
        if (boils || dries)
        {
            double made = YieldMass(prep, mix);
            if (double.IsNaN(made))
            {
                unknown |= Unknowns.Water;
                because = Join(because, dries ? "how much water drying left is not known: the yield is not given by mass" : "how much water boiled off is not known: the yield is not given");
            }
            else if (made < mix.Total)
            {
                if (mix.Of(Component.Ethanol) > 0.005 * mix.Total)
                {
                    unknown |= Unknowns.Strength;
                    because = Join(because, "how much ethanol the heat drove off is not known");
                }

                mix.Remove(Component.Water, mix.Total - made);
            }
        }

        if (family == "ferment" || Techniques.Has(prep, v => v == "ferment"))
        {
            unknown |= Unknowns.Strength | Unknowns.Sugar | Unknowns.Acid | Unknowns.Ph;
            because = Join(because, "a ferment turns sugar into ethanol and acid: measure it");
        }

        // What the amounts alone come to, so that a reading can be held against it.
        unfitted = prep.Measured is { Abv.IsGiven: true } or { Brix.IsGiven: true } ? mix.Copy() : null;
        unfittedUnknown = unknown;
        if (prep.Measured is { Abv.IsGiven: true } measured && FitStrength(mix, measured.Abv.Value.Base, family == "ferment"))
        {
            unknown &= ~(Unknowns.Strength | Unknowns.Sugar);
            if (unknown == Unknowns.None) because = "";
        }

        if (prep.Measured is { Brix.IsGiven: true } solids && mix.Of(Component.Ethanol) < 0.005 * mix.Total && (unknown & (Unknowns.Composition | Unknowns.Mass)) == 0)
            FitSolids(mix, solids.Brix.Value.Base, Meters.BrixHalfWidth(solids, set.Book));
    }

    /// <summary>Sugar that makes a gram of ethanol: C6H12O6 gives 2 C2H5OH, 180.16 g to 92.14 g.</summary>
    private const double SugarPerEthanol = 180.16 / 92.14;

    /// <summary>Sets the ethanol so that the strength is the measured one; in a ferment it comes out of the sugar, else out of the water.</summary>
    private static bool FitStrength(Mix mix, double percentByVolume, bool ferments)
    {
        var fitted = new double[Components.Count];
        double low = 0, high = mix.Of(Component.Ethanol) + mix.Of(Component.Water);
        double was = mix.Of(Component.Ethanol), sugars = 0;
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) sugars += mix.Of(c);
        for (int i = 0; i < 50; i++)
        {
            double ethanol = (low + high) / 2;
            mix.Grams.CopyTo(fitted);
            fitted[(int)Component.Ethanol] = ethanol;
            if (ferments) Ferment(fitted, (ethanol - was) * SugarPerEthanol, sugars);
            else fitted[(int)Component.Water] = Math.Max(0, fitted[(int)Component.Water] - (ethanol - was));
            if (Mixture.Abv(fitted) is { } abv && abv.Percent < percentByVolume) low = ethanol;
            else high = ethanol;
        }

        if (Mixture.Abv(fitted) is null) return false;
        for (int c = 0; c < fitted.Length; c++) mix.Replace((Component)c, fitted[c]);
        return true;
    }

    private static readonly Evaluator VolumeEvaluator = static (grams, r) => r[0] = Mixture.Volume(grams, Celsius.Reference)?.Value ?? double.NaN;
    private static readonly Evaluator AbvEvaluator = static (grams, r) => r[0] = Mixture.Abv(grams)?.Percent ?? double.NaN;
    private static readonly Evaluator BrixEvaluator = static (grams, r) => r[0] = Mixture.Brix(grams)?.Value ?? double.NaN;

    /// <summary>Sets the sugars so that the dissolved solids are the measured ones, and narrows their range to that of the meter.</summary>
    private static void FitSolids(Mix mix, double brix, double halfWidth)
    {
        Span<double> value = stackalloc double[1], low = stackalloc double[1], high = stackalloc double[1];
        Propagation.Run(mix, BrixEvaluator, value, low, high);
        double sugars = 0;
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) sugars += mix.Of(c);
        if (double.IsNaN(value[0]) || sugars <= 0) return;
        var fitted = new double[Components.Count];
        double least = 0, most = 1 + (mix.Of(Component.Water) / sugars);
        for (int i = 0; i < 50; i++)
        {
            double factor = (least + most) / 2;
            mix.Grams.CopyTo(fitted);
            for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) fitted[(int)c] *= factor;
            fitted[(int)Component.Water] = Math.Max(0, fitted[(int)Component.Water] - (sugars * (factor - 1)));
            if (Mixture.Brix(fitted) is { } computed && computed.Value < brix) least = factor;
            else most = factor;
        }

        double half = (high[0] - low[0]) / 2;
        double narrowed = half > 0 ? Math.Min(1, halfWidth / half) : 1;
        for (int c = 0; c < fitted.Length; c++) mix.Keep((Component)c, narrowed);
        for (int c = 0; c < fitted.Length; c++) mix.Replace((Component)c, fitted[c]);
    }

    private static void Ferment(double[] grams, double eaten, double sugars)
    {
        double left = sugars <= 0 ? 0 : Math.Max(0, Math.Min(1, 1 - (eaten / sugars)));
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) grams[(int)c] *= left;
    }

    /// <summary>The yield in grams; NaN where it is not given or cannot be turned into mass.</summary>
    internal static double YieldMass(Prep prep, Mix mix)
    {
        if (!prep.Yield.IsGiven) return double.NaN;
        var yield = prep.Yield.Value;
        if (yield.Dimension == Dimension.Mass) return yield.Base;
        if (yield.Dimension != Dimension.Volume) return double.NaN;

        // Of a volume that has lost water: the mass follows from what stays and the density it then has.
        double low = 0, high = mix.Of(Component.Water);
        for (int i = 0; i < 40; i++)
        {
            double loss = (low + high) / 2;
            var trial = mix.Copy();
            trial.Remove(Component.Water, loss);
            var volume = Mixture.Volume(trial.Grams, Celsius.Reference);
            if (volume is null || volume.Value.Value < yield.Base) high = loss;
            else low = loss;
        }

        return mix.Total - low;
    }

    private static string Join(string a, string b) => a.Length == 0 ? b : $"{a}; {b}";

    private static bool IsSolidPrep(Prep prep, Mix mix)
    {
        if (prep.Family.Or("") is "flavoured-salt" or "flavoured-sugar" or "dried") return true;
        return mix.Total > 0 && Mixture.Volume(mix.Grams, Celsius.Reference) is null;
    }

    private Mix Serve(out Chilling? chill)
    {
        chill = null;
        var result = mix;
        if (Technique is not (TechniqueKind.Unknown or TechniqueKind.NoIce) && mix.Total > 0 && (unknown & (Unknowns.Composition | Unknowns.Mass | Unknowns.Strength)) == 0)
        {
            chill = Chilling.Of(mix.Grams, Technique, TechniqueStep);
            if (chill is { } c && !double.IsNaN(InputVolume))
            {
                result = mix.Copy();
                double perVolume = InputVolume * 0.9982;
                result.AddWater(new Trace(c.Ratio.Typical * perVolume, c.Ratio.Low * perVolume, c.Ratio.High * perVolume), "dilution");
            }
        }

        bool any = false;
        foreach (var part in Parts)
        {
            if (part.Phase != PartPhase.Top || !part.IsWeighed) continue;
            if (!any && ReferenceEquals(result, mix)) result = mix.Copy();
            any = true;
            result.Add(part.Material ?? Unresolved, part.Grams, part.Line.Item.Or("top"));
        }

        return result;
    }

    private static int GroupOf(Fact fact) => fact switch
    {
        Fact.Ph or Fact.MixPh => 1,
        Fact.WaterActivity => 2,
        Fact.FreezingPoint => 3,
        Fact.Life => 4,
        Fact.MixVolume => 5,
        Fact.MixAbv or Fact.MixSugar or Fact.MixAcid => 6,
        _ => 0,
    };

    private void Work(int group)
    {
        switch (group)
        {
            case 0: WorkComposition(); break;
            case 1: WorkPh(); break;
            case 2: WorkWaterActivity(); break;
            case 3: WorkFreezing(); break;
            case 4: WorkLife(); break;
            case 5: WorkMixVolume(); break;
            case 6: WorkMix(); break;
        }
    }

    private void Put(Fact fact, double value, double low, double high, double model, string from, double floor = 0, double ceiling = double.PositiveInfinity)
    {
        if (double.IsNaN(value) || double.IsNaN(low) || double.IsNaN(high))
        {
            facts[(int)fact] = FactValue.Open("it lies outside the range of the model");
            return;
        }

        // The error of the model is independent of the inputs: it adds by squares.
        double half = model * Propagation.Coverage;
        high = value + Math.Sqrt(((high - value) * (high - value)) + (half * half));
        low = value - Math.Sqrt(((value - low) * (value - low)) + (half * half));
        facts[(int)fact] = new FactValue(value, Math.Max(Math.Min(floor, value), low), Math.Max(value, Math.Min(ceiling, high)), from, null);
    }

    private void Leave(Fact fact, string because) => facts[(int)fact] = FactValue.Open(because);

    private bool LeaveIfUnknown(Fact fact, Unknowns needs, Unknowns ownUnknown, string ownBecause)
    {
        if ((ownUnknown & (needs | Unknowns.Composition | Unknowns.Mass)) == 0) return false;
        Leave(fact, ownBecause);
        return true;
    }

    private const int RawVolume = 0, RawAbv = 1, RawSugar = 2, RawAcid = 3, RawAnalysed = 4, RawDensity = 5, RawSalt = 6, RawEthanol = 7, RawEnergy = 8, RawBrix = 9, RawRatio = 10, RawCount = 11;

    private static void EvaluateLiquid(ReadOnlySpan<double> grams, Span<double> r)
    {
        var measures = Mixture.Measure(grams);
        double volume = measures?.Volume.Value ?? double.NaN;
        EvaluateBasis(grams, r, volume);
        r[RawVolume] = volume;
        r[RawAbv] = measures?.Abv.Percent ?? double.NaN;
        double total = 0;
        foreach (double g in grams) total += g;
        r[RawDensity] = total / volume;
        r[RawBrix] = measures?.Brix?.Value ?? double.NaN;
    }

    private static void EvaluateSolid(ReadOnlySpan<double> grams, Span<double> r)
    {
        double total = 0;
        foreach (double g in grams) total += g;
        EvaluateBasis(grams, r, total);
        r[RawVolume] = r[RawAbv] = r[RawDensity] = r[RawBrix] = double.NaN;
    }

    /// <summary>Results that are alike per 100 mL of a liquid and per 100 g of a solid.</summary>
    private static void EvaluateBasis(ReadOnlySpan<double> grams, Span<double> r, double basis)
    {
        double sugar = 0, acid = 0;
        for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) sugar += grams[(int)c];
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++)
        {
            if (c is not Component.Phosphoric) acid += grams[(int)c];
        }

        double titratable = AcidBase.TitratableAcidity(grams, Titration.JuiceEndPoint, TitrationBasis.CitricAnhydrous)?.Value ?? double.NaN;
        r[RawSugar] = 100 * sugar / basis;
        r[RawAcid] = 100 * titratable / basis;
        r[RawAnalysed] = 100 * acid / basis;
        r[RawSalt] = 100 * (grams[(int)Component.SodiumChloride] + (grams[(int)Component.Sodium] * 2.542)) / basis;
        r[RawEthanol] = grams[(int)Component.Ethanol];
        r[RawEnergy] = FoodEnergyModel.Of(grams)?.Kilocalories ?? double.NaN;
        r[RawRatio] = titratable > 1e-9 ? sugar / titratable : double.NaN;
    }

    private static readonly Evaluator Liquid = EvaluateLiquid;
    private static readonly Evaluator Solid = EvaluateSolid;

    private void WorkComposition()
    {
        var servedUnknown = unknown;
        string servedBecause = unknownBecause;
        foreach (var part in Parts)
        {
            if (part.Phase != PartPhase.Top) continue;
            var of = part.IsWeighed ? part.Material?.Unknown ?? Unknowns.Composition : Unknowns.Mass;
            if (of == Unknowns.None) continue;
            servedUnknown |= of;
            servedBecause = Join(servedBecause, part.IsWeighed ? part.Material?.UnknownBecause ?? $"{part.Line.Item.Or("the top")} is not known" : $"how much {part.Line.Item.Or("the top")} is added is not known");
        }

        bool dilutionOpen = Recipe is Drink && Chill is null && Technique != TechniqueKind.NoIce;
        string dilutionBecause = Technique == TechniqueKind.Unknown
            ? "the recipe has no method and no style that tells how it is diluted"
            : unknownBecause.Length > 0 ? unknownBecause : "the dilution of this mix lies outside the range of the models";

        Span<double> v = stackalloc double[RawCount], low = stackalloc double[RawCount], high = stackalloc double[RawCount];

        if (Recipe is Drink)
        {
            if (dilutionOpen) Leave(Fact.Dilution, dilutionBecause);
            else if (Chill is { } c) facts[(int)Fact.Dilution] = new FactValue(c.Ratio.Typical * 100, c.Ratio.Low * 100, c.Ratio.High * 100, "computed", null);
            else facts[(int)Fact.Dilution] = new FactValue(0, 0, 0, "computed", null);
            if (Chill is { } t) facts[(int)Fact.Temperature] = new FactValue(t.Temperature.Typical, t.Temperature.Low, t.Temperature.High, "computed", null);
            else Leave(Fact.Temperature, dilutionOpen ? dilutionBecause : "no ice chills it and no temperature is given");
        }
        else
        {
            Leave(Fact.Dilution, "a preparation has no dilution");
            Leave(Fact.Temperature, "a preparation is not served as it is");
        }

        Propagation.Run(served, IsSolid ? Solid : Liquid, v, low, high);
        if (dilutionOpen)
        {
            servedUnknown |= Unknowns.Mass;
            servedBecause = Join(servedBecause, dilutionBecause);
        }

        double perServe = Recipe is Drink ? 1 / serves : double.NaN;
        if (Recipe is Drink) PutOrLeave(Fact.ServedVolume, v[RawVolume] * perServe, low[RawVolume] * perServe, high[RawVolume] * perServe, 0, Unknowns.None, servedUnknown, servedBecause);
        else Leave(Fact.ServedVolume, "a preparation is not served as it is");
        if (IsSolid)
        {
            foreach (var fact in new[] { Fact.Abv, Fact.Brix, Fact.Density }) Leave(fact, "it is a solid");
        }
        else
        {
            PutOrLeave(Fact.Abv, v[RawAbv], low[RawAbv], high[RawAbv], AbvModel(v[RawAbv]), Unknowns.Strength, servedUnknown, servedBecause);
            if (v[RawAbv] > 0.5) Leave(Fact.Brix, "ethanol is over 0.5 % vol: a refractometer does not read sugar there");
            else PutOrLeave(Fact.Brix, v[RawBrix], low[RawBrix], high[RawBrix], 0.1, Unknowns.Sugar | Unknowns.Water, servedUnknown, servedBecause);
            PutOrLeave(Fact.Density, v[RawDensity], low[RawDensity], high[RawDensity], 0.0007, Unknowns.Strength | Unknowns.Sugar | Unknowns.Water, servedUnknown, servedBecause);
        }

        PutOrLeave(Fact.Sugar, v[RawSugar], low[RawSugar], high[RawSugar], 0, Unknowns.Sugar | Unknowns.Water, servedUnknown, servedBecause);
        PutOrLeave(Fact.Acid, v[RawAcid], low[RawAcid], high[RawAcid], 0, Unknowns.Acid | Unknowns.Water, servedUnknown, servedBecause);
        PutOrLeave(Fact.AcidAnalysed, v[RawAnalysed], low[RawAnalysed], high[RawAnalysed], 0, Unknowns.Acid | Unknowns.Water, servedUnknown, servedBecause);
        if (v[RawAcid] < 0.005) Leave(Fact.SugarAcidRatio, "there is no acid to speak of");
        else PutOrLeave(Fact.SugarAcidRatio, v[RawRatio], low[RawRatio], high[RawRatio], 0, Unknowns.Acid | Unknowns.Sugar, servedUnknown, servedBecause);
        PutOrLeave(Fact.Salt, v[RawSalt], low[RawSalt], high[RawSalt], 0, Unknowns.Salt | Unknowns.Water, servedUnknown, servedBecause);

        // Alcohol and energy: a drink per serve, a preparation per 100 mL (a solid per 100 g).
        double basis = Recipe is Drink ? serves : IsSolid ? Mass / 100 : v[RawVolume] / 100;

        // Dilution adds neither ethanol nor energy, so that they stand even where it is open.
        var amountUnknown = dilutionOpen ? unknown : servedUnknown;
        string amountBecause = dilutionOpen ? unknownBecause : servedBecause;
        PutOrLeave(Fact.Alcohol, v[RawEthanol] / basis, low[RawEthanol] / basis, high[RawEthanol] / basis, 0, Unknowns.Strength, amountUnknown, amountBecause);
        PutOrLeave(Fact.Energy, v[RawEnergy] / basis, low[RawEnergy] / basis, high[RawEnergy] / basis, 0, Unknowns.Strength | Unknowns.Sugar, amountUnknown, amountBecause);
        PutTrace(Fact.Caffeine, served.Traces.Caffeine, 1 / basis, amountUnknown, amountBecause);
        PutTrace(Fact.Quinine, served.Traces.Quinine, 1 / basis, amountUnknown, amountBecause);
        PutTrace(Fact.Sulphite, served.Traces.Sulphite, 1000 / (IsSolid ? Mass : v[RawVolume]), servedUnknown, servedBecause);
        Measured();
    }

    private void WorkMixVolume()
    {
        if (IsSolid)
        {
            Leave(Fact.MixVolume, "it is a solid");
            return;
        }

        Span<double> v = stackalloc double[1], low = stackalloc double[1], high = stackalloc double[1];
        Propagation.Run(mix, VolumeEvaluator, v, low, high);
        PutOrLeave(Fact.MixVolume, v[0] / serves, low[0] / serves, high[0] / serves, 0, Unknowns.None, unknown, unknownBecause);
    }

    /// <summary>The mix before dilution; few rules ask for it.</summary>
    private void WorkMix()
    {
        if (Recipe is not Drink)
        {
            foreach (var fact in new[] { Fact.MixAbv, Fact.MixSugar, Fact.MixAcid }) Leave(fact, "a preparation has no dilution");
            return;
        }

        Span<double> v = stackalloc double[RawCount], low = stackalloc double[RawCount], high = stackalloc double[RawCount];
        Propagation.Run(mix, Liquid, v, low, high);
        PutOrLeave(Fact.MixAbv, v[RawAbv], low[RawAbv], high[RawAbv], AbvModel(v[RawAbv]), Unknowns.Strength, unknown, unknownBecause);
        PutOrLeave(Fact.MixSugar, v[RawSugar], low[RawSugar], high[RawSugar], 0, Unknowns.Sugar, unknown, unknownBecause);
        PutOrLeave(Fact.MixAcid, v[RawAcid], low[RawAcid], high[RawAcid], 0, Unknowns.Acid, unknown, unknownBecause);
    }

    /// <summary>Error of the strength, % vol: without ethanol there is none to err about.</summary>
    private static double AbvModel(double abv) => 100 * Mixture.AbvError.At(abv / 100).Value;

    private void PutTrace(Fact fact, Trace trace, double factor, Unknowns ownUnknown, string because)
    {
        if (LeaveIfUnknown(fact, Unknowns.None, ownUnknown, because)) return;
        facts[(int)fact] = new FactValue(trace.Typical * factor, trace.Low * factor, trace.High * factor, "computed", null);
    }

    private void PutOrLeave(Fact fact, double value, double low, double high, double model, Unknowns needs, Unknowns ownUnknown, string because)
    {
        if (!LeaveIfUnknown(fact, needs, ownUnknown, because)) Put(fact, value, low, high, model, "computed");
    }

    /// <summary>A measured value replaces the estimate, with the range of its meter.</summary>
    private void Measured()
    {
        if (Recipe.Measured is not { } measured) return;
        Replace(Fact.Brix, measured.Brix, Meters.BrixHalfWidth(measured, set.Book));
        Replace(Fact.Abv, measured.Abv, Meters.AbvHalfWidth);
    }

    private void Replace(Fact fact, Given<Quantity> value, double half)
    {
        if (value.IsGiven) facts[(int)fact] = new FactValue(value.Value.Base, Math.Max(0, value.Value.BaseLow - half), value.Value.BaseHigh + half, "measured", null);
    }

    /// <summary>°Brix as the amounts give it, also where a measurement replaces it; open where it cannot be had.</summary>
    public FactValue ComputedBrix()
    {
        if (unfitted is null) return Get(Fact.Brix);
        if (unfitted.Of(Component.Ethanol) > 0.004 * unfitted.Total) return FactValue.Open("a refractometer does not read sugar beside ethanol");
        return Unfitted(unfitted, BrixEvaluator, Unknowns.Sugar, 0.1);
    }

    /// <summary>The strength as the amounts give it, also where a measurement replaces it; open where it cannot be had.</summary>
    public FactValue ComputedAbv() => unfitted is null ? Get(Fact.Abv) : Unfitted(unfitted, AbvEvaluator, Unknowns.Strength, 0.1);

    private FactValue Unfitted(Mix amounts, Evaluator evaluator, Unknowns needs, double model)
    {
        if (IsSolid) return FactValue.Open("it is a solid");
        if ((unfittedUnknown & (needs | Unknowns.Water | Unknowns.Mass | Unknowns.Composition)) != 0) return FactValue.Open("the amounts do not give it");
        Span<double> value = stackalloc double[1], low = stackalloc double[1], high = stackalloc double[1];
        Propagation.Run(amounts, evaluator, value, low, high);
        double half = model * Propagation.Coverage;
        return double.IsNaN(value[0])
            ? FactValue.Open("it lies outside the range of the model")
            : new FactValue(value[0], Math.Max(0, value[0] - Math.Sqrt(Square(value[0] - low[0]) + Square(half))), value[0] + Math.Sqrt(Square(high[0] - value[0]) + Square(half)), "computed", null);
    }

    private static double Square(double x) => x * x;

    /// <summary>The fact as the composition gives it, also where a measurement replaces it; open where it cannot be had.</summary>
    public FactValue ComputedPh()
    {
        if ((unknown & (Unknowns.Ph | Unknowns.Acid | Unknowns.Composition | Unknowns.Mass | Unknowns.Water)) != 0) return FactValue.Open(unknownBecause);
        return PhOf(served);
    }

    /// <summary>
    /// The computed pH with a range that also holds the minerals of water, sugar and spices that no table gives: where there is
    /// little acid they shift it far. Only for holding a reading against it.
    /// </summary>
    internal FactValue ComputedPhWithStrayIons()
    {
        var computed = ComputedPh();
        if (!computed.IsKnown) return computed;
        double potassium = StrayIons.Value / 1000 * PotassiumMolarMass * served.Total / 1000;
        var more = served.Copy();
        more.Replace(Component.Potassium, served.Of(Component.Potassium) + potassium);
        var less = served.Copy();
        less.Replace(Component.Potassium, Math.Max(0, served.Of(Component.Potassium) - potassium));
        FactValue high = PhOf(more), low = PhOf(less);
        return computed with { Low = low.IsKnown ? Math.Min(computed.Low, low.Low) : computed.Low, High = high.IsKnown ? Math.Max(computed.High, high.High) : computed.High };
    }

    /// <summary>g/mol.</summary>
    private const double PotassiumMolarMass = 39.0983;

    private void WorkPh()
    {
        Get(Fact.Abv);
        if (Recipe.Measured is { Ph.IsGiven: true } measured)
        {
            double half = Meters.PhHalfWidth(measured, set.Book);
            facts[(int)Fact.Ph] = new FactValue(measured.Ph.Value.Value, measured.Ph.Value.Low - half, measured.Ph.Value.High + half, "measured", null);
        }
        else
        {
            var servedDensity = facts[(int)Fact.Density];
            facts[(int)Fact.Ph] = Recipe is Drink && servedDensity.OpenBecause is { } open && !IsSolid ? FactValue.Open(open) : ComputedPh();
        }

        if (Recipe is Prep) Leave(Fact.MixPh, "a preparation has no dilution");
        else facts[(int)Fact.MixPh] = (unknown & (Unknowns.Ph | Unknowns.Acid | Unknowns.Composition | Unknowns.Mass | Unknowns.Water)) != 0 ? FactValue.Open(unknownBecause) : PhOf(mix);
    }

    private FactValue PhOf(Mix of)
    {
        if (IsSolid) return FactValue.Open("it is a solid");
        double total = of.Total;
        if (total <= 0) return FactValue.Open("it has no parts that weigh anything");
        if (100 * of.Of(Component.Protein) / total > ProteinBuffer.Value) return FactValue.Open("protein buffers it, which is not modelled: measure the pH");
        double acids = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) acids += of.Of(c);
        if (acids / total < 1e-5) return FactValue.Open("there is too little acid to compute a pH from");
        Span<double> v = stackalloc double[1], low = stackalloc double[1], high = stackalloc double[1];
        Propagation.Run(of, PhEvaluator, v, low, high);
        if (double.IsNaN(v[0])) return FactValue.Open("it lies outside the range of the acid model");
        double least = ComputedPhHalfWidth.Value;
        return new FactValue(v[0], Math.Min(low[0], v[0] - least), Math.Max(high[0], v[0] + least), "computed", null);
    }

    private static readonly Evaluator PhEvaluator = static (grams, r) => r[0] = AcidBase.Ph(grams, Celsius.Reference)?.Value ?? double.NaN;
    private static readonly Evaluator WaterActivityEvaluator = static (grams, r) => r[0] = WaterActivityModel.Of(grams, new Celsius(25))?.Value ?? double.NaN;
    private static readonly Evaluator FreezingEvaluator = static (grams, r) => r[0] = Freezing.Point(grams)?.Value ?? double.NaN;

    private void WorkWaterActivity()
    {
        if (Recipe.Measured is { WaterActivity.IsGiven: true } measured)
        {
            double half = Meters.WaterActivityHalfWidth;
            facts[(int)Fact.WaterActivity] = new FactValue(measured.WaterActivity.Value.Value, Math.Max(0, measured.WaterActivity.Value.Low - half), Math.Min(1, measured.WaterActivity.Value.High + half), "measured", null);
            return;
        }

        WorkOne(Fact.WaterActivity, WaterActivityEvaluator, WaterActivityModel.MixtureError, 0, 1);
    }

    private void WorkFreezing() => WorkOne(Fact.FreezingPoint, FreezingEvaluator, Freezing.MixtureError, double.NegativeInfinity, 0);

    private void WorkOne(Fact fact, Evaluator evaluator, ModelError model, double floor, double ceiling)
    {
        var needs = Unknowns.Strength | Unknowns.Sugar | Unknowns.Water;
        var density = Get(Fact.Density);
        if (Recipe is Drink && density.OpenBecause is { } open)
        {
            Leave(fact, open);
            return;
        }

        if (LeaveIfUnknown(fact, needs, unknown, unknownBecause)) return;
        Span<double> v = stackalloc double[1], low = stackalloc double[1], high = stackalloc double[1];
        Propagation.Run(served, evaluator, v, low, high);
        Put(fact, v[0], low[0], high[0], model.At(v[0]).Value, "computed", floor, ceiling);
    }

    private void WorkLife() => facts[(int)Fact.Life] = Recipe is Prep ? KeepingLife.Of(this) : FactValue.Open("a drink is served when it is made");
}
