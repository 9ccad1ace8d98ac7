namespace SpecLint.Profile;

/// <summary>The facts that have been worked out so far.</summary>
internal sealed class FactStore
{
    // Each recipe of a book has one: numbers side by side, one text a fact (where it is from, or why it is open), and bits.
    private readonly double[] numbers = new double[3 * FactNames.Count];
    private readonly string?[] texts = new string?[FactNames.Count];
    private uint open;
    private uint untested;

    /// <summary>A fact; the default value where it has not been worked out.</summary>
    public FactValue this[Fact fact]
    {
        get
        {
            int at = (int)fact;
            if (texts[at] is not { } text) return default;
            return (open & (1u << at)) != 0
                ? FactValue.Open(text)
                : new FactValue(
                    numbers[3 * at], numbers[(3 * at) + 1], numbers[(3 * at) + 2], text, null)
                { IsOutsideTestedRange = (untested & (1u << at)) != 0 };
        }

        set
        {
            int at = (int)fact;
            uint bit = 1u << at;
            numbers[3 * at] = value.Value;
            numbers[(3 * at) + 1] = value.Low;
            numbers[(3 * at) + 2] = value.High;
            texts[at] = value.OpenBecause ?? value.From;
            open = value.OpenBecause is null ? open & ~bit : open | bit;
            untested = value.IsOutsideTestedRange ? untested | bit : untested & ~bit;
        }
    }

    /// <summary>Forgets all facts.</summary>
    public void Clear()
    {
        texts.AsSpan().Clear();
        open = untested = 0;
    }

    /// <summary>Leaves a fact open.</summary>
    public void Leave(Fact fact, string because) => this[fact] = FactValue.Open(because);

    /// <summary>Leaves a fact open where something that it needs is not known.</summary>
    public bool LeaveIf(Fact fact, Unknowns needs, Lack lack)
    {
        if (!lack.Has(needs | Unknowns.Composition | Unknowns.Mass)) return false;
        Leave(fact, lack.Because);
        return true;
    }

    /// <summary>Sets a computed fact, or leaves it open where something that it needs is not known.</summary>
    public void PutOrLeave(Fact fact, Estimate estimate, Unknowns needs, Lack lack)
    {
        if (!LeaveIf(fact, needs, lack)) this[fact] = estimate.ToFact();
    }
}
