using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>A composition in grams with its uncertain inputs: what a drink or preparation comes to before facts are read off it.</summary>
internal sealed class Mix
{
    private readonly double[] grams = new double[Components.Count];
    private readonly List<(UncertainInput Input, double[] Change)> inputs = [];

    /// <summary>Masses, g.</summary>
    public ReadOnlySpan<double> Grams => grams;

    /// <summary>The uncertain inputs with the change of the masses, g, for one unit of each.</summary>
    public IReadOnlyList<(UncertainInput Input, double[] Change)> Inputs => inputs;

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

    /// <summary>Mass of a component, g.</summary>
    public double Of(Component component) => grams[(int)component];

    /// <summary>A copy that can be added to.</summary>
    public Mix Copy()
    {
        var copy = new Mix { Traces = Traces };
        grams.CopyTo(copy.grams, 0);
        foreach (var (input, change) in inputs) copy.inputs.Add((input, (double[])change.Clone()));
        return copy;
    }

    /// <summary>Adds a mass of a material, with the uncertainty of the amount.</summary>
    public void Add(Material material, Trace amount, string name)
    {
        if (!(amount.Typical > 0)) return;
        var perGram = material.PerGram;
        for (int c = 0; c < grams.Length; c++) grams[c] += perGram[c] * amount.Typical;
        foreach (var input in material.Inputs) AddScaled(input, input.PerGram, amount.Typical);
        var (up, down) = Amounts.Uncertainty(amount);
        if (up > 0 || down > 0)
        {
            var change = new double[Components.Count];
            for (int c = 0; c < change.Length; c++) change[c] = perGram[c] * amount.Typical;
            inputs.Add((new UncertainInput(name, change, up, down), change));
        }

        Traces = new Traces(
            Traces.Caffeine.Plus(material.Traces.Caffeine, amount.Typical),
            Traces.Quinine.Plus(material.Traces.Quinine, amount.Typical),
            Traces.Sulphite.Plus(material.Traces.Sulphite, amount.Typical));
    }

    /// <summary>Adds pure water, with the uncertainty of its amount.</summary>
    public void AddWater(Trace amount, string name)
    {
        grams[(int)Component.Water] += amount.Typical;
        var (up, down) = Amounts.Uncertainty(amount);
        if (up <= 0 && down <= 0) return;
        var change = new double[Components.Count];
        change[(int)Component.Water] = amount.Typical;
        inputs.Add((new UncertainInput(name, change, up, down), change));
    }

    /// <summary>Keeps a share of a component (1 keeps all, 0 takes it out), in the inputs too.</summary>
    public void Keep(Component component, double share)
    {
        int c = (int)component;
        grams[c] *= share;
        foreach (var (_, change) in inputs) change[c] *= share;
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
    public Material ToMaterial(string id, double density, MaterialState state, string kind, Unknowns unknown, string because, Trace ph)
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

        var scaled = new UncertainInput[inputs.Count];
        for (int i = 0; i < scaled.Length; i++)
        {
            var (input, change) = inputs[i];
            double sum = 0;
            foreach (double d in change) sum += d;

            // The share of each component in one gram: d(m/M) = (dm − x dM)/M.
            var vector = new double[Components.Count];
            for (int c = 0; c < vector.Length; c++) vector[c] = (change[c] - (perGram[c] * sum)) / total;
            scaled[i] = new UncertainInput(input.Name, vector, input.Up, input.Down) { Root = input.Root };
        }

        return new Material(id, perGram, scaled, density, state)
        {
            Kind = kind,
            Unknown = unknown,
            UnknownBecause = because,
            Ph = ph,
            Traces = new Traces(
                default(Trace).Plus(Traces.Caffeine, 1 / total),
                default(Trace).Plus(Traces.Quinine, 1 / total),
                default(Trace).Plus(Traces.Sulphite, 1 / total)),
        };
    }

    private void AddScaled(UncertainInput input, double[] perGram, double mass)
    {
        double[]? change = null;
        foreach (var known in inputs)
        {
            if (known.Input.Root != input.Root) continue;
            change = known.Change;
            break;
        }

        if (change is null) inputs.Add((input, change = new double[Components.Count]));
        for (int c = 0; c < change.Length; c++) change[c] += perGram[c] * mass;
    }
}
