using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>An uncertain input of a mix.</summary>
/// <param name="Input">The input, as the material has it.</param>
/// <param name="Scale">Grams of that material.</param>
internal readonly record struct Variation(UncertainInput Input, double Scale);

/// <summary>A composition in grams with its uncertain inputs: what a drink or preparation comes to before facts are read off it.</summary>
internal sealed class Mix
{
    private const int FewInputs = 64;

    private readonly ProfileRoom? room;
    private readonly double[] grams;
    private Variation[] inputs;
    private Dictionary<object, int>? places;
    private int inputCount;
    private bool sharesInputs;

    /// <summary>An empty mix.</summary>
    /// <param name="capacity">Inputs it will hold, as far as is known.</param>
    /// <param name="room">Where its arrays come from; <see langword="null"/> makes them.</param>
    public Mix(int capacity = 16, ProfileRoom? room = null)
    {
        this.room = room;
        grams = room?.Grams() ?? new double[Components.Count];
        inputs = room?.Inputs(capacity) ?? new Variation[capacity];
    }

    private Mix(Mix from)
    {
        Traces = from.Traces;
        room = from.room;
        grams = room?.Grams() ?? new double[Components.Count];
        from.grams.CopyTo(grams, 0);
        inputs = from.inputs;
        inputCount = from.inputCount;
        sharesInputs = from.sharesInputs = true;
    }

    /// <summary>Masses, g.</summary>
    public ReadOnlySpan<double> Grams => grams;

    /// <summary>The uncertain inputs with the change of the masses for one unit of each.</summary>
    public ReadOnlySpan<Variation> Inputs => inputs.AsSpan(0, inputCount);

    /// <summary>Caffeine, quinine, sulphite, mg.</summary>
    public Traces Traces { get; set; }

    /// <summary>Total mass, g.</summary>
    public double Total
    {
        get
        {
            double sum = 0;
            foreach (double g in grams) sum += g;
            return sum;
        }
    }

    /// <summary>Mass of the mono- and disaccharides, g.</summary>
    public double Sugars
    {
        get
        {
            double sum = 0;
            for (var c = Components.FirstSugar; c <= Components.LastSugar; c++) sum += grams[(int)c];
            return sum;
        }
    }

    /// <summary>Mass of a component, g.</summary>
    public double Of(Component component) => grams[(int)component];

    /// <summary>A copy that can be added to.</summary>
    public Mix Copy()
    {
        // Most copies change masses alone: the inputs are copied by the first change of one.
        return new Mix(this);
    }

    /// <summary>
    /// Adds a mass of a material, with the uncertainty of the amount. What is measured of the same thing in several lines is measured
    /// with the same jigger or scale: the lines err together, so that two halves are known no better than the whole.
    /// </summary>
    /// <param name="material">What is added.</param>
    /// <param name="amount">How much, g.</param>
    /// <param name="name">What varies, for people.</param>
    /// <param name="of">The composition of the thing itself, where only a part of it comes over.</param>
    public void Add(Material material, Trace amount, string name, double[]? of = null)
    {
        if (!(amount.Typical > 0)) return;
        var perGram = material.PerGram;
        for (int c = 0; c < grams.Length; c++) grams[c] += perGram[c] * amount.Typical;
        foreach (var input in material.Inputs) AddScaled(input, amount.Typical);
        var (up, down) = Amounts.Uncertainty(amount);
        if (up > 0 || down > 0) AddAmount(name, material.Sparse, up, down, amount.Typical, of ?? material.Composition);
        Traces = new Traces(
            Traces.Caffeine.Plus(material.Traces.Caffeine, amount.Typical),
            Traces.Quinine.Plus(material.Traces.Quinine, amount.Typical),
            Traces.Sulphite.Plus(material.Traces.Sulphite, amount.Typical));
        if (inputCount > 4 * Condensing.Most) Condense();
    }

    /// <summary>Keeps the number of inputs within <see cref="Condensing.Most"/>, so that a recipe costs no more for what its parts are made of.</summary>
    public void Condense()
    {
        if (inputCount <= Condensing.Most) return;
        inputs = Condensing.Of(Inputs);
        inputCount = inputs.Length;
        sharesInputs = false;
        places = null;
    }

    /// <summary>Adds pure water, with the uncertainty of its amount.</summary>
    public void AddWater(Trace amount, string name)
    {
        grams[(int)Component.Water] += amount.Typical;
        var (up, down) = Amounts.Uncertainty(amount);
        if (up <= 0 && down <= 0) return;
        Append(new UncertainInput(name, PureWater, up, down), amount.Typical);
    }

    /// <summary>Keeps a share of a component (1 keeps all, 0 takes it out), in the inputs too.</summary>
    public void Keep(Component component, double share)
    {
        int c = (int)component;
        grams[c] *= share;
        OwnInputs(inputCount);
        for (int i = 0; i < inputCount; i++)
        {
            var input = inputs[i].Input;
            if ((input.Changes.Touches & (1UL << c)) == 0) continue;
            inputs[i] = inputs[i] with { Input = input.With(input.Changes.Keep(c, share)) };
        }
    }

    /// <summary>Sets the mass of a component that is worked out from the others.</summary>
    public void Replace(Component component, double mass) => grams[(int)component] = mass;

    /// <summary>Takes out a mass of a component, at most what is there.</summary>
    public void Remove(Component component, double mass)
    {
        int c = (int)component;
        double left = Math.Max(0, grams[c] - mass);
        grams[c] = left;
    }

    /// <summary>Turns the mix into a material of one gram.</summary>
    public Material ToMaterial(string id, double density, MaterialState state, ItemKind kind, Lack lack, Trace ph, Trace? measuredDensity = null)
    {
        double total = Total;
        var perGram = new double[Components.Count];
        if (total > 0)
        {
            for (int c = 0; c < perGram.Length; c++) perGram[c] = grams[c] / total;
        }
        else
        {
            perGram[(int)Component.OtherInsoluble] = 1;
            total = 1;
        }

        var scaled = new UncertainInput[inputCount];
        Span<double> vector = stackalloc double[Components.Count];
        for (int i = 0; i < scaled.Length; i++)
        {
            var (input, scale) = inputs[i];
            double sum = 0;
            foreach (double change in input.Changes.Values) sum += change * scale;

            // The share of each component in one gram: d(m/M) = (dm − x dM)/M.
            vector.Clear();
            input.Changes.AddTo(vector, scale);
            for (int c = 0; c < vector.Length; c++) vector[c] = (vector[c] - (perGram[c] * sum)) / total;
            scaled[i] = input.With(SparseMasses.Of(vector));
        }

        return new Material(id, perGram, scaled, density, state)
        {
            Kind = kind,
            Unknown = lack.What,
            UnknownBecause = lack.Because,
            Ph = ph,
            MeasuredDensity = measuredDensity ?? new Trace(double.NaN, double.NaN, double.NaN),
            Traces = new Traces(
                default(Trace).Plus(Traces.Caffeine, 1 / total),
                default(Trace).Plus(Traces.Quinine, 1 / total),
                default(Trace).Plus(Traces.Sulphite, 1 / total)),
        };
    }

    private static readonly SparseMasses PureWater = SparseMasses.Of(OnlyWater());

    /// <summary>One gram of water.</summary>
    internal static double[] OnlyWater()
    {
        var perGram = new double[Components.Count];
        perGram[(int)Component.Water] = 1;
        return perGram;
    }

    private void AddScaled(UncertainInput input, double mass)
    {
        int at = PlaceOf(input.Root);
        if (at < 0)
        {
            Append(input, mass);
            return;
        }

        var (known, scale) = inputs[at];
        OwnInputs(inputCount);
        Span<double> vector = stackalloc double[Components.Count];
        known.Changes.AddTo(vector, scale);
        input.Changes.AddTo(vector, mass);
        inputs[at] = new Variation(known.With(SparseMasses.Of(vector)), 1);
    }

    private void AddAmount(string name, SparseMasses composition, double up, double down, double mass, double[] of)
    {
        for (int i = 0; i < inputCount; i++)
        {
            var (known, scale) = inputs[i];
            if (known.AmountOf != of) continue;
            double both = scale + mass;
            OwnInputs(inputCount);
            inputs[i] = new Variation(
                new UncertainInput(
                    known.Name, composition, ((known.Up * scale) + (up * mass)) / both, ((known.Down * scale) + (down * mass)) / both)
                {
                    Root = known.Root,
                    AmountOf = of,
                },
                both);
            return;
        }

        Append(new UncertainInput(name, composition, up, down) { AmountOf = of }, mass);
    }

    /// <summary>Where an input stands; -1 where it is not in yet. Few are compared one by one, many are looked up.</summary>
    private int PlaceOf(object root)
    {
        if (inputCount <= FewInputs)
        {
            for (int i = 0; i < inputCount; i++)
            {
                if (inputs[i].Input.Root == root) return i;
            }

            return -1;
        }

        if (places is null)
        {
            places = new Dictionary<object, int>(2 * inputCount);
            for (int i = 0; i < inputCount; i++) places[inputs[i].Input.Root] = i;
        }

        return places.TryGetValue(root, out int at) ? at : -1;
    }

    /// <summary>Makes the inputs its own, with room for so many.</summary>
    private void OwnInputs(int count)
    {
        if (!sharesInputs && count <= inputs.Length) return;
        int capacity = sharesInputs ? count + 2 : Math.Max(count, 2 * inputCount);
        var own = room?.Inputs(capacity) ?? new Variation[capacity];
        Array.Copy(inputs, own, inputCount);
        inputs = own;
        sharesInputs = false;
    }

    private void Append(UncertainInput input, double mass)
    {
        OwnInputs(inputCount + 1);
        places?.Add(input.Root, inputCount);
        inputs[inputCount++] = new Variation(input, mass);
    }
}
